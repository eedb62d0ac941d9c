/**
 * Stretches left over, cut where they meet, with the value on both sides of each piece. Exact; doubles only pass over what cannot meet.
 */
import { above, below, compare, equals } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { comparePoints, meetingOfLines, midpoint, onSegment, orientation, samePoint } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import type { Edge } from '../exact/polygon.ts';
import type { Stretch } from './tiling-chain.ts';
import { nearPairs, reachOf } from './tiling-near.ts';
import type { Reach } from './tiling-near.ts';

/** A stretch, or a part of one, that meets others only at its ends, with the values on its two sides (see `Stretch`). */
export interface Piece extends Edge {
  readonly right: number;
  readonly left: number;
}

/** Cuts the stretches where they meet and values both sides. Far outside, the value is 0. Undefined when there are more than `most` meetings. */
export function piecesOf(stretches: readonly Stretch[], most: number): Piece[] | undefined {
  const parts = cutWhereTheyMeet(stretches, most)?.map((stretch) => ({ ...stretch, ...reachOf([stretch.from, stretch.to]) }));
  if (parts === undefined) return undefined;
  const partsNear = columnsOf(parts);
  return parts.map(({ from, to, rise }) => {
    const value = valueBeside({ from, to }, partsNear);
    return isUpright({ from, to }) ? { from, to, right: value, left: value - rise } : { from, to, left: value, right: value + rise };
  });
}

type Part = Stretch & Reach;

function cutWhereTheyMeet(stretches: readonly Stretch[], most: number): Stretch[] | undefined {
  const parts = stretches.map((stretch) => ({ ...stretch, ...reachOf([stretch.from, stretch.to]), cuts: [] as Point[] }));
  let meetings = 0;
  for (const [a, b] of nearPairs(parts)) {
    const meeting = meetingOf(a, b);
    if (meeting === undefined) continue;
    meetings += 1;
    if (meetings > most) return undefined;
    a.cuts.push(meeting);
    b.cuts.push(meeting);
  }
  return parts.flatMap(({ from, to, rise, cuts }) => {
    const stops = [from, ...cuts, to].sort(comparePoints).filter((p, i, all) => i === 0 || !samePoint(p, all[i - 1] ?? p));
    return stops.slice(1).map((stop, i) => ({ from: stops[i] ?? from, to: stop, rise }));
  });
}

/** The one point two stretches share, if any. */
function meetingOf(a: Stretch, b: Stretch): Point | undefined {
  const [a1, a2] = [orientation(a.from, a.to, b.from), orientation(a.from, a.to, b.to)];
  if (a1 * a2 > 0) return undefined;
  const [b1, b2] = [orientation(b.from, b.to, a.from), orientation(b.from, b.to, a.to)];
  if (b1 * b2 > 0) return undefined;
  if (a1 * a2 < 0 && b1 * b2 < 0) return meetingOfLines(a.from, a.to, b.from, b.to);
  if (a1 === 0 && onSegment(b.from, a.from, a.to)) return b.from;
  if (a2 === 0 && onSegment(b.to, a.from, a.to)) return b.to;
  return [a.from, a.to].find((end) => onSegment(end, b.from, b.to));
}

/**
 * The value just above a piece, just left of an upright one: the rises of all parts met on the way from far above down to its middle
 * (for an upright piece the way runs a hair to the left of it).
 */
function valueBeside(piece: Edge, partsNear: (x: Exact) => readonly Part[]): number {
  const p = midpoint(piece.from, piece.to);
  const [lowX, highX, highY] = [below(p.x), above(p.x), above(p.y)];
  const upright = isUpright(piece);
  let value = 0;
  for (const part of partsNear(p.x)) {
    if (part.left > highX || part.right < lowX || part.top > highY || isUpright(part)) continue;
    const starts = compare(part.from.x, p.x);
    const ends = compare(part.to.x, p.x);
    const passes = upright ? starts < 0 && ends >= 0 : starts <= 0 && ends > 0;
    if (passes && orientation(part.from, part.to, p) > 0) value += part.rise;
  }
  return value;
}

function isUpright({ from, to }: Edge): boolean {
  return equals(from.x, to.x);
}

/** Sorts the parts into columns of the plane; the answer holds at least those whose reach contains x, each once. */
function columnsOf(parts: readonly Part[]): (x: Exact) => readonly Part[] {
  const start = parts.reduce((least, { left }) => (left < least ? left : least), Number.MAX_VALUE);
  const end = parts.reduce((most, { right }) => (right > most ? right : most), -Number.MAX_VALUE);
  const count = parts.length < 4096 ? (parts.length >> 3) + 1 : 512;
  const scale = count / (end - start);
  const columnAt = (x: number): number => {
    const column = (x - start) * scale;
    return column > 0 ? (column < count ? column | 0 : count - 1) : 0;
  };
  const columns = Array.from({ length: count }, (): Part[] => []);
  for (const part of parts) for (let i = columnAt(part.left); i <= columnAt(part.right); i += 1) columns[i]?.push(part);
  return (x) => {
    const [first, last] = [columnAt(below(x)), columnAt(above(x))];
    if (first === last) return columns[first] ?? [];
    return [...new Set(columns.slice(first, last + 1).flat())];
  };
}
