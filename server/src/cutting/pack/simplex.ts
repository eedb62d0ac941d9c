/**
 * A small linear program that grows by columns: min cost · x, A x ≥ need, x ≥ 0. Revised primal simplex with the inverse of the
 * basis kept whole (Dantzig and Orchard-Hays, "The product form for the inverse in the simplex method", 1954), worked out anew
 * now and then; Bland's rule where it stalls. It works in floats and nothing is decided by it: its duals are proved elsewhere.
 */
import type { Work } from './work.ts';

export interface LpColumn {
  readonly cost: number;
  readonly rows: readonly number[];
  readonly entries: readonly number[];
}

export interface LpAnswer {
  readonly value: number;
  /** For each column, in the order they were added. */
  readonly amounts: readonly number[];
  /** For each row, never below 0. */
  readonly duals: readonly number[];
}

export interface Lp {
  readonly add: (column: LpColumn) => void;
  readonly solve: (work: Work) => LpAnswer;
}

/** `dear`: what a unit that no column supplies costs; above any dual that is to be found. */
export function openLp(needs: readonly number[], dear: number): Lp {
  const state = stateOf(needs, dear);
  return {
    add: (column) => state.columns.push(column),
    solve: (work) => {
      optimise(state, work);
      return answerOf(state);
    },
  };
}

/** Columns: for each row what is over, then for each row what is missing, then those that were added. */
interface State {
  readonly exactly: readonly number[];
  readonly needs: readonly number[];
  readonly columns: LpColumn[];
  readonly basis: Int32Array;
  readonly amounts: Float64Array;
  /** Row by row. */
  readonly inverse: Float64Array;
}

/**
 * Each need is made smaller by a hair, another for each, so that steps of no length are rare (Charnes, "Optimality and degeneracy
 * in linear programming", Econometrica 20, 1952). Answers are for the needs as they are.
 */
function stateOf(exactly: readonly number[], dear: number): State {
  const needs = exactly.map((need, row) => need - HAIR * (1 + ((row * 0.618034) % 1)));
  const size = needs.length;
  const over = needs.map((_, row) => ({ cost: 0, rows: [row], entries: [-1] }));
  const missing = needs.map((_, row) => ({ cost: dear, rows: [row], entries: [1] }));
  const inverse = new Float64Array(size * size);
  needs.forEach((need, row) => (inverse[row * size + row] = need > 0 ? 1 : -1));
  return {
    exactly,
    needs,
    columns: [...over, ...missing],
    basis: Int32Array.from(needs, (need, row) => (need > 0 ? size + row : row)),
    amounts: Float64Array.from(needs, Math.abs),
    inverse,
  };
}

const HAIR = 1e-7;

const TOLERANCE = 1e-9;
const PIVOTS_BEFORE_ANEW = 80;

function optimise(state: State, work: Work): void {
  const size = state.needs.length;
  const direction = new Float64Array(size);
  let stalled = 0;
  for (let pivots = 1; pivots <= 60 * size + 600; pivots += 1) {
    const duals = dualsOf(state);
    const entering = enteringColumn(state, duals, stalled > size + 20);
    work.spent += size * size * 3 + state.columns.length * 4;
    if (entering < 0) return;
    directionOf(state, entering, direction);
    const leaving = leavingRow(state, direction);
    if (leaving < 0) return;
    stalled = (state.amounts[leaving] as number) < TOLERANCE ? stalled + 1 : 0;
    pivot(state, leaving, entering, direction);
    if (pivots % PIVOTS_BEFORE_ANEW === 0) invert(state);
  }
}

function dualsOf({ basis, columns, inverse, needs }: State): Float64Array {
  const size = needs.length;
  const duals = new Float64Array(size);
  for (let i = 0; i < size; i += 1) {
    const cost = (columns[basis[i] as number] as LpColumn).cost;
    if (cost === 0) continue;
    for (let row = 0; row < size; row += 1) duals[row] = (duals[row] as number) + cost * (inverse[i * size + row] as number);
  }
  return duals;
}

/** The column that saves most, or with `isFirst` the first that saves at all; -1 when none does. What is missing never comes back. */
function enteringColumn({ columns, needs }: State, duals: Float64Array, isFirst: boolean): number {
  const size = needs.length;
  const noise = 1e-13 * duals.reduce((most, dual) => Math.max(most, Math.abs(dual)), 0);
  let best = -1;
  let least = 0;
  for (let i = 0; i < columns.length; i += 1) {
    if (i >= size && i < 2 * size) continue;
    const column = columns[i] as LpColumn;
    const saved = reducedCost(column, duals);
    if (saved >= least || saved > -TOLERANCE * (1 + column.cost) - noise) continue;
    if (isFirst) return i;
    best = i;
    least = saved;
  }
  return best;
}

