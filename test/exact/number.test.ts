import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  HALF, ONE, SQRT2, SQRT3, TWO, ZERO, above, abs, add, asFraction, atMost, below, ceil, compare, div, equals, floor, fraction, isRational,
  isWhole, isZero, key, less, max, min, mul, neg, roundDownTo, roundTo, roundUpTo, sign, sub, sum, toInteger, toNumber, tooBig,
} from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { exact, exactOf, nonZero, parts, signByDigits, trillionths } from './arbitrary.ts';

const RUNS = { numRuns: 1000 };

function same(x: Exact, y: Exact): void {
  expect(key(x)).toBe(key(y));
  expect(equals(x, y)).toBe(true);
  expect(x).toEqual(y);
}

describe('field laws', () => {
  test('addition and multiplication commute and associate, and multiplication distributes', () => {
    fc.assert(
      fc.property(exact, exact, exact, (x, y, z) => {
        same(add(x, y), add(y, x));
        same(mul(x, y), mul(y, x));
        same(add(add(x, y), z), add(x, add(y, z)));
        same(mul(mul(x, y), z), mul(x, mul(y, z)));
        same(mul(x, add(y, z)), add(mul(x, y), mul(x, z)));
      }),
      RUNS,
    );
  });

  test('neutral elements and inverses', () => {
    fc.assert(
      fc.property(exact, nonZero, (x, y) => {
        same(add(x, ZERO), x);
        same(mul(x, ONE), x);
        same(mul(x, ZERO), ZERO);
        same(add(x, neg(x)), ZERO);
        same(sub(x, y), neg(sub(y, x)));
        same(mul(div(x, y), y), x);
        same(div(y, y), ONE);
      }),
      RUNS,
    );
  });

  test('roots', () => {
    same(mul(SQRT2, SQRT2), TWO);
    same(mul(SQRT3, SQRT3), fraction(3));
    same(mul(mul(SQRT2, SQRT3), mul(SQRT2, SQRT3)), fraction(6));
    same(div(ONE, SQRT2), mul(HALF, SQRT2));
    same(div(ONE, add(SQRT2, SQRT3)), sub(SQRT3, SQRT2));
  });

  test('results that outgrow the safe integers come back to them', () => {
    const large = fraction(2n ** 200n, 3n ** 100n);
    same(mul(large, div(HALF, large)), HALF);
    same(sub(add(large, SQRT2), large), SQRT2);
    same(add(fraction(Number.MAX_SAFE_INTEGER), ONE), fraction(2n ** 53n));
    same(sub(fraction(2n ** 53n), ONE), fraction(Number.MAX_SAFE_INTEGER));
    same(mul(fraction(94906267), fraction(94906267)), fraction(94906267n ** 2n));
  });
});

describe('order', () => {
  test('signs and comparisons agree with 60 digits', () => {
    fc.assert(
      fc.property(parts, parts, (p, q) => {
        const [x, y] = [exactOf(p), exactOf(q)];
        expect(sign(x)).toBe(signByDigits(p));
        const apart = signByDigits({
          a: p.a * q.over - q.a * p.over,
          b: p.b * q.over - q.b * p.over,
          c: p.c * q.over - q.c * p.over,
          d: p.d * q.over - q.d * p.over,
          over: p.over * q.over,
        });
        if (apart !== undefined) expect(compare(x, y)).toBe(apart);
        expect(compare(x, y)).toBe(sign(sub(x, y)) + 0);
        expect(less(x, y)).toBe(!atMost(y, x));
        expect(sign(abs(x))).toBe(Math.abs(sign(x)));
      }),
      RUNS,
    );
  });

  test('convergents of √2, √3 and √6 come as near as fractions can, from both sides in turn', () => {
    // Pell: (p, q) → (p·u + q·v·r, p·v + q·u) multiplies p + q√r by the unit u + v√r, so p² − r·q² only changes sign.
    const units = [[2n, 1n, 1n, SQRT2], [3n, 2n, 1n, SQRT3], [6n, 5n, 2n, mul(SQRT2, SQRT3)]] as const;
    for (const [r, u, v, root] of units) {
      let [p, q]: [bigint, bigint] = [u, v];
      for (let i = 0; i < 220; i += 1) {
        const above = p * p > r * q * q ? -1 : 1;
        expect(sign(sub(root, fraction(p, q)))).toBe(above);
        expect(sign(sub(mul(fraction(q), root), fraction(p)))).toBe(above);
        expect(compare(fraction(p, q), root)).toBe(-above);
        [p, q] = [p * u + q * v * r, p * v + q * u];
      }
    }
  });

  test('sums of three roots that nearly cancel', () => {
    // (√2 − 1)^m · (2 − √3)^n is positive and tiny, and its coefficients are huge.
    let tiny = ONE;
    for (let i = 0; i < 150; i += 1) {
      tiny = mul(tiny, i % 2 === 0 ? sub(SQRT2, ONE) : sub(TWO, SQRT3));
      expect(sign(tiny)).toBe(1);
      expect(sign(neg(tiny))).toBe(-1);
      expect(floor(tiny)).toBe(0n);
      expect(ceil(tiny)).toBe(1n);
      expect(less(add(ONE, tiny), ONE)).toBe(false);
    }
    expect(toNumber(tiny) / (Math.SQRT2 - 1) ** 75 / (2 - Math.sqrt(3)) ** 75).toBeCloseTo(1, 10);
  });

  test('min, max and sum', () => {
    same(min(SQRT2, ONE, SQRT3), ONE);
    same(max(SQRT2, ONE, SQRT3), SQRT3);
    same(sum([SQRT2, ONE, neg(SQRT2)]), ONE);
    same(sum([]), ZERO);
  });
});

