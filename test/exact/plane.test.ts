import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ONE, SQRT2, SQRT3, ZERO, add, atMost, equals, fraction, isZero, key, less, mul, neg, sign, sub, toNumber } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { cross, meetingOfLines, midpoint, minus, onSegment, orientation, point, pointKey, squaredDistance } from '../../server/src/exact/point.ts';
import type { Point } from '../../server/src/exact/point.ts';
import {
  area, backwards, boundingBox, clockwise, convexWinding, edgesOf, isConvex, isRectangle, isRightAngle, isSimple, isUprightRectangle, locate, segmentsMeet, shapeKey,
  signedArea, withoutStraightCorners,
} from '../../server/src/exact/polygon.ts';
import { rootDownTo, rootUpTo, squareRoot } from '../../server/src/exact/roots.ts';
import {
  FLIP, IDENTITY, MIRROR, about, applyTo, applyToAll, compose, determinantSign, inverse, sameTransform, scale, transformKey, translate, turn,
} from '../../server/src/exact/transform.ts';
import type { Transform } from '../../server/src/exact/transform.ts';
import { modest, nonZero, somewhere } from './arbitrary.ts';

function at(...coordinates: readonly (readonly [number, number])[]): Point[] {
  return coordinates.map(([x, y]) => point(fraction(x), fraction(y)));
}

const [O, E, S] = at([0, 0], [1, 0], [0, 1]) as [Point, Point, Point];
const square = at([0, 0], [2, 0], [2, 2], [0, 2]);
const ell = at([0, 0], [2, 0], [2, 1], [1, 1], [1, 2], [0, 2]);
const star = at([0, 0], [4, 1], [0, 2], [3, -1], [3, 3]);
const octagon = turnedCopies(point(ONE, ZERO), 8);
const motion: fc.Arbitrary<Transform> = fc
  .tuple(fc.integer({ min: -30, max: 30 }), somewhere, fc.constantFrom(IDENTITY, MIRROR, FLIP))
  .map(([steps, { x, y }, image]) => compose(translate(x, y), compose(turn(steps), image)));

function turnedCopies(p: Point, n: number): Point[] {
  return Array.from({ length: n }, (_, i) => applyTo(p, turn((i * 24) / n)));
}

describe('points', () => {
  test('right turns are positive, with y down', () => {
    expect(orientation(O, E, point(ONE, ONE))).toBe(1);
    expect(orientation(O, S, point(ONE, ONE))).toBe(-1);
    expect(orientation(O, E, point(fraction(5), ZERO))).toBe(0);
    expect(sign(cross(E, S))).toBe(1);
  });

  test('orientation is the sign of the exact cross product, also close to the line', () => {
    fc.assert(
      fc.property(somewhere, somewhere, somewhere, modest, (a, b, c, t) => {
        expect(orientation(a, b, c)).toBe(sign(cross(minus(b, a), minus(c, a))));
        const on = { x: add(a.x, mul(t, sub(b.x, a.x))), y: add(a.y, mul(t, sub(b.y, a.y))) };
        expect(orientation(a, b, on)).toBe(0);
        const off = { x: on.x, y: add(on.y, fraction(1n, 10n ** 40n)) };
        expect(orientation(a, b, off)).toBe(sign(sub(b.x, a.x)));
      }),
    );
  });

  test('segments', () => {
    const [a, b] = at([0, 0], [4, 2]) as [Point, Point];
    expect(onSegment(midpoint(a, b), a, b)).toBe(true);
    expect(onSegment(a, a, b)).toBe(true);
    expect(at([6, 3], [-2, -1], [2, 2]).map((p) => onSegment(p, a, b))).toEqual([false, false, false]);
    const meeting = meetingOfLines(a, b, ...(at([0, 2], [4, 0]) as [Point, Point]));
    expect(meeting && pointKey(meeting)).toBe('2 1');
    expect(meetingOfLines(a, b, ...(at([0, 1], [4, 3]) as [Point, Point]))).toBeUndefined();
    const meet = (...c: [number, number][]): boolean => {
      const [p, q, r, s] = at(...c) as [Point, Point, Point, Point];
      return segmentsMeet({ from: p, to: q }, { from: r, to: s });
    };
    expect(meet([0, 0], [2, 2], [0, 2], [2, 0])).toBe(true);
    expect(meet([0, 0], [2, 0], [1, 0], [1, 5])).toBe(true);
    expect(meet([0, 0], [2, 0], [2, 0], [5, 0])).toBe(true);
    expect(meet([0, 0], [2, 0], [3, 0], [5, 0])).toBe(false);
    expect(meet([0, 0], [2, 0], [1, 1], [1, 5])).toBe(false);
    expect(meet([0, 0], [4, 0], [1, 0], [2, 0])).toBe(true);
  });
});