export function reducedCost({ cost, rows, entries }: LpColumn, duals: ArrayLike<number>): number {
  let rest = cost;
  for (let i = 0; i < rows.length; i += 1) rest -= (entries[i] as number) * (duals[rows[i] as number] as number);
  return rest;
}

function directionOf({ columns, inverse, needs }: State, entering: number, direction: Float64Array): void {
  const size = needs.length;
  const { rows, entries } = columns[entering] as LpColumn;
  for (let i = 0; i < size; i += 1) {
    let sum = 0;
    for (let k = 0; k < rows.length; k += 1) sum += (inverse[i * size + (rows[k] as number)] as number) * (entries[k] as number);
    direction[i] = sum;
  }
}

/** The row that reaches 0 first, of several the one with the lowest column (Bland); -1 when none does. */
function leavingRow({ amounts, basis }: State, direction: Float64Array): number {
  let leaving = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < direction.length; i += 1) {
    const slope = direction[i] as number;
    if (slope <= TOLERANCE) continue;
    const ratio = Math.max(0, amounts[i] as number) / slope;
    const isEqual = ratio <= least + TOLERANCE && ratio >= least - TOLERANCE;
    if (isEqual ? (basis[i] as number) > (basis[leaving] as number) : ratio > least) continue;
    leaving = i;
    least = Math.min(ratio, least);
  }
  return leaving;
}

function pivot({ basis, amounts, inverse }: State, leaving: number, entering: number, direction: Float64Array): void {
  const size = basis.length;
  const slope = direction[leaving] as number;
  const step = Math.max(0, amounts[leaving] as number) / slope;
  for (let row = 0; row < size; row += 1) inverse[leaving * size + row] = (inverse[leaving * size + row] as number) / slope;
  for (let i = 0; i < size; i += 1) {
    const factor = direction[i] as number;
    if (i === leaving || factor === 0) continue;
    for (let row = 0; row < size; row += 1) inverse[i * size + row] = (inverse[i * size + row] as number) - factor * (inverse[leaving * size + row] as number);
    amounts[i] = (amounts[i] as number) - factor * step;
  }
  amounts[leaving] = step;
  basis[leaving] = entering;
}

/** The inverse and the amounts from the columns of the basis, by elimination (Gauss and Jordan, with row pivoting). */
function invert(state: State): void {
  const { basis, columns, needs, inverse, amounts } = state;
  const size = needs.length;
  const wide = 2 * size;
  const table = new Float64Array(size * wide);
  basis.forEach((index, i) => {
    const { rows, entries } = columns[index] as LpColumn;
    rows.forEach((row, k) => (table[row * wide + i] = entries[k] as number));
    table[i * wide + size + i] = 1;
  });
  for (let i = 0; i < size; i += 1) {
    if (!eliminate(table, i, size, wide)) return;
  }
  for (let i = 0; i < size; i += 1) {
    let amount = 0;
    for (let row = 0; row < size; row += 1) {
      inverse[i * size + row] = table[i * wide + size + row] as number;
      amount += (table[i * wide + size + row] as number) * (needs[row] as number);
    }
    amounts[i] = amount;
  }
}

/** False when the basis is singular as far as floats can tell. */
function eliminate(table: Float64Array, at: number, size: number, wide: number): boolean {
  let from = at;
  for (let row = at + 1; row < size; row += 1) if (Math.abs(table[row * wide + at] as number) > Math.abs(table[from * wide + at] as number)) from = row;
  const slope = table[from * wide + at] as number;
  if (Math.abs(slope) < 1e-12) return false;
  for (let k = 0; k < wide; k += 1) {
    const moved = table[at * wide + k] as number;
    table[at * wide + k] = (table[from * wide + k] as number) / slope;
    if (from !== at) table[from * wide + k] = moved;
  }
  for (let row = 0; row < size; row += 1) {
    const factor = table[row * wide + at] as number;
    if (row === at || factor === 0) continue;
    for (let k = at; k < wide; k += 1) table[row * wide + k] = (table[row * wide + k] as number) - factor * (table[at * wide + k] as number);
  }
  return true;
}

function answerOf(state: State): LpAnswer {
  const { basis, inverse, columns, exactly } = state;
  const size = exactly.length;
  const all = new Float64Array(columns.length);
  basis.forEach((index, i) => (all[index] = Math.max(0, exactly.reduce((sum, need, row) => sum + (inverse[i * size + row] as number) * need, 0))));
  return {
    value: columns.reduce((total, { cost }, i) => total + cost * (all[i] as number), 0),
    amounts: [...all.subarray(2 * size)],
    duals: [...dualsOf(state)].map((dual) => Math.max(0, dual)),
  };
}
