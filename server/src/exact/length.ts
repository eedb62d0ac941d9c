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
  /** English unless given. */
  readonly manner?: Manner;
}

/** How a language writes lengths: its decimal mark, and the words before a rounded one. */
export interface Manner {
  readonly point: string;
  readonly about: string;
  readonly lessThan: string;
}

const ENGLISH: Manner = { point: '.', about: 'about', lessThan: 'less than' };

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
export function formatLength(inches: Exact, { units, manner = ENGLISH }: LengthStyle): string {
  if (units === 'centimetres') return formatDecimal(fromInches(inches, 'cm'), { places: 3, nearest: fraction(1, 10), mark: ' cm', manner });
  return formatFraction(inches, { denominators: isPrintable, nearest: fraction(1, 16), mark: '"', manner });
}

/** A length in inches as cloth is bought: `1 3/8 yd`, `2/3 yd`, `about 1 1/4 yd`. */
export function formatYards(inches: Exact, manner: Manner = ENGLISH): string {
  return formatFraction(fromInches(inches, 'yd'), { denominators: isYardFraction, nearest: fraction(1, 8), mark: ' yd', manner });
}

/** The same in metres: `1.4 m`, `about 0.23 m`. */
export function formatMetres(inches: Exact, manner: Manner = ENGLISH): string {
  return formatDecimal(fromInches(inches, 'm'), { places: 3, nearest: fraction(1, 100), mark: ' m', manner });
}

/** An area in square inches: `2 1/4 sq in`, `about 5.1 sq cm`. */
export function formatArea(squareInches: Exact, { units, manner = ENGLISH }: LengthStyle): string {
  if (units === 'centimetres') {
    const squareCentimetres = fromInches(fromInches(squareInches, 'cm'), 'cm');
    return formatDecimal(squareCentimetres, { places: 3, nearest: fraction(1, 10), mark: ' sq cm', manner });
  }
  return formatFraction(squareInches, { denominators: isPrintable, nearest: fraction(1, 16), mark: ' sq in', manner });
}

/** A plain number: `2 1/2`, `0.125` as `1/8`, `about 1.414`. */
export function formatNumber(x: Exact, manner: Manner = ENGLISH): string {
  return formatFraction(x, { denominators: isPrintable, nearest: fraction(1, 1000), mark: '', manner });
}

interface FractionStyle {
  readonly denominators: (d: bigint) => boolean;
  /** 1/1000 prints decimals. */
  readonly nearest: Exact;
  readonly mark: string;
  readonly manner: Manner;
}

interface DecimalStyle {
  /** At most 3. */
  readonly places: number;
  readonly nearest: Exact;
  readonly mark: string;
  readonly manner: Manner;
}

const PER_INCH: Readonly<Record<Unit, Exact>> = {
  in: fraction(1),
  yd: fraction(1, 36),
  mm: fraction(254, 10),
  cm: fraction(254, 100),
  m: fraction(254, 10_000),
};

/** Exact as a mixed number if its denominator is one people read; else exact with up to 3 decimals; else rounded, and said so. */
function formatFraction(x: Exact, style: FractionStyle): string {
  const d = asFraction(x)?.d;
  if (d !== undefined && style.denominators(d)) return mixed(x) + style.mark;
  if (d !== undefined && 1000n % d === 0n) return decimal(x, style.manner) + style.mark;
  return formatRounded(x, style);
}

function formatDecimal(x: Exact, style: DecimalStyle): string {
  const d = asFraction(x)?.d;
  if (d !== undefined && 10n ** BigInt(style.places) % d === 0n) return decimal(x, style.manner) + style.mark;
  return formatRounded(x, style);
}

function formatRounded(x: Exact, { nearest, mark, manner }: Pick<DecimalStyle, 'nearest' | 'mark' | 'manner'>): string {
  const print = (value: Exact): string => (isTenPower(nearest) ? decimal(value, manner) : mixed(value));
  const rounded = sign(x) < 0 ? mul(fraction(-1), roundTo(abs(x), nearest)) : roundTo(x, nearest);
  if (isZero(rounded)) return sign(x) < 0 ? `${manner.about} ${print(rounded)}${mark}` : `${manner.lessThan} ${print(nearest)}${mark}`;
  return `${manner.about} ${print(rounded)}${mark}`;
}

/** `2 1/2`, `-1/3`, `7` of a rational number. */
function mixed(x: Exact): string {
  const whole = floor(abs(x));
  const { n, d } = asFraction(sub(abs(x), fraction(whole))) ?? { n: 0n, d: 1n };
  const parts = [...(whole !== 0n || n === 0n ? [`${whole}`] : []), ...(n === 0n ? [] : [`${n}/${d}`])];
  return (sign(x) < 0 ? '-' : '') + parts.join(' ');
}

/** `7.5` of a number with at most 3 decimals. */
function decimal(x: Exact, { point }: Manner): string {
  const thousandths = floor(add(mul(abs(x), fraction(1000)), fraction(1, 2)));
  const decimals = `${thousandths % 1000n}`.padStart(3, '0').replace(/0+$/, '');
  return `${sign(x) < 0 ? '-' : ''}${thousandths / 1000n}${decimals === '' ? '' : `${point}${decimals}`}`;
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
