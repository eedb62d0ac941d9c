/**
 * Polygons: corners in order, the last joined to the first. Clockwise on the screen is positive (see `point.ts`).
 * Simple means: no corner twice, and edges share nothing but the corners between neighbours.
 */
import { HALF, ZERO, above, abs, add, below, compare, equals, key, max, min, mul, sign } from './number.ts';
import type { Exact } from './number.ts';
import { comparePoints, cross, dot, minus, orientation, onSegment, samePoint, squaredDistance } from './point.ts';
import type { Point } from './point.ts';

export type Polygon = readonly Point[];

export interface Box {
  readonly left: Exact;
  readonly top: Exact;
  readonly right: Exact;
  readonly bottom: Exact;
}

export interface Edge {
  readonly from: Point;
  readonly to: Point;
}

/** Edge i runs from corner i to corner i + 1. */
export function edgesOf(polygon: Polygon): Edge[] {
  return polygon.map((from, i) => ({ from, to: polygon[(i + 1) % polygon.length] ?? from }));
}

/** Positive for clockwise polygons, negative for others; loops of one that crosses itself count by their winding. */
export function signedArea(polygon: Polygon): Exact {
  return mul(HALF, edgesOf(polygon).reduce((sum, { from, to }) => add(sum, cross(from, to)), ZERO));
}

export function area(polygon: Polygon): Exact {
  return abs(signedArea(polygon));
}

/** The same polygon wound clockwise, from the same first corner. */
export function clockwise(polygon: Polygon): Polygon {
  return sign(signedArea(polygon)) < 0 ? backwards(polygon) : polygon;
}

/** The corners the other way round, from the same first corner. */
export function backwards(polygon: Polygon): Polygon {
  return [...polygon.slice(0, 1), ...polygon.slice(1).reverse()];
}

/** Without repeated corners and corners where the outline runs straight on; a corner where it turns back stays. */
export function withoutStraightCorners(polygon: Polygon): Polygon {
  const corners = polygon.filter((p, i) => !samePoint(p, polygon.at(i - 1) ?? p) || polygon.length === 1);
  return corners.filter((p, i) => !isStraight(corners.at(i - 1) ?? p, p, corners[(i + 1) % corners.length] ?? p));
}

/** True for a simple polygon with an area whose every corner is convex or straight. */
export function isConvex(polygon: Polygon): boolean {
  return convexWinding(polygon) !== 0;
}

/** +1 for a convex polygon wound clockwise, −1 for one wound the other way, 0 for anything else. */
export function convexWinding(polygon: Polygon): -1 | 0 | 1 {
  let winding: -1 | 0 | 1 = 0;
  let reversals = 0;
  for (let i = 0; i < polygon.length; i += 1) {
    const [a, b, c] = cornerAt(polygon, i);
    const heading = comparePoints(a, b);
    const turn = orientation(a, b, c);
    if (heading === 0 || (turn !== 0 && turn === -winding)) return 0;
    if (turn !== 0) winding = turn;
    if (heading !== comparePoints(b, c)) reversals += turn === 0 ? polygon.length : 1;
  }
  return reversals === 2 ? winding : 0;
}

/** True when the outline has at least three corners, an area, and neither crosses nor touches itself. */
export function isSimple(polygon: Polygon): boolean {
  if (polygon.length < 3) return false;
  if (isConvex(polygon)) return true;
  const edges = edgesOf(polygon).map((edge, index) => ({ ...edge, index, ...reach(edge) }));
  const byLeft = [...edges].sort((e, f) => e.left - f.left);
  return byLeft.every((edge, i) => {
    for (let j = i + 1; j < byLeft.length; j += 1) {
      const other = byLeft[j];
      if (other === undefined || other.left > edge.right) break;
      if (other.top <= edge.bottom && edge.top <= other.bottom && clash(edge, other, polygon.length)) return false;
    }
    return true;
  });
}

/** +1 when p lies inside, 0 on the outline, −1 outside. */
export function locate(polygon: Polygon, p: Point): -1 | 0 | 1 {
  let winding = 0;
  for (const { from, to } of edgesOf(polygon)) {
    if (onSegment(p, from, to)) return 0;
    const falls = compare(from.y, p.y) <= 0;
    if (falls === compare(to.y, p.y) <= 0) continue;
    const side = orientation(from, to, p);
    if (falls ? side > 0 : side < 0) winding += side;
  }
  return winding === 0 ? -1 : 1;
}

