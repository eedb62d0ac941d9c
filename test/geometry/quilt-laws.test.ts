/** Laws of whole quilts, on random patterns: nothing bare, nothing twice, every seam between two, and the same cuts after a turn. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planCutting } from '../../server/src/cutting/build.ts';
import { equals, fraction, key, mul, sum, toNumber } from '../../server/src/exact/number.ts';
import { signedArea } from '../../server/src/exact/polygon.ts';
import type { Polygon } from '../../server/src/exact/polygon.ts';
import type { QuiltLayout } from '../../server/src/geometry/layout.ts';
import { layoutQuilt } from '../../server/src/geometry/quilt.ts';
import { specifyQuilt } from '../../server/src/model/quilt.ts';
import { expectTiles, flattened } from './oracle.ts';
import { quilts, textOf, turnedQuarter, type RandomQuilt } from './random-quilt.ts';
import { patternOf } from './text.ts';

function laid(quilt: RandomQuilt): { readonly layout: QuiltLayout; readonly cuts: string[] } {
  const pattern = patternOf(textOf(quilt));
  const layout = layoutQuilt(specifyQuilt(pattern), pattern.rules);
  return { layout, cuts: cutLines(layout, pattern) };
}

/** As a maker reads them: which way a piece lies is not said. */
function cutLines(layout: QuiltLayout, pattern: ReturnType<typeof patternOf>): string[] {
  return planCutting(layout, pattern).pieces.map(({ fabric, for: use, shape, cut, cutCount, pieces, joined }) => {
    const sides = [key(cut.width), key(cut.height)].sort().join(' by ');
    return `${fabric.name} ${use} ${shape} ${sides} ${cutCount} ${pieces} ${(joined ?? []).map(({ length, count }) => `${count} of ${key(length)}`).sort().join()}`;
  }).sort();
}

function sound(quilt: RandomQuilt): boolean {
  const { layout } = laid(quilt);
  const blocks = quilt.setting === 'on_point' && quilt.edges === 'edges First';
  expect(layout.blocks.flatMap(({ layout: block }) => block.findings)).toEqual([]);
  expect(layout.findings.filter(({ rule }) => rule !== 'wrong-argument' || !blocks)).toEqual([]);
  return layout.findings.length === 0;
}

test('the areas of all patches add up to the quilt, exactly', () => {
  fc.assert(fc.property(quilts, (quilt) => {
    fc.pre(sound(quilt));
    const { layout } = laid(quilt);
    expect(equals(sum(flattened(layout).map(signedArea)), mul(layout.width, layout.height))).toBe(true);
  }), { numRuns: 60 });
});

test('the flattened quilt is covered, and nothing twice (Clipper2 and polygon-clipping as judges)', () => {
  fc.assert(fc.property(quilts, (quilt) => {
    fc.pre(sound(quilt));
    const { layout } = laid(quilt);
    expectTiles(layout, flattened(layout));
  }), { numRuns: 30 });
});

test('every seam lies between exactly two patches, every outer edge beside one', () => {
  fc.assert(fc.property(quilts, (quilt) => {
    fc.pre(sound(quilt));
    const { layout } = laid(quilt);
    expect(uneven(flattened(layout), toNumber(layout.width), toNumber(layout.height))).toEqual([]);
  }), { numRuns: 60 });
});

/** Without cornerstones the long strips run along the rows, so such a quilt turned is another one. */
test('a quilt turned by a quarter is the same area, turned, and the same cut list', () => {
  fc.assert(fc.property(quilts, (quilt) => {
    fc.pre(sound(quilt) && (quilt.sashing === '' || quilt.sashing.includes('cornerstones')));
    const [upright, turned] = [laid(quilt), laid(turnedQuarter(quilt))];
    expect(equals(turned.layout.width, upright.layout.height) && equals(turned.layout.height, upright.layout.width)).toBe(true);
    expect(turned.cuts).toEqual(upright.cuts);
  }), { numRuns: 60 });
});