describe('polygons', () => {
  test('area and winding', () => {
    expect([square, ell, backwards(ell)].map((p) => key(signedArea(p)))).toEqual(['4', '3', '-3']);
    expect(key(area(backwards(square)))).toBe('4');
    expect(clockwise(backwards(square))).toEqual(square);
    expect(key(area(octagon))).toBe('0,2,0,0');
    expect(key(area(turnedCopies(point(ONE, ZERO), 12)))).toBe('3');
    expect(key(area(turnedCopies(point(ONE, ZERO), 6)))).toBe('0,0,3,0/2');
  });

  test('convex, simple', () => {
    expect([square, backwards(square), octagon, ell, star].map(isConvex)).toEqual([true, true, true, false, false]);
    expect([square, backwards(square), ell].map(convexWinding)).toEqual([1, -1, 0]);
    expect([square, ell, star, octagon].map(isSimple)).toEqual([true, true, false, true]);
    const pentagram = turnedCopies(point(ONE, ZERO), 12).filter((_, i) => i % 2 === 0);
    expect(isConvex([...pentagram, ...pentagram])).toBe(false);
    expect(isSimple(at([0, 0], [1, 0], [2, 0], [2, 2], [1, 2], [0, 2]))).toBe(true);
  });

  test.each([
    ['bow tie', at([0, 0], [2, 2], [2, 0], [0, 2])],
    ['no area', at([0, 0], [1, 1], [2, 2])],
    ['two corners', at([0, 0], [1, 1])],
    ['spike', at([0, 0], [2, 0], [2, 2], [2, 3], [2, 2], [0, 2])],
    ['spike along a side', at([0, 0], [3, 0], [2, 0], [2, 2], [0, 2])],
    ['repeated corner', at([0, 0], [2, 0], [2, 0], [2, 2])],
    ['corner on a side', at([0, 0], [4, 0], [4, 4], [2, 0], [0, 4])],
    ['corner on a corner', at([0, 0], [2, 2], [4, 0], [4, 4], [2, 2], [0, 4])],
    ['twice round', [...square, ...square]],
  ])('%s is not simple', (_, polygon) => {
    expect(isSimple(polygon)).toBe(false);
    expect(isConvex(polygon)).toBe(false);
  });

  test('inside, outline, outside', () => {
    expect(at([1, 1], [0, 1], [3, 1], [2, 2], [2, 0]).map((p) => locate(square, p))).toEqual([1, 0, -1, 0, 0]);
    const p = point(fraction(3, 2), fraction(3, 2));
    expect([locate(ell, p), locate(backwards(square), p), locate(ell, point(fraction(1, 2), ONE))]).toEqual([-1, 1, 1]);
    expect(locate(octagon, O)).toBe(1);
  });

  test('locate agrees with the even-odd rule in doubles away from the outline', () => {
    fc.assert(
      fc.property(fc.array(somewhere, { minLength: 3, maxLength: 9 }), somewhere, (corners, p) => {
        fc.pre(isSimple(corners) && locate(corners, p) !== 0);
        expect(locate(corners, p)).toBe(evenOdd(corners, p) ? 1 : -1);
      }),
    );
  });

  test('boxes and right angles', () => {
    const { left, top, right, bottom } = boundingBox(ell);
    expect([left, top, right, bottom].map(key)).toEqual(['0', '0', '2', '2']);
    expect(() => boundingBox([])).toThrow(RangeError);
    expect(isRightAngle(E, O, S)).toBe(true);
    const tilted = applyToAll(square, turn(3));
    expect([square, tilted, ell, octagon].map(isRectangle)).toEqual([true, true, false, false]);
    expect([square, tilted].map(isUprightRectangle)).toEqual([true, false]);
    expect(isRectangle(at([0, 0], [1, 0], [2, 0], [2, 2], [0, 2]))).toBe(true);
  });

  test('straight corners go, turning-back ones stay', () => {
    expect(withoutStraightCorners(at([0, 0], [1, 0], [1, 0], [2, 0], [2, 2], [0, 2], [0, 1]))).toEqual(square);
    expect(withoutStraightCorners(at([0, 0], [3, 0], [2, 0], [2, 2], [0, 2])).length).toBe(5);
  });

  test('shape keys survive motions and tell mirror images apart when asked', () => {
    const shapes = [square, ell, octagon, at([0, 0], [3, 0], [1, 2], [0, 2]), at([0, 0], [3, 0], [4, 2], [1, 2]), at([0, 0], [2, 0], [2, 1], [0, 1])];
    fc.assert(
      fc.property(fc.constantFrom(...shapes), motion, fc.nat(10), fc.boolean(), (shape, t, start, reverse) => {
        const moved = applyToAll(shape, t);
        const other = reverse ? backwards(moved) : moved;
        const turned = [...other.slice(start % other.length), ...other.slice(0, start % other.length)];
        expect(shapeKey(turned, { mirror: 'same' })).toBe(shapeKey(shape, { mirror: 'same' }));
        const handed = shapeKey(turned, { mirror: 'different' }) === shapeKey(shape, { mirror: 'different' });
        const symmetric = shapeKey(applyToAll(shape, MIRROR), { mirror: 'different' }) === shapeKey(shape, { mirror: 'different' });
        expect(handed).toBe(symmetric || determinantSign(t) > 0);
      }),
    );
    expect(new Set(shapes.map((shape) => shapeKey(shape, { mirror: 'same' }))).size).toBe(shapes.length);
    const parallelogram = at([0, 0], [3, 0], [4, 2], [1, 2]);
    expect(shapeKey(applyToAll(parallelogram, MIRROR), { mirror: 'different' })).not.toBe(shapeKey(parallelogram, { mirror: 'different' }));
    expect(shapeKey(applyToAll(ell, scale(fraction(2))), { mirror: 'same' })).not.toBe(shapeKey(ell, { mirror: 'same' }));
  });
});

