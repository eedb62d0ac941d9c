/**
 * Exact numbers: (a + b√2 + c√3 + d√6) / over, the field that squares, 30°, 45° and all their meetings live in.
 *
 * Values are immutable and reduced, so equal numbers have equal fields and equal keys. Three lanes, chosen by the value alone:
 * `rational` and `surd` hold safe integers in doubles; what outgrows them is `wide`, in big integers. Signs and comparisons ask a
 * double with an error bound first and decide exactly when it is near. Only `toNumber`, `below` and `above` leave the field.
 */
import { addWide, floorDivide, floorScaled, invertWide, isWideRational, mulWide, signWide, wide, wideToNumber } from './wide.ts';
import type { Wide } from './wide.ts';

type Lane = 'rational' | 'surd' | 'wide';

/** An exact number. Make one with `fraction`, `parseNumber` or arithmetic, never by hand; read its fields only in this folder. */
export class Exact {
  readonly lane: Lane;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly over: number;
  readonly wide: Wide | undefined;

  constructor(lane: Lane, a: number, b: number, c: number, d: number, over: number, big: Wide | undefined) {
    this.lane = lane;
    this.a = a;
    this.b = b;
    this.c = c;
    this.d = d;
    this.over = over;
    this.wide = big;
  }

  /** For messages of failed tests. */
  toString(): string {
    return key(this);
  }
}

export const ZERO = plain(0);
export const ONE = plain(1);
export const TWO = plain(2);
export const HALF = reduced(1, 2);
export const SQRT2 = new Exact('surd', 0, 1, 0, 0, 1, undefined);
export const SQRT3 = new Exact('surd', 0, 0, 1, 0, 1, undefined);

/** n / d, for whole n and d. Throws RangeError when d is zero or a number is no safe integer. */
export function fraction(n: number | bigint, d: number | bigint = 1): Exact {
  if (typeof n === 'number' && typeof d === 'number') {
    if (!Number.isSafeInteger(n) || !Number.isSafeInteger(d)) throw new RangeError('A fraction is made of whole numbers.');
    if (d > 0) return reduced(n, d);
  }
  if (BigInt(d) === 0n) throw new RangeError('Division by zero.');
  return fromWide(wide(BigInt(n), 0n, 0n, 0n, BigInt(d)));
}

export function add(x: Exact, y: Exact): Exact {
  if (x.lane === 'rational' && y.lane === 'rational') {
    if (x.over === y.over) {
      const whole = x.a + y.a;
      if (isSafe(whole)) return reduced(whole, x.over);
    }
    const left = x.a * y.over;
    const right = y.a * x.over;
    const over = x.over * y.over;
    if (isSafe(left) && isSafe(right) && isSafe(left + right) && isSafe(over)) return reduced(left + right, over);
  } else if (x.wide === undefined && y.wide === undefined) {
    const [left, right] = x.over === y.over ? [1, 1] : [y.over, x.over];
    const over = x.over * left;
    if (isSafe(over) && isSafe(largest(x) * left + largest(y) * right)) {
      return narrow(x.a * left + y.a * right, x.b * left + y.b * right, x.c * left + y.c * right, x.d * left + y.d * right, over);
    }
  }
  return fromWide(addWide(toWide(x), toWide(y)));
}

export function neg(x: Exact): Exact {
  if (x.wide !== undefined) return fromWide(wide(-x.wide.a, -x.wide.b, -x.wide.c, -x.wide.d, x.wide.over));
  return new Exact(x.lane, 0 - x.a, 0 - x.b, 0 - x.c, 0 - x.d, x.over, undefined);
}

export function sub(x: Exact, y: Exact): Exact {
  if (x.lane === 'rational' && y.lane === 'rational' && x.over === y.over) {
    const whole = x.a - y.a;
    if (isSafe(whole)) return reduced(whole, x.over);
  }
  return add(x, neg(y));
}

export function mul(x: Exact, y: Exact): Exact {
  if (x.lane === 'rational' && y.lane === 'rational') {
    const top = x.a * y.a;
    const over = x.over * y.over;
    if (isSafe(top) && isSafe(over)) return reduced(top, over);
  } else if (x.wide === undefined && y.wide === undefined) {
    const over = x.over * y.over;
    if (isSafe(over) && isSafe(12 * largest(x) * largest(y))) {
      return narrow(
        x.a * y.a + 2 * x.b * y.b + 3 * x.c * y.c + 6 * x.d * y.d,
        x.a * y.b + x.b * y.a + 3 * (x.c * y.d + x.d * y.c),
        x.a * y.c + x.c * y.a + 2 * (x.b * y.d + x.d * y.b),
        x.a * y.d + x.d * y.a + x.b * y.c + x.c * y.b,
        over,
      );
    }
  }
  return fromWide(mulWide(toWide(x), toWide(y)));
}

