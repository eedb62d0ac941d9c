/**
 * The most valuable filling of a strip, or of a sheet with strips: the pricing problem of Gilmore and Gomory, "A linear programming
 * approach to the cutting-stock problem", Operations Research 9 (1961) and "Multistage cutting stock problems of two and more
 * dimensions", Operations Research 13 (1965). A strip never holds more of a kind than is wanted. Values that are whole numbers, and
 * whose sum is a safe integer, give an exact answer: bounds are proved with them.
 */
import { commonDivisor, type Source, type StripKind } from './problem.ts';
import { letIn, type Widths } from './knapsack.ts';
import { piecesIn, type Option } from './options.ts';
import type { Work } from './work.ts';

/** What a filling is judged by. */
export interface Prices {
  /** For each item, of one piece; one that is not above 0 is not cut. */
  readonly values: Float64Array;
  /** Off the value for each cut; 0 where values must be exact. */
  readonly perCut: number;
  /** For each item, how many pieces are still wanted. */
  readonly wanted: readonly number[];
}

export interface Take {
  readonly item: number;
  readonly pieces: number;
}

/** A strip and what it holds. */
export interface Load {
  readonly kind: StripKind;
  readonly takes: readonly Take[];
}

export interface Filling {
  readonly value: number;
  /** One for a strip; for a sheet, the highest first. */
  readonly loads: readonly Load[];
}

/**
 * The best filling of a source. For a sheet no filling is worth more, but strips alike may together hold more of a kind than is
 * wanted; `wanted` is kept within each strip alone.
 */
export function bestFilling(source: Source, prices: Prices, work: Work): Filling {
  const [only] = source.strips;
  if (!source.sheet && only) {
    const { value, takes } = fillStrip(only, prices, work);
    return { value, loads: [{ kind: only, takes }] };
  }
  return source.sheet ? fillSheet(source, source.sheet.height, prices, work) : { value: 0, loads: [] };
}

/**
 * No filling of the strip is worth more: items by value for width, the last in part. In floats, and a little above what they say,
 * so that no rounding makes it too low.
 */
export function mostWorth({ options, room }: StripKind, { values, wanted }: Prices, work: Work): number {
  work.spent += options.length * 8;
  const dense: { readonly each: number; readonly width: number }[] = [];
  for (let item = 0; item < options.length; item += 1) {
    const option = options[item];
    const value = values[item] as number;
    const count = wanted[item] as number;
    if (!option || value <= 0 || count <= 0) continue;
    const each = option.ways.reduce((best, { stack, steps }) => Math.max(best, (value * stack) / steps), 0);
    dense.push({ each, width: (value * count) / each });
  }
  dense.sort((a, b) => b.each - a.each);
  let left = room;
  let worth = 0;
  for (const { each, width } of dense) {
    if (left <= 0) break;
    worth += each * Math.min(left, width);
    left -= width;
  }
  return worth * (1 + 1e-9);
}

export function fillStrip(kind: StripKind, { values, wanted, perCut }: Prices, work: Work): { readonly value: number; readonly takes: readonly Take[] } {
  const best = new Float64Array(kind.room + 1);
  const added: Added[] = [];
  for (let item = 0; item < kind.options.length; item += 1) {
    const option = kind.options[item];
    const [value, count] = [values[item] as number, wanted[item] as number];
    if (option && value > 0 && count > 0) added.push({ item, option, before: letIn(best, { option, height: kind.height, value, wanted: count, perCut }, work) });
  }
  return { value: best[kind.room] as number, takes: takesOf(kind, added, wanted) };
}

interface Added {
  readonly item: number;
  readonly option: Option;
  readonly before: Widths;
}

/** From the whole width back, item by item. */
function takesOf(kind: StripKind, added: readonly Added[], wanted: readonly number[]): readonly Take[] {
  const takes: Take[] = [];
  let x = kind.room;
  for (const { item, option, before } of [...added].reverse()) {
    const rest = before[x] as number;
    if (rest < x) takes.push({ item, pieces: Math.min(piecesIn(option, x - rest), wanted[item] as number) });
    x = rest;
  }
  return takes.reverse();
}

/** Strips of the best value for each height, as many of each as is best in the height of the sheet. */
function fillSheet({ strips }: Source, height: number, prices: Prices, work: Work): Filling {
  const filled = strips.map((kind) => ({ kind, ...fillStrip(kind, prices, work) })).filter(({ value }) => value > 0);
  const grid = filled.reduce((divisor, { kind }) => commonDivisor(divisor, kind.height), 0);
  const room = grid > 0 ? Math.floor(height / grid) : 0;
  const best = new Float64Array(room + 1);
  const chosen = new Int32Array(room + 1).fill(-1);
  for (let y = 1; y <= room; y += 1) {
    best[y] = best[y - 1] as number;
    filled.forEach(({ kind, value }, i) => {
      const below = y - kind.height / grid;
      if (below < 0 || (best[below] as number) + value <= (best[y] as number)) return;
      best[y] = (best[below] as number) + value;
      chosen[y] = i;
    });
  }
  work.spent += room * filled.length;
  const loads: Load[] = [];
  for (let y = room; y > 0; ) {
    const strip = filled[chosen[y] as number];
    if (strip) loads.push({ kind: strip.kind, takes: strip.takes });
    y -= strip ? strip.kind.height / grid : 1;
  }
  return { value: best[room] as number, loads: loads.sort((a, b) => b.kind.height - a.kind.height) };
}
