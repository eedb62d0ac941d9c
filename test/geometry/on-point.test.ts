import { describe, expect, test } from 'vitest';
import { SQRT2, add, equals, fraction, key, mul, toNumber } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { squaredDistance } from '../../server/src/exact/point.ts';
import type { QuiltLayout } from '../../server/src/geometry/layout.ts';
import { layoutQuilt } from '../../server/src/geometry/quilt.ts';
import { blockUse, border, fabricUse, grid, num, onPoint, quilt, RULES } from './make.ts';
import type { Blocks, QuiltOptions } from './make.ts';
import { expectTiles, flattened, isSewnStraight } from './oracle.ts';
import { SETTING_TRIANGLES } from './setting-triangles.ts';

const Capstan = grid(['a/b a-b b\\a', 'a|b a b|a', 'a\\b b-a b/a'], { name: 'Capstan', size: '15/2', columns: '2 1 2', rows: '2 1 2' });
const Nine = grid(['a b a', 'b a b', 'a b a'], { name: 'Nine', size: '15/2' });
const Six = grid(['a b', 'c d'], { name: 'Six', size: 6 });
const BLOCKS: Blocks = { Capstan, Nine, Six };

function laid(across: number, down: number, options: QuiltOptions = {}): QuiltLayout {
  return layoutQuilt(quilt(onPoint(across, down), { blocks: BLOCKS, place: ['Six'], edges: fabricUse('sand'), ...options }), RULES);
}

function rulesOf(layout: QuiltLayout): string[] {
  return layout.findings.map((finding) => `${finding.rule} ${finding.place.line.text}`);
}

function expectWhole(layout: QuiltLayout): void {
  expect(layout.findings).toEqual([]);
  expectTiles(layout, flattened(layout));
  expect(isSewnStraight(flattened(layout))).toBe(true);
}

function byRole(layout: QuiltLayout): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { role } of layout.patches) counts[role] = (counts[role] ?? 0) + 1;
  return counts;
}

function timesRoot2(x: Exact | number | string): Exact {
  return mul(SQRT2, num(x));
}

const COUNTS: readonly (readonly [number, number])[] = [[1, 1], [1, 3], [2, 1], [2, 2], [3, 4], [5, 2]];

describe('blocks, those between, and setting triangles', () => {
  test.each(COUNTS)('%d by %d', (across, down) => {
    const layout = laid(across, down, { place: ['Capstan'], between: ['Nine'] });
    expectWhole(layout);
    expect(equals(layout.width, mul(fraction(across), timesRoot2('15/2')))).toBe(true);
    expect(equals(layout.height, mul(fraction(down), timesRoot2('15/2')))).toBe(true);
    expect(layout.placements.filter(({ part }) => part === 'place')).toHaveLength(across * down);
    expect(layout.placements.filter(({ part }) => part === 'between')).toHaveLength((across - 1) * (down - 1));
    expect(byRole(layout)).toEqual({ corner_triangle: 4, ...(across + down > 2 ? { side_triangle: 2 * (across + down - 2) } : {}) });
  });

  test('blocks are turned 45° clockwise: the upper left corner points up', () => {
    const [first] = laid(1, 1).placements;
    expect([first?.transform.dx, first?.transform.dy].map((x) => key(x ?? fraction(-1)))).toEqual([key(mul(fraction(3), SQRT2)), '0']);
  });

  test('without between, the tile goes on there with rows and columns of its own', () => {
    const layout = laid(3, 2, { place: ['Six ink'] });
    expectWhole(layout);
    expect(layout.placements.map(({ part, row, column }) => `${part} ${row} ${column}`)).toEqual(['place 0 0', 'place 0 2', 'place 1 0', 'place 1 2', 'between 0 0']);
    expect(byRole(layout)).toMatchObject({ plain: 3 });
  });

  test('fabrics between', () => {
    const layout = laid(3, 3, { between: ['ink'] });
    expectWhole(layout);
    expect(byRole(layout)).toMatchObject({ plain: 4 });
  });

  test('other corners, or none', () => {
    expectWhole(laid(2, 2, { corners: fabricUse('rust') }));
    const none = laid(2, 2, { corners: 'none' });
    expect(none.findings).toEqual([]);
    expect(byRole(none)).toEqual({ side_triangle: 4 });
    expect(rulesOf(laid(2, 2, { corners: 'none', borders: [border(2)] }))).toEqual(['wrong-argument border']);
  });

  test('what is wrong', () => {
    expect(rulesOf(laid(2, 2, { place: ['Six Nine', 'Six Six'] }))).toEqual(['sizes-differ Nine']);
    const Oblong = grid(['a'], { name: 'Oblong', size: [6, 3] });
    expect(rulesOf(laid(2, 2, { place: ['Six Oblong'], blocks: { Six, Oblong } }))).toEqual(['wrong-argument Oblong']);
    const bare = layoutQuilt(quilt(onPoint(2, 2), { blocks: BLOCKS, place: ['Six'] }), RULES);
    expect(rulesOf(bare)).toEqual(['wrong-argument on_point']);
    expect(rulesOf(laid(2, 2, { place: ['ink'] }))).toEqual(['wrong-argument place']);
    expect(rulesOf(laid(2, 2, { place: ['Six <'] }))).toEqual(['wrong-argument Six']);
    expect(laid(400, 400).findings.map((finding) => finding.rule)).toEqual(['too-large']);
  });

  test('symmetry counts from the centre', () => {
    const layout = laid(2, 2, { symmetry: { kind: 'turned', times: 4 }, between: ['ink'] });
    expectWhole(layout);
    expect(rulesOf(laid(3, 2, { symmetry: { kind: 'turned', times: 4 } }))).toEqual(['wrong-argument turned']);
  });
});