describe('rounding', () => {
  test('floor and ceil bracket the number by less than one', () => {
    fc.assert(
      fc.property(exact, (x) => {
        const low = fraction(floor(x));
        expect(atMost(low, x)).toBe(true);
        expect(less(x, add(low, ONE))).toBe(true);
        expect(ceil(x)).toBe(isWhole(x) ? floor(x) : floor(x) + 1n);
      }),
      RUNS,
    );
  });

  test('to a step', () => {
    const eighth = fraction(1, 8);
    same(roundUpTo(fraction(15, 2), eighth), fraction(15, 2));
    same(roundUpTo(mul(SQRT2, fraction(12)), eighth), fraction(17));
    same(roundDownTo(mul(SQRT2, fraction(12)), eighth), fraction(135, 8));
    same(roundTo(mul(SQRT2, fraction(12)), eighth), fraction(17));
    same(roundTo(fraction(1, 16), eighth), eighth);
    same(roundTo(fraction(-1, 16), eighth), ZERO);
    same(roundUpTo(fraction(-7, 16), eighth), fraction(-3, 8));
    for (const step of [ZERO, neg(eighth)]) expect(() => roundUpTo(ONE, step)).toThrow(RangeError);
  });

  test('doubles', () => {
    fc.assert(
      fc.property(parts, (p) => {
        const x = exactOf(p);
        const value = toNumber(x);
        const digits = Number(trillionths(p)) / 1e12;
        expect(Math.abs(value - digits)).toBeLessThanOrEqual(2e-12 + Math.abs(digits) * 1e-15);
        expect(below(x)).toBeLessThanOrEqual(value);
        expect(above(x)).toBeGreaterThanOrEqual(value);
        expect(above(x) - below(x)).toBeLessThanOrEqual(1e-14 * (Math.abs(value) + [p.a, p.b, p.c, p.d].reduce((most, n) => Math.max(most, 6 * Math.abs(Number(n) / Number(p.over))), 0)) + 1e-300);
      }),
      RUNS,
    );
    expect(toNumber(SQRT2)).toBe(Math.SQRT2);
    expect(toNumber(fraction(1, 10))).toBe(0.1);
    expect(toNumber(fraction(2n ** 53n + 1n))).toBe(2 ** 53);
    expect(toNumber(fraction(2n ** 53n + 3n))).toBe(2 ** 53 + 4);
    expect(toNumber(fraction((2n ** 53n + 1n) * 2n ** 80n + 1n, 2n ** 80n))).toBe(2 ** 53 + 2);
    expect(toNumber(fraction(10n ** 400n))).toBe(Infinity);
    expect(toNumber(fraction(-(10n ** 400n)))).toBe(-Infinity);
    expect(toNumber(fraction(1n, 10n ** 400n))).toBe(0);
    expect(toNumber(fraction(10n ** 400n, 10n ** 399n))).toBe(10);
    expect(toNumber(fraction(10n ** 401n + 1n, 10n ** 400n))).toBe(10);
    expect(above(fraction(1n, 10n ** 400n))).toBeGreaterThan(0);
    expect(below(fraction(-(10n ** 400n)))).toBe(-Infinity);
    expect(above(fraction(10n ** 400n))).toBe(Infinity);
  });
});

describe('facts about a number', () => {
  test('kinds', () => {
    expect([ZERO, ONE, SQRT2, fraction(2n ** 90n), fraction(1n, 2n ** 90n)].map(isRational)).toEqual([true, true, false, true, true]);
    expect([ZERO, HALF, SQRT2, fraction(2n ** 90n), fraction(1n, 2n ** 90n)].map(isWhole)).toEqual([true, false, false, true, false]);
    expect([ZERO, sub(SQRT2, SQRT2), ONE].map(isZero)).toEqual([true, true, false]);
    expect(asFraction(fraction(-10, 4))).toEqual({ n: -5n, d: 2n });
    expect(asFraction(SQRT3)).toBeUndefined();
    expect([fraction(-7), HALF, SQRT2, fraction(2n ** 90n)].map(toInteger)).toEqual([-7, undefined, undefined, undefined]);
  });

  test('keys', () => {
    expect([fraction(7), fraction(10, 4), fraction(3, -6), SQRT2, div(SQRT3, fraction(-4)), fraction(2n ** 60n)].map(key)).toEqual([
      '7', '5/2', '-1/2', '0,1,0,0', '0,0,-1,0/4', '1152921504606846976',
    ]);
    expect(key(neg(ZERO))).toBe('0');
    expect(Object.is(neg(ZERO).a, 0)).toBe(true);
  });

  test('size guard', () => {
    let x = add(SQRT2, fraction(1, 3));
    for (let i = 0; i < 10; i += 1) x = mul(x, x);
    expect(tooBig(x)).toBe(false);
    for (let i = 0; i < 3; i += 1) x = mul(x, x);
    expect(tooBig(x)).toBe(true);
  });

  test('refusals', () => {
    expect(() => div(ONE, sub(SQRT2, SQRT2))).toThrow(RangeError);
    expect(() => fraction(1, 0)).toThrow(RangeError);
    expect(() => fraction(1n, 0n)).toThrow(RangeError);
    expect(() => fraction(0.5)).toThrow(RangeError);
    expect(() => fraction(2 ** 53)).toThrow(RangeError);
  });
});
