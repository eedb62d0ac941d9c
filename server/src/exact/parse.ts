/** Numbers as quilters type them, read without rounding. Which blanks and hyphens may stand where is the grammar's business. */
import { add, fraction } from './number.ts';
import type { Exact } from './number.ts';

/**
 * The value of `7`, `2.5`, `.5`, `3/4`, `2 1/2`, `2-1/2`, `2½` or `½`; undefined for anything else: signs, exponents, a zero
 * denominator, a mixed number whose fraction is not below 1.
 */
export function parseNumber(text: string): Exact | undefined {
  const decimal = /^(\d*)\.(\d+)$/.exec(text);
  if (decimal !== null) return parseDecimal(decimal[1] ?? '', decimal[2] ?? '');
  const parts = NUMBER.exec(text)?.groups;
  if (parts === undefined) return undefined;
  const { whole, before, top, bottom, sign, n, d } = parts;
  if (n !== undefined && d !== undefined) return BigInt(d) === 0n ? undefined : fraction(BigInt(n), BigInt(d));
  const start = fraction(BigInt(whole ?? before ?? 0));
  const [above, below] = sign === undefined ? [BigInt(top ?? 0), BigInt(bottom ?? 1)] : VULGAR_FRACTIONS[sign] ?? [0n, 1n];
  return above < below ? add(start, fraction(above, below)) : undefined;
}

/** The fractions that have a character of their own. */
export const VULGAR_FRACTIONS: Readonly<Record<string, readonly [bigint, bigint]>> = {
  '½': [1n, 2n],
  '⅓': [1n, 3n],
  '⅔': [2n, 3n],
  '¼': [1n, 4n],
  '¾': [3n, 4n],
  '⅕': [1n, 5n],
  '⅖': [2n, 5n],
  '⅗': [3n, 5n],
  '⅘': [4n, 5n],
  '⅙': [1n, 6n],
  '⅚': [5n, 6n],
  '⅐': [1n, 7n],
  '⅛': [1n, 8n],
  '⅜': [3n, 8n],
  '⅝': [5n, 8n],
  '⅞': [7n, 8n],
  '⅑': [1n, 9n],
  '⅒': [1n, 10n],
  '↉': [0n, 3n],
};

/** A fraction by itself; a whole number, alone or with a fraction after blanks, a hyphen or, for a sign, nothing; a sign. */
const NUMBER = new RegExp(
  String.raw`^(?:(?<n>\d+)[/⁄](?<d>\d+)|(?<whole>\d+)(?:(?:[ \t]+|-)(?<top>\d+)[/⁄](?<bottom>\d+))?|(?:(?<before>\d+)(?:[ \t]*|-))?(?<sign>[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒↉]))$`,
);

function parseDecimal(whole: string, decimals: string): Exact {
  return fraction(BigInt(whole + decimals), 10n ** BigInt(decimals.length));
}
