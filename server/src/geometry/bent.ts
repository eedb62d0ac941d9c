/**
 * Curved edges for the tiling check: every arc becomes a run of 64 straight edges, the same for both patches that share it, so
 * that what fits exactly fits exactly still. A quarter circle is nowhere farther from its run than 1/14,000 of its radius. Arcs
 * are first parted where a corner of another patch lies on them, which is decided exactly.
 */
import { HALF, ZERO, compare, div, equals, fraction, isZero, key, mul, neg, roundTo, sign, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { comparePoints, dot, midpoint, minus, orientation, plus, pointKey, samePoint, squaredDistance, times } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { edgesOf } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import { rootDownTo } from '../exact/roots.ts';
import type { Finding } from '../model/finding.ts';
import { outerPlace } from './cell.ts';
import type { Patch } from './layout.ts';
import { reachOf, touches } from './tiling-near.ts';

/** The outlines with their arcs as runs of straight edges; an arc that cannot be is taken as straight (see `arcFindings`). */
export function straightened(patches: readonly Patch[]): Polygon[] {
  if (patches.every((patch) => !patch.arcs)) return patches.map((patch) => patch.outline);
  const corners = distinct(patches.flatMap((patch) => patch.outline)).map((corner) => ({ corner, ...reachOf([corner]) }));
  const known = new Map<string, readonly Point[]>();
  const run = (arc: Arc): readonly Point[] => {
    const forwards = comparePoints(arc.from, arc.to) < 0;
    const [from, to] = forwards ? [arc.from, arc.to] : [arc.to, arc.from];
    const name = `${pointKey(from)} ${pointKey(to)} ${key(arc.radius)} ${forwards === arc.bulgesLeft ? 'left' : 'right'}`;
    const points = known.get(name) ?? pointsAlong({ ...arc, from, to, bulgesLeft: forwards === arc.bulgesLeft });
    known.set(name, points);
    return forwards ? points : [...points].reverse();
  };
  return patches.map(({ outline, arcs }) =>
    edgesOf(outline).flatMap(({ from, to }, i) => {
      const arc = arcs && arcOf(from, to, arcs[i]);
      if (!arc) return [from];
      const stops = [from, ...cornersOn(arc, corners), to];
      return stops.slice(1).flatMap((stop, n) => [stops[n] ?? from, ...run({ ...arc, from: stops[n] ?? from, to: stop })]);
    }),
  );
}

/** Arcs whose radius does not reach from corner to corner. */
export function arcFindings(patches: readonly Patch[]): Finding[] {
  const problem = 'the radius of an arc is at least half the way between its corners';
  const short = patches.filter(({ outline, arcs }) =>
    edgesOf(outline).some(({ from, to }, i) => {
      const radius = arcs?.[i];
      return radius !== undefined && isShort(radius, squaredDistance(from, to));
    }),
  );
  return [...new Set(short.map(outerPlace))].map((place): Finding => ({ rule: 'wrong-argument', place, problem }));
}

/** The shorter arc between two points. */
interface Arc {
  readonly from: Point;
  readonly to: Point;
  /** Positive. */
  readonly radius: Exact;
  /** To the left of one who walks from `from` to `to`. */
  readonly bulgesLeft: boolean;
}

/** The inside of a clockwise outline lies to the right: an arc that bulges out bulges left. */
function arcOf(from: Point, to: Point, radius: Exact | undefined): Arc | undefined {
  if (!radius || isZero(radius) || samePoint(from, to) || isShort(radius, squaredDistance(from, to))) return undefined;
  const out = sign(radius) > 0;
  return { from, to, radius: out ? radius : neg(radius), bulgesLeft: out };
}

/** 4R² < d² */
function isShort(radius: Exact, squared: Exact): boolean {
  return compare(mul(fraction(4), mul(radius, radius)), squared) < 0;
}

/** From the chord's middle to where the arc would be if it were as high as the chord is long. */
function towardsArc({ from, to, bulgesLeft }: Arc): Point {
  const { x, y } = minus(to, from);
  return bulgesLeft ? { x: y, y: neg(x) } : { x: neg(y), y: x };
}

/**
 * The corners on an arc, in its order. On the side it bulges to, a point of the arc sees the chord under one angle only, whose
 * cosine is −√(1 − d²/4R²).
 */
function cornersOn(arc: Arc, corners: readonly ({ readonly corner: Point } & ReturnType<typeof reachOf>)[]): Point[] {
  const { from, to, radius } = arc;
  const height = times(towardsArc(arc), HALF);
  const room = reachOf([from, to, plus(from, height), plus(to, height)]);
  const cosine = sub(fraction(1), div(squaredDistance(from, to), mul(fraction(4), mul(radius, radius))));
  return corners
    .filter((each) => touches(room, each))
    .map((each) => each.corner)
    .filter((corner) => {
      if (samePoint(corner, from) || samePoint(corner, to) || orientation(from, to, corner) !== (arc.bulgesLeft ? -1 : 1)) return false;
      const seen = dot(minus(from, corner), minus(to, corner));
      const far = mul(squaredDistance(from, corner), squaredDistance(to, corner));
      return sign(seen) <= 0 && equals(mul(seen, seen), mul(cosine, far));
    })
    .sort((p, q) => compare(squaredDistance(from, p), squaredDistance(from, q)));
}

/** The points strictly between the ends, by halving. */
function pointsAlong(arc: Arc, halvings = HALVINGS): Point[] {
  const middle = halvings > 0 ? middleOf(arc) : undefined;
  if (!middle) return [];
  return [...pointsAlong({ ...arc, to: middle }, halvings - 1), middle, ...pointsAlong({ ...arc, from: middle }, halvings - 1)];
}

/** The middle of the arc, to a millionth; none when the arc is flat at that. */
function middleOf(arc: Arc): Point | undefined {
  const squared = squaredDistance(arc.from, arc.to);
  const rise = sub(mul(arc.radius, arc.radius), div(squared, fraction(4)));
  const sagitta = sub(arc.radius, sign(rise) > 0 ? rootDownTo(rise, STEP) : ZERO);
  const chord = rootDownTo(squared, STEP);
  if (compare(sagitta, STEP) <= 0 || sign(chord) <= 0) return undefined;
  const exact = plus(midpoint(arc.from, arc.to), times(towardsArc(arc), div(sagitta, chord)));
  return { x: roundTo(exact.x, STEP), y: roundTo(exact.y, STEP) };
}

function distinct(points: readonly Point[]): Point[] {
  return [...new Map(points.map((point) => [pointKey(point), point])).values()];
}

const HALVINGS = 6;
const STEP = fraction(1, 2 ** 20);
