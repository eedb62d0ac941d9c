/**
 * How checks say numbers. A check must show both numbers and they must look different when they differ, so nothing is
 * rounded that can be written exactly.
 */
import { formatArea, formatLength, formatNumber, fromInches } from '../exact/length.ts';
import { asFraction, compare, floor, fraction, isRational, key, mul, roundTo, type Exact } from '../exact/number.ts';
import type { Pattern } from '../model/pattern.ts';

/** A length in the pattern's units, exact wherever it is a fraction: `8 999/1000"`, never `about 9"`; a root to a thousandth of an inch. */
export function lengthText(inches: Exact, pattern: Pattern): string {
  const style = { units: pattern.rules.units };
  const printed = formatLength(inches, style);
  if (!isRounded(printed)) return printed;
  if (!isShort(inches)) return `about ${style.units === 'inches' ? `${decimalText(inches)}"` : `${decimalText(fromInches(inches, 'cm'))} cm`}`;
  return style.units === 'inches' ? `${fractionText(inches)}"` : `${fractionText(fromInches(inches, 'cm'))} cm`;
}

/** Two lengths that differ and look different: when both are rounded to the same words, they get the difference added. */
export function bothLengths(found: Exact, expected: Exact, pattern: Pattern): readonly [string, string] {
  const texts: readonly [string, string] = [lengthText(found, pattern), lengthText(expected, pattern)];
  if (texts[0] !== texts[1] || compare(found, expected) === 0) return texts;
  return compare(found, expected) > 0 ? [`a little over ${plain(texts[0])}`, texts[1]] : [`a little under ${plain(texts[0])}`, texts[1]];
}

/** `6" by 8"`. */
function sizeText(size: { readonly width: Exact; readonly height: Exact }, pattern: Pattern): string {
  return `${lengthText(size.width, pattern)} by ${lengthText(size.height, pattern)}`;
}

/** An area in the pattern's units; a sliver is said to be one. */
function areaText(squareInches: Exact, pattern: Pattern): string {
  const tiny = mul(squareInches, fraction(16));
  if (compare(tiny, fraction(1)) < 0) {
    return isShort(squareInches) && pattern.rules.units === 'inches' ? `${fractionText(squareInches)} sq in` : `a sliver of less than ${pattern.rules.units === 'inches' ? '1/16 sq in' : '0.4 sq cm'}`;
  }
  return formatArea(squareInches, { units: pattern.rules.units });
}

/** `1/2,3` as coordinates are written, but in the pattern's lengths. */
function pointText(point: { readonly x: Exact; readonly y: Exact }, pattern: Pattern): string {
  return `${lengthText(point.x, pattern)} from the left and ${lengthText(point.y, pattern)} from the top`;
}

/** Where something was found: in inches, or in the units of a block without a size. */
export interface Measure {
  readonly isLength: boolean;
}

/** An area of a block, in the pattern's units or in squares of its box: `3/4 of a square of its box`. */
export function blockAreaText(area: Exact, { isLength }: Measure, pattern: Pattern): string {
  if (isLength) return areaText(area, pattern);
  const number = numberText(area);
  if (compare(area, fraction(1)) < 0) return `${number} of a square of its box`;
  return `${number} ${number === '1' ? 'square' : 'squares'} of its box`;
}

/** A point of a block, likewise; in the units of its box as a corner is written. */
export function blockPointText(point: { readonly x: Exact; readonly y: Exact }, { isLength }: Measure, pattern: Pattern): string {
  return isLength ? pointText(point, pattern) : `${numberText(point.x)},${numberText(point.y)}`;
}

/** The size of a block, likewise. */
export function blockSizeText(size: { readonly width: Exact; readonly height: Exact }, { isLength }: Measure, pattern: Pattern): string {
  return isLength ? sizeText(size, pattern) : `${numberText(size.width)} by ${numberText(size.height)}`;
}

/** A bare number as the language writes it. */
export function numberText(x: Exact): string {
  const printed = formatNumber(x);
  if (!isRounded(printed) || !isRational(x)) return printed;
  return isShort(x) ? fractionText(x) : `about ${decimalText(x)}`;
}

/** `1 cell`, `2 cells`. */
export function count(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}

/** True for a printed number that is not the whole truth. */
export function isRounded(text: string): boolean {
  return /^(about|less than) /.test(text);
}

function plain(text: string): string {
  return text.replace(/^(about|less than) /, '');
}

/** A fraction that is worth reading: places and areas along arcs come with denominators that nobody reads. */
function isShort(x: Exact): boolean {
  const { d } = asFraction(x) ?? {};
  return d !== undefined && d <= LONGEST;
}

const LONGEST = 1_000_000n;

/** To three decimals: `39.82`. */
function decimalText(x: Exact): string {
  const thousandths = floor(roundTo(mul(x, fraction(1000)), fraction(1)));
  const digits = `${thousandths < 0n ? -thousandths : thousandths}`.padStart(4, '0');
  const decimals = digits.slice(-3).replace(/0+$/, '');
  return `${thousandths < 0n ? '-' : ''}${digits.slice(0, -3)}${decimals === '' ? '' : `.${decimals}`}`;
}

/** A rational as whole and fraction, whatever its denominator. */
function fractionText(x: Exact): string {
  const match = /^(-?)(\d+)(?:\/(\d+))?$/.exec(key(x));
  const over = BigInt(match?.[3] ?? '1');
  if (!match || over === 1n) return formatNumber(x);
  const top = BigInt(match[2] ?? '0');
  const whole = top / over;
  return `${match[1] ?? ''}${whole === 0n ? '' : `${whole} `}${top % over}/${over}`;
}
