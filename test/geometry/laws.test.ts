/** Laws that hold for every grid block: turning the text turns the picture, everything tiles, scaling by 2 doubles. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fraction, mul } from '../../server/src/exact/number.ts';
import { applyToAll, scale } from '../../server/src/exact/transform.ts';
import { layoutBlock } from '../../server/src/geometry/block.ts';
import type { Patch } from '../../server/src/geometry/layout.ts';
import { movePatch, turnBox } from '../../server/src/geometry/move.ts';
import type { BlockInstance, CellSpec, TurnBy } from '../../server/src/model/pattern.ts';
import { block, blockUse, fabricUse, grid, patch, patches, place } from './make.ts';
import { basePatches, expectTiles, shapes } from './oracle.ts';

type Seam = '/' | '\\' | '|' | '-';

/** Blocks that stand in random cells: a square one, an oblong one with an outline that is not convex. */
const Goose = grid(['a/b'], { name: 'Goose' });
const Ell = patches([patch('patch a 0,0 2,0 2,1 1,1 1,2 0,2'), patch('patch b 1,1 2,1 2,2 1,2')], { box: [2, 2], name: 'Ell' });

const turns = fc.array(fc.constantFrom<TurnBy>('90', '180', '270', 'mirror', 'flip'), { maxLength: 3 });

const cells: fc.Arbitrary<CellSpec> = fc.letrec<{ cell: CellSpec }>((tie) => ({
  cell: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom('a', 'b', 'c').map(fabricUse),
    fc.tuple(fc.constantFrom(Goose, Ell), turns).map(([used, by]) => blockUse(used, ...by)),
    fc.tuple(fc.constantFrom<Seam>('|', '-'), fc.array(fc.tuple(tie('cell'), fc.integer({ min: 1, max: 3 })), { minLength: 2, maxLength: 3 })).map(
      ([seam, parts]): CellSpec => split(seam, parts.map(([cell, weight]) => ({ cell, weight: fraction(weight) }))),
    ),
    fc.tuple(fc.constantFrom<Seam>('/', '\\'), tie('cell'), tie('cell')).map(
      ([seam, first, second]): CellSpec => split(seam, [first, second].map((cell) => ({ cell, weight: fraction(1) }))),
    ),
    fc.tuple(tie('cell'), turns).map(([inner, by]): CellSpec => ({ kind: 'turned', inner, turns: by, place: place('turned') })),
  ),
})).cell;

function split(seam: Seam, parts: Extract<CellSpec, { kind: 'split' }>['parts']): CellSpec {
  return { kind: 'split', seam, parts, seams: [], place: place(seam) };
}

const blocks = fc
  .record({
    size: fc.tuple(fc.integer({ min: 2, max: 5 }), fc.integer({ min: 2, max: 5 })),
    content: fc.array(fc.array(cells, { minLength: 2, maxLength: 2 }), { minLength: 2, maxLength: 2 }),
  })
  .map(({ size, content }) => block({ kind: 'grid', content: content.map((row) => ({ cells: row, place: place('row') })) }, { size }));

/** Blocks in cells of another proportion are stretched, and the rest may still be judged. */
function findingsBut(instance: BlockInstance): string[] {
  return layoutBlock(instance).findings.map((finding) => finding.rule).filter((rule) => rule !== 'does-not-fit' && rule !== 'empty-patch');
}

/** Equal seams part the same shape differently only in which corner comes first. */
function shapesOf(moved: readonly Patch[]): string[] {
  return shapes(moved);
}

test('every grid block tiles', () => {
  fc.assert(fc.property(blocks, (instance) => {
    expect(findingsBut(instance)).toEqual([]);
    expectTiles(layoutBlock(instance), basePatches(layoutBlock(instance)));
  }), { numRuns: 300 });
});

test('a group turned in the text is the picture turned', () => {
  fc.assert(fc.property(cells, fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 })), turns, (cell, [width, height], by) => {
    const size = { width: fraction(width), height: fraction(height) };
    const turned = turnBox(by, size);
    const plain = layoutBlock(oneCell(cell, [width, height]));
    const inText = layoutBlock(oneCell({ kind: 'turned', inner: cell, turns: by, place: place('turned') }, [turned.width, turned.height]));
    expect(shapesOf(inText.patches)).toEqual(shapesOf(plain.patches.map((each) => movePatch(each, turned.motion))));
  }), { numRuns: 300 });
});

test('a cell mirrored part by part is the cell mirrored', () => {
  fc.assert(fc.property(cells, (cell) => {
    const written = layoutBlock(oneCell(mirrored(cell), [4, 4]));
    const turned = layoutBlock(oneCell({ kind: 'turned', inner: cell, turns: ['mirror'], place: place('turned') }, [4, 4]));
    expect(shapesOf(written.patches)).toEqual(shapesOf(turned.patches));
  }), { numRuns: 300 });
});

test('a block twice as large has every patch twice as large', () => {
  fc.assert(fc.property(blocks, (instance) => {
    if (!instance.size) throw new Error('A block without a size.');
    const large = block(instance.body, { size: [mul(fraction(2), instance.size.width), mul(fraction(2), instance.size.height)] });
    const doubled = layoutBlock(instance).patches.map((each) => ({ ...each, outline: applyToAll(each.outline, scale(fraction(2))) }));
    expect(shapesOf(layoutBlock(large).patches)).toEqual(shapesOf(doubled));
  }), { numRuns: 100 });
});

test('four quarter turns and two mirrors change nothing', () => {
  for (const by of [['90', '90', '90', '90'], ['180', '180'], ['mirror', 'mirror'], ['flip', 'flip'], ['90', '270'], ['mirror', 'flip', '180']] as const) {
    const layout = layoutBlock(grid(['X Y'], { size: [4, 2], blocks: { X: Ell, Y: Goose } }));
    const { motion, width, height } = turnBox(by, layout);
    expect([width, height]).toEqual([layout.width, layout.height]);
    expect(shapesOf(layout.patches.map((each) => movePatch(each, motion)))).toEqual(shapesOf(layout.patches));
  }
});

function oneCell(cell: CellSpec, size: readonly [number | ReturnType<typeof fraction>, number | ReturnType<typeof fraction>]): BlockInstance {
  return block({ kind: 'grid', content: [{ cells: [cell], place: place('row') }] }, { size });
}

function mirrored(cell: CellSpec): CellSpec {
  switch (cell.kind) {
    case 'block':
      return { ...cell, turns: [...cell.turns, 'mirror'] };
    case 'split': {
      const parts = cell.parts.map((part) => ({ ...part, cell: mirrored(part.cell) }));
      if (cell.seam === '-') return { ...cell, parts };
      const [first, second] = parts;
      if (cell.seam === '|') return { ...cell, parts: parts.reverse() };
      return { ...cell, seam: cell.seam === '/' ? '\\' : '/', parts: first && second ? [second, first] : [] };
    }
    case 'turned':
      return { ...cell, turns: [...cell.turns, 'mirror'] };
    default:
      return cell;
  }
}
