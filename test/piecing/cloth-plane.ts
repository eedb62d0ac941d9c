/** Edges, shapes and motions in floating point, for sewing on the table: nothing here is the tool's own. */
import { toNumber } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import type { Patch } from '../../server/src/geometry/layout.ts';
import type { Stretch } from '../../server/src/piecing/plan.ts';

export type V = readonly [x: number, y: number];

/** x → turned by (c, s), then moved. */
export interface Motion {
  readonly c: number;
  readonly s: number;
  readonly d: V;
}

export interface Edge {
  readonly from: V;
  readonly to: V;
  /** 0 for straight ones. */
  readonly radius: number;
}

/** Closer than this is the same. */
export const NEAR = 1e-6;

export function edgesOf({ outline, arcs }: Patch): Edge[] {
  return outline.map((p, i) => ({ from: xy(p), to: xy(outline[(i + 1) % outline.length] ?? p), radius: radiusOf(arcs?.[i]) }));
}

function radiusOf(radius: Exact | undefined): number {
  return radius ? toNumber(radius) : 0;
}

export function lengthAlong({ from, to, arcs }: Stretch): number {
  return arcs ? arcs.reduce((sum, arc) => sum + lengthOf({ from: xy(arc.from), to: xy(arc.to), radius: toNumber(arc.radius) }), 0) : distance(xy(from), xy(to));
}

/** How far two edges run along each other, whichever way. */
export function overlap(a: Edge, b: Edge): number {
  if ((a.radius === 0) !== (b.radius === 0) || !isOn(a, b)) return 0;
  const [from, to] = along(a, b);
  return Math.max(0, Math.min(lengthOf(a), Math.max(from, to)) - Math.max(0, Math.min(from, to)));
}

/** On one line, or on one circle. */
function isOn(a: Edge, b: Edge): boolean {
  if (a.radius === 0) return off(a, b.from) < NEAR && off(a, b.to) < NEAR;
  return Math.abs(Math.abs(a.radius) - Math.abs(b.radius)) < NEAR && near(centreOf(a), centreOf(b));
}

export function without(edge: Edge, line: Edge): Edge[] {
  const length = lengthOf(edge);
  const [from, to] = along(edge, line).sort((a, b) => a - b);
  const rest: Edge[] = [];
  if (from > NEAR) rest.push({ ...edge, to: placeAlong(edge, from) });
  if (to < length - NEAR) rest.push({ ...edge, from: placeAlong(edge, to) });
  return rest;
}

/** Where the ends of b lie along a, by length. */
function along(a: Edge, b: Edge): [number, number] {
  return [positionOn(a, b.from), positionOn(a, b.to)];
}

function positionOn(edge: Edge, p: V): number {
  if (edge.radius !== 0) {
    const centre = centreOf(edge);
    const swept = angleOf(centre, p) - angleOf(centre, edge.from);
    const turn = Math.atan2(Math.sin(swept), Math.cos(swept));
    return turn * Math.sign(edge.radius) * Math.abs(edge.radius);
  }
  const length = distance(edge.from, edge.to);
  return ((p[0] - edge.from[0]) * (edge.to[0] - edge.from[0]) + (p[1] - edge.from[1]) * (edge.to[1] - edge.from[1])) / length;
}

function placeAlong(edge: Edge, at: number): V {
  if (edge.radius !== 0) {
    const centre = centreOf(edge);
    const angle = angleOf(centre, edge.from) + at / edge.radius;
    return [centre[0] + Math.abs(edge.radius) * Math.cos(angle), centre[1] + Math.abs(edge.radius) * Math.sin(angle)];
  }
  const length = distance(edge.from, edge.to);
  return [edge.from[0] + ((edge.to[0] - edge.from[0]) * at) / length, edge.from[1] + ((edge.to[1] - edge.from[1]) * at) / length];
}

export function lengthOf({ from, to, radius }: Edge): number {
  const chord = distance(from, to);
  return radius === 0 ? chord : 2 * Math.abs(radius) * Math.asin(Math.min(1, chord / 2 / Math.abs(radius)));
}

/** y runs down: an edge that bulges to the left of its way has its centre on the right. */
function centreOf({ from, to, radius }: Edge): V {
  const chord = distance(from, to);
  const depth = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4)) * Math.sign(radius);
  return [(from[0] + to[0]) / 2 - ((to[1] - from[1]) / chord) * depth, (from[1] + to[1]) / 2 + ((to[0] - from[0]) / chord) * depth];
}

function angleOf(centre: V, p: V): number {
  return Math.atan2(p[1] - centre[1], p[0] - centre[0]);
}

function off(a: Edge, p: V): number {
  return Math.abs((a.to[0] - a.from[0]) * (p[1] - a.from[1]) - (a.to[1] - a.from[1]) * (p[0] - a.from[0])) / distance(a.from, a.to);
}

/** Corners without those on a straight edge. */
export function corners({ outline }: Patch): V[] {
  const points = outline.map(xy);
  return points.filter((p, i) => off({ from: points.at(i - 1) ?? p, to: points[(i + 1) % points.length] ?? p, radius: 0 }, p) > NEAR);
}