describe('transforms', () => {
  test('24 steps of 15° are one turn, each with the sine it should have', () => {
    let once = IDENTITY;
    for (let i = 0; i < 24; i += 1) {
      expect(sameTransform(once, turn(i))).toBe(true);
      expect(transformKey(once)).toBe(transformKey(turn(i - 48)));
      expect(toNumber(once.yx)).toBeCloseTo(Math.sin((i * Math.PI) / 12), 14);
      expect(toNumber(once.xx)).toBeCloseTo(Math.cos((i * Math.PI) / 12), 14);
      expect(key(add(mul(once.xx, once.xx), mul(once.yx, once.yx)))).toBe('1');
      once = compose(turn(1), once);
    }
    expect(sameTransform(once, IDENTITY)).toBe(true);
    expect(() => turn(0.5)).toThrow(RangeError);
  });

  test('turns run clockwise on the screen; mirror and flip', () => {
    expect(applyTo(E, turn(6))).toEqual(S);
    expect(applyTo(point(ONE, ONE), MIRROR)).toEqual(point(neg(ONE), ONE));
    expect(applyTo(point(ONE, ONE), FLIP)).toEqual(point(ONE, neg(ONE)));
    expect(applyTo(O, about(E, turn(12)))).toEqual(point(fraction(2), ZERO));
    expect([IDENTITY, turn(5), MIRROR, FLIP, compose(FLIP, MIRROR), scale(ZERO)].map(determinantSign)).toEqual([1, 1, -1, -1, 1, 0]);
  });

  test('composition applies the inner first; inverses undo; motions keep distances', () => {
    fc.assert(
      fc.property(motion, motion, nonZero, somewhere, somewhere, (s, t, factor, p, q) => {
        expect(applyTo(p, compose(s, t))).toEqual(applyTo(applyTo(p, t), s));
        const stretched = compose(scale(factor), compose(s, t));
        expect(sameTransform(compose(inverse(stretched), stretched), IDENTITY)).toBe(true);
        expect(squaredDistance(applyTo(p, s), applyTo(q, s))).toEqual(squaredDistance(p, q));
      }),
      { numRuns: 300 },
    );
  });
});

describe('square roots', () => {
  test('of squares come back, whatever the field element', () => {
    fc.assert(
      fc.property(nonZero, (x) => {
        const root = squareRoot(mul(x, x));
        expect(root).toEqual(sign(x) < 0 ? neg(x) : x);
      }),
    );
    expect([2, 3, 6, 12, 8].map((n) => key(squareRoot(fraction(n)) ?? ZERO))).toEqual(['0,1,0,0', '0,0,1,0', '0,0,0,1', '0,0,2,0', '0,2,0,0']);
    expect([squareRoot(fraction(5)), squareRoot(fraction(-1)), squareRoot(add(ONE, SQRT2)), squareRoot(SQRT3)]).toEqual([undefined, undefined, undefined, undefined]);
    expect(isZero(squareRoot(ZERO) ?? ONE)).toBe(true);
  });

  test('the multiples of a step on either side', () => {
    fc.assert(
      fc.property(modest.map((x) => (sign(x) < 0 ? neg(x) : x)), fc.constantFrom(fraction(1, 8), fraction(1, 16), toTenths(1)), (x, step) => {
        const [low, high] = [rootDownTo(x, step), rootUpTo(x, step)];
        expect(atMost(mul(low, low), x) && atMost(x, mul(high, high))).toBe(true);
        expect(equals(low, high) || equals(add(low, step), high)).toBe(true);
        const next = add(low, step);
        expect(less(x, mul(next, next))).toBe(true);
      }),
    );
    expect(() => rootUpTo(ONE, ZERO)).toThrow(RangeError);
    expect(() => rootUpTo(neg(ONE), ONE)).toThrow(RangeError);
  });
});

function toTenths(n: number): Exact {
  return fraction(n, 10);
}

function evenOdd(corners: readonly Point[], p: Point): boolean {
  const [x, y] = [toNumber(p.x), toNumber(p.y)];
  return edgesOf(corners).filter(({ from, to }) => {
    const [x1, y1, x2, y2] = [toNumber(from.x), toNumber(from.y), toNumber(to.x), toNumber(to.y)];
    return y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1);
  }).length % 2 === 1;
}
