/**
 * From the linear relaxation to whole patterns: what is whole is kept, what is left is asked anew, one pattern is rounded up where
 * nothing is whole (residual rounding: Wäscher and Gau, "Heuristics for the integer one-dimensional cutting stock problem",
 * OR Spektrum 18, 1996). At each step the rest is also laid by hand, which may close the plan early.
 */
import { clipped, columnOf, copiesWithin, realised, without, type Column } from './column.ts';
import { settled, type Copies, type Draft } from './draft.ts';
import { firstFit, type Habit } from './first-fit.ts';
import { bestFilling } from './fill.ts';
import { amountUnder, ceilOf, type Limit, type Question } from './question.ts';
import { relax, type Part, type Relaxation } from './relax.ts';
import { isSpent, type Work } from './work.ts';

export interface DiveContext {
  /** Takes note of a whole plan; the total that another must not exceed to be of interest. */
  readonly offer: (draft: Draft) => number;
  readonly work: Work;
  /** Undefined: the largest amount is rounded up. Else a whole number below 2³² that chooses among large ones. */
  readonly random?: () => number;
}

/** Yields between steps. Plans go to `offer`. */
export function* dive(start: Question, first: Relaxation, context: DiveContext): Generator<void, void> {
  let state: State = { question: start, relaxation: first, kept: [], spent: 0 };
  for (;;) {
    const next = yield* step(state, context);
    if (!next) return;
    state = next;
    yield;
  }
}

/** What is kept, and what is asked of the rest. */
interface State {
  readonly question: Question;
  readonly relaxation: Relaxation;
  readonly kept: readonly Copies[];
  readonly spent: number;
}

function* step(state: State, context: DiveContext): Generator<void, State | undefined> {
  const slack = state.question.ceiling - state.relaxation.value;
  let best: State | undefined;
  for (const chosen of choices(state, context)) {
    const tried = yield* keep(state, chosen, context);
    if (!tried) continue;
    if (!best || slackOf(tried) > slackOf(best)) best = tried;
    if (slackOf(best) >= slack * PATIENCE) return best;
  }
  return best;
}

/** Roughly what it takes to lay the rest by hand, for each pattern that is kept. */
const KEEP_WORK = 3000;

const PATIENCE = 0.8;

function slackOf({ question, relaxation }: State): number {
  return question.ceiling - relaxation.value;
}

/** The state with more kept; undefined when it is whole, or no better plan can come of it. */
function* keep({ question: before, relaxation, kept: already, spent: past }: State, chosen: readonly Copies[], { offer, work }: DiveContext): Generator<void, State | undefined> {
  const kept = [...already, ...chosen.map(({ column, copies }) => ({ column: settled(before.problem, column), copies }))];
  const spent = past + kept.slice(already.length).reduce((total, { column, copies }) => total + copies * costIn(before, column), 0);
  const rest = chosen.reduce(reduced, before);
  work.spent += KEEP_WORK * kept.length;
  const most = Math.min(...HABITS.map((habit) => offer(firstFit(before.problem, rest.wanted, habit, kept))));
  if (rest.wanted.every((count) => count === 0) || isSpent(work) || rest.limits.some(isBroken)) return undefined;
  const question = { ...rest, ceiling: before.charges ? before.ceiling : most - spent, columns: relaxation.columns };
  if (question.ceiling < 0) return undefined;
  const next = yield* relax(question, work);
  return !before.charges && ceilOf(next.bound) > question.ceiling ? undefined : { question, relaxation: next, kept, spent };
}

const HABITS: readonly Habit[] = ['least', 'low', 'high'];

function costIn({ problem }: Question, { source }: Column): number {
  return problem.sources[source]?.cost ?? 0;
}

/** Whole copies of all patterns; or one copy of one, the largest amounts first. */
function choices({ question, relaxation: { parts, prices } }: State, { work, random }: DiveContext): readonly (readonly Copies[])[] {
  const sorted = [...parts].sort((a, b) => b.amount - a.amount);
  const whole = wholeCopies(question, sorted);
  if (whole.length > 0) return [whole];
  const first = pick(sorted, random);
  const picked = first ? [first, ...sorted.filter((part) => part !== first)].slice(0, MOST_TRIED) : [];
  return picked.flatMap((part) => {
    const column = oneOf(question, part.column, prices, { work, random });
    return column ? [[{ column, copies: 1 }]] : [];
  });
}

const MOST_TRIED = 4;

function wholeCopies({ wanted }: Question, parts: readonly Part[]): readonly Copies[] {
  let left = wanted;
  return parts.flatMap(({ column, amount }) => {
    const copies = Math.min(Math.floor(amount + 1e-6), copiesWithin(column, left));
    if (copies <= 0) return [];
    left = without(left, column, copies);
    return [{ column, copies }];
  });
}

function pick(parts: readonly Part[], random?: () => number): Part | undefined {
  const [first] = parts;
  if (!random || !first) return first;
  const large = parts.filter(({ amount }) => amount >= first.amount * LARGE);
  return large[random() % large.length];
}

/** Amounts of at least this share of the largest may be chosen instead of it. */
const LARGE = 0.5;

function oneOf({ wanted, problem }: Question, column: Column, prices: Relaxation['prices'], { work, random }: Pick<DiveContext, 'work' | 'random'>): Column | undefined {
  const source = problem.sources[column.source];
  const values = prices[column.source];
  if (!source?.sheet || !values) return clipped(column, wanted);
  const asked = { values: shaken(withSomething(values), random), perCut: 0, wanted };
  const loads = realised(source, { value: 0, loads: column.loads }, asked, work);
  return loads.length > 0 ? columnOf(column.source, loads) : columnOf(column.source, realised(source, bestFilling(source, asked, work), asked, work));
}

/** What costs nothing in the relaxation is still cut where there is room. */
function withSomething(values: Float64Array): Float64Array {
  const least = values.reduce((min, value) => (value > 0 ? Math.min(min, value) : min), Number.MAX_SAFE_INTEGER);
  return values.map((value) => (value > 0 ? value : least / values.length));
}

/** Other prices, other strips: each by a half to one and a half of what it was. */
function shaken(values: Float64Array, random?: () => number): Float64Array {
  return random ? values.map((value) => value * (0.5 + random() / 2 ** 32)) : values;
}

function reduced(question: Question, { column, copies }: Copies): Question {
  return {
    ...question,
    wanted: without(question.wanted, column, copies),
    limits: question.limits.map((limit) => ({ ...limit, bound: limit.bound - copies * amountUnder(limit, column) })),
  };
}

function isBroken({ sense, bound }: Limit): boolean {
  return sense < 0 && bound < 0;
}
