/** Lengths of edges, the triangle every quilt is full of, and the factors of the seam in the cutting formulae. */
import { abs, add, compare, fraction, isZero, mul, SQRT2, sub, type Exact } from '../exact/number.ts';
import { isRightAngle, withoutStraightCorners } from '../exact/polygon.ts';
import { squaredDistance, type Point } from '../exact/point.ts';
import { rootUpTo, squareRoot } from '../exact/roots.ts';

/** For lengths outside Q(√2, √3): at most this much longer than the truth, in inches. Never shorter. */
const FINE = fraction(1, 2 ** 20);

/** The distance of two points: exact where the field holds it, else less than 1/1,000,000" longer. */
export function lengthBetween(p: Point, q: Point): Exact {
  if (isZero(sub(p.x, q.x))) return abs(sub(p.y, q.y));
  if (isZero(sub(p.y, q.y))) return abs(sub(p.x, q.x));
  const squared = squaredDistance(p, q);
  return squareRoot(squared) ?? rootUpTo(squared, FINE);
}

/** a + b√2, for whole numbers a and b: the factors of the seam in the cutting formulae. */
export function withRoot(a: number, b: number): Exact {
  return add(fraction(a), mul(fraction(b), SQRT2));
}

/** Whether an edge runs along an axis. */
export function isUpright(p: Point, q: Point): boolean {
  return isZero(sub(p.x, q.x)) || isZero(sub(p.y, q.y));
}

export interface RightTriangle {
  /** Where the right angle is, and the ends of the legs. */
  readonly corner: Point;
  readonly ends: readonly [Point, Point];
}

/** The right isosceles triangle an outline is, or undefined when it is none. */
export function rightIsosceles(outline: readonly Point[]): RightTriangle | undefined {
  const corners = withoutStraightCorners(outline);
  if (corners.length !== 3) return undefined;
  for (const [i, corner] of corners.entries()) {
    const before = corners.at(i - 1) ?? corner;
    const after = corners[(i + 1) % 3] ?? corner;
    if (!isRightAngle(before, corner, after)) continue;
    const isEven = compare(squaredDistance(before, corner), squaredDistance(corner, after)) === 0;
    return isEven ? { corner, ends: [before, after] } : undefined;
  }
  return undefined;
}
