/** Every loose piece of a setting on point is cut large enough: what is left of the cut without its seams covers the patch. */
import { describe, expect, test } from 'vitest';
import { cuttingOf, type Cutting } from '../../server/src/cutting/shape.ts';
import { fraction, sub, mul, toNumber, SQRT2, add } from '../../server/src/exact/number.ts';
import type { Patch } from '../../server/src/geometry/layout.ts';
import { patternOf, quiltOf } from '../geometry/text.ts';
import { made } from './from-text.ts';
import { n } from './layouts.ts';
import { SETTING } from './triangle-tables.ts';

type Pair = [number, number];

const SEAM = fraction(1, 4);

function text(count: string, lines: string): string {
  return `fabric ink #22345c\nfabric sand #eadfc8\nfabric rust #a4502e\nblock Six 6" {\n  ink sand\n  sand ink\n}\nquilt {\n  on_point ${count}\n  place { Six }\n${lines}\n}\n`;
}

const FLOATS = ['', '1/4"', '1"', '2 1/2"', '7"'];
const SASHES = ['', '1" rust', '1" rust cornerstones ink', '2" rust outer', '1" rust cornerstones ink outer'];

const CASES = ['1 by 1', '2 by 2', '3 by 2', '1 by 3'].flatMap((count) =>
  FLOATS.flatMap((float) => SASHES.map((sash) => [`${count}, float ${float || 'none'}, sashing ${sash || 'none'}`, text(count, `  edges sand${float ? ` float ${float}` : ''}${sash ? `\n  sashing ${sash}` : ''}`), float] as const)),
);

describe('what is cut covers what is sewn', () => {
  test.each(CASES)('%s', (_, source, float) => {
    const { rules } = patternOf(source);
    const layout = quiltOf(source);
    const width = layout.spec.float?.width;
    expect(layout.findings).toEqual([]);
    expect(width === undefined).toBe(float === '');
    for (const patch of layout.patches) {
      const cutting = cuttingOf(patch, width ? { ...rules, float: width } : rules);
      if (!cutting) throw new Error('nothing is cut');
      expect(uncovered(patch, cutting), `${patch.role} ${cutting.shape}`).toBeLessThan(1e-6);
      expectNamed(patch, cutting, width ? toNumber(width) : 0);
    }
  });
});

test('blocks that the edge cuts are made whole, and counted', () => {
  const { quilts, plan } = made(text('3 by 2', '  edges Six'));
  const [quilt] = quilts;
  expect(quilt?.layout.placements.filter(({ clip }) => clip)).toHaveLength(10);
  expect(quilt?.layout.blocks.map(({ name, count }) => `${count} ${name}`)).toEqual(['18 Six']);
  expect(plan.pieces.map(({ fabric, pieces, for: use, cut }) => `${pieces} ${fabric.name} ${use} ${toNumber(cut.width)}`)).toEqual(['36 ink Six 3.5', '36 sand Six 3.5']);
});

/** The sizes that a maker knows by heart: a triangle is that of the block with a float of its width more on each side of the outer edge. */
function expectNamed({ role }: Patch, { shape, finished, exactCut }: Cutting, float: number): void {
  if (role === 'side_triangle') {
    expect(shape).toBe('side setting triangle');
    expect(toNumber(finished.width)).toBeCloseTo(6, 9);
    expect(toNumber(exactCut.width)).toBeCloseTo(6 * Math.SQRT2 + 2 * float + 0.25 * (2 + 2 * Math.SQRT2), 9);
  }
  if (role === 'corner_triangle') {
    expect(shape).toBe('corner setting triangle');
    expect(toNumber(finished.width)).toBeCloseTo(6, 9);
    expect(toNumber(exactCut.width)).toBeCloseTo(3 * Math.SQRT2 + 2 * float + 0.25 * (2 + Math.SQRT2), 9);
  }
  if (role === 'sash') expect(['rectangle', 'square', 'strip']).toContain(shape);
}

