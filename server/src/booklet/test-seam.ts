/** The squares that a test seam is sewn with. */
import { fraction, max, mul, sub, TWO, type Exact } from '../exact/number.ts';
import { toInches } from '../exact/length.ts';
import type { Rules } from '../model/pattern.ts';

export interface TestSeam {
  /** 2 1/2" or 6 cm wide; wider for seams that would take up most of it. */
  readonly square: Exact;
  /** Across two of them, sewn. */
  readonly pair: Exact;
}

export function testSeam({ units, seam }: Rules): TestSeam {
  const square = max(units === 'inches' ? fraction(5, 2) : toInches(fraction(6), 'cm'), mul(seam, fraction(4)));
  return { square, pair: sub(mul(TWO, square), mul(TWO, seam)) };
}
