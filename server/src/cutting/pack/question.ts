/** What is asked of the linear relaxation, and the kind of bound it gives. */
import type { Column } from './column.ts';
import type { Problem } from './problem.ts';

/** At least (`sense` 1) or at most (-1) so many patterns of a source, or pieces of an item from it. */
export interface Limit {
  readonly source: number;
  readonly item?: number;
  readonly sense: 1 | -1;
  readonly bound: number;
}

export interface Question {
  readonly problem: Problem;
  readonly wanted: readonly number[];
  readonly limits: readonly Limit[];
  /** Patterns to start with. */
  readonly columns: readonly Column[];
  /** The bound holds for plans that cost no more than this. */
  readonly ceiling: number;
  /** Sources that are not to be used; the bound is that of plans without them. */
  readonly barred?: ReadonlySet<number>;
  /** Absent: what the sources cost. Else cuts are weighed instead, and no bound is proved. */
  readonly charges?: { readonly perPattern: number; readonly perCut: number };
}

/** over / unit. */
export interface Bound {
  readonly over: bigint;
  readonly unit: bigint;
}

export const NO_BOUND: Bound = { over: 0n, unit: 1n };

/** How much of what is limited one of the pattern brings. */
export function amountUnder({ source, item }: Limit, column: Column): number {
  if (source !== column.source) return 0;
  return item === undefined ? 1 : (column.takes.find((take) => take.item === item)?.pieces ?? 0);
}

/** The least whole number that is no less. */
export function ceilOf({ over, unit }: Bound): number {
  return over <= 0n ? 0 : Number((over + unit - 1n) / unit);
}
