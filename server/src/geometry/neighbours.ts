/**
 * Which outlines lie side by side: those that share a part of an edge, however short, one on either side of it. Exact: edges are
 * gathered by the line that bears them, and swept along it. Curved edges count by their chords, which both sides share.
 */
import { compare, div, equals, key, less, mul, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { edgesOf } from '../exact/polygon.ts';
import type { Edge, Polygon } from '../exact/polygon.ts';

/** Indices of two clockwise outlines, the lower first; each pair once, in no order. */
export type Pair = readonly [number, number];

export function neighbours(outlines: readonly Polygon[]): Pair[] {
  return neighboursAlong(outlines.flatMap((outline, of) => edgesOf(outline).map((edge) => ({ ...edge, of }))));
}

/** The same for single edges, each of what has the number `of` and lies to the right of one who walks along it. */
export function neighboursAlong(edges: readonly (Edge & { readonly of: number })[]): Pair[] {
  const lines = new Map<string, Stretch[]>();
  for (const edge of edges) {
    const { line, ...stretch } = stretchOf(edge, edge.of);
    const known = lines.get(line);
    if (known) known.push(stretch);
    else lines.set(line, [stretch]);
  }
  const found = new Map<string, Pair>();
  for (const stretches of lines.values()) {
    for (const pair of meeting(stretches)) found.set(pair.join(), pair);
  }
  return [...found.values()];
}

/** A part of a line with an outline on one side of it. */
interface Stretch {
  readonly of: number;
  readonly start: Exact;
  readonly end: Exact;
  /** The outline runs towards growing x, or y on an upright line. */
  readonly forwards: boolean;
}

function stretchOf({ from, to }: Edge, of: number): Stretch & { readonly line: string } {
  const upright = equals(from.x, to.x);
  const [a, b] = upright ? [from.y, to.y] : [from.x, to.x];
  const forwards = less(a, b);
  return { of, line: upright ? `| ${key(from.x)}` : lineKey({ from, to }), start: forwards ? a : b, end: forwards ? b : a, forwards };
}

/** Slope and height at x = 0. */
function lineKey({ from, to }: Edge): string {
  if (equals(from.y, to.y)) return `- ${key(from.y)}`;
  const slope = div(sub(to.y, from.y), sub(to.x, from.x));
  return `${key(slope)} ${key(sub(from.y, mul(slope, from.x)))}`;
}

function meeting(stretches: readonly Stretch[]): Pair[] {
  const pairs: Pair[] = [];
  let open: Stretch[] = [];
  for (const stretch of [...stretches].sort((a, b) => compare(a.start, b.start))) {
    open = open.filter((other) => less(stretch.start, other.end));
    for (const other of open) {
      if (other.forwards !== stretch.forwards && other.of !== stretch.of) pairs.push(other.of < stretch.of ? [other.of, stretch.of] : [stretch.of, other.of]);
    }
    if (less(stretch.start, stretch.end)) open.push(stretch);
  }
  return pairs;
}