/** x / y. Throws RangeError when y is zero: callers ask `isZero` first. */
export function div(x: Exact, y: Exact): Exact {
  if (isZero(y)) throw new RangeError('Division by zero.');
  if (y.lane === 'rational') return mul(x, y.a > 0 ? reduced(y.over, y.a) : reduced(-y.over, -y.a));
  return rationalQuotient(x, y) ?? fromWide(mulWide(toWide(x), invertWide(toWide(y))));
}

export function abs(x: Exact): Exact {
  return sign(x) < 0 ? neg(x) : x;
}

/** −1, 0 or 1 as x is below, at or above zero. */
export function sign(x: Exact): -1 | 0 | 1 {
  if (x.lane === 'rational') return x.a > 0 ? 1 : x.a < 0 ? -1 : 0;
  if (x.lane === 'surd') {
    const value = guess(x);
    const slack = size(x) * DOUBT;
    if (value > slack) return 1;
    if (value < -slack) return -1;
  }
  return signWide(toWide(x));
}

/** −1, 0 or 1 as x is less than, equal to or more than y: an order for `sort`. */
export function compare(x: Exact, y: Exact): -1 | 0 | 1 {
  if (x.wide === undefined && y.wide === undefined) {
    const apart = guess(x) - guess(y);
    const slack = (size(x) + size(y)) * DOUBT;
    if (apart > slack) return 1;
    if (apart < -slack) return -1;
    if (equals(x, y)) return 0;
  }
  return sign(sub(x, y));
}

export function equals(x: Exact, y: Exact): boolean {
  if (x.lane !== y.lane) return false;
  if (x.wide !== undefined && y.wide !== undefined) return key(x) === key(y);
  return x.a === y.a && x.over === y.over && x.b === y.b && x.c === y.c && x.d === y.d;
}

/** x < y */
export function less(x: Exact, y: Exact): boolean {
  return compare(x, y) < 0;
}

/** x ≤ y */
export function atMost(x: Exact, y: Exact): boolean {
  return compare(x, y) <= 0;
}

export function min(first: Exact, ...rest: readonly Exact[]): Exact {
  return rest.reduce((least, x) => (less(x, least) ? x : least), first);
}

export function max(first: Exact, ...rest: readonly Exact[]): Exact {
  return rest.reduce((most, x) => (less(most, x) ? x : most), first);
}

export function sum(terms: readonly Exact[]): Exact {
  return terms.reduce(add, ZERO);
}

/** The greatest whole number ≤ x. */
export function floor(x: Exact): bigint {
  if (x.lane === 'rational' && x.over === 1) return BigInt(x.a);
  const big = toWide(x);
  return isWideRational(big) ? floorDivide(big.a, big.over) : floorScaled(big, 0);
}

/** The least whole number ≥ x. */
export function ceil(x: Exact): bigint {
  return -floor(neg(x));
}

/** The least multiple of `step` ≥ x. Throws RangeError unless step > 0. */
export function roundUpTo(x: Exact, step: Exact): Exact {
  return mul(fraction(ceil(div(x, positive(step)))), step);
}

/** The greatest multiple of `step` ≤ x. Throws RangeError unless step > 0. */
export function roundDownTo(x: Exact, step: Exact): Exact {
  return mul(fraction(floor(div(x, positive(step)))), step);
}

/** The multiple of `step` nearest to x; halfway, the greater one. Throws RangeError unless step > 0. */
export function roundTo(x: Exact, step: Exact): Exact {
  return mul(fraction(floor(add(div(x, positive(step)), HALF))), step);
}

export function isZero(x: Exact): boolean {
  return x.lane === 'rational' && x.a === 0;
}

export function isRational(x: Exact): boolean {
  return x.wide === undefined ? x.lane === 'rational' : isWideRational(x.wide);
}

export function isWhole(x: Exact): boolean {
  return x.wide === undefined ? x.lane === 'rational' && x.over === 1 : isWideRational(x.wide) && x.wide.over === 1n;
}

/** Numerator and denominator (> 0, reduced) of a rational x; undefined for others. */
export function asFraction(x: Exact): { readonly n: bigint; readonly d: bigint } | undefined {
  if (!isRational(x)) return undefined;
  const { a, over } = toWide(x);
  return { n: a, d: over };
}

/** x as a plain integer, for counting; undefined when it is not whole or past the safe integers. */
export function toInteger(x: Exact): number | undefined {
  return x.lane === 'rational' && x.over === 1 ? x.a : undefined;
}

/** A text that equal numbers share and different ones do not: `7`, `5/2`, `0,1,0,0/2`. */
export function key(x: Exact): string {
  const { a, b, c, d, over } = x.wide ?? x;
  const top = isRational(x) ? `${a}` : `${a},${b},${c},${d}`;
  return `${over}` === '1' ? top : `${top}/${over}`;
}

/** True when a coefficient has more than 4096 bits: callers refuse such arithmetic before it runs away. */
export function tooBig(x: Exact): boolean {
  if (x.wide === undefined) return false;
  return Object.values(x.wide).some((n: bigint) => n > WIDEST || n < -WIDEST);
}

