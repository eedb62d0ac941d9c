/** Every library block can be sewn: with straight seams from edge to edge, but for curves, flipped corners and one star. */
import { expect, test } from 'vitest';
import { assemble } from '../../server/src/piecing/assembly.ts';
import type { SeamKind } from '../../server/src/piecing/plan.ts';
import { EVERY_BLOCK, cellOf, laidOut } from './blocks.ts';

/** What else than straight seams a block needs. */
const ALSO: Readonly<Record<string, Partial<Record<SeamKind, number>>>> = {
  drunkards_path: { curved: 1 }, orange_peel: { curved: 2 }, melon_patch: { curved: 4 }, robbing_peter_to_pay_paul: { curved: 16 },
  baseball: { curved: 4 }, mill_wheel: { curved: 4 }, grandmothers_fan: { curved: 2 },
  leaf_stem: { flipped: 2 }, maple_leaf: { flipped: 2 }, flipped_goose: { flipped: 2 }, mothers_favorite: { flipped: 16 },
  // The squares and triangles between its eight diamonds.
  le_moyne_star: { set_in: 8 },
};

const CELLS = EVERY_BLOCK.map((definition) => [definition.name, cellOf(definition)] as const);
const LAID = laidOut(CELLS.map(([, cell]) => cell));

test.each(CELLS)('%s', (name, cell) => {
  const patches = LAID.get(cell)?.layout.patches ?? [];
  const kinds = assemble(patches)?.plan.seams.map(({ kind }) => kind) ?? [];
  expect(kinds.length).toBe(patches.length - 1);
  expect(Object.fromEntries([...new Set(kinds)].filter((kind) => kind !== 'straight').map((kind) => [kind, kinds.filter((each) => each === kind).length]))).toEqual(ALSO[name] ?? {});
});
