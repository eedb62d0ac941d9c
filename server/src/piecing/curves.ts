/** Curved edges: matched with their neighbours', cut where corners stand on them, and followed where they run on smoothly. */
import { compare, equals, fraction, key, mul, neg, sign, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { cross, dot, minus, opposite, orientation, plus, squaredDistance, times } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { squareRoot } from '../exact/roots.ts';
import { groupedBy } from '../text/grouped.ts';
import type { Edge, Piece } from './pieces.ts';

/** A curved edge, from a to b with its bulge to the left: the shape to its right bulges out, one to its left is hollow. */
interface Arc {
  readonly a: number;
  readonly b: number;
  readonly radius: Exact;
  readonly shape: number;
  readonly side: 'left' | 'right';
}

/** Undefined when two shapes lie on the same side of a curve. */
export function curvedPieces(edges: readonly Edge[], points: readonly Point[]): Piece[] | undefined {
  const arcs = edges.flatMap(arcOf);
  const whole = pairs(arcs);
  const lonely = new Set([...whole.values()].filter((pair) => pair.length === 1).flat());
  if (lonely.size === 0) return piecesOf(whole);
  return piecesOf(pairs(arcs.flatMap((arc) => (lonely.has(arc) ? cutArc(arc, [...lonely], points) : [arc]))));
}

function arcOf({ from, to, shape, radius }: Edge): Arc[] {
  if (radius === undefined || sign(radius) === 0) return [];
  return sign(radius) > 0 ? [{ a: from, b: to, radius, shape, side: 'right' }] : [{ a: to, b: from, radius: neg(radius), shape, side: 'left' }];
}

function pairs(arcs: readonly Arc[]): Map<string, Arc[]> {
  return groupedBy(arcs, ({ a, b, radius }) => `${a} ${b} ${key(radius)}`);
}

function piecesOf(groups: ReadonlyMap<string, readonly Arc[]>): Piece[] | undefined {
  const pieces: Piece[] = [];
  for (const group of groups.values()) {
    const lefts = group.filter((arc) => arc.side === 'left');
    const rights = group.filter((arc) => arc.side === 'right');
    const [one] = group;
    if (!one || lefts.length > 1 || rights.length > 1) return undefined;
    const shapes = { left: lefts[0]?.shape ?? -1, right: rights[0]?.shape ?? -1 };
    pieces.push({ a: one.a, b: one.b, ...shapes, heading: -1 - pieces.length, radius: one.radius });
  }
  return pieces;
}

/** The arc, cut at the ends of others that lie on it. */
function cutArc(arc: Arc, others: readonly Arc[], points: readonly Point[]): Arc[] {
  const near = others.filter((other) => other !== arc && equals(other.radius, arc.radius)).flatMap(({ a, b }) => [a, b]);
  const [from, to] = [points[arc.a], points[arc.b]];
  if (!from || !to) return [arc];
  const chord = minus(to, from);
  const along = (v: number): Exact => dot(minus(points[v] ?? from, from), chord);
  const inside = [...new Set(near)].filter((v) => v !== arc.a && v !== arc.b && liesOn(points[v] ?? from, from, to, arc.radius));
  const stops = [arc.a, ...inside.sort((v, w) => compare(along(v), along(w))), arc.b];
  return stops.slice(1).map((b, i) => ({ ...arc, a: stops[i] ?? arc.a, b }));
}

/**
 * True when p lies on the shorter arc of that radius from a to b that bulges to the left. The circle through a triangle has
 * the radius (product of the sides) / (4 · area); on the shorter arc the angle at p is 90° or more.
 */
function liesOn(p: Point, a: Point, b: Point, radius: Exact): boolean {
  if (orientation(a, b, p) >= 0 || sign(dot(minus(a, p), minus(b, p))) > 0) return false;
  const twiceArea = cross(minus(a, p), minus(b, p));
  const sides = mul(squaredDistance(a, b), mul(squaredDistance(a, p), squaredDistance(b, p)));
  return equals(sides, mul(fraction(4), mul(mul(radius, radius), mul(twiceArea, twiceArea))));
}

interface Meeting {
  readonly pieces: readonly Piece[];
  readonly points: readonly Point[];
  readonly partner: Int32Array;
}

/** Pairs the germs of a vertex, one of them curved at least, that run on into each other without a bend. */
export function smoothPartners({ pieces, points, partner }: Meeting, germs: readonly number[]): void {
  const headings = germs.map((germ) => tangentOf(pieces[germ >> 1], germ, points));
  germs.forEach((germ, i) => {
    const j = headings.findIndex((other, k) => k > i && isFree(partner, germ, germs[k]) && isOpposite(headings[i], other));
    const other = germs[j];
    if (other !== undefined) [partner[germ], partner[other]] = [other, germ];
  });
}

function isFree(partner: Int32Array, germ: number, other: number | undefined): boolean {
  return partner[germ] === -1 && other !== undefined && partner[other] === -1;
}

function isOpposite(u: Point | undefined, v: Point | undefined): boolean {
  return u !== undefined && v !== undefined && sign(cross(u, v)) === 0 && sign(dot(u, v)) < 0;
}

/**
 * The direction in which a piece leaves its germ's vertex; undefined where it has none in Q(√2, √3). An arc leaves its chord d by
 * the angle whose cotangent is k = √(4r²/d² − 1), to the left at a and to the right at b.
 */
function tangentOf(piece: Piece | undefined, germ: number, points: readonly Point[]): Point | undefined {
  const [a, b] = [points[piece?.a ?? -1], points[piece?.b ?? -1]];
  if (!piece || !a || !b) return undefined;
  const chord = minus(b, a);
  const ahead = (germ & 1) === 0 ? chord : opposite(chord);
  if (piece.radius === undefined) return ahead;
  const squared = dot(chord, chord);
  const root = squareRoot(mul(sub(mul(fraction(4), mul(piece.radius, piece.radius)), squared), squared));
  if (root === undefined) return undefined;
  // k · d² is the root above: both sides are scaled by d², so that nothing is divided.
  return plus(times(ahead, root), times(leftOf(chord), squared));
}

/** A quarter turn to the left (y down). */
function leftOf({ x, y }: Point): Point {
  return { x: y, y: neg(x) };
}
