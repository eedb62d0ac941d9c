/** Random exact numbers for the laws, and an oracle that knows √2, √3, √6 to 60 digits and nothing of the kernel's own ways. */
import fc from 'fast-check';
import { SQRT2, SQRT3, add, fraction, mul, sum } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';

export interface Parts {
  readonly a: bigint;
  readonly b: bigint;
  readonly c: bigint;
  readonly d: bigint;
  readonly over: bigint;
}

const coefficient = fc.oneof(
  { weight: 3, arbitrary: fc.constant(0n) },
  { weight: 4, arbitrary: fc.bigInt(-60n, 60n) },
  { weight: 2, arbitrary: fc.bigInt(-(2n ** 31n), 2n ** 31n) },
  { weight: 1, arbitrary: fc.bigInt(-(2n ** 70n), 2n ** 70n) },
);

export const parts: fc.Arbitrary<Parts> = fc.record({
  a: coefficient,
  b: coefficient,
  c: coefficient,
  d: coefficient,
  over: fc.oneof(fc.constantFrom(1n, 2n, 8n, 16n), fc.bigInt(1n, 1000n), fc.bigInt(1n, 2n ** 60n)),
});

export function exactOf({ a, b, c, d, over }: Parts): Exact {
  const roots = [fraction(a, over), mul(fraction(b, over), SQRT2), mul(fraction(c, over), SQRT3), mul(mul(fraction(d, over), SQRT2), SQRT3)];
  return sum(roots);
}

export const exact: fc.Arbitrary<Exact> = parts.map(exactOf);

export const nonZero: fc.Arbitrary<Exact> = exact.filter((x) => x.lane !== 'rational' || x.a !== 0);

/** Numbers as patterns hold them: ruler fractions, tenths of a millimetre, on-point and hexagon measures. */
export const modest: fc.Arbitrary<Exact> = fc
  .tuple(fc.integer({ min: -200, max: 200 }), fc.constantFrom(1, 2, 3, 8, 10, 1000), fc.integer({ min: -3, max: 3 }), fc.integer({ min: -2, max: 2 }))
  .map(([n, d, two, three]) => add(fraction(n, d), add(mul(fraction(two, 4), SQRT2), mul(fraction(three, 2), SQRT3))));

export const somewhere: fc.Arbitrary<Point> = fc.record({ x: modest, y: modest });

const DIGITS = 60n;
const SCALE = 10n ** DIGITS;
// Digits as printed in OEIS A002193, A002194, A010464.
const ROOT2 = 1414213562373095048801688724209698078569671875376948073176679n;
const ROOT3 = 1732050807568877293527446341505872366942805253810380628055806n;
const ROOT6 = 2449489742783178098197284074705891391965947480656670128432692n;

/** The sign of a + b√2 + c√3 + d√6, or undefined when 60 digits do not tell. */
export function signByDigits({ a, b, c, d }: Parts): number | undefined {
  const value = a * SCALE + b * ROOT2 + c * ROOT3 + d * ROOT6;
  const doubt = [b, c, d].reduce((total, n) => total + (n < 0n ? -n : n), 0n);
  if (value > doubt) return 1;
  if (value < -doubt) return -1;
  return doubt === 0n ? 0 : undefined;
}

/** floor((a + b√2 + c√3 + d√6) / over · 10^12), give or take one, for comparing printed digits. */
export function trillionths({ a, b, c, d, over }: Parts): bigint {
  return ((a * SCALE + b * ROOT2 + c * ROOT3 + d * ROOT6) * 10n ** 12n) / (over * SCALE);
}
