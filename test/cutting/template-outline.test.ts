/** The cutting line of templates, judged by Clipper2 (offsets with round and with mitred joins) and by figures in print. */
import { createRequire } from 'node:module';
import type { MainModule, Paths64 } from 'clipper2-wasm/dist/clipper2z.d.ts';
import { describe, expect, test } from 'vitest';
import { SQRT2, fraction, toNumber } from '../../server/src/exact/number.ts';
import { clockwise } from '../../server/src/exact/polygon.ts';
import { extentOf } from '../../server/src/cutting/template-extent.ts';
import { cutOutline, planeShape, type PlaneShape } from '../../server/src/cutting/template-outline.ts';
import { templateBox } from '../../server/src/cutting/template.ts';
import { straightened } from '../../server/src/drawing/straightened.ts';
import { guillotine, octagons, random, triangleRows, triangles } from '../geometry/partitions.ts';

type Factory = () => Promise<MainModule>;
const loaded = createRequire(import.meta.url)('clipper2-wasm') as Factory | { readonly default: Factory };
const clipper = await (typeof loaded === 'function' ? loaded : loaded.default)();
const UNITS = 1e7;
const QUARTER = 0.25;

describe('straight sides', () => {
  test.each(Object.entries({ guillotine, triangles, octagons, triangleRows }))('%s: between the round and the mitred offset, and a seam outside every side', (_, kind) => {
    let [seen, narrow] = [0, 0];
    for (let seed = 1; seed <= 60; seed += 1) {
      for (const patch of kind(random(seed)).patches) {
        const outline = clockwise(patch);
        const shape = planeShape({ outline });
        if (notchIsNarrow(shape)) {
          narrow += 1;
          continue;
        }
        seen += 1;
        const cut = cutOutline(shape, QUARTER);
        const [round, mitred] = [inflated(shape, 'Round'), inflated(shape, 'Miter')];
        const own = pathsOf(cut);
        expect(areaOf(clipper.Difference64(round, own, clipper.FillRule.NonZero)), `seed ${seed}: the least allowance`).toBeLessThan(2e-4);
        expect(areaOf(clipper.Difference64(own, mitred, clipper.FillRule.NonZero)), `seed ${seed}: no more than mitred`).toBeLessThan(1e-4);
        for (const side of sidesOf(shape)) expect(nearestParallel(side, cut), `seed ${seed}`).toBeCloseTo(QUARTER, 9);
      }
    }
    expect(seen).toBeGreaterThan(100);
    expect(narrow).toBeLessThan(seen / 20);
  });

  test('the rectangle of the cut list holds it: never less, and the same where corners are square', () => {
    for (let seed = 1; seed <= 150; seed += 1) {
      for (const patch of guillotine(random(seed)).patches) {
        const outline = clockwise(patch);
        const { left, top, right, bottom } = extentOf(cutOutline(planeShape({ outline }), QUARTER));
        const { exactCut } = templateBox({ outline }, fraction(1, 4));
        expect(right - left, `seed ${seed}`).toBeLessThanOrEqual(toNumber(exactCut.width) + 1e-9);
        expect(bottom - top, `seed ${seed}`).toBeLessThanOrEqual(toNumber(exactCut.height) + 1e-9);
      }
    }
  });

  // Half squares are cut 7/8" over (triangle tables in print): the trimmed triangle lies in half of that square, its legs on the square's sides.
  test('a half square: on the legs of the 3 7/8" square that gives two of 3", its points trimmed 1/4" beyond', () => {
    const { points } = cutOutline({ points: [0, 0, 3, 0, 0, 3] }, QUARTER);
    const corners = pairs(points);
    expect(Math.min(...corners.map(([x]) => x))).toBeCloseTo(-QUARTER, 12);
    expect(Math.max(...corners.map(([x, y]) => x + y))).toBeCloseTo(3 + QUARTER * Math.SQRT2, 12);
    expect(Math.max(...corners.map(([x]) => x))).toBeCloseTo(3 + QUARTER * Math.SQRT2, 12);
    const onTop = corners.filter(([, y]) => Math.abs(y + QUARTER) < 1e-9).map(([x]) => x);
    expect([Math.min(...onTop), Math.max(...onTop)].map((x) => x.toFixed(9))).toEqual(['-0.250000000', '3.250000000']);
  });

  // A 45° diamond is cut from a strip of side/√2 + 2s (language.md, section 7).
  test('a 45° diamond is as high as its strip', () => {
    const side = 3.514718625761429;
    const flat = side / Math.SQRT2;
    const { top, bottom } = extentOf(cutOutline({ points: [0, 0, side, 0, side + flat, flat, flat, flat] }, QUARTER));
    expect(bottom - top).toBeCloseTo(flat + 2 * QUARTER, 12);
    expect(toNumber(SQRT2)).toBe(Math.SQRT2);
  });

  test('trimmed points of neighbours line up: along their common seam both raw edges end a seam beyond it', () => {
    for (const degrees of [20, 30, 45, 60, 72, 89]) {
      const [x, y] = [4 * Math.cos((degrees * Math.PI) / 180), -4 * Math.sin((degrees * Math.PI) / 180)];
      const cut = pairs(cutOutline({ points: [0, 0, x, y, 6, 0] }, QUARTER).points);
      const onBase = cut.filter(([, at]) => Math.abs(at - QUARTER) < 1e-9).map(([at]) => at);
      expect(Math.min(...onBase), `${degrees}°`).toBeCloseTo(-QUARTER, 9);
    }
  });
});

