/**
 * The linear relaxation over cutting patterns: min of what the sources cost, each item cut as often as it is wanted, any amount of
 * each pattern; patterns are found as they are needed (Gilmore and Gomory, Operations Research 9, 1961). It works in floats; its bound does not.
 */
import { clipped, type Column } from './column.ts';
import { cutsOf, groupsOf } from './options.ts';
import { higher, priceAll, type Priced } from './price.ts';
import { NO_BOUND, amountUnder, ceilOf, type Bound, type Question } from './question.ts';
import { openLp, reducedCost, type LpAnswer, type LpColumn } from './simplex.ts';
import { isSpent, type Work } from './work.ts';

export interface Relaxation {
  /** The patterns with an amount above 0. */
  readonly parts: readonly Part[];
  /** Patterns worth starting the next question with. */
  readonly columns: readonly Column[];
  readonly value: number;
  /** Proven: no plan within the ceiling and the limits costs less. */
  readonly bound: Bound;
  readonly prices: readonly Float64Array[];
}

export interface Part {
  readonly column: Column;
  readonly amount: number;
}

/** Yields between rounds. Ends early, with what is proved by then, when the work is spent or the bound is above the ceiling. */
export function* relax(question: Question, work: Work): Generator<void, Relaxation> {
  const master = masterOf(question);
  work.spent += question.columns.length * COLUMN_WORK;
  let bound = NO_BOUND;
  for (;;) {
    const answer = master.lp.solve(work);
    const priced: Priced = priceAll(question, answer.duals, work);
    work.spent += ROUND_WORK + master.columns.length * (COLUMN_WORK / 5);
    bound = higher(bound, priced.bound);
    const isNew = priced.columns.map((column) => master.add(column)).some(Boolean);
    if (!isNew || isSpent(work) || (!question.charges && ceilOf(bound) > question.ceiling)) return relaxationOf(master, answer, bound, priced.prices);
    yield;
  }
}

/** Roughly what the work around the loops comes to. */
const COLUMN_WORK = 2500;
const ROUND_WORK = 20_000;

interface Master {
  readonly lp: ReturnType<typeof openLp>;
  readonly columns: readonly Column[];
  readonly entries: readonly LpColumn[];
  /** False when the pattern is there already or holds nothing that is wanted. */
  readonly add: (column: Column) => boolean;
}

/** What is not supplied costs this many times the dearest source: more than any dual. */
const MISSING = 10_000;

function masterOf(question: Question): Master {
  const { problem, wanted, limits } = question;
  const rows = wanted.flatMap((count, item) => (count > 0 ? [item] : []));
  const rowOf = new Map(rows.map((item, row) => [item, row]));
  const needs = [...rows.map((item) => wanted[item] as number), ...limits.map(({ sense, bound }) => sense * bound)];
  const lp = openLp(needs, MISSING * Math.max(...problem.sources.map(({ cost }) => cost), question.charges?.perPattern ?? 0));
  const columns: Column[] = [];
  const entries: LpColumn[] = [];
  const seen = new Set<string>();
  const add = (found: Column): boolean => {
    const column = problem.sources[found.source]?.sheet ? found : clipped(found, wanted);
    if (!column || seen.has(column.key) || question.barred?.has(column.source)) return false;
    seen.add(column.key);
    const entry = entryOf(column, question, rowOf, rows.length);
    columns.push(column);
    entries.push(entry);
    lp.add(entry);
    return true;
  };
  question.columns.forEach(add);
  return { lp, columns, entries, add };
}

function entryOf(column: Column, question: Question, rowOf: ReadonlyMap<number, number>, items: number): LpColumn {
  const rows: number[] = [];
  const entries: number[] = [];
  for (const { item, pieces } of column.takes) {
    const row = rowOf.get(item);
    if (row !== undefined) {
      rows.push(row);
      entries.push(pieces);
    }
  }
  question.limits.forEach((limit, i) => {
    const amount = amountUnder(limit, column);
    if (amount === 0) return;
    rows.push(items + i);
    entries.push(limit.sense * amount);
  });
  return { cost: costOf(column, question), rows, entries };
}

function costOf(column: Column, { problem, charges }: Question): number {
  return charges ? charges.perPattern + charges.perCut * cutsIn(column) : (problem.sources[column.source]?.cost ?? 0);
}

function cutsIn({ loads }: Column): number {
  return loads.reduce(
    (total, { kind, takes }) =>
      takes.reduce((cuts, { item, pieces }) => {
        const option = kind.options[item];
        return option ? cuts + cutsOf(groupsOf(option, pieces, kind.height), kind.height) : cuts;
      }, total),
    0,
  );
}

function relaxationOf({ columns, entries }: Master, { amounts, duals, value }: LpAnswer, bound: Bound, prices: readonly Float64Array[]): Relaxation {
  const near = columns.filter((_, i) => i >= amounts.length || (amounts[i] as number) > 0 || reducedCost(entries[i] as LpColumn, duals) <= NEAR * (entries[i] as LpColumn).cost);
  return {
    parts: columns.flatMap((column, i) => ((amounts[i] ?? 0) > 1e-7 ? [{ column, amount: amounts[i] as number }] : [])),
    columns: near,
    value,
    bound,
    prices,
  };
}

/** Patterns are kept while they miss by no more than this share of their cost. */
const NEAR = 0.1;
