/**
 * Numbers and lengths, exact. A length is in inches; a plain number has no unit until it meets a length or stands where one
 * is needed, and then counts in the pattern's units. What cannot be worked out is reported and comes back undefined.
 */
import { formatLength, formatNumber, toInches, type UnitSystem } from '../exact/length.ts';
import { add, div, isZero, mul, neg, sub, tooBig, type Exact } from '../exact/number.ts';
import { squareRoot } from '../exact/roots.ts';
import type { Quantity } from '../syntax/tree.ts';
import { at, describe, isStandIn, meaningOf, refuse, type Context } from './context.ts';
import type { Value } from './pattern.ts';

/** The value of a quantity, or undefined when it has none (which has then been reported). */
export function evaluate(context: Context, quantity: Quantity): Value | undefined {
  const value = valueOf(context, quantity);
  if (!value || !tooBig(value.number)) return value;
  context.report({ rule: 'too-large', place: at(context, quantity), found: 'a number of more than 1,233 digits', limit: '1,233 digits' });
  return undefined;
}

/** A value as a length in inches: a plain number counts in the pattern's units. */
export function inInches(value: Value, units: UnitSystem): Exact {
  return value.isLength ? value.number : toInches(value.number, units === 'inches' ? 'in' : 'cm');
}

/** A value as a maker reads it: `7 1/2"`, `1/3`. */
export function textOf(value: Value, units: UnitSystem): string {
  return value.isLength ? formatLength(value.number, { units }) : formatNumber(value.number);
}

type Operation = Extract<Quantity, { readonly kind: 'operation' }>;

function valueOf(context: Context, quantity: Quantity): Value | undefined {
  switch (quantity.kind) {
    case 'number':
      return { number: quantity.value, isLength: false };
    case 'measure':
      return measured(context, quantity);
    case 'reference':
      return named(context, quantity);
    case 'parentheses':
      return evaluate(context, quantity.inner);
    case 'minus':
      return negated(context, quantity);
    case 'root':
      return root(context, quantity);
    case 'operation':
      return operations(context, quantity);
  }
}

function measured(context: Context, quantity: Extract<Quantity, { kind: 'measure' }>): Value | undefined {
  const { amount, unit } = quantity;
  if (unit === 'fq') return refuse(context, quantity, '`fq` counts fat quarters; a length has another unit');
  const value = evaluate(context, amount);
  if (!value) return undefined;
  if (value.isLength) return refuse(context, quantity, `${textOf(value, context.units)} is a length already and takes no unit`);
  return { number: toInches(value.number, unit), isLength: true };
}

function named(context: Context, { name }: Extract<Quantity, { kind: 'reference' }>): Value | undefined {
  const meaning = meaningOf(context, name, 'number');
  if (!meaning || meaning.kind === 'broken') return undefined;
  if (meaning.kind === 'number') return meaning.value;
  if (isStandIn(context, meaning)) return undefined;
  return refuse(context, name, `\`${name.text}\` is ${describe(meaning)}, and a number is needed here`);
}

/** Minus signs in a row are taken off in a loop: a text may hold thousands of them. */
function negated(context: Context, quantity: Quantity): Value | undefined {
  let inner = quantity;
  let isOdd = false;
  for (; inner.kind === 'minus'; inner = inner.operand) isOdd = !isOdd;
  const value = evaluate(context, inner);
  return value && isOdd ? { ...value, number: neg(value.number) } : value;
}

function root(context: Context, quantity: Extract<Quantity, { kind: 'root' }>): Value | undefined {
  const of = evaluate(context, quantity.of);
  if (!of) return undefined;
  const text = textOf(of, context.units);
  if (of.isLength) return refuse(context, quantity, `a root is taken of a number, and ${text} is a length`);
  const number = squareRoot(of.number);
  return number ? { number, isLength: false } : refuse(context, quantity, `sqrt(${text}) cannot be exact: sqrt takes 2, 3 and squares such as 9/4`);
}

/** `a + b − c …` leans to the left and may be long: its left side is walked in a loop. */
function operations(context: Context, quantity: Operation): Value | undefined {
  const spine: Operation[] = [];
  let leftmost: Quantity = quantity;
  for (; leftmost.kind === 'operation'; leftmost = leftmost.left) spine.push(leftmost);
  let value = evaluate(context, leftmost);
  for (const operation of spine.reverse()) {
    const right = evaluate(context, operation.right);
    value = value && right ? operate(context, operation, value, right) : undefined;
    if (value && tooBig(value.number)) return value;
  }
  return value;
}

function operate(context: Context, operation: Operation, left: Value, right: Value): Value | undefined {
  if (operation.operator === '*') return times(context, operation, left, right);
  if (operation.operator === '/') return over(context, operation, left, right);
  const combine = operation.operator === '+' ? add : sub;
  if (left.isLength === right.isLength) return { number: combine(left.number, right.number), isLength: left.isLength };
  return { number: combine(inInches(left, context.units), inInches(right, context.units)), isLength: true };
}

function times(context: Context, operation: Operation, left: Value, right: Value): Value | undefined {
  if (left.isLength && right.isLength) {
    return refuse(context, operation, `a length times a length is an area: ${textOf(left, context.units)} times ${textOf(right, context.units)}`);
  }
  return { number: mul(left.number, right.number), isLength: left.isLength || right.isLength };
}

function over(context: Context, operation: Operation, left: Value, right: Value): Value | undefined {
  if (isZero(right.number)) return refuse(context, operation, `${textOf(left, context.units)} cannot be divided by zero`);
  if (right.isLength && !left.isLength) {
    return refuse(context, operation, `a number cannot be divided by a length: ${textOf(left, context.units)} over ${textOf(right, context.units)}`);
  }
  return { number: div(left.number, right.number), isLength: left.isLength && !right.isLength };
}
