/**
 * Units, and lengths printed as quilters write them. A length is an exact number of inches; an area, of square inches.
 * What is printed without `about` or `less than` is the exact value.
 */
import { abs, add, asFraction, floor, fraction, isZero, mul, roundTo, sign, sub } from './number.ts';
import type { Exact } from './number.ts';

export type Unit = 'in' | 'yd' | 'mm' | 'cm' | 'm';

export type UnitSystem = 'inches' | 'centimetres';

export interface LengthStyle {
  readonly units: UnitSystem;
}

/** Inches in one unit. 1 in = 25.4 mm by the international yard and pound agreement of 1959. */
export const INCHES_PER_UNIT: Readonly<Record<Unit, Exact>> = {
  in: fraction(1),
  yd: fraction(36),
  mm: fraction(10, 254),
  cm: fraction(100, 254),
  m: fraction(10_000, 254),
};

/** x of `unit`, in inches. */
export function toInches(x: Exact, unit: Unit): Exact {
  return mul(x, INCHES_PER_UNIT[unit]);
}

/** x inches, in `unit`. */
export function fromInches(x: Exact, unit: Unit): Exact {
  return mul(x, PER_INCH[unit]);
}

/** A length in inches: `7 1/2"`, `3 1/3"`, `about 10 5/8"`; or `19 cm`, `7.5 cm`, `about 17.7 cm`. */
export function formatLength(inches: Exact, style: LengthStyle): string {
  if (style.units === 'centimetres') return formatDecimal(fromInches(inches, 'cm'), { places: 3, nearest: fraction(1, 10), mark: ' cm' });
  return formatFraction(inches, { denominators: isPrintable, nearest: fraction(1, 16), mark: '"' });
}

/** A length in inches as cloth is bought: `1 3/8 yd`, `2/3 yd`, `about 1 1/4 yd`. */
export function formatYards(inches: Exact): string {
  return formatFraction(fromInches(inches, 'yd'), { denominators: isYardFraction, nearest: fraction(1, 8), mark: ' yd' });
}

/** The same in metres: `1.4 m`, `about 0.23 m`. */
export function formatMetres(inches: Exact): string {
  return formatDecimal(fromInches(inches, 'm'), { places: 3, nearest: fraction(1, 100), mark: ' m' });
}

/** An area in square inches: `2 1/4 sq in`, `about 5.1 sq cm`. */
export function formatArea(squareInches: Exact, style: LengthStyle): string {
  if (style.units === 'centimetres') {
    const squareCentimetres = fromInches(fromInches(squareInches, 'cm'), 'cm');
    return formatDecimal(squareCentimetres, { places: 3, nearest: fraction(1, 10), mark: ' sq cm' });
  }
  return formatFraction(squareInches, { denominators: isPrintable, nearest: fraction(1, 16), mark: ' sq in' });
}

/** A plain number: `2 1/2`, `0.125` as `1/8`, `about 1.414`. */
export function formatNumber(x: Exact): string {
  return formatFraction(x, { denominators: isPrintable, nearest: fraction(1, 1000), mark: '' });
}

interface FractionStyle {
  readonly denominators: (d: bigint) => boolean;
  /** 1/1000 prints decimals. */
  readonly nearest: Exact;
  readonly mark: string;
}

interface DecimalStyle {
  /** At most 3. */
  readonly places: number;
  readonly nearest: Exact;
  readonly mark: string;
}

const PER_INCH: Readonly<Record<Unit, Exact>> = {
  in: fraction(1),
  yd: fraction(1, 36),
  mm: fraction(254, 10),
  cm: fraction(254, 100),
  m: fraction(254, 10_000),
};

/** Exact as a mixed number if its denominator is one people read; else exact with up to 3 decimals; else rounded, and said so. */
function formatFraction(x: Exact, { denominators, nearest, mark }: FractionStyle): string {
  const d = asFraction(x)?.d;
  if (d !== undefined && denominators(d)) return mixed(x) + mark;
  if (d !== undefined && 1000n % d === 0n) return decimal(x) + mark;
  return formatRounded(x, nearest, mark);
}

function formatDecimal(x: Exact, { places, nearest, mark }: DecimalStyle): string {
  const d = asFraction(x)?.d;
  if (d !== undefined && 10n ** BigInt(places) % d === 0n) return decimal(x) + mark;
  return formatRounded(x, nearest, mark);
}

function formatRounded(x: Exact, nearest: Exact, mark: string): string {
  const print = isTenPower(nearest) ? decimal : mixed;
  const rounded = sign(x) < 0 ? mul(fraction(-1), roundTo(abs(x), nearest)) : roundTo(x, nearest);
  if (isZero(rounded)) return sign(x) < 0 ? `about ${print(rounded)}${mark}` : `less than ${print(nearest)}${mark}`;
  return `about ${print(rounded)}${mark}`;
}

/** `2 1/2`, `-1/3`, `7` of a rational number. */
function mixed(x: Exact): string {
  const whole = floor(abs(x));
  const { n, d } = asFraction(sub(abs(x), fraction(whole))) ?? { n: 0n, d: 1n };
  const parts = [...(whole !== 0n || n === 0n ? [`${whole}`] : []), ...(n === 0n ? [] : [`${n}/${d}`])];
  return (sign(x) < 0 ? '-' : '') + parts.join(' ');
}

/** `7.5` of a number with at most 3 decimals. */
function decimal(x: Exact): string {
  const thousandths = floor(add(mul(abs(x), fraction(1000)), fraction(1, 2)));
  const decimals = `${thousandths % 1000n}`.padStart(3, '0').replace(/0+$/, '');
  return `${sign(x) < 0 ? '-' : ''}${thousandths / 1000n}${decimals === '' ? '' : `.${decimals}`}`;
}

/** Powers of two up to 64, and everything else up to 99. */
function isPrintable(d: bigint): boolean {
  return d <= 99n;
}

function isYardFraction(d: bigint): boolean {
  return d === 3n || 8n % d === 0n;
}

function isTenPower(step: Exact): boolean {
  const d = asFraction(step)?.d ?? 1n;
  return /^10+$/.test(`${d}`);
}
