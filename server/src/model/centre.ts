/** Blocks built from the centre: strips in sewing order, and squares laid on the corners of any block. */
import type { Name, Side, Statement } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import { at, onLine, refuse } from './context.ts';
import { finishedLength, finishedSize } from './measures.ts';
import type { BlockUse, CentreBody, FabricUse, FlippedCorner } from './pattern.ts';
import { ofKind, onlyOne, type StatementOf } from './statements.ts';
import { fabricFor, useOf, type Builder } from './uses.ts';

type Strips = CentreBody['strips'];

/** The sides a `round` sews, in this order. */
const ROUND: readonly Side[] = ['top', 'right', 'bottom', 'left'];

/** The body that `centre`, `strip` and `round` make. */
export function centreBody(builder: Builder, statements: readonly Statement[]): CentreBody {
  const statement = onlyOne(builder, statements, 'centre');
  const centre = statement && centreOf(builder, statement);
  const sewn = ofKind(statements, 'strip', 'round').map((each) => stripsOf(builder, each));
  const isWhole = centre !== undefined && sewn.every((strips) => strips !== undefined);
  if (!statement) refuseWithout(builder, statements);
  return { kind: 'centre', ...(centre ? { centre } : {}), strips: sewn.flatMap((strips) => strips ?? []), ...(isWhole ? {} : { incomplete: true }) };
}

/** The squares laid on the corners of a block. */
export function flippedCorners(builder: Builder, statements: readonly Statement[]): readonly FlippedCorner[] {
  return ofKind(statements, 'corner').flatMap(({ node, line }): FlippedCorner[] => {
    const here = onLine(builder, line);
    const size = node.length && finishedLength(here, node.length, 'a corner');
    const fabric = node.fabric && fabricFor(here, node.fabric);
    if (!size || !fabric) return [];
    return node.corners.map((corner) => ({ fabric, size, corner: corner.word, place: at(here, corner) }));
  });
}

function centreOf(builder: Builder, { node, line }: StatementOf<'centre'>): CentreBody['centre'] {
  const here = onLine(builder, line);
  const use = node.filling && useOf(here, node.filling);
  const size = node.size && finishedSize(here, node.size, 'the centre');
  const own = node.size ? undefined : ownSize(use);
  const measures = size ?? own;
  return use && measures && { use, width: measures.width, height: measures.height, place: placeIn(line, node) };
}

/** `centre Star` has the size of the block. */
function ownSize(use: FabricUse | BlockUse | undefined): { readonly width: FlippedCorner['size']; readonly height: FlippedCorner['size'] } | undefined {
  return use?.kind === 'block' ? use.block.size : undefined;
}

function stripsOf(builder: Builder, { node, line }: StatementOf<'strip' | 'round'>): Strips | undefined {
  const here = onLine(builder, line);
  const width = node.length && finishedLength(here, node.length, node.kind === 'strip' ? 'a strip' : 'a round');
  const sewn = node.kind === 'strip' ? (node.side && node.fabric ? [{ side: node.side.word, name: node.fabric }] : undefined) : roundOf(here, node);
  const strips = sewn?.map(({ side, name }) => ({ side, fabric: fabricFor(here, name), place: at(here, node.kind === 'strip' ? node : name) }));
  return width && strips?.map((strip) => ({ width, ...strip }));
}

/** Four fabrics in the order of the sides; one fabric goes all round. */
function roundOf(builder: Builder, { fabrics, broken, ...columns }: StatementOf<'round'>['node']): readonly { readonly side: Side; readonly name: Name }[] | undefined {
  const names = fabrics.length === 1 ? ROUND.flatMap(() => fabrics) : fabrics;
  if (names.length === ROUND.length) return ROUND.flatMap((side, index) => names.slice(index, index + 1).map((name) => ({ side, name })));
  return broken ? undefined : refuse(builder, columns, `a round has 4 fabrics (top, right, bottom, left), or 1 for all of them, and this has ${fabrics.length}`);
}

function refuseWithout(builder: Builder, statements: readonly Statement[]): void {
  const [first] = ofKind(statements, 'strip', 'round');
  if (first) refuse(onLine(builder, first.line), first.node.word, 'strips are sewn around a `centre`, and there is none');
}
