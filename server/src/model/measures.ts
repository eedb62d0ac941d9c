/**
 * Quantities of a kind and a range: counts, proportions, finished lengths, lengths of cloth. `what` begins the sentence that
 * refuses a value: "the border", "the count". A refused value is reported and comes back undefined.
 */
import { formatLength } from '../exact/length.ts';
import { TWO, add, atMost, compare, fraction, isWhole, isZero, mul, sign, sub, toInteger, type Exact } from '../exact/number.ts';
import type { Length, Pair, Quantity, Size } from '../syntax/tree.ts';
import { at, refuse, type Context } from './context.ts';
import { evaluate, inInches, textOf } from './evaluate.ts';

export interface CountRange {
  readonly what: string;
  readonly least: number;
  readonly most: number;
}

export interface Measures {
  readonly width: Exact;
  readonly height: Exact;
}

/** A plain number of any sign; a length is refused. */
export function numberOf(context: Context, quantity: Quantity, what: string): Exact | undefined {
  const value = evaluate(context, quantity);
  if (!value) return undefined;
  return value.isLength ? refuse(context, quantity, `${what} is a number, and ${textOf(value, context.units)} is a length`) : value.number;
}

/** A plain number above zero. */
export function positiveNumber(context: Context, quantity: Quantity, what: string): Exact | undefined {
  const number = numberOf(context, quantity, what);
  if (!number || sign(number) > 0) return number;
  return refuse(context, quantity, `${what} is more than 0, and this is ${textOf({ number, isLength: false }, context.units)}`);
}

/** A whole number within a range; more than `most` is `too-large`. */
export function countOf(context: Context, quantity: Quantity, { what, least, most }: CountRange): number | undefined {
  const number = numberOf(context, quantity, what);
  if (!number) return undefined;
  const text = textOf({ number, isLength: false }, context.units);
  if (!isWhole(number)) return refuse(context, quantity, `${what} is a whole number, and this is ${text}`);
  if (compare(number, fraction(least)) < 0) return refuse(context, quantity, `${what} is at least ${least}, and this is ${text}`);
  if (atMost(number, fraction(most))) return toInteger(number);
  context.report({ rule: 'too-large', place: at(context, quantity), found: `${what} of ${text}`, limit: grouped(most) });
  return undefined;
}

/** A whole number that is one of a few. */
export function oneOf<N extends number>(context: Context, quantity: Quantity, what: string, choices: readonly N[]): N | undefined {
  const number = numberOf(context, quantity, what);
  if (!number) return undefined;
  const whole = toInteger(number);
  const found = choices.find((choice) => choice === whole);
  return found ?? refuse(context, quantity, `${what} is ${choices.join(', ').replace(/, (\d+)$/, ' or $1')}, and this is ${textOf({ number, isLength: false }, context.units)}`);
}

/** n % as a fraction, 0 % up to below `below` %. */
export function shareOf(context: Context, quantity: Quantity, what: string, below: number): Exact | undefined {
  const number = numberOf(context, quantity, what);
  if (!number) return undefined;
  if (sign(number) >= 0 && compare(number, fraction(below)) < 0) return mul(number, fraction(1, 100));
  return refuse(context, quantity, `${what} is from 0% to below ${below}%, and this is ${textOf({ number, isLength: false }, context.units)}%`);
}

/** A length of the finished quilt above zero, in inches: with `cut`, two seams have been taken off. */
export function finishedLength(context: Context, length: Length, what: string): Exact | undefined {
  const value = evaluate(context, length.value);
  if (!value) return undefined;
  const inches = inInches(value, context.units);
  if (!length.cut) return positive(context, length, what, inches);
  const finished = sub(inches, mul(TWO, context.seam));
  if (sign(finished) > 0) return finished;
  const [cut, seam] = [show(context, inches), show(context, context.seam)];
  return refuse(context, length, `${what} cut ${cut} leaves nothing between two seams of ${seam}`);
}

/** A length of cloth above zero, in inches; `cut` changes nothing, since cloth is never finished. */
export function clothLength(context: Context, length: Length, what: string): Exact | undefined {
  const inches = anyLength(context, length.value);
  return inches && positive(context, length, what, inches);
}

/** The same, or zero. */
export function overhangLength(context: Context, length: Length, what: string): Exact | undefined {
  const inches = anyLength(context, length.value);
  return inches && isZero(inches) ? inches : inches && positive(context, length, what, inches);
}

/** A finished size: one length is a square. */
export function finishedSize(context: Context, size: Size, what: string): Measures | undefined {
  if (size.kind === 'pair') return finishedPair(context, size, what);
  const side = finishedLength(context, size, what);
  return side && { width: side, height: side };
}

/** `A by B`, finished. */
export function finishedPair(context: Context, pair: Pair<Length>, what: string): Measures | undefined {
  const width = finishedLength(context, pair.first, what);
  const height = finishedLength(context, pair.second, what);
  return width && height && { width, height };
}

/** `A by B` of cloth. */
export function clothPair(context: Context, pair: Pair<Length>, what: string): Measures | undefined {
  const width = clothLength(context, pair.first, what);
  const height = clothLength(context, pair.second, what);
  return width && height && { width, height };
}

/** What a length is cut: a finished one has its two seams added. */
export function cutLength(context: Context, inches: Exact): Exact {
  return add(inches, mul(TWO, context.seam));
}

/** A length of any sign, in inches. */
export function anyLength(context: Context, quantity: Quantity): Exact | undefined {
  const value = evaluate(context, quantity);
  return value && inInches(value, context.units);
}

function positive(context: Context, length: Length, what: string, inches: Exact): Exact | undefined {
  return sign(inches) > 0 ? inches : refuse(context, length, `${what} is more than 0, and this is ${show(context, inches)}`);
}

function show(context: Context, inches: Exact): string {
  return formatLength(inches, { units: context.units });
}

function grouped(n: number): string {
  return `${n}`.replace(/\B(?=(\d{3})+$)/g, ',');
}
