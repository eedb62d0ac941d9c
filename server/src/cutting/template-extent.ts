/** Shapes in the plane moved about for printing: their extent, arcs included, and the same shape turned, moved or mirrored. In doubles. */
import { pointOn } from './template-marks.ts';
import { sidesOf, type PlaneShape } from './template-outline.ts';
import { vector, type Vector } from './template-plane.ts';

export interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function extentOf(shape: PlaneShape): Extent {
  const reached = sidesOf(shape).flatMap(({ from, to, radius, centre }) => [from, ...(centre ? furthest(centre, Math.abs(radius)).filter((p) => lies(p, from, to) === -Math.sign(radius)) : [])]);
  const [xs, ys] = [reached.map(({ x }) => x), reached.map(({ y }) => y)];
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

/** Whether the shape and an upright box share area: what is left of the shape when it is cut along the sides of the box (Sutherland and Hodgman 1974). */
export function reachesInto(shape: PlaneShape, { left, top, right, bottom }: Extent): boolean {
  const corners = sidesOf(shape).flatMap((side) => (side.centre ? [0, 1, 2, 3, 4, 5, 6, 7].map((i) => pointOn(side, i / 8)) : [side.from]));
  const within = [(p: Vector) => p.x - left, (p: Vector) => right - p.x, (p: Vector) => p.y - top, (p: Vector) => bottom - p.y].reduce(cutOff, corners);
  return Math.abs(areaOf(within)) > 1e-6;
}

function cutOff(corners: readonly Vector[], height: (p: Vector) => number): readonly Vector[] {
  return corners.flatMap((p, i) => {
    const q = corners[(i + 1) % corners.length] ?? p;
    const [here, there] = [height(p), height(q)];
    const crossing = here * there < 0 ? [vector(p.x + ((q.x - p.x) * here) / (here - there), p.y + ((q.y - p.y) * here) / (here - there))] : [];
    return here >= 0 ? [p, ...crossing] : crossing;
  });
}

function areaOf(corners: readonly Vector[]): number {
  return corners.reduce((sum, p, i) => { const q = corners[(i + 1) % corners.length] ?? p; return sum + (p.x * q.y - p.y * q.x) / 2; }, 0);
}

/** Clockwise. */
export function turnedShape(shape: PlaneShape, degrees: number): PlaneShape {
  if (degrees === 0) return shape;
  const [cos, sin] = cosAndSin(degrees);
  return moved(shape, (x, y) => [x * cos - y * sin, x * sin + y * cos]);
}

export function movedShape(shape: PlaneShape, dx: number, dy: number): PlaneShape {
  return moved(shape, (x, y) => [x + dx, y + dy]);
}

/** Quarter turns are exact. */
export function cosAndSin(degrees: number): readonly [number, number] {
  const quarters = degrees / 90;
  if (!Number.isInteger(quarters)) return [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return [[1, 0], [0, 1], [-1, 0], [0, -1]][((quarters % 4) + 4) % 4] as [number, number];
}

function moved(shape: PlaneShape, to: (x: number, y: number) => readonly [number, number]): PlaneShape {
  const points = Array.from({ length: shape.points.length >> 1 }, (_, i) => to(shape.points[2 * i] ?? 0, shape.points[2 * i + 1] ?? 0)).flat();
  return { ...shape, points };
}

function furthest({ x, y }: Vector, radius: number): readonly Vector[] {
  return [vector(x + radius, y), vector(x - radius, y), vector(x, y + radius), vector(x, y - radius)];
}

/** To the right of the way from one point to another: 1, to its left: −1. */
function lies(p: Vector, from: Vector, to: Vector): number {
  return Math.sign((to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x));
}
