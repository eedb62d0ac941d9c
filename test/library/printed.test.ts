/** Library blocks against drawings and cutting lists made by others. */
import { describe, expect, test } from 'vitest';
import { SQRT2, key, mul, toNumber } from '../../server/src/exact/number.ts';
import type { Piece } from '../../server/src/cutting/plan.ts';
import type { BlockLayout } from '../../server/src/geometry/layout.ts';
import { cutLines, inches } from '../cutting/layouts.ts';
import { EVERY_BLOCK, cellOf, cornersOf, laidOut, quiltOf, type Corner } from './blocks.ts';
import { CAKE_STAND, CARD_TRICK, PRINTED_LISTS } from './printed-lists.ts';
import { DRAWN_BLOCKS } from './traditional-polygons.ts';

describe('the same polygons, turned or mirrored at most', () => {
  const cells = DRAWN_BLOCKS.map(({ name }) => cellNamed(name));
  const laid = laidOut(cells);

  test.each(DRAWN_BLOCKS)('$name', ({ name, grid, polygons }) => {
    const layout = laid.get(cellNamed(name))?.layout as BlockLayout;
    const drawn = polygons.map((polygon) => polygon.split(' ').map((corner) => corner.split(',').map(Number) as unknown as Corner));
    const own = layout.patches.map((patch) => cornersOf(patch, grid / toNumber(layout.width)));
    expect(SYMMETRIES.map((move) => setOf(own.map((outline) => outline.map((corner) => move(corner, grid)))))).toContain(setOf(drawn));
  });
});

describe('the cuts of those drawings', () => {
  test.each(DRAWN_BLOCKS)('$name', ({ name, finished, cuts }) => {
    const { plan } = quiltOf(cellNamed(name).replace(/f\d/g, 'a'), { fabrics: ['a'], side: finished });
    const printed = (piece: Piece): string => {
      const size = piece.shape === 'quarter-square triangle' ? inches(mul(piece.finished.width, SQRT2)) : sizeOf(piece.finished);
      return [piece.shape, size, sizeOf(piece.cut), piece.pieces, piece.cutCount].join(', ');
    };
    expect(plan.pieces.map(printed).sort()).toEqual(cuts.map((cut) => cut.join(', ')).sort());
  });
});

describe('printed cutting lists', () => {
  test.each(PRINTED_LISTS)('$title, $side"', ({ cell, fabrics, side, cuts }) => {
    expect(cutLines(quiltOf(cell, { fabrics, side }).plan.pieces).sort()).toEqual([...cuts].sort());
  });

  test.each(CARD_TRICK)('Card Trick, %s"', (side, quarter, half) => {
    const { plan } = quiltOf('card_trick(a, b, g, c, d)', { fabrics: ['a', 'b', 'c', 'd', 'g'], side });
    const card = (fabric: string): string[] => [`${fabric}: 1 of ${half} once on the diagonal`, `${fabric}: 1 of ${quarter} twice on the diagonal`];
    const ground = [`g: 2 of ${half} once on the diagonal`, `g: 1 of ${quarter} twice on the diagonal`];
    expect(cutLines(plan.pieces).sort()).toEqual([...['a', 'b', 'c', 'd'].flatMap(card), ...ground].sort());
  });

  test('Cake Stand, 5", finished', () => {
    const { plan } = quiltOf('cake_stand(basket, ground)', { fabrics: ['basket', 'ground'], side: '5' });
    const lines = plan.pieces.map(({ fabric, pieces, shape, finished }) => `${fabric.name}: ${pieces} ${shape} ${[finished.width, finished.height].map(inches).sort().join(' x ')}`);
    expect(lines.sort()).toEqual(CAKE_STAND);
  });
});

function cellNamed(name: string): string {
  const definition = EVERY_BLOCK.find((each) => each.name === name);
  if (!definition) throw new Error(`no ${name}`);
  return cellOf(definition);
}

function sizeOf({ width, height }: Piece['cut']): string {
  return key(width) === key(height) ? inches(width) : `${inches(width)} x ${inches(height)}`;
}

/** The eight ways to lay a square, in units of `grid`. */
const TURNS: readonly ((corner: Corner, grid: number) => Corner)[] = [
  ([x, y]) => [x, y], ([x, y], grid) => [grid - y, x], ([x, y], grid) => [grid - x, grid - y], ([x, y], grid) => [y, grid - x],
];
const SYMMETRIES = TURNS.flatMap((turn) => [turn, ([x, y]: Corner, grid: number): Corner => turn([grid - x, y], grid)]);

/** A text that neither the order of the polygons nor their first corner or direction changes; corners on a straight edge are left out. */
function setOf(outlines: readonly (readonly Corner[])[]): string {
  return outlines.map((outline) => straightened(outline).map(([x, y]) => `${(x + 0).toFixed(6)},${(y + 0).toFixed(6)}`.replaceAll('-0.000000', '0.000000')).sort().join(' ')).sort().join('\n');
}

function straightened(outline: readonly Corner[]): readonly Corner[] {
  return outline.filter((corner, index) => {
    const before = outline.at(index - 1) ?? corner;
    const after = outline[(index + 1) % outline.length] ?? corner;
    return Math.abs((corner[0] - before[0]) * (after[1] - corner[1]) - (corner[1] - before[1]) * (after[0] - corner[0])) > 1e-9;
  });
}
