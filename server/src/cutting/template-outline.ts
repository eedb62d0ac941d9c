/**
 * The line a template is cut along: the seam allowance outside each side, parallel to straight ones and concentric with arcs. Right and
 * blunt corners are mitred. A point sharper than a right angle is trimmed square to each of its two sides, a seam beyond the finished
 * corner, so that its raw edge ends where that of a right or sharp neighbour begins; it reaches at most s√2 beyond the corner, as
 * `template.ts` reckons. Here in doubles, for drawing: nothing is decided by it.
 */
import { toNumber, type Exact } from '../exact/number.ts';
import type { Outline } from './template.ts';
import { centreOf, directionOf, intersections, lineOf, meeting, normalOf, type Vector, vector } from './template-plane.ts';

/** Inches, clockwise, y down: x and y in turn; `arcs[i]` is the signed radius of the edge from corner i, 0 for straight, positive bulging out. */
export interface PlaneShape {
  readonly points: readonly number[];
  readonly arcs?: readonly number[];
}

/** The finished outline in doubles. */
export function planeShape({ outline, arcs }: Outline): PlaneShape {
  const curved = arcs?.some((radius) => radius !== undefined) ?? false;
  const points = outline.flatMap(({ x, y }) => [toNumber(x), toNumber(y)]);
  return curved ? { points, arcs: outline.map((_, i) => toNumberOr(arcs?.[i])) } : { points };
}

/** The line to cut along. */
export function cutOutline(shape: PlaneShape, seam: number): PlaneShape {
  const sides = sidesOf(shape);
  const kept = withoutLost(sides, seam);
  const path = pathAround(kept, seam);
  return isFair(path, kept) ? shapeOf(path) : shapeOf(pathAround(sidesOf(hullOf(shape)), seam));
}

export interface Side {
  readonly from: Vector;
  readonly to: Vector;
  /** 0 for straight. */
  readonly radius: number;
  readonly centre?: Vector;
  /** The ways one walks at its ends. */
  readonly start: Vector;
  readonly end: Vector;
}

/** The sides of an outline that have a length. */
export function sidesOf({ points, arcs }: PlaneShape): readonly Side[] {
  const corners = Array.from({ length: points.length >> 1 }, (_, i) => vector(points[2 * i] ?? 0, points[2 * i + 1] ?? 0));
  return corners.flatMap((from, i): Side[] => {
    const to = corners[(i + 1) % corners.length] ?? from;
    const radius = arcs?.[i] ?? 0;
    if (Math.hypot(to.x - from.x, to.y - from.y) < TINY) return [];
    const centre = radius === 0 ? undefined : centreOf(from, to, radius);
    return [{ from, to, radius, ...(centre ? { centre } : {}), start: directionOf(from, { from, to, radius, centre }), end: directionOf(to, { from, to, radius, centre }) }];
  });
}

const TINY = 1e-9;

function toNumberOr(radius: Exact | undefined): number {
  return radius ? toNumber(radius) : 0;
}

/** A corner of the cutting line, and the radius of its edge to the next. */
interface Corner extends Vector {
  readonly radius: number;
  readonly centre?: Vector;
}

/** The cutting line of each side between its corners: `path[i]` begins with side i. */
type Path = readonly (readonly Corner[])[];

function pathAround(sides: readonly Side[], seam: number): Path {
  const corners = sides.map((side, i) => cornerBetween(sides.at(i - 1) ?? side, side, seam));
  return corners.map((points, i) => points.map((point, k) => (k === points.length - 1 ? { ...point, ...curveOf(sides[i], seam) } : { ...point, radius: 0 })));
}

function curveOf(side: Side | undefined, seam: number): { readonly radius: number; readonly centre?: Vector } {
  if (!side?.centre) return { radius: 0 };
  const radius = side.radius + seam;
  return radius === 0 || Math.sign(radius) !== Math.sign(side.radius) ? { radius: 0 } : { radius, centre: side.centre };
}

/** The corner of the cutting line from one side to the next; of a trimmed point, all that is between them. */
function cornerBetween(one: Side, next: Side, seam: number): readonly Vector[] {
  const [d, e] = [one.end, next.start];
  const turn = turnBetween(one, next);
  const at = meeting(one, next);
  const [before, after] = [moved(at, normalOf(d), seam), moved(at, normalOf(e), seam)];
  if (Math.abs(turn) < TINY) return [before];
  if (turn > Math.PI / 2 + TINY) return trimmed({ at, before, after, d, e, turn }, seam, one.centre !== undefined, next.centre !== undefined);
  const near = intersections(lineOf(one, seam), lineOf(next, seam)).sort((p, q) => distance(p, at) - distance(q, at));
  return near[0] ? [near[0]] : [before, after];
}

interface Point {
  readonly at: Vector;
  readonly before: Vector;
  readonly after: Vector;
  readonly d: Vector;
  readonly e: Vector;
  readonly turn: number;
}

