import { describe, expect, test } from 'vitest';
import { SQRT2, add, equals, fraction, key, mul } from '../../server/src/exact/number.ts';
import type { QuiltLayout } from '../../server/src/geometry/layout.ts';
import { layoutQuilt } from '../../server/src/geometry/quilt.ts';
import type { BorderSpec } from '../../server/src/model/pattern.ts';
import { blockUse, border, borderTo, fabricUse, fitBorder, grid, onPoint, pieced, quilt, RULES, straight } from './make.ts';
import { expectTiles, flattened } from './oracle.ts';

const Star = grid(['a b', 'b a'], { name: 'Star', size: 6 });
const Unit = grid(['a/b c'], { name: 'Unit', size: [4, 2] });
const Point_ = grid(['x/y'], { name: 'Point', size: 2 });
const Corner = grid(['k\\l'], { name: 'Corner', size: 2 });

/** A centre 24 by 18. */
function laid(...borders: BorderSpec[]): QuiltLayout {
  return layoutQuilt(quilt(straight(4, 3), { place: ['Star'], blocks: { Star }, borders }), RULES);
}

function expectWhole(layout: QuiltLayout): void {
  expect(layout.findings).toEqual([]);
  expectTiles(layout, flattened(layout));
}

function sizeOf(layout: QuiltLayout): string {
  return `${key(layout.width)} by ${key(layout.height)}`;
}

function strips(layout: QuiltLayout, index = 0): string[] {
  return (layout.borders[index]?.strips ?? []).map(({ side, length, width }) => `${side} ${key(length)} x ${key(width)}`);
}

function facts(layout: QuiltLayout): string[] {
  return layout.findings.map((finding) => {
    if (finding.rule !== 'border-does-not-fit') return finding.rule;
    const { top, sides } = finding.spacers ?? {};
    return `${finding.what}: ${key(finding.side)} in ${key(finding.unit)}, spacer ${top && sides ? [...new Set([key(top), key(sides)])].join(' and ') : 'none'}`;
  });
}

describe('plain borders', () => {
  test('butted: sides first, then top and bottom', () => {
    const layout = laid(border(2));
    expect(sizeOf(layout)).toBe('28 by 22');
    expect(strips(layout)).toEqual(['top 28 x 2', 'right 18 x 2', 'bottom 28 x 2', 'left 18 x 2']);
    expect(layout.patches.map(({ role }) => role)).toEqual(['border', 'border', 'border', 'border']);
    expect([layout.centre.width, layout.centre.height].map(key)).toEqual(['24', '18']);
    expectWhole(layout);
  });

  test('mitred: as long as the outer edge, with seams at 45°', () => {
    const layout = laid(border(2, 2, 'mitred'));
    expect(strips(layout)).toEqual(['top 28 x 2', 'right 22 x 2', 'bottom 28 x 2', 'left 22 x 2']);
    expect(layout.patches[0]?.outline.map(({ x, y }) => `${key(x)},${key(y)}`)).toEqual(['0,0', '28,0', '26,2', '2,2']);
    expectWhole(layout);
  });

  test('corner squares of a fabric or a block', () => {
    const layout = laid(border(2, 2, fabricUse('square')));
    expect(strips(layout)).toEqual(['top 24 x 2', 'right 18 x 2', 'bottom 24 x 2', 'left 18 x 2']);
    expect(layout.patches.filter(({ role }) => role === 'border_corner')).toHaveLength(4);
    expectWhole(layout);
    const blocks = laid(border(2, 2, blockUse(Corner)));
    expect(blocks.placements.filter(({ part }) => part === 'border').map(({ transform }) => [transform.xx, transform.yx].map(key).join())).toEqual(['1,0', '0,1', '-1,0', '0,-1']);
    expectWhole(blocks);
    expect(laid(border(3, 3, blockUse(Corner))).findings.map((finding) => finding.rule)).toEqual(['does-not-fit']);
  });

  test.each(['butted', 'mitred', fabricUse('square')] as const)('unequal ones', (corners) => {
    const layout = laid(border(3, '3/2', corners));
    expect(sizeOf(layout)).toBe('27 by 24');
    expectWhole(layout);
  });

  test('from the inside out', () => {
    const layout = laid(border(1), border(6, 6, 'mitred'), border('5/2', '5/2', fabricUse('square')));
    expect(sizeOf(layout)).toBe('43 by 37');
    expect(layout.borders.map(({ width, corners }) => `${key(width)} ${corners}`)).toEqual(['1 butted', '6 mitred', '5/2 squares']);
    expectWhole(layout);
  });

  test('around a quilt on point', () => {
    const layout = layoutQuilt(quilt(onPoint(2, 3), { place: ['Star'], blocks: { Star }, edges: fabricUse('sand'), borders: [border(1), border(6, 6, 'mitred')] }), RULES);
    expect(equals(layout.width, add(mul(SQRT2, fraction(12)), fraction(14)))).toBe(true);
    expectWhole(layout);
  });

  test('of no width', () => {
    expect(laid(border(0)).findings.map((finding) => finding.rule)).toEqual(['wrong-argument']);
    expectWhole(laid(border(2, 0)));
    expectWhole(laid(border(0, 2, 'mitred')));
  });
});

