/**
 * One more item let into a strip, by dynamic programming over widths (Bellman; Gilmore and Gomory, "The theory and computation of
 * knapsack functions", Operations Research 14, 1966). Whole values whose sum is a safe integer are added without rounding.
 */
import { cutsOf, type Option } from './options.ts';
import type { Work } from './work.ts';

export interface Addition {
  readonly option: Option;
  /** Of the strip. */
  readonly height: number;
  /** Of one piece. */
  readonly value: number;
  readonly wanted: number;
  /** Off the value for each cut. */
  readonly perCut: number;
}

/** For each width of a strip, how much of it is used without the item. */
export type Widths = Int16Array | Int32Array;

/** Raises `best`, the most that each width is worth, by what the item adds to it. */
export function letIn(best: Float64Array, addition: Addition, work: Work): Widths {
  const before = best.length < 2 ** 15 ? new Int16Array(best.length) : new Int32Array(best.length);
  const { option, wanted } = addition;
  if (wanted >= option.most) addFreely(best, before, addition, work);
  else if (option.ways.length === 1) addCounted(best, before, addition, work);
  else addWithin(best, before, stepsFor(addition), work);
  return before;
}

/** There is more than fills a strip: one segment after another. */
function addFreely(best: Float64Array, before: Widths, { option: { ways }, height, value, perCut }: Addition, work: Work): void {
  for (let x = 0; x < before.length; x += 1) before[x] = x;
  for (const way of ways) {
    const gain = value * way.stack - (perCut === 0 ? 0 : perCut * cutsOf([{ way, pieces: way.stack }], height));
    for (let x = way.steps; x < best.length; x += 1) {
      const worth = (best[x - way.steps] as number) + gain;
      if (worth <= (best[x] as number)) continue;
      best[x] = worth;
      before[x] = before[x - way.steps] as number;
    }
  }
  work.spent += best.length * (ways.length + 1);
}

/** It lies one way only: 1, 2, 4 … segments at once or not at all, so that every number of them can be had. */
function addCounted(best: Float64Array, before: Widths, { option: { ways, most }, height, value, wanted, perCut }: Addition, work: Work): void {
  const [way] = ways;
  if (!way) return;
  const count = Math.min(wanted, most);
  const gain = (pieces: number): number => value * pieces - (perCut === 0 ? 0 : perCut * cutsOf([{ way, pieces }], height));
  for (let x = 0; x < before.length; x += 1) before[x] = x;
  let left = Math.floor(count / way.stack);
  for (let segments = 1; left > 0; segments *= 2) {
    const some = Math.min(segments, left);
    addOnce(best, before, some * way.steps, gain(some * way.stack));
    left -= some;
    work.spent += best.length;
  }
  if (count % way.stack > 0) addOnce(best, before, way.steps, gain(count % way.stack));
  work.spent += best.length * 2;
}

/** Width is taken from the far end, so that none is taken twice. */
function addOnce(best: Float64Array, before: Widths, width: number, gain: number): void {
  for (let x = best.length - 1; x >= width; x -= 1) {
    const worth = (best[x - width] as number) + gain;
    if (worth <= (best[x] as number)) continue;
    best[x] = worth;
    before[x] = before[x - width] as number;
  }
}

interface Steps {
  readonly widths: Int32Array;
  readonly gains: Float64Array;
  /** How many of the steps are of use. */
  readonly length: number;
}

function stepsFor({ option, value, wanted, perCut }: Addition): Steps {
  const { widths, pieces } = option;
  const gains = new Float64Array(widths.length);
  for (let i = 0; i < widths.length; i += 1) {
    gains[i] = value * Math.min(pieces[i] as number, wanted) - (perCut === 0 ? 0 : perCut * (option.cuts[i] as number));
    if ((pieces[i] as number) >= wanted) return { widths, gains, length: i + 1 };
  }
  return { widths, gains, length: widths.length };
}

/** It lies either way: in steps, one of them at most. */
function addWithin(best: Float64Array, before: Widths, { widths, gains, length }: Steps, work: Work): void {
  const least = widths[0] as number;
  for (let x = best.length - 1; x >= least; x -= 1) {
    let most = best[x] as number;
    let used = 0;
    for (let i = 0; i < length; i += 1) {
      const width = widths[i] as number;
      if (width > x) break;
      const worth = (best[x - width] as number) + (gains[i] as number);
      if (worth > most) {
        most = worth;
        used = width;
      }
    }
    best[x] = most;
    before[x] = x - used;
  }
  for (let x = 0; x < least; x += 1) before[x] = x;
  work.spent += best.length * (length + 1);
}