/** The nearest double. For drawing and output only; nothing is decided by it. */
export function toNumber(x: Exact): number {
  return x.lane === 'rational' ? x.a / x.over : wideToNumber(toWide(x));
}

/** A double ≤ x, close to it: for filters that pass every case they are unsure of. */
export function below(x: Exact): number {
  const value = guess(x);
  return x.lane === 'rational' && x.over === 1 ? value : finite(value - size(x) * DOUBT - Number.MIN_VALUE, Number.NEGATIVE_INFINITY);
}

/** A double ≥ x, close to it. */
export function above(x: Exact): number {
  return 0 - below(neg(x));
}

/** A double within `size(x) · DOUBT` of x (of any lane), the same for equal numbers. */
export function guess(x: Exact): number {
  if (x.lane === 'rational') return x.a / x.over;
  if (x.wide !== undefined) return wideToNumber(x.wide);
  return (x.a + x.b * ROOT2 + x.c * ROOT3 + x.d * ROOT6) / x.over;
}

/** What the error of `guess(x)` is measured by: the sum of its terms without their signs. */
export function size(x: Exact): number {
  if (x.lane !== 'surd') return absolute(guess(x));
  return (absolute(x.a) + absolute(x.b) * ROOT2 + absolute(x.c) * ROOT3 + absolute(x.d) * ROOT6) / x.over;
}

/** Relative error allowed for a sum of four products and a quotient of doubles: 16 units in the last place, twice the worst case. */
export const DOUBT = 2 ** -49;

const ROOT2 = wideToNumber(toWide(SQRT2));
const ROOT3 = wideToNumber(toWide(SQRT3));
const ROOT6 = wideToNumber(wide(0n, 0n, 0n, 1n, 1n));
const WIDEST = 1n << 4096n;

function plain(n: number): Exact {
  return new Exact('rational', n, 0, 0, 0, 1, undefined);
}

/** n / d in lowest terms, for safe integers and d > 0. */
function reduced(n: number, d: number): Exact {
  if (d === 1) return plain(n + 0);
  const common = commonFactor(n, d);
  return new Exact('rational', n / common + 0, 0, 0, 0, d / common, undefined);
}

/** The same for four coefficients. */
function narrow(a: number, b: number, c: number, d: number, over: number): Exact {
  if (b === 0 && c === 0 && d === 0) return reduced(a, over);
  let common = over;
  for (const part of [a, b, c, d]) if (common !== 1) common = commonFactor(part, common);
  return new Exact('surd', a / common + 0, b / common + 0, c / common + 0, d / common + 0, over / common, undefined);
}

/** x / y where x is a rational multiple of y and both are surds in safe integers, as on every line at 0°, 45° or 90° to another. */
function rationalQuotient(x: Exact, y: Exact): Exact | undefined {
  if (x.lane !== 'surd' || y.lane !== 'surd' || !isSafe(largest(x) * largest(y))) return undefined;
  const [p, q] = y.b !== 0 ? [x.b, y.b] : y.c !== 0 ? [x.c, y.c] : [x.d, y.d];
  const isMultiple = x.a * q === p * y.a && x.b * q === p * y.b && x.c * q === p * y.c && x.d * q === p * y.d;
  return isMultiple ? div(mul(plain(p), plain(y.over)), mul(plain(q), plain(x.over))) : undefined;
}

function fromWide(x: Wide): Exact {
  if ([x.a, x.b, x.c, x.d, x.over].every((n) => n <= SAFEST && n >= -SAFEST)) {
    return narrow(Number(x.a), Number(x.b), Number(x.c), Number(x.d), Number(x.over));
  }
  return new Exact('wide', 0, 0, 0, 0, 0, x);
}

function toWide(x: Exact): Wide {
  return x.wide ?? { a: BigInt(x.a), b: BigInt(x.b), c: BigInt(x.c), d: BigInt(x.d), over: BigInt(x.over) };
}

const SAFEST = BigInt(Number.MAX_SAFE_INTEGER);

function isSafe(n: number): boolean {
  return n <= Number.MAX_SAFE_INTEGER && n >= -Number.MAX_SAFE_INTEGER;
}

function commonFactor(x: number, y: number): number {
  let [a, b] = [absolute(x), y];
  while (b !== 0) {
    const rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

function largest(x: Exact): number {
  let most = absolute(x.a);
  if (absolute(x.b) > most) most = absolute(x.b);
  if (absolute(x.c) > most) most = absolute(x.c);
  return absolute(x.d) > most ? absolute(x.d) : most;
}

function absolute(n: number): number {
  return n < 0 ? -n : n;
}

function finite(value: number, otherwise: number): number {
  return Number.isFinite(value) ? value : otherwise;
}

function positive(step: Exact): Exact {
  if (sign(step) <= 0) throw new RangeError('A step is more than zero.');
  return step;
}
