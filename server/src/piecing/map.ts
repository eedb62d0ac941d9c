/**
 * Which patches meet along which stretch of which seam. Edges are cut where corners of neighbours stand on them; what is left are
 * `pieces`, each between two patches or between a patch and the outside. An end of a piece at a vertex is a `germ`: 2 · piece for
 * its start, 2 · piece + 1 for its end. All questions of order are asked of these numbers; no point is looked at again.
 */
import { isZero } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { pointKey } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { curvedPieces, smoothPartners } from './curves.ts';
import { Headings, straightPieces } from './pieces.ts';
import type { Edge, Piece } from './pieces.ts';

/** A simple outline, clockwise; `arcs[i]` bends the edge from corner i to the next, positive when it bulges out. */
export interface Shape {
  readonly outline: readonly Point[];
  readonly arcs?: readonly (Exact | undefined)[];
}

export interface SeamMap {
  readonly points: readonly Point[];
  readonly pieces: readonly Piece[];
  /** For each shape its pieces. */
  readonly around: readonly (readonly number[])[];
  /** For each vertex the germs of the seams that end there; the outside's pieces aside. */
  readonly germs: readonly (readonly number[])[];
  /** For each germ the one that goes on straight (or smoothly) from it, or −1. */
  readonly partner: Int32Array;
  /** For each vertex whether it lies on the outside. */
  readonly outer: Uint8Array;
  /** For each heading the direction of its lines. */
  readonly headings: readonly Point[];
}

/** The map of shapes that tile some area; undefined when two of them lie on the same side of an edge. */
export function mapOf(shapes: readonly Shape[]): SeamMap | undefined {
  const points: Point[] = [];
  const edges = edgesOf(shapes, vertexNumbers(points));
  const headings = new Headings();
  const straight = straightPieces(edges.filter((edge) => edge.radius === undefined), points, headings);
  const curved = curvedPieces(edges.filter((edge) => edge.radius !== undefined), points);
  if (!straight || !curved) return undefined;
  const pieces = [...straight, ...curved];
  const germs = germsOf(pieces, points.length);
  return {
    points,
    pieces,
    around: piecesAround(pieces, shapes.length),
    germs,
    partner: partnersOf(pieces, germs, points),
    outer: outerVertices(pieces, points.length),
    headings: headings.directions,
  };
}

/** The vertex at the end of a piece where a germ is. */
export function vertexOf(map: SeamMap, germ: number): number {
  const piece = pieceAt(map, germ >> 1);
  return (germ & 1) === 0 ? piece.a : piece.b;
}

export function pieceAt(map: SeamMap, index: number): Piece {
  const piece = map.pieces[index];
  if (!piece) throw new RangeError('No such piece.');
  return piece;
}

export function pointAt(map: SeamMap, vertex: number): Point {
  const point = map.points[vertex];
  if (!point) throw new RangeError('No such vertex.');
  return point;
}

function vertexNumbers(points: Point[]): (p: Point) => number {
  const known = new Map<string, number>();
  return (p) => {
    const name = pointKey(p);
    const number = known.get(name) ?? points.push(p) - 1;
    known.set(name, number);
    return number;
  };
}

function edgesOf(shapes: readonly Shape[], vertexAt: (p: Point) => number): Edge[] {
  return shapes.flatMap(({ outline, arcs }, shape) => {
    const corners = outline.map(vertexAt);
    return corners.map((from, i): Edge => {
      const radius = bendOf(arcs?.[i]);
      const to = corners[(i + 1) % corners.length] ?? from;
      return radius === undefined ? { from, to, shape } : { from, to, shape, radius };
    });
  });
}

function bendOf(radius: Exact | undefined): Exact | undefined {
  return radius === undefined || isZero(radius) ? undefined : radius;
}

function germsOf(pieces: readonly Piece[], vertices: number): number[][] {
  const germs: number[][] = Array.from({ length: vertices }, () => []);
  pieces.forEach((piece, i) => {
    if (piece.left < 0 || piece.right < 0) return;
    germs[piece.a]?.push(2 * i);
    germs[piece.b]?.push(2 * i + 1);
  });
  return germs;
}

function piecesAround(pieces: readonly Piece[], shapes: number): number[][] {
  const around: number[][] = Array.from({ length: shapes }, () => []);
  pieces.forEach((piece, i) => {
    if (piece.left >= 0) around[piece.left]?.push(i);
    if (piece.right >= 0) around[piece.right]?.push(i);
  });
  return around;
}

/** Pieces of one line that meet run opposite ways from the vertex, since a line passes a vertex once. */
function partnersOf(pieces: readonly Piece[], germs: readonly (readonly number[])[], points: readonly Point[]): Int32Array {
  const partner = new Int32Array(2 * pieces.length).fill(-1);
  for (const here of germs) {
    const byHeading = new Map<number, number>();
    for (const germ of here) {
      const heading = pieces[germ >> 1]?.heading ?? -1;
      const other = heading < 0 ? undefined : byHeading.get(heading);
      if (other !== undefined) [partner[germ], partner[other]] = [other, germ];
      byHeading.set(heading, germ);
    }
    if (here.some((germ) => (pieces[germ >> 1]?.heading ?? 0) < 0)) smoothPartners({ pieces, points, partner }, here);
  }
  return partner;
}

function outerVertices(pieces: readonly Piece[], vertices: number): Uint8Array {
  const outer = new Uint8Array(vertices);
  for (const { a, b, left, right } of pieces) if (left < 0 || right < 0) outer[a] = outer[b] = 1;
  return outer;
}