/** Square to each side, a seam beyond the corner; the two trims meet on the bisector. A curve goes on straight as far as its trim. */
function trimmed({ at, before, after, d, e, turn }: Point, seam: number, curvesIn: boolean, curvesOut: boolean): readonly Vector[] {
  const reach = seam / (1 - Math.cos(turn));
  const tip = vector(at.x + (d.x - e.x) * reach, at.y + (d.y - e.y) * reach);
  return [...(curvesIn ? [before] : []), moved(before, d, seam), tip, moved(after, e, -seam), ...(curvesOut ? [after] : [])];
}

function moved(p: Vector, way: Vector, by: number): Vector {
  return vector(p.x + way.x * by, p.y + way.y * by);
}

function distance(p: Vector, q: Vector): number {
  return Math.hypot(p.x - q.x, p.y - q.y);
}

/** Without sides in an inner corner that are too short to keep anything of their cutting line, and without notches narrower than two seams. */
function withoutLost(sides: readonly Side[], seam: number): readonly Side[] {
  const path = pathAround(sides, seam);
  const lost = sides.findIndex((side, i) => {
    const [from, to] = [path[i]?.at(-1), path[(i + 1) % sides.length]?.[0]];
    return from !== undefined && to !== undefined && (to.x - from.x) * (side.to.x - side.from.x) + (to.y - from.y) * (side.to.y - side.from.y) < 0;
  });
  if (lost < 0 || sides.length < 6) return sides;
  const at = (i: number): number => (i + sides.length) % sides.length;
  const [before, side, after] = [sides[at(lost - 1)], sides[lost], sides[at(lost + 1)]];
  const isNotch = before && side && after && turnBetween(before, side) + turnBetween(side, after) < TINY - Math.PI;
  const gone = isNotch ? [at(lost - 1), lost, at(lost + 1)] : [lost];
  return withoutLost(sides.filter((_, i) => !gone.includes(i)), seam);
}

/** Positive where the outline is convex. */
function turnBetween({ end: d }: Side, { start: e }: Side): number {
  return Math.atan2(d.x * e.y - d.y * e.x, d.x * e.x + d.y * e.y);
}

/** True unless the cutting line crosses itself, as it does in a notch that is narrower than two seams. */
function isFair(path: Path, sides: readonly Side[]): boolean {
  const isConvex = sides.every((side, i) => { const next = sides[(i + 1) % sides.length] ?? side; return side.end.x * next.start.y - side.end.y * next.start.x > -TINY && side.radius >= 0; });
  if (isConvex) return true;
  const corners = path.flat();
  return corners.every((a, i) => corners.every((c, k) => k < i + 2 || (i === 0 && k === corners.length - 1) || !cross(a, corners[(i + 1) % corners.length] ?? a, c, corners[(k + 1) % corners.length] ?? c)));
}

function cross(a: Vector, b: Vector, c: Vector, d: Vector): boolean {
  const side = (p: Vector, q: Vector, r: Vector): number => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** A curve of nearly half a circle or more is given in two, since an arc is always the shorter one. */
function shapeOf(path: Path): PlaneShape {
  const corners = path.flat();
  const whole = corners.flatMap((corner, i): Corner[] => {
    const next = corners[(i + 1) % corners.length] ?? corner;
    const { centre, radius } = corner;
    if (!centre || distance(corner, next) < 1.9 * Math.abs(radius)) return [corner];
    const start = Math.atan2(corner.y - centre.y, corner.x - centre.x);
    const sweep = Math.atan2(next.y - centre.y, next.x - centre.x) - start;
    const way = Math.sign(radius);
    const half = start + (way * ((way * sweep + 4 * Math.PI) % (2 * Math.PI))) / 2;
    return [corner, { ...corner, x: centre.x + Math.abs(radius) * Math.cos(half), y: centre.y + Math.abs(radius) * Math.sin(half) }];
  });
  const points = whole.flatMap(({ x, y }) => [x, y]);
  return whole.some(({ radius }) => radius !== 0) ? { points, arcs: whole.map(({ radius }) => radius) } : { points };
}

/** Around the corners of a shape, clockwise (Andrew's monotone chain, 1979). */
function hullOf({ points }: PlaneShape): PlaneShape {
  const sorted = Array.from({ length: points.length >> 1 }, (_, i) => vector(points[2 * i] ?? 0, points[2 * i + 1] ?? 0)).sort((p, q) => p.x - q.x || p.y - q.y);
  const chain = (list: readonly Vector[]): readonly Vector[] => {
    const kept: Vector[] = [];
    for (const p of list) {
      for (let [a, b] = kept.slice(-2); a && b && (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) <= TINY; [a, b] = kept.slice(-2)) kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return { points: [...chain(sorted), ...chain(sorted.toReversed())].flatMap(({ x, y }) => [x, y]) };
}
