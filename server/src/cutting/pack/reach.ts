/** What strips can add up to: sums of heights, each as often as one likes. */
import { commonDivisor, type Problem } from './problem.ts';

/** From a length to the least sum of heights that is no less. Sheets are counted: every number is a sum. */
export function reachFor({ sources }: Problem): (length: number) => number {
  const all = [...new Set(sources.map(({ cost }) => cost))];
  const step = all.reduce(commonDivisor, 0);
  const heights = all.map((height) => height / step);
  const least = Math.min(...heights);
  if (all.length === 0 || least === 1) return (length) => (step > 1 ? Math.ceil(length / step) * step : length);
  const first = firstSums(heights, least);
  return (length) => {
    let sum = Math.ceil(length / step);
    while (sum < (first[sum % least] as number)) sum += 1;
    return sum * step;
  };
}

/**
 * For each remainder by the least height, the least sum that leaves it
 * (Böcker and Lipták, "A fast and simple algorithm for the money changing problem", Algorithmica 48, 2007).
 */
function firstSums(heights: readonly number[], least: number): Float64Array {
  const first = new Float64Array(least).fill(Number.POSITIVE_INFINITY);
  first[0] = 0;
  for (const height of heights) {
    const rings = commonDivisor(height, least);
    for (let ring = 0; ring < rings; ring += 1) goRound(first, height, ring, rings);
  }
  return first;
}

/** Adds the height again and again, from the least sum of the ring round to it. */
function goRound(first: Float64Array, height: number, ring: number, rings: number): void {
  const least = first.length;
  let sum = Number.POSITIVE_INFINITY;
  for (let at = ring; at < least; at += rings) sum = Math.min(sum, first[at] as number);
  if (!Number.isFinite(sum)) return;
  for (let i = 1; i < least / rings; i += 1) {
    sum = Math.min(sum + height, first[(sum + height) % least] as number);
    first[sum % least] = sum;
  }
}
