/** The seams of a plan: what lies between two parts, piece after piece, with its pivots and the place where it stops partway. */
import { ZERO, div, fraction, isZero, mul, neg, sub } from '../exact/number.ts';
import { comparePoints, midpoint, minus, plus, squaredDistance, times } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { squareRoot } from '../exact/roots.ts';
import type { Closing } from './draft.ts';
import { pieceAt, pointAt, vertexOf } from './map.ts';
import type { SeamMap } from './map.ts';
import type { Arc, Seam, SeamKind, Stretch } from './plan.ts';

/** A seam that has no number yet. */
export type Unnumbered = Omit<Seam, 'number'>;

/** Pieces in order, each named by the germ it is entered by, and the ends of those of which half is left out. */
interface Chain {
  readonly germs: readonly number[];
  /** For a piece the germ at the end that is not sewn now. */
  readonly without: ReadonlyMap<number, number>;
  readonly marks: Marked['marks'];
}

/** A map, and points inside its pieces where the seams of flipped corners end. */
export interface Marked {
  readonly map: SeamMap;
  readonly marks: ReadonlyMap<number, readonly Point[]>;
}

/** The seam that sews all given pieces, which lie in one line from end to end; `half` names the ends that are sewn later. */
export function joiningSeam({ map, marks }: Marked, pieces: readonly number[], half: Int32Array): Unnumbered {
  const without = new Map(pieces.flatMap((piece) => (half[piece] === -1 ? [] : [[piece, half[piece] ?? -1] as const])));
  const chain = { germs: upward(map, chained(map, pieces, without)), without, marks };
  const stretches = stretchesOf(map, chain);
  const corners = stretches.slice(1).map((stretch) => stretch.from);
  const [cut] = without;
  const kind: SeamKind = cut ? 'partial' : corners.length > 0 ? 'set_in' : stretches[0]?.arcs ? 'curved' : 'straight';
  return { kind, stretches, corners, ...(cut ? { stop: middleOf(map, cut[0]) } : {}) };
}

/** The seam that closes something within one part. */
export function closingSeam({ map, marks }: Marked, { germs, half, corners }: Closing): Unnumbered {
  const without = new Map([...half].map(([piece, sewn]) => [piece, sewn ^ 1]));
  const [cut] = half.keys();
  const stretches = stretchesOf(map, { germs: upward(map, [...germs]), without, marks });
  return { kind: 'finish', stretches, corners: corners.map((vertex) => pointAt(map, vertex)), ...(cut === undefined ? {} : { stop: middleOf(map, cut) }) };
}

/** The pieces from one end of their line to the other. */
function chained(map: SeamMap, pieces: readonly number[], without: ReadonlyMap<number, number>): number[] {
  const at = new Map<number, number[]>();
  for (const piece of pieces) {
    for (const germ of [2 * piece, 2 * piece + 1]) {
      if (without.get(piece) === germ) continue;
      const vertex = vertexOf(map, germ);
      at.set(vertex, [...(at.get(vertex) ?? []), germ]);
    }
  }
  const ends = [...at.values()].filter((germs) => germs.length === 1).flat();
  const cut = [...without.values()];
  const chain: number[] = [];
  for (let germ = cut[0] ?? ends[0] ?? 2 * (pieces[0] ?? 0), left = pieces.length; left > 0; left -= 1) {
    chain.push(germ);
    const far = germ ^ 1;
    const next = at.get(vertexOf(map, far))?.find((each) => each !== far);
    if (next === undefined) break;
    germ = next;
  }
  return chain;
}

/** The chain from its upper or left end, so that a seam always reads the same way. */
function upward(map: SeamMap, germs: number[]): number[] {
  const [first, last] = [germs[0] ?? 0, (germs.at(-1) ?? 0) ^ 1];
  if (comparePoints(pointAt(map, vertexOf(map, first)), pointAt(map, vertexOf(map, last))) <= 0) return germs;
  return germs.map((germ) => germ ^ 1).reverse();
}

function stretchesOf(map: SeamMap, chain: Chain): Stretch[] {
  const runs: number[][] = [];
  for (const germ of chain.germs) {
    const open = runs.at(-1);
    const before = open?.at(-1);
    if (open && before !== undefined && map.partner[before ^ 1] === germ) open.push(germ);
    else runs.push([germ]);
  }
  return runs.map((germs) => stretchOf(map, germs, chain));
}

function stretchOf(map: SeamMap, germs: readonly number[], { without, marks }: Chain): Stretch {
  const [first, last] = [germs[0] ?? 0, (germs.at(-1) ?? 0) ^ 1];
  const sides = germs.map((germ) => {
    const { left, right } = pieceAt(map, germ >> 1);
    return (germ & 1) === 0 ? { left, right } : { left: right, right: left };
  });
  const bent = germs.some((germ) => pieceAt(map, germ >> 1).radius !== undefined);
  return {
    from: pointOf(map, first, without),
    to: pointOf(map, last, without),
    left: sides.map((side) => side.left),
    right: sides.map((side) => side.right),
    via: germs.flatMap((germ, i) => [...(i > 0 ? [pointAt(map, vertexOf(map, germ))] : []), ...marksAlong(marks.get(germ >> 1) ?? [], germ)]),
    ...(bent ? { arcs: germs.map((germ) => arcOf(map, germ, without)) } : {}),
  };
}

/** The marks of a piece run with it; from its other end they are met the other way round. */
function marksAlong(marks: readonly Point[], germ: number): readonly Point[] {
  return (germ & 1) === 0 ? marks : [...marks].reverse();
}

/** Where a germ is, or the middle of its piece when that end is left out. */
function pointOf(map: SeamMap, germ: number, without: Chain['without']): Point {
  return without.get(germ >> 1) === germ ? middleOf(map, germ >> 1) : pointAt(map, vertexOf(map, germ));
}

/** A straight piece among curved ones has the radius zero. */
function arcOf(map: SeamMap, germ: number, without: Chain['without']): Arc {
  const { radius } = pieceAt(map, germ >> 1);
  const [from, to] = [pointOf(map, germ, without), pointOf(map, germ ^ 1, without)];
  const bulge = radius ?? ZERO;
  return { from, to, radius: (germ & 1) === 0 ? bulge : neg(bulge) };
}

/** Of an arc the point in its middle where Q(√2, √3) holds it, else the middle of its chord. */
function middleOf(map: SeamMap, index: number): Point {
  const { a, b, radius } = pieceAt(map, index);
  const [from, to] = [pointAt(map, a), pointAt(map, b)];
  const middle = midpoint(from, to);
  const squared = squaredDistance(from, to);
  const length = radius && squareRoot(squared);
  const inner = radius && squareRoot(sub(mul(radius, radius), mul(squared, fraction(1, 4))));
  if (!length || !inner || isZero(length)) return middle;
  const chord = minus(to, from);
  const left = { x: chord.y, y: neg(chord.x) };
  return plus(middle, times(left, div(sub(radius, inner), length)));
}
