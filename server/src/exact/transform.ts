/**
 * Exact affine transforms of the plane (y down, see `point.ts`): x' = xx·x + xy·y + dx, y' = yx·x + yy·y + dy.
 * Angles are clockwise on the screen, in steps of 15°: their sines and cosines lie in Q(√2, √3).
 */
import { ONE, SQRT2, SQRT3, ZERO, add, div, equals, fraction, key, mul, neg, sign, sub } from './number.ts';
import type { Exact } from './number.ts';
import type { Point } from './point.ts';

export interface Transform {
  readonly xx: Exact;
  readonly xy: Exact;
  readonly yx: Exact;
  readonly yy: Exact;
  readonly dx: Exact;
  readonly dy: Exact;
}

export const IDENTITY: Transform = { xx: ONE, xy: ZERO, yx: ZERO, yy: ONE, dx: ZERO, dy: ZERO };

export function translate(dx: Exact, dy: Exact): Transform {
  return { ...IDENTITY, dx, dy };
}

/** Scales about the origin; a factor of zero or below is the caller's affair. */
export function scale(x: Exact, y: Exact = x): Transform {
  return { ...IDENTITY, xx: x, yy: y };
}

/** Turns clockwise about the origin by `steps` · 15°. Throws RangeError when `steps` is not whole. */
export function turn(steps: number): Transform {
  if (!Number.isSafeInteger(steps)) throw new RangeError('Turns come in whole steps of 15°.');
  const cos = sineOf(steps + 6);
  const sin = sineOf(steps);
  return { xx: cos, xy: neg(sin), yx: sin, yy: cos, dx: ZERO, dy: ZERO };
}

/** Mirrors left to right, about the y axis. */
export const MIRROR: Transform = { ...IDENTITY, xx: neg(ONE) };

/** Flips top to bottom, about the x axis. */
export const FLIP: Transform = { ...IDENTITY, yy: neg(ONE) };

/** First `inner`, then `outer`. */
export function compose(outer: Transform, inner: Transform): Transform {
  const { x: dx, y: dy } = applyTo({ x: inner.dx, y: inner.dy }, outer);
  return {
    xx: twoProducts(outer.xx, inner.xx, outer.xy, inner.yx),
    xy: twoProducts(outer.xx, inner.xy, outer.xy, inner.yy),
    yx: twoProducts(outer.yx, inner.xx, outer.yy, inner.yx),
    yy: twoProducts(outer.yx, inner.xy, outer.yy, inner.yy),
    dx,
    dy,
  };
}

/** `transform`, done about `centre` instead of the origin. */
export function about(centre: Point, transform: Transform): Transform {
  return compose(translate(centre.x, centre.y), compose(transform, translate(neg(centre.x), neg(centre.y))));
}

export function applyTo(p: Point, t: Transform): Point {
  return { x: add(twoProducts(t.xx, p.x, t.xy, p.y), t.dx), y: add(twoProducts(t.yx, p.x, t.yy, p.y), t.dy) };
}

/** The moved corners, in their order: a transform that mirrors turns the winding round (see `clockwise` in `polygon.ts`). */
export function applyToAll(points: readonly Point[], t: Transform): Point[] {
  return points.map((p) => applyTo(p, t));
}

/** The transform that undoes t. Throws RangeError when t flattens the plane (`determinantSign` is 0). */
export function inverse(t: Transform): Transform {
  const size = determinant(t);
  const linear = {
    xx: div(t.yy, size),
    xy: neg(div(t.xy, size)),
    yx: neg(div(t.yx, size)),
    yy: div(t.xx, size),
    dx: ZERO,
    dy: ZERO,
  };
  const { x, y } = applyTo({ x: t.dx, y: t.dy }, linear);
  return { ...linear, dx: neg(x), dy: neg(y) };
}

/** The factor of areas; negative when t mirrors. */
export function determinant(t: Transform): Exact {
  return sub(mul(t.xx, t.yy), mul(t.xy, t.yx));
}

/** +1 when t keeps the winding, −1 when it mirrors, 0 when it flattens the plane. */
export function determinantSign(t: Transform): -1 | 0 | 1 {
  return sign(determinant(t));
}

/** Equal transforms share it, different ones do not. */
export function transformKey(t: Transform): string {
  return [t.xx, t.xy, t.yx, t.yy, t.dx, t.dy].map(key).join(' ');
}

export function sameTransform(s: Transform, t: Transform): boolean {
  return (['xx', 'xy', 'yx', 'yy', 'dx', 'dy'] as const).every((part) => equals(s[part], t[part]));
}

/** sin of 0°, 15°, … 90°. */
const SINES: readonly Exact[] = [
  ZERO,
  div(sub(mul(SQRT2, SQRT3), SQRT2), fraction(4)),
  fraction(1, 2),
  div(SQRT2, fraction(2)),
  div(SQRT3, fraction(2)),
  div(add(mul(SQRT2, SQRT3), SQRT2), fraction(4)),
  ONE,
];

/** sin(steps · 15°) */
function sineOf(steps: number): Exact {
  const step = ((steps % 24) + 24) % 24;
  const half = step % 12;
  const sine = SINES[half <= 6 ? half : 12 - half] ?? ZERO;
  return step < 12 ? sine : neg(sine);
}

function twoProducts(a: Exact, b: Exact, c: Exact, d: Exact): Exact {
  return add(mul(a, b), mul(c, d));
}