describe('border to a size', () => {
  test('takes half of what is missing on each side', () => {
    const layout = laid(borderTo(30, 20));
    expect(sizeOf(layout)).toBe('30 by 20');
    expect(strips(layout)).toEqual(['top 30 x 1', 'right 18 x 3', 'bottom 30 x 1', 'left 18 x 3']);
    expectWhole(layout);
  });

  test('may have nothing to do, and cannot take away', () => {
    expectWhole(laid(borderTo(24, 18)));
    expectWhole(laid(borderTo(24, 20)));
    const layout = laid(borderTo(20, 30));
    expect(layout.findings).toMatchObject([{ rule: 'wrong-argument', problem: 'the top is already 24" by 18", and no border brings it to 20" by 30"' }]);
    expect(sizeOf(layout)).toBe('24 by 18');
  });
});

describe('pieced borders', () => {
  test('units repeat along each side, turned round the quilt; without a corner top and bottom go over', () => {
    const layout = laid(pieced([blockUse(Point_)]));
    expect(sizeOf(layout)).toBe('28 by 22');
    expectWhole(layout);
    const units = layout.placements.filter(({ part }) => part === 'border');
    expect(units).toHaveLength(2 * 14 + 2 * 9);
    expect(units.map(({ transform }) => [transform.xx, transform.yx].map(key).join()).filter((turn, i, all) => turn !== all[i - 1])).toEqual(['1,0', '0,1', '-1,0', '0,-1']);
    expect(strips(layout)).toEqual(['top 28 x 2', 'right 18 x 2', 'bottom 28 x 2', 'left 18 x 2']);
    expect(layout.borders[0]?.corners).toBe('pieced');
  });

  test('with a corner', () => {
    const layout = laid(pieced([blockUse(Point_)], { corner: blockUse(Corner) }));
    expectWhole(layout);
    expect(layout.placements.filter(({ block }) => block.instance === Corner)).toHaveLength(4);
    expectWhole(laid(pieced([blockUse(Point_)], { corner: fabricUse('c') })));
  });

  test('several units in turn, and meeting at the middle', () => {
    const layout = laid(border(1), pieced([blockUse(Unit), blockUse(Point_)]), border(1));
    expect(facts(layout)).toEqual(['at the sides a unit: 20 in 6, spacer 2 and 3']);
    expectWhole(laid(border(3), pieced([blockUse(Unit), blockUse(Point_)], { corner: fabricUse('c') })));
    const met = laid(pieced([blockUse(Point_)], { corner: fabricUse('c'), meet: true }));
    expect(facts(met)).toEqual(['at the sides a unit: 18 in 4, spacer 1 and 2']);
    const even = laid(border(1, 0), pieced([blockUse(Point_)], { corner: fabricUse('c'), meet: true }));
    expectWhole(even);
    const top = even.placements.filter(({ part }) => part === 'border').slice(0, 12);
    expect(top.map(({ transform }) => key(transform.xx)).join(' ')).toBe('1 1 1 1 1 1 -1 -1 -1 -1 -1 -1');
  });

  test('that do not fit name the spacer that makes all four sides fit', () => {
    const Three = grid(['a/b'], { name: 'Three', size: 3 });
    expect(facts(laid(border(1), pieced([blockUse(Three)], { corner: fabricUse('c') })))).toEqual(['at top and bottom a unit: 26 in 3, spacer 1/2']);
    const Five = grid(['a/b'], { name: 'Five', size: 5 });
    // 24 and 18 leave different rests, so that no one width makes all four sides fit.
    expect(facts(laid(pieced([blockUse(Five)], { corner: fabricUse('c') })))).toEqual(['at top and bottom a unit: 24 in 5, spacer 1 and 1/2']);
    expect(laid(border(1, '1/2'), pieced([blockUse(Five)], { corner: fabricUse('c') })).findings).toEqual([]);
  });

  test('need units with a size, all of one height', () => {
    expect(laid(pieced([blockUse(grid(['a'], { name: 'Free' }))])).findings.map((finding) => finding.rule)).toEqual(['wrong-argument']);
    expect(laid(pieced([blockUse(Star), blockUse(Point_), blockUse(Point_)])).findings.map((finding) => finding.rule)).toContain('sizes-differ');
  });

  test('too many units are refused at once', () => {
    const Tiny = grid(['a'], { name: 'Tiny', size: '1/10000' });
    expect(laid(pieced([blockUse(Tiny)])).findings).toMatchObject([{ rule: 'too-large', place: { line: { text: 'border pieced' } } }]);
  });
});

