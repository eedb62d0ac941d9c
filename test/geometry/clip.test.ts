import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { add, equals, fraction, sign, sum } from '../../server/src/exact/number.ts';
import { orientation } from '../../server/src/exact/point.ts';
import type { Point } from '../../server/src/exact/point.ts';
import { isSimple, signedArea } from '../../server/src/exact/polygon.ts';
import type { Polygon } from '../../server/src/exact/polygon.ts';
import { cutAlong, cutTo } from '../../server/src/geometry/clip.ts';
import { shapes } from './oracle.ts';

function points(text: string): Point[] {
  return text.split(' ').map((corner) => {
    const [x = '0', y = '0'] = corner.split(',');
    return { x: fraction(Number(x)), y: fraction(Number(y)) };
  });
}

/** What lies to the right of the way from the first point to the second. */
function cut(polygon: string, along: string): string[] {
  const [a, b] = points(along);
  if (!a || !b) throw new Error('No line.');
  return shapes(cutAlong(points(polygon), a, b).map((outline) => ({ fabric: { name: 'p' }, outline })));
}

describe('cutAlong', () => {
  test.each([
    ['a square in half', '0,0 4,0 4,4 0,4', '0,2 4,2', ['p: 0;2 4;2 4;4 0;4']],
    ['and the other half', '0,0 4,0 4,4 0,4', '4,2 0,2', ['p: 0;0 4;0 4;2 0;2']],
    ['corner to corner', '0,0 4,0 4,4 0,4', '0,0 4,4', ['p: 0;0 4;4 0;4']],
    ['beside it', '0,0 4,0 4,4 0,4', '0,5 4,5', []],
    ['along its edge', '0,0 4,0 4,4 0,4', '0,4 4,4', []],
    ['along its edge, all inside', '0,0 4,0 4,4 0,4', '0,0 4,0', ['p: 0;0 4;0 4;4 0;4']],
    ['a comb falls apart', '0,0 6,0 6,4 4,4 4,2 2,2 2,4 0,4', '0,3 6,3', ['p: 0;3 2;3 2;4 0;4', 'p: 4;3 6;3 6;4 4;4']],
    ['the back of the comb', '0,0 6,0 6,4 4,4 4,2 2,2 2,4 0,4', '6,1 0,1', ['p: 0;0 6;0 6;1 0;1']],
    ['along the back of the comb', '0,0 6,0 6,4 4,4 4,2 2,2 2,4 0,4', '0,2 6,2', ['p: 0;2 2;2 2;4 0;4', 'p: 4;2 6;2 6;4 4;4']],
    ['a notch touches the line', '0,0 4,0 4,4 2,2 0,4', '0,2 4,2', ['p: 0;2 2;2 0;4', 'p: 2;2 4;2 4;4']],
    ['a tooth touches the line', '0,4 0,3 1,3 2,2 3,3 4,3 4,4', '0,2 4,2', ['p: 0;3 1;3 2;2 3;3 4;3 4;4 0;4']],
    ['a tooth touches it between two others', '0,6 0,0 1,0 1,3 2,2 3,3 3,0 4,0 4,6', '0,2 4,2', ['p: 0;2 1;2 1;3 2;2 3;3 3;2 4;2 4;6 0;6']],
  ])('%s', (_, polygon, along, expected) => {
    expect(cut(polygon, along)).toEqual(expected);
  });
});

/** Simple polygons that need not be convex: columns of bars on a line, upper and lower ends anywhere. */
const bars = fc.array(fc.record({ top: fc.integer({ min: -5, max: -1 }), bottom: fc.integer({ min: 1, max: 5 }) }), { minLength: 2, maxLength: 6 }).map((ends) => {
  const along = ends.map(({ top }, i) => ({ x: fraction(2 * i), y: fraction(top) }));
  const back = ends.map(({ bottom }, i) => ({ x: fraction(2 * i), y: fraction(bottom) })).reverse();
  return [...along, ...back];
});
const corner = fc.record({ x: fc.integer({ min: -2, max: 12 }), y: fc.integer({ min: -6, max: 6 }) }).map(({ x, y }) => ({ x: fraction(x), y: fraction(y) }));

test('both sides of a cut add up to the polygon, and lie on their sides', () => {
  fc.assert(fc.property(bars, corner, corner, (polygon, a, b) => {
    fc.pre(!equals(a.x, b.x) || !equals(a.y, b.y));
    const [right, left] = [cutAlong(polygon, a, b), cutAlong(polygon, b, a)];
    expect(equals(add(areaOf(right), areaOf(left)), signedArea(polygon))).toBe(true);
    for (const part of [...right, ...left]) expect(isSimple(part) && sign(signedArea(part)) > 0).toBe(true);
    expect(right.flat().every((p) => orientation(a, b, p) >= 0)).toBe(true);
    expect(left.flat().every((p) => orientation(a, b, p) <= 0)).toBe(true);
  }), { numRuns: 2000 });
});

test('cutTo keeps what lies in a region', () => {
  const parts = cutTo(points('0,0 6,0 6,4 4,4 4,2 2,2 2,4 0,4'), points('1,1 5,1 5,3 1,3'));
  expect(parts.map((part) => String(signedArea(part)))).toEqual(['6']);
});

function areaOf(parts: readonly Polygon[]): ReturnType<typeof sum> {
  return sum(parts.map(signedArea));
}
