/**
 * Walks around the places whose value is asked for, and says where and how large they are. All exact.
 */
import { HALF, ZERO, add, compare, div, less, mul, sign, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { comparePoints, midpoint, orientation, pointKey } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { edgesOf, locate, signedArea, withoutStraightCorners } from '../exact/polygon.ts';
import type { Edge, Polygon } from '../exact/polygon.ts';
import type { Piece } from './tiling-pieces.ts';

/** A connected place. Its outline runs clockwise from the topmost of its leftmost corners and may touch itself in corners. */
export interface Region {
  readonly outline: Polygon;
  readonly holes: readonly Polygon[];
  readonly area: Exact;
  /** A point strictly inside, well away from the outline. */
  readonly inside: Point;
}

/** The regions where the value passes `test`, from left to right. Places that touch only in corners are regions of their own. */
export function regionsWhere(pieces: readonly Piece[], test: (value: number) => boolean): Region[] {
  const loops = loopsOf(pieces.flatMap((piece) => borderOf(piece, test))).map((loop) => ({ loop, area: signedArea(loop) }));
  const outer = loops.filter(({ area }) => sign(area) > 0).map((own) => ({ ...own, holes: [] as Polygon[] }));
  for (const { loop } of loops.filter(({ area }) => sign(area) < 0)) {
    const around = outer.filter((candidate) => encloses(candidate.loop, loop)).sort((a, b) => compare(a.area, b.area));
    around[0]?.holes.push(loop);
  }
  return outer
    .map(({ loop, area, holes }) => ({
      outline: tidied(loop),
      holes: holes.map(tidied),
      area: holes.reduce((rest, hole) => add(rest, signedArea(hole)), area),
      inside: pointInside([loop, ...holes]),
    }))
    .sort((a, b) => compareCorners(a.outline, b.outline));
}


/** The piece as an edge with the place on its right-hand side; none when both sides are in or both are out. */
function borderOf({ from, to, left, right }: Piece, test: (value: number) => boolean): Edge[] {
  if (test(right) === test(left)) return [];
  return test(right) ? [{ from, to }] : [{ from: to, to: from }];
}

/** Joins edges to loops, turning right as sharply as can be, so that each loop stays with one connected inside. */
function loopsOf(edges: readonly Edge[]): Polygon[] {
  const leaving = new Map<string, Edge[]>();
  for (const edge of edges) {
    const at = pointKey(edge.from);
    leaving.set(at, [...(leaving.get(at) ?? []), edge]);
  }
  const walked = new Set<Edge>();
  return edges.flatMap((start) => {
    const loop: Point[] = [];
    for (let edge: Edge | undefined = start; edge !== undefined && !walked.has(edge); edge = sharpestRight(edge, leaving)) {
      walked.add(edge);
      loop.push(edge.from);
    }
    return loop.length === 0 ? [] : [loop];
  });
}

function sharpestRight(edge: Edge, leaving: ReadonlyMap<string, readonly Edge[]>): Edge | undefined {
  const choices = leaving.get(pointKey(edge.to)) ?? [];
  return choices.reduce((best: Edge | undefined, next) => (best === undefined || isSharper(edge, next.to, best.to) ? next : best), undefined);
}

/** True when going on to p means a sharper right turn than going on to q. */
function isSharper({ from, to }: Edge, p: Point, q: Point): boolean {
  const [turnP, turnQ] = [orientation(from, to, p), orientation(from, to, q)];
  return turnP === turnQ ? orientation(to, q, p) > 0 : turnP > turnQ;
}

/** True when the loop lies inside the outline; both are loops of one set of edges. */
function encloses(outline: Polygon, loop: Polygon): boolean {
  const [first, second] = loop;
  return first !== undefined && second !== undefined && locate(outline, midpoint(first, second)) > 0;
}

function tidied(loop: Polygon): Polygon {
  const corners = withoutStraightCorners(loop);
  const start = corners.reduce((least, corner, i) => (comparePoints(corner, corners[least] ?? corner) < 0 ? i : least), 0);
  return [...corners.slice(start), ...corners.slice(0, start)];
}

function compareCorners(a: Polygon, b: Polygon): number {
  const different = a.findIndex((p, i) => comparePoints(p, b[i] ?? p) !== 0);
  const [p, q] = [a[different], b[different]];
  return p === undefined || q === undefined ? a.length - b.length : comparePoints(p, q);
}

/** The middle of the widest way through on the line halfway between those two heights of corners that are furthest apart. */
function pointInside(loops: readonly Polygon[]): Point {
  const heights = loops.flat().map((corner) => corner.y).sort(compare);
  const y = middle(widest(heights.map((height, i) => [height, heights[i + 1] ?? height])));
  const crossings = loops
    .flatMap(edgesOf)
    .filter(({ from, to }) => less(from.y, y) !== less(to.y, y))
    .map(({ from, to }) => add(from.x, mul(sub(to.x, from.x), div(sub(y, from.y), sub(to.y, from.y)))))
    .sort(compare);
  return { x: middle(widest(crossings.flatMap((x, i): Span[] => (i % 2 === 0 ? [[x, crossings[i + 1] ?? x]] : [])))), y };
}

type Span = readonly [Exact, Exact];

function widest(spans: readonly Span[]): Span {
  return spans.reduce((best, span) => (less(sub(best[1], best[0]), sub(span[1], span[0])) ? span : best), [ZERO, ZERO]);
}

function middle([from, to]: Span): Exact {
  return mul(HALF, add(from, to));
}
