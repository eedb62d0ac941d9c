/** A grid whose halves are the same, written once: `turned` or `mirrored` round the half (or quarter) that says it all. */
import { HALF, mul } from '../../exact/number.ts';
import { point } from '../../exact/point.ts';
import { applyToAll, about, FLIP, MIRROR, turn, type Transform } from '../../exact/transform.ts';
import { ofKind } from '../../model/statements.ts';
import type { BlockView, Snapshot } from '../../snapshot.ts';
import { bodyEdit, looksOf, textIn, type Refactoring } from './edit.ts';

interface Way {
  readonly written: string;
  readonly part: 'half' | 'quarter';
  readonly images: readonly Transform[];
}

/** In the steps of `turn`. */
const QUARTER = 6;

/** The one that leaves least to write comes first. */
const WAYS: readonly Way[] = [
  { written: 'turned 4', part: 'quarter', images: [turn(QUARTER)] },
  { written: 'mirrored 4', part: 'quarter', images: [MIRROR, FLIP] },
  { written: 'turned 2', part: 'half', images: [turn(2 * QUARTER)] },
  { written: 'mirrored', part: 'half', images: [MIRROR] },
];

/** Those that hold for a block, best first; none for a block that is folded already, or has an odd count of columns. */
export function symmetries(snapshot: Snapshot, view: BlockView): readonly Refactoring[] {
  return WAYS.flatMap((way) => folded(snapshot, view, way) ?? []);
}

function folded(snapshot: Snapshot, { definition, layout }: BlockView, { written, part, images }: Way): Refactoring | undefined {
  const { body, findings } = layout.instance;
  const { statement } = definition;
  const inside = statement.body?.statements ?? [];
  const rows = ofKind(inside, 'row_of_cells');
  const across = rows[0]?.node.cells.length ?? 0;
  if (body.kind !== 'grid' || body.symmetry || !statement.body || findings.length > 0 || layout.findings.length > 0 || across % 2 === 1 || across === 0) return undefined;
  if (part === 'quarter' && rows.length % 2 === 1) return undefined;
  if (rows.some(({ node }) => node.cells.length !== across || node.cells.some(({ kind }) => kind === 'goes_on' || kind === 'bad'))) return undefined;
  if (inside.some(({ node }) => node.kind === 'corner') || !images.every((image) => isSame(layout, image))) return undefined;
  const kept = rows.slice(0, part === 'quarter' ? rows.length / 2 : rows.length);
  const cells = kept.map((row) => `  ${row.node.cells.slice(0, across / 2).map((cell) => textIn(row, cell)).join('  ')}`);
  const others = inside.filter(({ node }) => node.kind !== 'row_of_cells' && node.kind !== 'junk').map((each) => textIn(each, each.node).trim());
  const edit = bodyEdit(snapshot, statement.body, [...others, `${written} {`, ...cells, '}']);
  return edit && { title: `Write one ${part} and \`${written}\``, kind: 'rewrite', edits: [edit] };
}

/** Whether a block comes to lie on itself. */
function isSame(layout: BlockView['layout'], image: Transform): boolean {
  const middle = about(point(mul(layout.width, HALF), mul(layout.height, HALF)), image);
  const moved = { ...layout, patches: layout.patches.map((patch) => ({ ...patch, outline: applyToAll(patch.outline, middle) })) };
  const before = looksOf(layout);
  return layout.patches.every(({ grain, arcs }) => grain === undefined && arcs === undefined) && looksOf(moved).every((each, index) => each === before[index]);
}