/** Throws RangeError when there are no points. */
export function boundingBox(points: readonly Point[]): Box {
  const [first, ...rest] = points;
  if (first === undefined) throw new RangeError('No points have no bounding box.');
  return {
    left: rest.reduce((least, p) => min(least, p.x), first.x),
    top: rest.reduce((least, p) => min(least, p.y), first.y),
    right: rest.reduce((most, p) => max(most, p.x), first.x),
    bottom: rest.reduce((most, p) => max(most, p.y), first.y),
  };
}

/** True when the closed segments share at least one point. */
export function segmentsMeet(e: Edge, f: Edge): boolean {
  const sides = orientation(e.from, e.to, f.from) * orientation(e.from, e.to, f.to);
  if (sides > 0) return false;
  const others = orientation(f.from, f.to, e.from) * orientation(f.from, f.to, e.to);
  if (others > 0) return false;
  const ends = [onSegment(f.from, e.from, e.to), onSegment(f.to, e.from, e.to), onSegment(e.from, f.from, f.to), onSegment(e.to, f.from, f.to)];
  return (sides < 0 && others < 0) || ends.includes(true);
}

/** True when the angle at b, from a to c, is a right one. */
export function isRightAngle(a: Point, b: Point, c: Point): boolean {
  return sign(dot(minus(a, b), minus(c, b))) === 0;
}

/** True for four corners (straight ones aside), all of them right angles. */
export function isRectangle(polygon: Polygon): boolean {
  const corners = withoutStraightCorners(polygon);
  return corners.length === 4 && isConvex(corners) && corners.every((_, i) => isRightAngle(...cornerAt(corners, i)));
}

/** True for a rectangle whose sides run along the axes. */
export function isUprightRectangle(polygon: Polygon): boolean {
  return isRectangle(polygon) && edgesOf(polygon).every(({ from, to }) => equals(from.x, to.x) || equals(from.y, to.y));
}

/**
 * A text shared by congruent simple polygons, whatever their position, turn, winding and first corner, and by no others.
 * `mirror: 'same'` takes mirror images for congruent too. It lists, around the shape, each edge's squared length and the next
 * corner's dot product and turn: side lengths and angles, all exact.
 */
export function shapeKey(polygon: Polygon, options: { readonly mirror: 'same' | 'different' }): string {
  const shape = clockwise(withoutStraightCorners(polygon));
  const ways = options.mirror === 'same' ? [shape, mirrored(shape)] : [shape];
  return ways.map(leastReading).reduce((least, reading) => (reading < least ? reading : least));
}

function leastReading(shape: Polygon): string {
  const parts = shape.map((_, i) => {
    const [a, b, c] = cornerAt(shape, i);
    return `${key(squaredDistance(a, b))} ${key(dot(minus(b, a), minus(c, b)))} ${orientation(a, b, c)}`;
  });
  return parts
    .map((_, i) => [...parts.slice(i), ...parts.slice(0, i)].join('; '))
    .reduce((least, reading) => (reading < least ? reading : least), parts.join('; '));
}

/** The mirror image, wound the same way. */
function mirrored(shape: Polygon): Polygon {
  return backwards(shape.map(({ x, y }) => ({ x: y, y: x })));
}

/** Corner i + 1 between its neighbours. */
function cornerAt(polygon: Polygon, i: number): readonly [Point, Point, Point] {
  const n = polygon.length;
  const [a, b, c] = [polygon[i % n], polygon[(i + 1) % n], polygon[(i + 2) % n]];
  if (a === undefined || b === undefined || c === undefined) throw new RangeError('A polygon without corners.');
  return [a, b, c];
}

function isStraight(a: Point, b: Point, c: Point): boolean {
  return orientation(a, b, c) === 0 && sign(dot(minus(b, a), minus(c, b))) > 0;
}

/** Doubles around an edge, never too tight. */
function reach({ from, to }: Edge): { left: number; top: number; right: number; bottom: number } {
  const [x1, x2, y1, y2] = [below(from.x), below(to.x), below(from.y), below(to.y)];
  const [x3, x4, y3, y4] = [above(from.x), above(to.x), above(from.y), above(to.y)];
  return { left: x1 < x2 ? x1 : x2, right: x3 > x4 ? x3 : x4, top: y1 < y2 ? y1 : y2, bottom: y3 > y4 ? y3 : y4 };
}

/** True when two edges of a polygon of n corners share more than the corner between neighbours. */
function clash(e: Edge & { index: number }, f: Edge & { index: number }, n: number): boolean {
  if ((e.index + 1) % n === f.index) return turnsBack(e.from, e.to, f.to);
  if ((f.index + 1) % n === e.index) return turnsBack(f.from, f.to, e.to);
  return segmentsMeet(e, f);
}

function turnsBack(a: Point, b: Point, c: Point): boolean {
  return orientation(a, b, c) === 0 && !isStraight(a, b, c);
}
