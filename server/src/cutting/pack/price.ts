/**
 * New patterns for the duals of the relaxation, and a bound that does not rest on floats: whatever the duals are, they are rounded down
 * to whole numbers of a small unit and priced exactly, and the Lagrangian bound of those whole numbers is summed in big integers
 * (Farley, "A note on bounding a class of linear programming problems, including cutting stock problems", Operations Research 38, 1990;
 * Neumaier and Shcherbina, "Safe bounds in linear and mixed-integer linear programming", Mathematical Programming 99, 2004).
 */
import { columnOf, type Column } from './column.ts';
import { bestFilling, mostWorth, type Filling } from './fill.ts';
import { NO_BOUND, type Bound, type Question } from './question.ts';
import type { Work } from './work.ts';

export interface Priced {
  readonly columns: readonly Column[];
  readonly bound: Bound;
  /** For each source, the value of each item. */
  readonly prices: readonly Float64Array[];
}

/** The best pattern of each source where it is better than what there is, and the bound from the same duals, which are those of the items wanted and of the limits. */
export function priceAll(question: Question, duals: readonly number[], work: Work): Priced {
  const { problem, charges } = question;
  const unit = charges ? 1 : unitFor(question, duals);
  const weighed = weigh(question, duals, unit, charges !== undefined);
  const found = problem.sources.map((_, i) => priceOne(question, i, weighed, work));
  const rest = found.map(({ value }, i) => (weighed.charge[i] as number) - value);
  const columns = found.flatMap((filling, i) => (isWorthwhile(rest[i] as number, unit, question, i) ? [columnOf(i, filling.loads)] : []));
  return { columns, bound: charges || unit < 1 ? NO_BOUND : boundOf(question, weighed, rest, unit), prices: weighed.values };
}

/** Nothing where nothing is worth more than it costs; the bound does not suffer. */
function priceOne({ problem, wanted, charges, barred }: Question, index: number, { values, charge }: Weighed, work: Work): Filling {
  const source = problem.sources[index];
  if (!source || barred?.has(index)) return NOTHING;
  const [first] = source.strips;
  const prices = { values: values[index] as Float64Array, perCut: charges?.perCut ?? 0, wanted };
  const isHopeless = !source.sheet && first !== undefined && mostWorth(first, prices, work) <= (charge[index] as number);
  return isHopeless ? NOTHING : bestFilling(source, prices, work);
}

const NOTHING: Filling = { value: 0, loads: [] };

/** A strip that holds nothing may be worthwhile too, where there must be so many of a height. */
function isWorthwhile(rest: number, unit: number, { problem, charges, barred }: Question, source: number): boolean {
  if (barred?.has(source)) return false;
  const cost = charges?.perPattern ?? problem.sources[source]?.cost ?? 0;
  return rest < -1e-9 * (1 + cost) * unit;
}

/** Duals in whole numbers of a small unit, limits counted in. */
interface Weighed {
  readonly items: readonly number[];
  readonly limits: readonly number[];
  /** For each source, the value of a piece of each item and what a pattern costs. */
  readonly values: readonly Float64Array[];
  readonly charge: readonly number[];
}

function weigh({ problem, wanted, limits, charges }: Question, duals: readonly number[], unit: number, keepsFractions: boolean): Weighed {
  const whole = (dual: number): number => (keepsFractions ? dual : Math.floor(dual * unit));
  let row = 0;
  const items = wanted.map((count) => (count > 0 ? whole(duals[row++] as number) : 0));
  const bounded = limits.map((_, i) => whole(duals[row + i] as number));
  const values = problem.sources.map(() => Float64Array.from(items));
  const charge = problem.sources.map(({ cost }) => (charges ? charges.perPattern : cost * unit));
  limits.forEach(({ source, item, sense }, i) => {
    const weight = sense * (bounded[i] as number);
    if (item === undefined) charge[source] = (charge[source] as number) - weight;
    else (values[source] as Float64Array)[item] = ((values[source] as Float64Array)[item] as number) + weight;
  });
  return { items, limits: bounded, values, charge };
}

/** A power of two, so that every sum the pricing makes stays a safe integer; below 1 when numbers are too large to prove anything. */
function unitFor({ problem, wanted }: Question, duals: readonly number[]): number {
  const pieces = wanted.reduce((total, count) => total + count, 0);
  const stacked = Math.max(...problem.sources.map(({ sheet, strips }) => (sheet ? Math.floor(sheet.height / Math.min(...strips.map(({ height }) => height))) : 1)));
  const most = duals.reduce((total, dual) => Math.max(total, dual), 0) + duals.slice(wanted.filter((count) => count > 0).length).reduce((total, dual) => total + dual, 0);
  const cost = Math.max(...problem.sources.map((source) => source.cost));
  return 2 ** Math.min(40, Math.floor(51 - Math.log2(1 + cost + most * (pieces * stacked + 1))));
}

/**
 * Σ wanted · value + Σ sense · bound · dual, and for each source the patterns that would still pay: none of a source may be used
 * more often than the ceiling allows, and all together may not cost more than it.
 */
function boundOf({ wanted, limits, ceiling, problem, barred }: Question, weighed: Weighed, rest: readonly number[], unit: number): Bound {
  const worth = wanted.reduce((total, count, item) => total + BigInt(count) * BigInt(weighed.items[item] as number), 0n);
  const bounded = limits.reduce((total, { sense, bound }, i) => total + BigInt(sense * bound) * BigInt(weighed.limits[i] as number), worth);
  const least = rest.reduce((min, each, i) => {
    if (barred?.has(i)) return min;
    const gain = floorDivide(BigInt(ceiling) * BigInt(each), BigInt(problem.sources[i]?.cost ?? 1));
    return gain < min ? gain : min;
  }, 0n);
  return { over: bounded + least, unit: BigInt(unit) };
}

function floorDivide(a: bigint, b: bigint): bigint {
  const quotient = a / b;
  return a < 0n && quotient * b !== a ? quotient - 1n : quotient;
}

export function higher(a: Bound, b: Bound): Bound {
  return a.over * b.unit >= b.over * a.unit ? a : b;
}
