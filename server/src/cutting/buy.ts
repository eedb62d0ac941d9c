/** From the length that is cut to the length that is bought. */
import { ONE, ZERO, add, div, less, mul, roundUpTo, sub, type Exact } from '../exact/number.ts';

export interface Buying {
  /** Shrinkage along the selvage as a fraction; `Fabric.width` is the width that is left to use. */
  readonly shrink: Exact;
  /** Extra as a fraction. */
  readonly spare: Exact;
  /** Lengths are sold in multiples of this. */
  readonly yardage: Exact;
}

/** What `takenLength` takes, rounded up. */
export function boughtLength(length: Exact, buying: Buying): Exact {
  return roundUpTo(takenLength(length, buying), buying.yardage);
}

/** length · (1 + spare) / (1 − shrink). A shrinkage of all or more is no measure and is not counted. */
export function takenLength(length: Exact, { shrink, spare }: Omit<Buying, 'yardage'>): Exact {
  const isSound = less(ZERO, shrink) && less(shrink, ONE);
  const left = isSound ? sub(ONE, shrink) : ONE;
  return div(mul(length, add(ONE, spare)), left);
}