describe('setting triangles against published figures', () => {
  test.each(SETTING_TRIANGLES)('a block of $finished', ({ finished, diagonal, side, corner }) => {
    const Block = grid(['a'], { name: 'Block', size: num(finished) });
    const layout = laid(2, 2, { place: ['Block'], blocks: { Block } });
    expect(toNumber(layout.width) / 2).toBeCloseTo(Number(diagonal), 5);
    const sideTriangle = layout.patches.find(({ role }) => role === 'side_triangle')?.outline ?? [];
    const cornerTriangle = layout.patches.find(({ role }) => role === 'corner_triangle')?.outline ?? [];
    // The long edge of a side triangle is the square it is cut from; the short edges of a corner triangle likewise.
    expect(Math.sqrt(longest(sideTriangle)) + 1.25).toBeCloseTo(Number(side), 5);
    expect(Math.sqrt(longest(cornerTriangle) / 2) + 0.875).toBeCloseTo(Number(corner), 5);
  });

  function longest(outline: readonly { x: Exact; y: Exact }[]): number {
    return Math.max(...outline.map((corner, i) => toNumber(squaredDistance(corner, outline[(i + 1) % outline.length] ?? corner))));
  }
});

describe('float', () => {
  test.each(COUNTS)('%d by %d', (across, down) => {
    const layout = laid(across, down, { float: 1 });
    expectWhole(layout);
    expect(equals(layout.width, add(mul(fraction(across), timesRoot2(6)), fraction(2)))).toBe(true);
  });

  test('with sashing, and where it cannot be', () => {
    expectWhole(laid(3, 2, { float: 1, sashing: { width: fraction(1) } }));
    for (const float of ['1/8', '1/2', 1, 5]) expectWhole(laid(3, 2, { float, sashing: { width: fraction(1), cornerstones: fabricUse('c') } }));
    expect(rulesOf(laid(3, 2, { float: 1, edges: blockUse(Six) }))).toEqual(['wrong-argument float']);
  });
});

describe('sashing', () => {
  test.each(COUNTS)('%d by %d', (across, down) => {
    const pitch = timesRoot2(7);
    const plain = laid(across, down, { sashing: { width: fraction(1) } });
    expectWhole(plain);
    expect(equals(plain.width, mul(fraction(across), pitch))).toBe(true);
    expect(byRole(plain)['sash']).toBe(2 * across * down + across + down);
    const squares = laid(across, down, { sashing: { width: fraction(1), cornerstones: fabricUse('stone') } });
    expectWhole(squares);
    expect(byRole(squares)).toMatchObject({ sash: 4 * across * down, cornerstone: 2 * across * down + across + down });
  });

  test('a straight frame around', () => {
    for (const cornerstones of [undefined, fabricUse('stone')]) {
      const layout = laid(2, 3, { sashing: { width: fraction(1), outer: true, ...(cornerstones ? { cornerstones } : {}) } });
      expectWhole(layout);
      expect(equals(layout.width, add(timesRoot2(14), fraction(2)))).toBe(true);
    }
  });

  test('the setting triangles are those of the block', () => {
    const layout = laid(2, 2, { sashing: { width: fraction(1) } });
    const outline = layout.patches.find(({ role }) => role === 'side_triangle')?.outline ?? [];
    const edges = outline.map((corner, i) => key(squaredDistance(corner, outline[(i + 1) % 3] ?? corner)));
    expect(edges.sort()).toEqual(['36', '36', '72']);
  });

  test('blocks as sashing and as cornerstones', () => {
    const Sash = grid(['b', 'a', 'b'], { name: 'Sash', columns: '1"', rows: '1" rest 1"' });
    const Stone = grid(['a b', 'b a'], { name: 'Stone' });
    const layout = laid(2, 2, { sashing: { filling: blockUse(Sash), cornerstones: blockUse(Stone) } });
    expectWhole(layout);
    expect(layout.placements.filter(({ clip }) => clip)).toHaveLength(8);
    const long = laid(2, 2, { sashing: { filling: blockUse(Sash) } });
    expect(rulesOf(long)).toEqual(['wrong-argument sashing']);
    expectTiles(long, flattened(long));
  });
});

describe('blocks at the edge', () => {
  test.each(COUNTS)('%d by %d', (across, down) => {
    const layout = laid(across, down, { edges: blockUse(Six) });
    expectWhole(layout);
    expect(layout.placements.filter(({ part }) => part === 'edge')).toHaveLength(2 * (across + down - 2) + 4);
    expect(layout.blocks).toHaveLength(1);
  });

  test('with corners of a fabric, and of another size', () => {
    expectWhole(laid(3, 3, { edges: blockUse(Six), corners: fabricUse('rust') }));
    expectWhole(laid(3, 3, { corners: blockUse(Six) }));
    expect(rulesOf(laid(2, 2, { edges: blockUse(Nine) }))).toEqual(['does-not-fit Nine']);
  });
});
