import { expect, test } from 'vitest';
import { add, fraction, key } from '../../server/src/exact/number.ts';
import { VULGAR_FRACTIONS, parseNumber } from '../../server/src/exact/parse.ts';

test.each([
  ['7', '7'], ['0', '0'], ['007', '7'], ['2.5', '5/2'], ['.5', '1/2'], ['0.125', '1/8'], ['3/4', '3/4'], ['5/2', '5/2'], ['6/8', '3/4'], ['1⁄2', '1/2'],
  ['2 1/2', '5/2'], ['2  1/2', '5/2'], ['2\t1/2', '5/2'], ['2-1/2', '5/2'], ['2½', '5/2'], ['2 ½', '5/2'], ['2-½', '5/2'], ['½', '1/2'], ['10⅞', '87/8'],
  ['0 1/2', '1/2'], ['123456789012345678901234567890', '123456789012345678901234567890'],
])('%s is %s', (text, value) => {
  const parsed = parseNumber(text);
  expect(parsed && key(parsed)).toBe(value);
});

test.each([
  '', ' ', '-1', '+1', '2.', '.', '1e400', '1e3', '2 3/2', '2 2/2', '2.5 1/2', '2 1 2', '3/0', '2 1/0', '1/2/3', '½½', '1/2½', '2 - 1/2', '2--1/2', 'NaN', 'Infinity',
  '0x10', '1_000', '1,5', '٣', ' 7', '7 ', '-½',
])('%j is no number', (text) => {
  expect(parseNumber(text)).toBeUndefined();
});

test('every fraction sign, alone and after digits, is what Unicode says it is', () => {
  for (const sign of Object.keys(VULGAR_FRACTIONS)) {
    const [n = '', d = ''] = sign.normalize('NFKC').split('⁄');
    const value = fraction(BigInt(n), BigInt(d));
    expect(parseNumber(sign)).toEqual(value);
    expect(parseNumber(`12${sign}`)).toEqual(add(fraction(12), value));
  }
});

test('a number of ten thousand digits is read at once', () => {
  expect(parseNumber('9'.repeat(10_000))).toEqual(fraction(10n ** 10_000n - 1n));
});
