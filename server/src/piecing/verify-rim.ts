/** The verifier's fabric: rims of parts, edges found on them, and edges taken off where two sides are sewn together. */
import { ZERO, equals, fraction, mul, neg, sign } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { cross, dot, minus, samePoint, squaredDistance } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import type { Arc } from './plan.ts';

/** An edge of a rim, clockwise; linked to its neighbours. */
export interface RimEdge {
  from: Point;
  to: Point;
  /** Positive bulges out; zero for straight edges. */
  readonly radius: Exact;
  readonly patch: number;
  readonly allowance: Exact;
  before: RimEdge;
  next: RimEdge;
}

export interface Rim {
  readonly edges: Set<RimEdge>;
}

export interface CutPiece {
  readonly patch: number;
  readonly outline: readonly Point[];
  readonly arcs: readonly (Exact | undefined)[];
  readonly allowance: (edge: number) => Exact;
}

export function rimOf({ patch, outline, arcs, allowance }: CutPiece): Rim {
  const edges = outline.map((from, i) => {
    const edge = { from, to: outline[(i + 1) % outline.length] ?? from, radius: arcs[i] ?? ZERO, patch, allowance: allowance(i) } as RimEdge;
    edge.before = edge;
    edge.next = edge;
    return edge;
  });
  edges.forEach((edge, i) => link(edge, edges[(i + 1) % edges.length] ?? edge));
  return { edges: new Set(edges) };
}

interface Line {
  readonly from: Point;
  readonly to: Point;
  readonly arcs?: readonly Arc[];
}

/** The edges of a rim along a line, walking it forward or back, cut so that they fit; undefined when the rim does not run there. */
export function chainOn(rim: Rim, line: Line, way: 'forward' | 'back'): readonly RimEdge[] | undefined {
  const parts: readonly Arc[] = line.arcs ?? [{ from: line.from, to: line.to, radius: ZERO }];
  const walked = way === 'forward' ? parts : parts.map(({ from, to, radius }) => ({ from: to, to: from, radius: neg(radius) })).reverse();
  const chain: RimEdge[] = [];
  for (const part of walked) {
    const found = alongPart(rim, part, chain.at(-1)?.next);
    if (!found) return undefined;
    chain.push(...found);
  }
  return chain;
}

function alongPart(rim: Rim, part: Arc, after: RimEdge | undefined): readonly RimEdge[] | undefined {
  const starts = after ? [after] : [...rim.edges];
  for (const edge of starts) {
    if (!runsAlong(edge, part)) continue;
    const first = startAt(rim, edge, part.from);
    if (!first) continue;
    const chain = [first];
    for (let last = first; !samePoint(last.to, part.to); last = last.next) {
      if (isInside(part.to, last)) {
        cutEdge(rim, last, part.to);
        break;
      }
      if (!runsAlong(last.next, part) || chain.length > rim.edges.size) return undefined;
      chain.push(last.next);
    }
    return chain;
  }
  return undefined;
}

/** The edge itself or the rest of it, beginning at p. */
function startAt(rim: Rim, edge: RimEdge, p: Point): RimEdge | undefined {
  if (samePoint(edge.from, p)) return edge;
  return isInside(p, edge) ? cutEdge(rim, edge, p) : undefined;
}

/** True when an edge lies on the line of a part and runs its way. */
function runsAlong(edge: RimEdge, part: Arc): boolean {
  if (!equals(edge.radius, part.radius)) return false;
  const [u, v] = [minus(part.to, part.from), minus(edge.to, edge.from)];
  if (sign(part.radius) === 0) return sign(cross(u, v)) === 0 && sign(dot(u, v)) > 0 && sign(cross(u, minus(edge.from, part.from))) === 0;
  const covers = (p: Point, arc: Arc | RimEdge): boolean => samePoint(p, arc.from) || samePoint(p, arc.to) || isOnArc(p, arc);
  return (covers(edge.from, part) && covers(edge.to, part)) || (covers(part.from, edge) && covers(part.to, edge));
}

function isInside(p: Point, edge: RimEdge): boolean {
  if (sign(edge.radius) !== 0) return isOnArc(p, edge);
  const [u, v] = [minus(edge.from, p), minus(edge.to, p)];
  return sign(cross(u, v)) === 0 && sign(dot(u, v)) < 0;
}

/**
 * True when p lies inside the shorter arc between its ends: the points that see a chord c under an angle whose sine is c / 2r lie
 * on circles of radius r; on the shorter arc the angle is blunt (or right), and p lies on the side the arc bulges to.
 */
function isOnArc(p: Point, { from, to, radius }: { readonly from: Point; readonly to: Point; readonly radius: Exact }): boolean {
  const [u, v] = [minus(from, p), minus(to, p)];
  const turn = cross(u, v);
  if (sign(turn) !== -sign(radius) || sign(dot(u, v)) > 0) return false;
  const left = mul(mul(fraction(4), mul(radius, radius)), mul(turn, turn));
  return equals(left, mul(squaredDistance(from, to), mul(dot(u, u), dot(v, v))));
}

/** Cuts an edge in two at a point inside it; the second part is answered. */
function cutEdge(rim: Rim, edge: RimEdge, p: Point): RimEdge {
  const rest: RimEdge = { ...edge, from: p };
  link(rest, edge.next);
  edge.to = p;
  link(edge, rest);
  rim.edges.add(rest);
  return rest;
}

/** True when the rim runs straight on before or after an edge (curves run on in the same circle). */
export function followsOn(edge: RimEdge | undefined, where: 'before' | 'after'): boolean {
  if (!edge) return false;
  const [first, second] = where === 'before' ? [edge.before, edge] : [edge, edge.next];
  return !turnsAt(first, second);
}

export function turnsAt(first: RimEdge | undefined, second: RimEdge | undefined): boolean {
  if (!first || !second) return true;
  if (sign(first.radius) !== 0 || sign(second.radius) !== 0) return !(first.patch === second.patch && equals(first.radius, second.radius) && first.to === second.from && isOneArc(first, second));
  const [u, v] = [minus(first.to, first.from), minus(second.to, second.from)];
  return sign(cross(u, v)) !== 0 || sign(dot(u, v)) < 0;
}

function isOneArc(first: RimEdge, second: RimEdge): boolean {
  return isOnArc(first.to, { from: first.from, to: second.to, radius: first.radius });
}

/** Sews pairs of chains together: both are taken off, and the rims close up behind them. */
export function takeOff(one: Rim, two: Rim, sides: readonly { readonly right: readonly RimEdge[]; readonly left: readonly RimEdge[] }[]): Rim {
  const rim = one === two ? one : { edges: new Set([...one.edges, ...two.edges]) };
  for (const { right, left } of sides) {
    const [r1, rn, l1, ln] = [right[0], right.at(-1), left[0], left.at(-1)];
    if (!r1 || !rn || !l1 || !ln) continue;
    const ends = [[r1.before, ln.next], [l1.before, rn.next]] as const;
    for (const edge of [...right, ...left]) rim.edges.delete(edge);
    for (const [before, after] of ends) if (rim.edges.has(before) && rim.edges.has(after)) link(before, after);
  }
  return rim;
}

function link(first: RimEdge, second: RimEdge): void {
  first.next = second;
  second.before = first;
}
