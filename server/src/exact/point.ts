/**
 * Points and predicates in the plane.
 *
 * x runs to the right, **y runs down**, as on a screen. Clockwise on the screen is the positive winding: a clockwise polygon has
 * positive area, and its inside lies to the right of one who walks along it. Every predicate answers with a sign:
 * `+` for a right turn or the inside, `0` for straight on or the line itself, `−` for a left turn or the outside.
 */
import { DOUBT, add, compare, div, equals, fraction, guess, key, mul, neg, sign, size, sub } from './number.ts';
import type { Exact } from './number.ts';

/** A point or a vector; in inches unless said otherwise. */
export interface Point {
  readonly x: Exact;
  readonly y: Exact;
}

export function point(x: Exact, y: Exact): Point {
  return { x, y };
}

/** +1 when a → b → c turns right (clockwise), −1 when it turns left, 0 when the three lie on a line. */
export function orientation(a: Point, b: Point, c: Point): -1 | 0 | 1 {
  return quickOrientation(a, b, c) ?? sign(cross(minus(b, a), minus(c, a)));
}

/** Twice the signed area of the triangle 0, u, v: positive when v lies clockwise of u. */
export function cross(u: Point, v: Point): Exact {
  return sub(mul(u.x, v.y), mul(u.y, v.x));
}

/** Positive when the angle between u and v is sharp, zero when it is right. */
export function dot(u: Point, v: Point): Exact {
  return add(mul(u.x, v.x), mul(u.y, v.y));
}

export function plus(p: Point, v: Point): Point {
  return { x: add(p.x, v.x), y: add(p.y, v.y) };
}

/** The vector from q to p. */
export function minus(p: Point, q: Point): Point {
  return { x: sub(p.x, q.x), y: sub(p.y, q.y) };
}

export function times(v: Point, factor: Exact): Point {
  return { x: mul(v.x, factor), y: mul(v.y, factor) };
}

export function opposite(v: Point): Point {
  return { x: neg(v.x), y: neg(v.y) };
}

export function midpoint(p: Point, q: Point): Point {
  return times(plus(p, q), fraction(1, 2));
}

export function samePoint(p: Point, q: Point): boolean {
  return equals(p.x, q.x) && equals(p.y, q.y);
}

export function squaredDistance(p: Point, q: Point): Exact {
  const v = minus(q, p);
  return dot(v, v);
}

/** Left before right, then top before bottom: an order for `sort`. */
export function comparePoints(p: Point, q: Point): -1 | 0 | 1 {
  return compare(p.x, q.x) || compare(p.y, q.y);
}

/** True when p lies on the closed segment from a to b. */
export function onSegment(p: Point, a: Point, b: Point): boolean {
  return orientation(a, b, p) === 0 && isBetween(p.x, a.x, b.x) && isBetween(p.y, a.y, b.y);
}

/** The point where the lines a–b and c–d meet; undefined when they run the same way. */
export function meetingOfLines(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const along = minus(b, a);
  const other = minus(d, c);
  const slant = cross(along, other);
  if (sign(slant) === 0) return undefined;
  return plus(a, times(along, div(cross(minus(c, a), other), slant)));
}

/** Equal points share it, different ones do not. */
export function pointKey(p: Point): string {
  return `${key(p.x)} ${key(p.y)}`;
}

function isBetween(x: Exact, from: Exact, to: Exact): boolean {
  const side = compare(x, from);
  return side === 0 || side * compare(x, to) <= 0;
}

/** More than what rounding near the smallest doubles can add. */
const UNDERFLOW = 2 ** -1000;

/** The answer of doubles where their error cannot matter; undefined where it could. */
function quickOrientation(a: Point, b: Point, c: Point): -1 | 0 | 1 | undefined {
  const [ax, ay] = [guess(a.x), guess(a.y)];
  const left = (guess(b.x) - ax) * (guess(c.y) - ay);
  const right = (guess(b.y) - ay) * (guess(c.x) - ax);
  const wide = size(a.x) + size(b.x) + size(c.x);
  const high = size(a.y) + size(b.y) + size(c.y);
  const slack = 4 * wide * high * DOUBT + UNDERFLOW;
  if (left - right > slack) return 1;
  return left - right < -slack ? -1 : undefined;
}
