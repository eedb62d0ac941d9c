/** What stands in the braces of a block: a grid of cells, patches, or a centre with strips around it. */
import type { Statement, StatementKind } from '../syntax/tree.ts';
import { refuse, onLine } from './context.ts';
import { centreBody } from './centre.ts';
import { gridBody } from './grid.ts';
import { patchesBody } from './patches.ts';
import type { BlockBody } from './pattern.ts';
import type { Builder } from './uses.ts';

/** The body that the statements make. The first statement that can only stand in one kind decides; others are refused. */
export function bodyOf(builder: Builder, statements: readonly Statement[]): BlockBody {
  const deciding = flat(statements).filter(({ node }) => KIND_OF.has(node.kind));
  const kind = deciding[0] && KIND_OF.get(deciding[0].node.kind);
  const stray = deciding.find(({ node }) => KIND_OF.get(node.kind) !== kind);
  if (kind && stray) {
    const other = KIND_OF.get(stray.node.kind) ?? kind;
    refuse(onLine(builder, stray.line), stray.node.word, `a block is made in one way: this one begins as ${TITLES[kind]}, and this belongs to ${TITLES[other]}`);
  }
  const isWhole = !stray && flat(statements).every(({ node }) => node.kind !== 'junk' && (!node.broken || !KIND_OF.has(node.kind)));
  const incomplete = isWhole ? {} : { incomplete: true as const };
  switch (kind) {
    case 'grid':
      return { ...gridBody(builder, statements), ...incomplete };
    case 'patches':
      return { ...patchesBody(builder, statements), ...incomplete };
    case 'centre':
      return { ...centreBody(builder, statements), ...incomplete };
    case undefined:
      return { kind: 'empty' };
  }
}

type BodyKind = Exclude<BlockBody['kind'], 'empty'>;

const TITLES: Readonly<Record<BodyKind, string>> = { grid: 'a grid of cells', patches: 'a list of patches', centre: 'a centre with strips' };

const KIND_OF: ReadonlyMap<StatementKind, BodyKind> = new Map<StatementKind, BodyKind>([
  ['grid', 'grid'], ['row_of_cells', 'grid'],
  ['box', 'patches'], ['patch', 'patches'], ['place_at', 'patches'],
  ['centre', 'centre'], ['strip', 'centre'], ['round', 'centre'],
]);

/** The statements and those in the braces of `turned` and `mirrored`, in the order of the text. */
function flat(statements: readonly Statement[]): readonly Statement[] {
  const found: Statement[] = [];
  const waiting = [...statements].reverse();
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    found.push(next);
    for (const inner of [...(next.body?.statements ?? [])].reverse()) waiting.push(inner);
  }
  return found;
}