/** Every edge moved inward. */
export function inset(shape: readonly V[], by: number): V[] {
  const turnsRight = area(shape) > 0 ? 1 : -1;
  const lines = shape.map((from, i) => {
    const to = shape[(i + 1) % shape.length] ?? from;
    const length = distance(from, to);
    const n: V = [(-(to[1] - from[1]) / length) * turnsRight, ((to[0] - from[0]) / length) * turnsRight];
    return { p: [from[0] + n[0] * by, from[1] + n[1] * by] as V, d: [to[0] - from[0], to[1] - from[1]] as V };
  });
  return lines.map((line, i) => cross(lines.at(i - 1) ?? line, line));
}

export function outset(shape: readonly V[], by: number): V[] {
  return inset(shape, -by);
}

/** A half or a quarter of a square with what was cut over taken off its legs; the seam on the long side stays. */
export function smaller(triangle: readonly V[], over: number): V[] {
  const legs = triangle.map((p, i) => distance(p, triangle[(i + 1) % 3] ?? p));
  const leg = Math.min(...legs);
  const longest = Math.max(...legs);
  // Half squares are cut over on the leg, quarters on the long side.
  const isQuarter = Math.abs((triangle[1]?.[1] ?? 0) - (triangle[0]?.[1] ?? 0)) < NEAR && Math.abs(distance(triangle[0] ?? [0, 0], triangle[1] ?? [0, 0]) - longest) < NEAR;
  const factor = isQuarter ? (longest - over) / longest : (leg - over) / leg;
  return triangle.map(([x, y]): V => [x * factor, y * factor]);
}

function cross(a: { readonly p: V; readonly d: V }, b: { readonly p: V; readonly d: V }): V {
  const det = a.d[0] * b.d[1] - a.d[1] * b.d[0];
  const t = ((b.p[0] - a.p[0]) * b.d[1] - (b.p[1] - a.p[1]) * b.d[0]) / det;
  return [a.p[0] + a.d[0] * t, a.p[1] + a.d[1] * t];
}

function area(shape: readonly V[]): number {
  return shape.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = shape[(i + 1) % shape.length] ?? [x, y];
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}

export function boxOf(shape: readonly V[]): readonly [number, number] {
  const [xs, ys] = [shape.map(([x]) => x), shape.map(([, y]) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}

export function sameSize(a: readonly number[], b: readonly number[]): boolean {
  const [p, q] = [a, b].map((sizes) => [...sizes].sort((x, y) => x - y));
  return (p ?? []).every((size, i) => Math.abs(size - (q?.[i] ?? 0)) < 1e-4);
}

export function apply({ c, s, d }: Motion, [x, y]: V): V {
  return [c * x - s * y + d[0], s * x + c * y + d[1]];
}

export function after(second: Motion, first: Motion): Motion {
  return { c: second.c * first.c - second.s * first.s, s: second.s * first.c + second.c * first.s, d: apply(second, first.d) };
}

/** The motion that carries one line to another; undefined when they are not as long. */
export function between([p, q]: readonly [V, V], [a, b]: readonly [V, V]): Motion | undefined {
  const [length, other] = [distance(p, q), distance(a, b)];
  if (Math.abs(length - other) > NEAR || length < NEAR) return undefined;
  const [u, v] = [[(q[0] - p[0]) / length, (q[1] - p[1]) / length], [(b[0] - a[0]) / other, (b[1] - a[1]) / other]] as const;
  const [c, s] = [u[0] * v[0] + u[1] * v[1], u[0] * v[1] - u[1] * v[0]];
  return { c, s, d: [a[0] - (c * p[0] - s * p[1]), a[1] - (s * p[0] + c * p[1])] };
}

/** The turn that carries a shape to another, corner to corner from whichever corner fits. */
export function motionBetween(from: readonly V[], to: readonly V[]): Motion | undefined {
  const target = area(from) * area(to) < 0 ? [...to].reverse() : to;
  if (from.length !== target.length) return undefined;
  for (let shift = 0; shift < target.length; shift += 1) {
    const turned = from.map((_, i) => target[(i + shift) % target.length] ?? [0, 0] as V);
    const [a, b, p, q] = [from[0], from[1], turned[0], turned[1]];
    const motion = a && b && p && q ? between([a, b], [p, q]) : undefined;
    if (motion && from.every((corner, i) => near(apply(motion, corner), turned[i] ?? corner))) return motion;
  }
  return undefined;
}

export function sameMotion(a: Motion, b: Motion): boolean {
  return Math.abs(a.c - b.c) < NEAR && Math.abs(a.s - b.s) < NEAR && near(a.d, b.d);
}

export function xy({ x, y }: { readonly x: Exact; readonly y: Exact }): V {
  return [toNumber(x), toNumber(y)];
}

export function near(a: V, b: V): boolean {
  return distance(a, b) < 1e-5;
}

export function distance(a: V, b: V): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
