/** The outline of a part of a map, and the shapes one sees of its patches. */
import { atMost, isZero, abs } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { minus, squaredDistance } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { isRectangle, withoutStraightCorners } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import { squareRoot } from '../exact/roots.ts';
import { cutAlong } from '../geometry/clip.ts';
import type { Coloured } from './canonical.ts';
import { pieceAt, pointAt } from './map.ts';
import type { SeamMap } from './map.ts';
import { across } from './region.ts';

export interface Measure {
  readonly width: Exact;
  readonly height: Exact;
}

/** The corners around shapes that hang together, clockwise; curved edges by their ends. */
export function outlineAround(map: SeamMap, shapes: readonly number[]): Polygon {
  const inside = new Uint8Array(map.around.length);
  for (const shape of shapes) inside[shape] = 1;
  const next = new Map<number, number>();
  for (const shape of shapes) {
    for (const index of map.around[shape] ?? []) {
      if (inside[across(map, index, shape)] === 1) continue;
      const { a, b, right } = pieceAt(map, index);
      if (right === shape) next.set(a, b);
      else next.set(b, a);
    }
  }
  const [start] = next.keys();
  const corners: Point[] = [];
  for (let vertex = start; vertex !== undefined && corners.length < next.size; vertex = next.get(vertex)) {
    corners.push(pointAt(map, vertex));
    if (next.get(vertex) === start) break;
  }
  return withoutStraightCorners(corners);
}

/** The sides of a rectangle that lies as the layout shows it: the leveller side is the width. Undefined for other outlines. */
export function sidesOf(outline: Polygon): Measure | undefined {
  const [a, b, c] = outline;
  if (!a || !b || !c || !isRectangle(outline)) return undefined;
  const [first, second] = [squareRoot(squaredDistance(a, b)), squareRoot(squaredDistance(b, c))];
  if (!first || !second) return undefined;
  const along = minus(b, a);
  const isLevel = isZero(along.y) || (!isZero(along.x) && atMost(abs(along.y), abs(along.x)));
  return isLevel ? { width: first, height: second } : { width: second, height: first };
}

/** What one sees: a base without the corners that lie over it, and the corners. */
export function visibleShapes(shape: Coloured): Coloured[] {
  const base = shape.over.reduce<Polygon>((rest, { outline: [, next, last] }) => (next && last ? (cutAlong(rest, last, next)[0] ?? rest) : rest), shape.outline);
  return [{ ...shape, outline: withoutBends(shape) ? withoutStraightCorners(base) : base, over: [] }, ...shape.over];
}

function withoutBends({ arcs }: Coloured): boolean {
  return arcs?.some((radius) => radius !== undefined) !== true;
}