describe('border fit', () => {
  const corner = { corner: fabricUse('c') };
  const Three = grid(['a/b'], { name: 'Three', size: 3 });
  const Five = grid(['a/b'], { name: 'Five', size: 5 });

  test('is as wide as the next pieced border needs', () => {
    const layout = laid(fitBorder(1), pieced([blockUse(Three)], corner));
    expect(strips(layout)).toEqual(['top 27 x 3/2', 'right 18 x 3/2', 'bottom 27 x 3/2', 'left 18 x 3/2']);
    expectWhole(layout);
    const unequal = laid(fitBorder(1), pieced([blockUse(Five)], corner));
    expect(strips(unequal)).toEqual(['top 30 x 1', 'right 18 x 3', 'bottom 30 x 1', 'left 18 x 3']);
    expectWhole(unequal);
  });

  test('looks past plain borders, and minds corners that are gone over', () => {
    expectWhole(laid(fitBorder(1), border('5/4'), pieced([blockUse(Three)])));
    expectWhole(laid(fitBorder('1/2'), pieced([blockUse(Unit), blockUse(Point_)], { meet: true })));
  });

  test('in a quilt on point', () => {
    const layout = layoutQuilt(quilt(onPoint(2, 3), { place: ['Star'], blocks: { Star }, edges: fabricUse('sand'), borders: [fitBorder(1), pieced([blockUse(Three)], corner)] }), RULES);
    expectWhole(layout);
  });

  test('needs a pieced border', () => {
    expect(laid(fitBorder(1)).findings.map((finding) => finding.rule)).toEqual(['wrong-argument']);
    expect(laid(fitBorder(1), borderTo(40, 40)).findings.map((finding) => finding.rule)).toEqual(['wrong-argument']);
    expect(sizeOf(laid(fitBorder(1)))).toBe('26 by 20');
  });

});
