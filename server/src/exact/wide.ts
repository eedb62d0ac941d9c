/**
 * Numbers (a + b√2 + c√3 + d√6) / over in big integers: the slow half of `number.ts`, always right.
 * 1, √2, √3, √6 are linearly independent over the rationals, so a value has one reduced form and is zero only when a = b = c = d = 0.
 */

/** (a + b√2 + c√3 + d√6) / over, with over > 0 and no factor common to all five. */
export interface Wide {
  readonly a: bigint;
  readonly b: bigint;
  readonly c: bigint;
  readonly d: bigint;
  readonly over: bigint;
}

/** The reduced form. `over` may be negative, not zero. */
export function wide(a: bigint, b: bigint, c: bigint, d: bigint, over: bigint): Wide {
  let common = gcd(gcd(gcd(gcd(over, a), b), c), d);
  if (over < 0n) common = -common;
  if (common === 1n) return { a, b, c, d, over };
  return { a: a / common, b: b / common, c: c / common, d: d / common, over: over / common };
}

export function addWide(x: Wide, y: Wide): Wide {
  return wide(
    x.a * y.over + y.a * x.over,
    x.b * y.over + y.b * x.over,
    x.c * y.over + y.c * x.over,
    x.d * y.over + y.d * x.over,
    x.over * y.over,
  );
}

export function mulWide(x: Wide, y: Wide): Wide {
  return wide(
    x.a * y.a + 2n * x.b * y.b + 3n * x.c * y.c + 6n * x.d * y.d,
    x.a * y.b + x.b * y.a + 3n * (x.c * y.d + x.d * y.c),
    x.a * y.c + x.c * y.a + 2n * (x.b * y.d + x.d * y.b),
    x.a * y.d + x.d * y.a + x.b * y.c + x.c * y.b,
    x.over * y.over,
  );
}

/** 1 / x for x ≠ 0: multiply by the conjugates √3 → −√3, then √2 → −√2, until the denominator is rational. */
export function invertWide(x: Wide): Wide {
  const top = wide(x.a, x.b, -x.c, -x.d, x.over);
  const norm = mulWide(x, top);
  const conjugate = wide(norm.a, -norm.b, 0n, 0n, norm.over);
  const rational = mulWide(norm, conjugate);
  return mulWide(mulWide(top, conjugate), wide(rational.over, 0n, 0n, 0n, rational.a));
}

/** The sign of x, by squaring away one root after the other: no rounding. */
export function signWide({ a, b, c, d }: Wide): -1 | 0 | 1 {
  const plain = signOfPair(a, b);
  const rooted = signOfPair(c, d);
  if (rooted === 0 || plain === rooted) return plain;
  if (plain === 0) return rooted;
  const bigger = signOfPair(a * a + 2n * b * b - 3n * c * c - 6n * d * d, 2n * a * b - 6n * c * d);
  return bigger > 0 ? plain : rooted;
}

/** floor(x · 2^shift), exact. `shift` may be negative. */
export function floorScaled(x: Wide, shift: number): bigint {
  let bits = ROOT_BITS;
  while (bits < shift + 64) bits *= 2;
  for (;;) {
    const [low, high] = enclose(x, bits);
    const unit = x.over << BigInt(bits - shift);
    const floor = floorDivide(low, unit);
    if (floor === floorDivide(high, unit)) return floor;
    bits *= 2;
  }
}

/** The double nearest to x; past the doubles' range, ±infinity or zero. */
export function wideToNumber(x: Wide): number {
  const sign = signWide(x);
  if (sign === 0) return 0;
  const size = sign > 0 ? x : { a: -x.a, b: -x.b, c: -x.c, d: -x.d, over: x.over };
  let shift = 64 + bitLength(x.over) - bitLength(largest(x));
  let whole = floorScaled(size, shift);
  while (bitLength(whole) < 64) {
    shift += 64;
    whole = floorScaled(size, shift);
  }
  const rest = isWideRational(size) && (shift < 0 ? whole << BigInt(-shift) : whole) * size.over === (shift < 0 ? size.a : size.a << BigInt(shift));
  const rounded = Number((whole << 1n) | (rest ? 0n : 1n));
  return sign * timesPowerOfTwo(rounded, -shift - 1);
}

export function isWideRational(x: Wide): boolean {
  return x.b === 0n && x.c === 0n && x.d === 0n;
}

/** floor(√n) for n ≥ 0, by Newton's iteration from above. */
export function rootFloor(n: bigint): bigint {
  if (n < 2n) return n;
  let root = 1n << BigInt((bitLength(n) + 1) >> 1);
  for (;;) {
    const next = (root + n / root) >> 1n;
    if (next >= root) return root;
    root = next;
  }
}

/** floor(n / d) for d > 0. */
export function floorDivide(n: bigint, d: bigint): bigint {
  const quotient = n / d;
  return n < 0n && quotient * d !== n ? quotient - 1n : quotient;
}

/** At least the number of bits of |n|, at most three more. */
export function bitLength(n: bigint): number {
  return (n < 0n ? -n : n).toString(16).length * 4;
}

/** The largest |coefficient| above the line. */
function largest({ a, b, c, d }: Wide): bigint {
  return [a, b, c, d].map((n) => (n < 0n ? -n : n)).reduce((most, n) => (n > most ? n : most));
}

/** Sign of a + b√2. */
function signOfPair(a: bigint, b: bigint): -1 | 0 | 1 {
  const plain = signOf(a);
  const rooted = signOf(b);
  if (rooted === 0 || plain === rooted) return plain;
  if (plain === 0) return rooted;
  return a * a > 2n * b * b ? plain : rooted;
}

function signOf(n: bigint): -1 | 0 | 1 {
  return n > 0n ? 1 : n < 0n ? -1 : 0;
}

/** Fractional bits of the ready-made roots; enough for every number a pattern holds. */
const ROOT_BITS = 256;
const ROOTS = rootsScaled(ROOT_BITS);

function rootsScaled(bits: number): readonly [bigint, bigint, bigint] {
  const scale = BigInt(2 * bits);
  return [rootFloor(2n << scale), rootFloor(3n << scale), rootFloor(6n << scale)];
}

/** Bounds of x · over · 2^bits, at most |b| + |c| + |d| apart. */
function enclose(x: Wide, bits: number): readonly [bigint, bigint] {
  const [two, three, six] = bits === ROOT_BITS ? ROOTS : rootsScaled(bits);
  const floor = (x.a << BigInt(bits)) + x.b * two + x.c * three + x.d * six;
  const falling = [x.b, x.c, x.d].filter((n) => n < 0n).reduce((sum, n) => sum + n, 0n);
  const rising = [x.b, x.c, x.d].filter((n) => n > 0n).reduce((sum, n) => sum + n, 0n);
  return [floor + falling, floor + rising];
}

/** value · 2^exponent, in steps, so that no power leaves the doubles before the result does. */
function timesPowerOfTwo(value: number, exponent: number): number {
  if (exponent > 512) return timesPowerOfTwo(value * 2 ** 512, exponent - 512);
  if (exponent < -512) return timesPowerOfTwo(value / 2 ** 512, exponent + 512);
  return value * 2 ** exponent;
}

function gcd(x: bigint, y: bigint): bigint {
  let [a, b] = [x < 0n ? -x : x, y < 0n ? -y : y];
  while (b !== 0n) [a, b] = [b, a % b];
  return a;
}
