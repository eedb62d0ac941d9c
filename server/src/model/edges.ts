/** What only a setting on point has: setting triangles, their corners, how far blocks float, and the places between. */
import type { Columns } from '../text/place.ts';
import type { Statement } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import { onLine, refuse } from './context.ts';
import { finishedLength } from './measures.ts';
import type { QuiltSpec, Setting } from './pattern.ts';
import { ofKind, onlyOne, reportSecond, type StatementOf } from './statements.ts';
import { useOf, type Builder } from './uses.ts';

type Edges = Pick<QuiltSpec, 'edges' | 'cornerFilling' | 'float'>;

/** Edges, corners and float, said in one line or in their own; `own` are the statements of the size, which win. */
export function edgesOf(builder: Builder, statements: readonly Statement[], own: readonly Statement[]): Edges {
  const edges = onlyOne(builder, statements, 'edges');
  const filling = edges?.node.filling && useOf(onLine(builder, edges.line), edges.node.filling);
  const cornerFilling = cornersOf(builder, oneSaid(builder, statements, own, 'corners'));
  const float = floatOf(builder, oneSaid(builder, statements, own, 'float'));
  return {
    ...(edges && filling ? { edges: { filling, place: edges.place } } : {}),
    ...(cornerFilling ? { cornerFilling } : {}),
    ...(float ? { float } : {}),
  };
}

/** Refuses what a setting that is not on point has no place for. */
export function refuseOffPoint(builder: Builder, statements: readonly Statement[], setting: Setting | undefined): void {
  if (!setting || setting.kind === 'on_point') return;
  for (const { node, line } of ofKind(statements, 'between', 'edges', 'corners', 'float')) {
    refuse(onLine(builder, line), node.word, `\`${node.kind}\` belongs to a setting on point, and this one is \`${setting.kind}\``, setting.place);
  }
}

type Sayer = StatementOf<'corners' | 'float' | 'edges'>;

/** The statement that says `corners` or `float`, in a line of its own or in that of `edges`. */
function oneSaid(builder: Builder, statements: readonly Statement[], own: readonly Statement[], what: 'corners' | 'float'): Sayer | undefined {
  const sayers = ofKind(statements, 'edges', what).filter(({ node }) => node.kind !== 'edges' || node[what]);
  const ofSize = sayers.filter((sayer) => own.includes(sayer));
  const [first, ...others] = ofSize.length > 0 ? ofSize : sayers;
  for (const other of others) reportSecond(builder, other, first);
  return first;
}

function cornersOf(builder: Builder, sayer: Sayer | undefined): Edges['cornerFilling'] {
  if (!sayer) return undefined;
  const { node, line } = sayer;
  const said = node.kind === 'edges' ? node.corners : node.kind === 'corners' ? node.filling : undefined;
  if (!said) return undefined;
  const filling = said.kind === 'word' ? 'none' : useOf(onLine(builder, line), said);
  return filling && { filling, place: placeFor(sayer, said) };
}

function floatOf(builder: Builder, sayer: Sayer | undefined): Edges['float'] {
  if (!sayer) return undefined;
  const { node, line } = sayer;
  const said = node.kind === 'edges' ? node.float : node.kind === 'float' ? node.length : undefined;
  const width = said && finishedLength(onLine(builder, line), said, 'the float');
  return said && width && { width, place: placeFor(sayer, said) };
}

function placeFor({ node, line, place }: Sayer, said: Columns): Statement['place'] {
  return node.kind === 'edges' ? placeIn(line, said) : place;
}