test('mirrored blocks, and blocks turned in their places, are cut the same', () => {
  fc.assert(fc.property(quilts, fc.integer({ min: 1, max: 3 }), (quilt, turns) => {
    fc.pre(sound(quilt));
    const other = { ...quilt, tile: quilt.tile.map((row) => row.map((cell) => ({ ...cell, turns: (cell.turns + turns) % 4 }))) };
    expect(laid(other).cuts).toEqual(laid(quilt).cuts);
    const pattern = patternOf(textOf(quilt).replace(/^ {4}.*$/gm, (row) => row.replace(/First|Second/g, '$&@mirror')));
    expect(cutLines(layoutQuilt(specifyQuilt(pattern), pattern.rules), pattern)).toEqual(laid(quilt).cuts);
  }), { numRuns: 50 });
});

test('twice as large in all its lengths: every patch four times the area, as many of them', () => {
  fc.assert(fc.property(quilts, (quilt) => {
    fc.pre(sound(quilt));
    const pattern = patternOf(textOf(quilt).replace(/(\d+(?: \d\/\d)?)"/g, (_, length: string) => `(2 * (${length.replace(' ', ' + ')}))"`));
    const [plain, doubled] = [laid(quilt).layout, layoutQuilt(specifyQuilt(pattern), pattern.rules)];
    const areas = (layout: QuiltLayout, factor: number): string[] => flattened(layout).map((outline) => key(mul(signedArea(outline), fraction(factor)))).sort();
    expect(areas(doubled, 1)).toEqual(areas(plain, 4));
  }), { numRuns: 50 });
});

interface Side {
  readonly start: number;
  readonly end: number;
  readonly forwards: boolean;
}

/**
 * An own sweep in doubles, by slope and offset rounded to millionths: along every line each stretch between two corners must have one
 * outline on each side, or on the quilt's outside one alone. Answers the stretches that have not.
 */
function uneven(outlines: readonly Polygon[], width: number, height: number): string[] {
  const lines = new Map<string, Side[]>();
  for (const outline of outlines) {
    const points = outline.map(({ x, y }) => [toNumber(x), toNumber(y)] as const);
    points.forEach(([x, y], i) => {
      const [toX, toY] = points[(i + 1) % points.length] ?? [x, y];
      const length = Math.hypot(toX - x, toY - y);
      const sign = toX - x > 1e-9 || (Math.abs(toX - x) <= 1e-9 && toY > y) ? 1 : -1;
      const [ux, uy] = [(sign * (toX - x)) / length, (sign * (toY - y)) / length];
      const name = [ux, uy, x * uy - y * ux].map((value) => Math.round(value * 1e6) + 0).join();
      const [a, b] = [x * ux + y * uy, toX * ux + toY * uy];
      lines.set(name, [...(lines.get(name) ?? []), { start: Math.min(a, b), end: Math.max(a, b), forwards: sign > 0 }]);
    });
  }
  return [...lines].flatMap(([name, sides]) => unevenOn(name, sides, width, height));
}

function unevenOn(name: string, sides: readonly Side[], width: number, height: number): string[] {
  const stops = [...new Set(sides.flatMap(({ start, end }) => [start, end]).map((stop) => Math.round(stop * 1e6) / 1e6))].sort((a, b) => a - b);
  return stops.slice(1).flatMap((stop, i) => {
    const middle = (stop + (stops[i] ?? stop)) / 2;
    if (stop - (stops[i] ?? stop) < 1e-5) return [];
    const here = sides.filter(({ start, end }) => start < middle && middle < end);
    const forwards = here.filter((side) => side.forwards).length;
    const isOuter = [`0,1000000,0`, `0,1000000,${Math.round(width * 1e6)}`, `1000000,0,0`, `1000000,0,${Math.round(-height * 1e6)}`].includes(name.replace('-0', '0'));
    const isRight = here.length === 0 || (isOuter ? here.length === 1 : here.length === 2 && forwards === 1);
    return isRight ? [] : [`${name} at ${middle}: ${here.length} outlines, ${forwards} forwards`];
  });
}