describe('curves', () => {
  test('are concentric: a seam further out where they bulge, a seam nearer where they bend in', () => {
    const [fan, ground] = [{ points: [0, 0, 5, 0, 0, 5], arcs: [0, 5, 0] }, { points: [5, 0, 7, 0, 7, 7, 0, 7, 0, 5], arcs: [0, 0, 0, 0, -5] }];
    expect(cutOutline(fan, QUARTER).arcs).toContain(5.25);
    expect(cutOutline(ground, QUARTER).arcs).toContain(-4.75);
    for (const shape of [fan, ground]) {
      const [cut, radius] = [cutOutline(shape, QUARTER), shape === fan ? 5.25 : 4.75];
      const curved = pairs(straightened(cut.points, cut.arcs ?? [])).filter(([x, y]) => x > 0.3 && y > 0.3 && Math.hypot(x, y) < 6);
      expect(curved.length).toBeGreaterThan(15);
      for (const [x, y] of curved) expect(Math.hypot(x, y)).toBeCloseTo(radius, 9);
    }
  });

  test('hold the offset with round joins, for petals, clamshells and half circles', () => {
    const shapes: readonly PlaneShape[] = [
      { points: [0, 0, 6, 6], arcs: [6, 6] },
      { points: [0, 0, 2, -2, 4, 0, 2, 2], arcs: [2, 2, -2, -2] },
      { points: [0, 0, 4, 0], arcs: [2, 0] },
      { points: [0, 0, 4, 0, 4, 4, 0, 4], arcs: [3, 3, 3, 3] },
    ];
    for (const shape of shapes) {
      const cut = cutOutline(shape, QUARTER);
      expect(areaOf(clipper.Difference64(inflated(shape, 'Round'), pathsOf(cut), clipper.FillRule.NonZero))).toBeLessThan(2e-2);
      expect(areaOf(pathsOf(cut))).toBeLessThan(areaOf(inflated(shape, 'Round')) + 4 * QUARTER ** 2);
    }
  });
});

test('a notch narrower than two seams is cut as if it were filled', () => {
  const cut = cutOutline({ points: [0, 0, 2, 0, 2, 2, 2.2, 2, 2.2, 0, 4, 0, 4, 4, 0, 4] }, QUARTER);
  expect(areaOf(pathsOf(cut))).toBeCloseTo(4.5 ** 2, 6);
  expect(areaOf(clipper.Difference64(pathsOf({ points: [0, 0, 4, 0, 4, 4, 0, 4] }), pathsOf(cut), clipper.FillRule.NonZero))).toBe(0);
});

type Corner = readonly [number, number];

function pairs(points: readonly number[]): readonly Corner[] {
  return Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i] ?? 0, points[2 * i + 1] ?? 0]);
}

function sidesOf({ points }: PlaneShape): readonly (readonly [Corner, Corner])[] {
  const corners = pairs(points);
  return corners.map((corner, i) => [corner, corners[(i + 1) % corners.length] ?? corner]);
}

/** How far out the nearest parallel side of the cutting line runs. */
function nearestParallel([[ax, ay], [bx, by]]: readonly [Corner, Corner], cut: PlaneShape): number {
  const length = Math.hypot(bx - ax, by - ay);
  const [nx, ny] = [(by - ay) / length, (ax - bx) / length];
  const heights = sidesOf(cut).map(([p, q]) => [p, q].map(([x, y]) => (x - ax) * nx + (y - ay) * ny)).filter(([p = 0, q = 1]) => Math.abs(p - q) < 1e-9).map(([p = 0]) => p);
  return heights.reduce((best, height) => (Math.abs(height - QUARTER) < Math.abs(best - QUARTER) ? height : best), Infinity);
}

/** Joined shapes with inner corners nearer than the allowances need: Clipper out and in again does not come back to them. */
function notchIsNarrow(shape: PlaneShape): boolean {
  return Math.abs(areaOf(offset(inflated(shape, 'Miter'), 'Miter', -QUARTER)) - areaOf(pathsOf(shape))) > 1e-3;
}

function inflated(shape: PlaneShape, join: 'Round' | 'Miter'): Paths64 {
  return offset(pathsOf(shape), join, QUARTER);
}

function offset(paths: Paths64, join: 'Round' | 'Miter', by: number): Paths64 {
  return clipper.InflatePaths64(paths, by * UNITS, clipper.JoinType[join], clipper.EndType.Polygon, 1000, UNITS / 1e5);
}

function pathsOf({ points, arcs }: PlaneShape): Paths64 {
  const paths = new clipper.Paths64();
  const flat = arcs ? straightened(points, arcs) : points;
  paths.push_back(clipper.MakePath64(flat.map((at) => Math.round(at * UNITS))));
  return paths;
}

function areaOf(paths: Paths64): number {
  return Math.abs(clipper.AreaPaths64(paths)) / UNITS ** 2;
}
