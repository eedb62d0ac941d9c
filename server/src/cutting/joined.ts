/**
 * Strips sewn end to end where the fabric is narrower than the strip is long. They are joined straight: each join takes a seam
 * from both ends, 2s of length. All lengths of one width are cut from one long strip, which needs the fewest strips.
 */
import { atMost, ceil, compare, div, equals, fraction, less, mul, sub, sum, type Exact } from '../exact/number.ts';

export interface Length {
  readonly length: Exact;
  readonly count: number;
}

/** The fewest strips of `width` that give the lengths when joined; undefined when the width is no more than a join takes, or there is no counting them. */
export function stripsToJoin(lengths: readonly Length[], width: Exact, seam: Exact): number | undefined {
  const join = mul(seam, fraction(2));
  if (atMost(width, join)) return undefined;
  return countable(ceil(div(sub(totalOf(lengths), join), sub(width, join))));
}

/** A count of at least one as a number; undefined past the safe integers. */
export function countable(count: bigint): number | undefined {
  if (count > BigInt(Number.MAX_SAFE_INTEGER)) return undefined;
  return count < 1n ? 1 : Number(count);
}

/** Which lengths to cut whole and which from joined strips: whatever needs the fewest strips, whole ones first. */
export function splitByJoining(lengths: readonly Length[], width: Exact, seam: Exact): { readonly whole: readonly Length[]; readonly joined: readonly Length[] } {
  const long = lengths.filter(({ length }) => less(width, length));
  if (long.length === 0) return { whole: lengths, joined: [] };
  const short = lengths.filter(({ length }) => atMost(length, width));
  const apart = countOf(short) + (stripsToJoin(long, width, seam) ?? 0);
  const together = stripsToJoin(lengths, width, seam) ?? 0;
  return apart <= together ? { whole: short, joined: long } : { whole: [], joined: lengths };
}

export function totalOf(lengths: readonly Length[]): Exact {
  return sum(lengths.map(({ length, count }) => mul(length, fraction(count))));
}

export function countOf(lengths: readonly Length[]): number {
  return lengths.reduce((total, { count }) => total + count, 0);
}

/** Equal lengths together, the longest first. */
export function gathered(lengths: readonly Exact[]): readonly Length[] {
  const groups: { length: Exact; count: number }[] = [];
  for (const length of [...lengths].sort((a, b) => compare(b, a))) {
    const last = groups.at(-1);
    if (last && equals(last.length, length)) last.count += 1;
    else groups.push({ length, count: 1 });
  }
  return groups;
}
