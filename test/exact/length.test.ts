import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatArea, formatLength, formatMetres, formatNumber, formatYards, fromInches, toInches,
} from '../../server/src/exact/length.ts';
import type { Unit } from '../../server/src/exact/length.ts';
import { SQRT2, SQRT3, abs, add, atMost, fraction, mul, neg, sub } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { parseNumber } from '../../server/src/exact/parse.ts';
import { INCH_FRACTIONS, YARD_FRACTIONS } from './conversions.ts';

const inches = { units: 'inches' } as const;
const centimetres = { units: 'centimetres' } as const;

function read(text: string): Exact {
  const value = parseNumber(text);
  if (value === undefined) throw new Error(`no number: ${text}`);
  return value;
}

describe('units', () => {
  test.each(INCH_FRACTIONS)('%s in = %s in = %s mm', (fractional, decimal, millimetres) => {
    expect(read(fractional)).toEqual(read(decimal));
    expect(toInches(read(millimetres), 'mm')).toEqual(read(fractional));
    expect(fromInches(read(fractional), 'mm')).toEqual(read(millimetres));
  });

  test.each(YARD_FRACTIONS)('%s yd = %s in = %s cm = %s m', (yards, inch, centimetre, metres) => {
    expect(toInches(read(yards), 'yd')).toEqual(read(inch));
    expect(toInches(read(centimetre), 'cm')).toEqual(read(inch));
    expect(atMost(abs(sub(fromInches(read(inch), 'm'), read(metres))), fraction(1, 2000))).toBe(true);
  });

  test('there and back', () => {
    for (const unit of ['in', 'yd', 'mm', 'cm', 'm'] satisfies Unit[]) {
      expect(fromInches(toInches(SQRT2, unit), unit)).toEqual(SQRT2);
    }
  });
});

describe('printing', () => {
  test.each([
    ['15/2', '7 1/2"'], ['81/8', '10 1/8"'], ['0', '0"'], ['1/2', '1/2"'], ['641/64', '10 1/64"'], ['10/3', '3 1/3"'], ['5/7', '5/7"'], ['1/99', '1/99"'],
    ['7501/1000', '7.501"'], ['1/1000', '0.001"'], ['1/128', 'less than 1/16"'], ['1281/128', 'about 10"'], ['100/127', 'about 13/16"'],
  ])('%s in', (value, printed) => {
    expect(formatLength(read(value), inches)).toBe(printed);
  });

  test('irrational and negative lengths in inches', () => {
    expect(formatLength(mul(SQRT2, fraction(15, 2)), inches)).toBe('about 10 5/8"');
    expect(formatLength(neg(fraction(15, 2)), inches)).toBe('-7 1/2"');
    expect(formatLength(neg(mul(SQRT2, fraction(15, 2))), inches)).toBe('about -10 5/8"');
    expect(formatLength(sub(mul(SQRT2, fraction(1000)), fraction(1414)), inches)).toBe('about 3/16"');
    expect(formatLength(neg(fraction(1, 3000)), inches)).toBe('about 0"');
  });

  test.each([
    ['190', '19 cm'], ['75', '7.5 cm'], ['7', '0.7 cm'], ['1', '0.1 cm'], ['1905/10', '19.05 cm'], ['0', '0 cm'], ['1/100', '0.001 cm'], ['1/3', 'less than 0.1 cm'],
    ['100/3', 'about 3.3 cm'], ['1234567/10000', 'about 12.3 cm'],
  ])('%s mm', (value, printed) => {
    expect(formatLength(toInches(read(value), 'mm'), centimetres)).toBe(printed);
  });

  test('inches in centimetres', () => {
    expect(formatLength(read('7 1/2'), centimetres)).toBe('19.05 cm');
    expect(formatLength(mul(SQRT2, fraction(10)), centimetres)).toBe('about 35.9 cm');
  });

  test('cloth', () => {
    expect(['49 1/2', '36', '24', '9', '13 1/2', '42', '1', '0'].map((x) => formatYards(read(x)))).toEqual([
      '1 3/8 yd', '1 yd', '2/3 yd', '1/4 yd', '3/8 yd', 'about 1 1/8 yd', 'less than 1/8 yd', '0 yd',
    ]);
    expect(['140', '95', '5'].map((x) => formatMetres(toInches(read(x), 'cm')))).toEqual(['1.4 m', '0.95 m', '0.05 m']);
    expect(formatMetres(read('36'))).toBe('about 0.91 m');
  });

  test('plain numbers and areas', () => {
    expect(['5/2', '12', '1/8', '0', '22/7', '1001/1000'].map((x) => formatNumber(read(x)))).toEqual(['2 1/2', '12', '1/8', '0', '3 1/7', '1.001']);
    expect(formatNumber(SQRT2)).toBe('about 1.414');
    expect(formatNumber(neg(SQRT3))).toBe('about -1.732');
    expect(formatArea(read('9/4'), inches)).toBe('2 1/4 sq in');
    expect(formatArea(read('9/4'), centimetres)).toBe('about 14.5 sq cm');
    expect(formatArea(read('1'), centimetres)).toBe('about 6.5 sq cm');
    expect(formatArea(read('100'), centimetres)).toBe('645.16 sq cm');
  });

  test('what is on a ruler reads back as itself', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200_000 }), fc.constantFrom(1, 2, 3, 4, 5, 8, 16, 32, 64), (n, d) => {
        const x = fraction(n, d);
        const printed = formatLength(x, inches);
        expect(read(printed.slice(0, -1))).toEqual(x);
        expect(read(formatNumber(x))).toEqual(x);
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), (tenths) => {
        const x = toInches(fraction(tenths, 10), 'mm');
        const printed = formatLength(x, centimetres);
        expect(toInches(read(printed.replace(' cm', '')), 'cm')).toEqual(x);
        expect(toInches(read(formatMetres(mul(x, fraction(100))).replace(' m', '')), 'm')).toEqual(mul(x, fraction(100)));
      }),
    );
  });

  test('rounded lengths are at most half a step away and say so', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 1, max: 50 }), (n, d) => {
        const x = add(mul(SQRT2, fraction(n, d)), fraction(1, 16));
        const printed = formatLength(x, inches);
        expect(printed.startsWith('about ')).toBe(true);
        expect(atMost(abs(sub(read(printed.slice(6, -1)), x)), fraction(1, 32))).toBe(true);
      }),
    );
  });
});
