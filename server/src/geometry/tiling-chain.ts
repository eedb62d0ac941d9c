/**
 * Outlines added up. Wind patches clockwise and count, on every line of the plane, how often their edges run along each stretch
 * of it, forwards minus backwards. What two neighbours share cancels, wherever their corners are; what is left bounds the places
 * that are covered too often or not often enough. Nothing left means none such: the count on a line is zero everywhere exactly
 * when the signed number of edge ends is zero at each of its points, so only ends are summed (see measured.md, "Does it tile").
 *
 * An edge that bends will be counted on its circle as straight ones are on their line.
 */
import { ZERO, add, compare, div, equals, guess, mul, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';

/** A closed outline; inside a clockwise one the value rises by `weight`, inside the other kind it falls by it. */
export interface Loop {
  readonly corners: readonly Point[];
  readonly weight: number;
}

/**
 * A stretch of a line. `from` is left of `to`, or above it when the line is upright. The value on its right-hand side (below it;
 * to the left of an upright one) is higher by `rise` than on the other side.
 */
export interface Stretch {
  readonly from: Point;
  readonly to: Point;
  readonly rise: number;
}

/** What is left of all outlines: stretches with a rise, no two overlapping on one line (they may cross and touch). */
export function leftover(loops: readonly Loop[]): Stretch[] {
  const tally: Tally = { values: numbering(), slants: [], slantAt: pairing(), slots: [], slotAt: pairing(), sums: [] };
  for (const loop of loops) countLoop(tally, loop);
  return tally.sums.every((sum) => sum === 0) ? [] : stretchesOf(tally);
}

/** y = slope · x + start */
interface Slant {
  readonly slope: Exact;
  readonly start: Exact;
}

/**
 * A place where edges end on a line: the point at x = `along`, on an upright line at y = `along`. Lines are numbered
 * 3v for the upright one at x = value v, 3v + 1 for the level one at y = value v, 3i + 2 for slant i.
 */
interface Slot {
  readonly line: number;
  readonly along: Exact;
}

interface Tally {
  readonly values: Numbering;
  readonly slants: Slant[];
  readonly slantAt: (slope: number, start: number) => number;
  readonly slots: Slot[];
  readonly slotAt: (line: number, along: number) => number;
  /** Per slot, the edges that start there minus those that end there. */
  readonly sums: number[];
}

function countLoop(tally: Tally, { corners, weight }: Loop): void {
  const { indexOf } = tally.values;
  let from = corners.at(-1);
  if (from === undefined) return;
  let fromX = indexOf(from.x);
  let fromY = indexOf(from.y);
  for (const to of corners) {
    const toX = equals(to.x, from.x) ? fromX : indexOf(to.x);
    const toY = equals(to.y, from.y) ? fromY : indexOf(to.y);
    if (fromX === toX) {
      countEnd(tally, 3 * toX, fromY, from.y, weight);
      countEnd(tally, 3 * toX, toY, to.y, -weight);
    } else {
      const line = fromY === toY ? 3 * toY + 1 : 3 * slantThrough(tally, from, to) + 2;
      countEnd(tally, line, fromX, from.x, weight);
      countEnd(tally, line, toX, to.x, -weight);
    }
    from = to;
    fromX = toX;
    fromY = toY;
  }
}

function slantThrough({ values, slants, slantAt }: Tally, from: Point, to: Point): number {
  const slope = div(sub(to.y, from.y), sub(to.x, from.x));
  const start = sub(to.y, mul(slope, to.x));
  const slant = slantAt(values.indexOf(slope), values.indexOf(start));
  if (slant === slants.length) slants.push({ slope, start });
  return slant;
}

function countEnd({ slots, slotAt, sums }: Tally, line: number, alongIndex: number, along: Exact, by: number): void {
  const slot = slotAt(line, alongIndex);
  if (slot === slots.length) {
    slots.push({ line, along });
    sums.push(0);
  }
  sums[slot] = (sums[slot] ?? 0) + by;
}

function stretchesOf(tally: Tally): Stretch[] {
  const open = tally.slots.map((slot, i) => ({ ...slot, sum: tally.sums[i] ?? 0 })).filter(({ sum }) => sum !== 0);
  open.sort((a, b) => a.line - b.line || compare(a.along, b.along));
  let rise = 0;
  return open.flatMap((slot, i) => {
    rise += slot.sum;
    const next = open[i + 1];
    return rise === 0 || next === undefined ? [] : [{ from: pointAt(tally, slot), to: pointAt(tally, next), rise }];
  });
}

function pointAt({ values, slants }: Tally, { line, along }: Slot): Point {
  const index = (line - (line % 3)) / 3;
  if (line % 3 === 0) return { x: values.valueAt(index), y: along };
  if (line % 3 === 1) return { x: along, y: values.valueAt(index) };
  const { slope, start } = slants[index] ?? { slope: ZERO, start: ZERO };
  return { x: along, y: add(mul(slope, along), start) };
}

interface Numbering {
  /** Numbers each value from 0 in the order of arrival. */
  readonly indexOf: (x: Exact) => number;
  readonly valueAt: (index: number) => Exact;
}

/** By doubles, which equal values share; different values that share one are told apart. */
function numbering(): Numbering {
  interface Known {
    readonly index: number;
    readonly next: Known | undefined;
  }
  const byDouble = new Map<number, Known>();
  const values: Exact[] = [];
  const valueAt = (index: number): Exact => values[index] ?? ZERO;
  const indexOf = (x: Exact): number => {
    const double = guess(x);
    const first = byDouble.get(double);
    for (let known = first; known !== undefined; known = known.next) if (equals(valueAt(known.index), x)) return known.index;
    byDouble.set(double, { index: values.length, next: first });
    return values.push(x) - 1;
  };
  return { indexOf, valueAt };
}

/** Numbers pairs of whole numbers from 0, in the order of arrival. An open hash table: it is asked twice an edge, and Map is three times slower. */
function pairing(): (a: number, b: number) => number {
  let table = new Int32Array(256).fill(-1);
  const firsts: number[] = [];
  const seconds: number[] = [];
  const placeOf = (a: number, b: number): number => {
    const mask = table.length - 1;
    const mixed = (a * 40_503) ^ (b * 30_011);
    let place = (mixed ^ (mixed >>> 13)) & mask;
    for (;;) {
      const index = table[place] ?? -1;
      if (index < 0 || (firsts[index] === a && seconds[index] === b)) return place;
      place = (place + 1) & mask;
    }
  };
  const grow = (): void => {
    table = new Int32Array(table.length * 2).fill(-1);
    firsts.forEach((a, index) => (table[placeOf(a, seconds[index] ?? 0)] = index));
  };
  return (a, b) => {
    const place = placeOf(a, b);
    const known = table[place] ?? -1;
    if (known >= 0) return known;
    table[place] = firsts.push(a) - 1;
    seconds.push(b);
    if (firsts.length * 2 > table.length) grow();
    return firsts.length - 1;
  };
}