/** How far the patch sticks out of the finished shape, over the ways it may lie. */
function uncovered(patch: Patch, cutting: Cutting): number {
  const corners = patch.outline.map(({ x, y }): Pair => [toNumber(x), toNumber(y)]);
  return Math.min(...Array.from({ length: 8 }, (_, eighth) => (eighth * Math.PI) / 4).map((angle) => {
    const turned = corners.map(([x, y]): Pair => [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)]);
    const [left, top] = [Math.min(...turned.map(([x]) => x)), Math.min(...turned.map(([, y]) => y))];
    return Math.min(...shapesAt(cutting, turned, [left, top]).map((shape) => bare(turned, shape)));
  }));
}

/** The finished shape: a rectangle at the upper left, a triangle with its right angle there, or one with its long side on top. */
function shapesAt({ shape, finished, exactCut }: Cutting, turned: readonly Pair[], [left, top]: Pair): Pair[][] {
  const less = (factor: ReturnType<typeof fraction>): number => toNumber(sub(exactCut.width, mul(SEAM, factor)));
  if (shape === 'half-square triangle' || shape === 'corner setting triangle') {
    const leg = less(add(fraction(2), SQRT2));
    return [[[left, top], [left + leg, top], [left, top + leg]]];
  }
  if (shape === 'quarter-square triangle' || shape === 'side setting triangle') {
    const long = less(add(fraction(2), mul(fraction(2), SQRT2)));
    const from = Math.min(...turned.map(([x, y]) => x - (y - top)));
    return [[[from, top], [from + long, top], [from + long / 2, top + long / 2]]];
  }
  const [width, height] = [toNumber(finished.width), toNumber(finished.height)];
  return [[[left, top], [left + width, top], [left + width, top + height], [left, top + height]]];
}

/** How far a corner of the patch sticks out of a convex shape (clockwise, y down): where none does, the whole patch lies in it. */
function bare(patch: readonly Pair[], shape: readonly Pair[]): number {
  return Math.max(...shape.flatMap(([x, y], i) => {
    const [nextX, nextY] = shape[(i + 1) % shape.length] ?? [x, y];
    const length = Math.hypot(nextX - x, nextY - y);
    return patch.map(([px, py]) => ((nextY - y) * (px - x) - (nextX - x) * (py - y)) / length);
  }));
}

describe('setting triangles of whole patterns, from 3" to 16"', () => {
  const printed = new Map<string, readonly [string, string]>(SETTING.map(([finished, side, corner]) => [finished, [side, corner]]));
  const sizes = Array.from({ length: 27 }, (_, i) => `${3 + (i - (i % 2)) / 2}${i % 2 === 1 ? ' 1/2' : ''}`);

  test.each(sizes)('%s"', (size) => {
    const source = text('2 by 3', '  edges sand').replaceAll('6"', `${size}"`);
    const { plan } = made(source);
    const cutOf = (shape: string): number => toNumber(plan.pieces.find((piece) => piece.shape === shape)?.cut.width ?? fraction(0));
    const [side, corner] = [cutOf('side setting triangle'), cutOf('corner setting triangle')];
    const block = toNumber(n(size));
    const exact = [block * Math.SQRT2 + 0.25 * (2 + 2 * Math.SQRT2), block / Math.SQRT2 + 0.25 * (2 + Math.SQRT2)] as const;
    expect(side).toBe(Math.ceil(exact[0] * 8) / 8);
    expect(corner).toBe(Math.ceil(exact[1] * 8) / 8);
    const figures = printed.get(size);
    if (figures) for (const [i, figure] of figures.entries()) expect(Math.abs(toNumber(n(figure)) - ([side, corner][i] ?? 0))).toBeLessThanOrEqual(0.125);
    expect(plan.pieces.filter((piece) => piece.for === 'setting').map((piece) => piece.pieces).sort((a, b) => b - a)).toEqual([6, 4]);
  });
});
