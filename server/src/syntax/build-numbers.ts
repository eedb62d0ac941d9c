/** Builders for numbers, lengths and arithmetic. */
import type { Node } from 'ohm-js';
import { ZERO, add, fraction, mul } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { parseNumber } from '../exact/parse.ts';
import type { Columns } from '../text/place.ts';
import { columnsOf, part } from './build.ts';
import type { Builder, Builders, Read } from './build.ts';
import type { CornerPoint, Length, Name, Pair, Quantity } from './tree.ts';

type Measure = Extract<Quantity, { kind: 'measure' }>;

const UNITS: Readonly<Record<string, Measure['unit']>> = {
  '"': 'in', '″': 'in', "''": 'in', ins: 'in', inc: 'in', inch: 'in', inches: 'in', yard: 'yd', yards: 'yd', yds: 'yd',
  millimetres: 'mm', millimeters: 'mm', centimetres: 'cm', centimeters: 'cm', metre: 'm', metres: 'm', meter: 'm', meters: 'm',
};

/** The value of a number as written; one that cannot be (`2 5/4`, `1/0`) gets a value all the same, its problem is told elsewhere. */
export function valueOf(text: string): Exact {
  const plain = text.replace(',', '.').replace(/[^\d/⁄.\-¼-¾⅐-⅞]+/g, ' ');
  const value = parseNumber(plain);
  if (value) return value;
  const parts = /^(\d+)[ -](\d+)[/⁄](\d+)$/.exec(plain);
  if (!parts || BigInt(parts[3] ?? 0) === 0n) return ZERO;
  return add(fraction(BigInt(parts[1] ?? 0)), fraction(BigInt(parts[2] ?? 0), BigInt(parts[3] ?? 1)));
}

const number: Builder = (node): Quantity => ({ kind: 'number', value: valueOf(node.sourceString), ...columnsOf(node) });

/** A foot is told to be no unit, and read as twelve inches all the same. */
const measure: Builder = (node, read): Quantity => {
  const written = read<{ readonly text: string }>(part(node, 1)).text;
  const amount = read<Quantity>(part(node, 0));
  if (/^f(?!q)/.test(written)) return { kind: 'measure', amount: amount.kind === 'number' ? { ...amount, value: mul(fraction(12), amount.value) } : amount, unit: 'in', ...columnsOf(node) };
  const unit = UNITS[written] ?? (written.toLowerCase() as Measure['unit']);
  return { kind: 'measure', amount, unit, ...columnsOf(node) };
};

/** The unit as written, without the blanks before it. */
const unit: Builder = (node) => ({ text: node.sourceString.replace(/^[^\w"″']+/, '') });

const minus: Builder = (node, read): Quantity => ({ kind: 'minus', operand: read<Quantity>(part(node, node.numChildren - 1)), ...columnsOf(node) });

const length: Builder = (node, read): Length => {
  const cut = part(node, 0)?.numChildren === 1;
  return { kind: 'length', cut, value: read<Quantity>(part(node, 2)), ...columnsOf(node) };
};

const pair: Builder = (node, read): Pair<unknown> => ({ kind: 'pair', first: read(part(node, 0)), second: read(part(node, 2)), ...columnsOf(node) });

export const numberBuilders: Builders = {
  number,
  looseNumber: number,
  tightNumber: number,
  unbroken: number,
  mixedBlank: number,
  unit,
  tightUnit: unit,
  measured: measure,
  tightPlain_measure: measure,
  operand_measure: measure,
  divided_measure: measure,
  parenthesis: (node, read): Quantity => ({ kind: 'parentheses', inner: read<Quantity>(part(node, 2)), ...columnsOf(node) }),
  sum: (node, read) => chain(read(part(node, 0)), [...signs(node, 2)], read<Quantity[]>(part(node, 4))),
  product: (node, read) => {
    const factors = part(node, 2)?.children ?? [];
    const operators = factors.map((factor) => (factor.sourceString.startsWith('*') ? '*' as const : '/' as const));
    return chain(read(part(node, 0)), operators, factors.map((factor) => read<Quantity>(factor)));
  },
  multiplied: (node, read) => read(part(part(node, 0), 2)),
  factor_minus: minus,
  divisor_minus: minus,
  tightValue_minus: minus,
  root: (node, read): Quantity => ({ kind: 'root', of: read<Quantity>(part(node, 3)), ...columnsOf(node) }),
  operand_name: named,
  divided_name: named,

  lengthRead: length,
  wrongLength: (node, read): Length => ({ kind: 'length', cut: part(node, 0)?.numChildren === 1, value: namedBy(read<Name>(part(node, 2))), ...columnsOf(node) }),
  measure: (node, read): Length => ({ kind: 'length', cut: false, value: read<Quantity>(part(node, 0)), ...columnsOf(node) }),
  percent: (node, read) => read(part(node, 0)),
  Lengths: pair,
  Measures: pair,
  Counts: pair,

  point: (node, read) => read(part(node, 0)),
  xy: point(0, 2),
  wrongXY_x: point(0, 2),
  wrongXY_y: point(0, 2),
  wrongPoint: point(0, 4),
  tight: (node, read) => read(part(node, 0)),
  quantity: (node, read) => read(part(node, 0)),
};

function point(x: number, y: number): Builder {
  return (node, read): CornerPoint => ({ kind: 'corner_point', x: read<Quantity>(part(node, x)), y: read<Quantity>(part(node, y)), ...columnsOf(node) });
}

function* signs(node: Node, index: number): Generator<'+' | '-'> {
  for (const sign of part(node, index)?.children ?? []) yield sign.sourceString === '+' ? '+' : '-';
}

/** a + b − c as ((a + b) − c). */
function chain(first: Quantity, operators: readonly ('+' | '-' | '*' | '/')[], rest: readonly Quantity[]): Quantity {
  return rest.reduce<Quantity>((left, right, index) => ({
    kind: 'operation', operator: operators[index] ?? '+', left, right, from: left.from, to: right.to,
  }), first);
}

function namedBy(name: Name): Quantity {
  const { from, to }: Columns = name;
  return { kind: 'reference', name, from, to };
}

function named(node: Node, read: Read): Quantity {
  return namedBy(read<Name>(part(node, 0)));
}
