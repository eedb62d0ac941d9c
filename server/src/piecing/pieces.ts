/** The straight edges of shapes, cut where corners of their neighbours stand on them, and the directions they run in. */
import { ZERO, div, isZero, key, mul, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { comparePoints, minus, pointKey } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';

export interface Piece {
  /** Vertices. Walking from a to b, `right` lies to the right; an arc bulges to the left. */
  readonly a: number;
  readonly b: number;
  /** Shapes, or −1 for the outside. */
  readonly left: number;
  readonly right: number;
  /** Equal for pieces that run the same way; negative for curved ones. */
  readonly heading: number;
  readonly radius?: Exact;
}

/** An edge with its ends as vertices, and the shape to the right of it. */
export interface Edge {
  readonly from: number;
  readonly to: number;
  readonly shape: number;
  readonly radius?: Exact;
}

interface LineEdges {
  readonly heading: number;
  readonly edges: Edge[];
}

/** Undefined when two shapes lie on the same side of an edge, or an edge has no length. */
export function straightPieces(edges: readonly Edge[], points: readonly Point[], headings: Headings): Piece[] | undefined {
  const lines = new Map<string, LineEdges>();
  for (const edge of edges) {
    const [from, to] = [points[edge.from], points[edge.to]];
    if (!from || !to || edge.from === edge.to) return undefined;
    const { heading, name } = headings.lineOf(from, to);
    const line = lines.get(name);
    if (line) line.edges.push(edge);
    else lines.set(name, { heading, edges: [edge] });
  }
  const pieces = [...lines.values()].map((line) => piecesOnLine(line, points));
  return pieces.every((each) => each !== undefined) ? pieces.flat() : undefined;
}

/** The edges of one line, cut at each other's ends. */
function piecesOnLine({ heading, edges }: LineEdges, points: readonly Point[]): Piece[] | undefined {
  const ends = verticesInOrder(edges, points);
  const rank = new Map(ends.map((vertex, i) => [vertex, i]));
  const [left, right] = [new Int32Array(ends.length).fill(-1), new Int32Array(ends.length).fill(-1)];
  for (const { from, to, shape } of edges) {
    const [i, j] = [rank.get(from) ?? 0, rank.get(to) ?? 0];
    const [side, first, last] = i < j ? [right, i, j] : [left, j, i];
    for (let k = first; k < last; k += 1) {
      if (side[k] !== -1) return undefined;
      side[k] = shape;
    }
  }
  return ends.flatMap((a, k) => {
    const [l, r, b] = [left[k] ?? -1, right[k] ?? -1, ends[k + 1]];
    return b === undefined || (l < 0 && r < 0) ? [] : [{ a, b, left: l, right: r, heading }];
  });
}

function verticesInOrder(edges: readonly Edge[], points: readonly Point[]): number[] {
  const ends = [...new Set(edges.flatMap(({ from, to }) => [from, to]))];
  if (ends.length === 2) return orderTwo(ends, points);
  return ends.sort((v, w) => compareVertices(points, v, w));
}

function orderTwo(ends: number[], points: readonly Point[]): number[] {
  const [v, w] = ends;
  return v !== undefined && w !== undefined && compareVertices(points, v, w) > 0 ? [w, v] : ends;
}

function compareVertices(points: readonly Point[], v: number, w: number): number {
  const [p, q] = [points[v], points[w]];
  if (!p || !q) return 0;
  return comparePoints(p, q);
}

/** Names directions of lines; a line is a heading and an offset. */
export class Headings {
  readonly directions: Point[] = [];
  readonly #slopes = new Map<string, { readonly number: number; readonly slope: Exact | undefined }>();
  readonly #numbers = new Map<string, number>();

  /** The line of an edge: its heading, and a name that only edges on the same line share. */
  lineOf(from: Point, to: Point): { readonly heading: number; readonly name: string } {
    const { number, slope } = this.#slopeOf(minus(to, from));
    const offset = slope === undefined ? from.x : sub(from.y, mul(slope, from.x));
    return { heading: number, name: `${number} ${key(offset)}` };
  }

  #slopeOf(v: Point): { readonly number: number; readonly slope: Exact | undefined } {
    const name = pointKey(v);
    const known = this.#slopes.get(name);
    if (known) return known;
    const slope = isZero(v.x) ? undefined : isZero(v.y) ? ZERO : div(v.y, v.x);
    const slopeName = slope === undefined ? 'upright' : key(slope);
    const number = this.#numbers.get(slopeName) ?? this.directions.push(v) - 1;
    this.#numbers.set(slopeName, number);
    const found = { number, slope };
    this.#slopes.set(name, found);
    return found;
  }
}
