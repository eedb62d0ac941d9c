/**
 * Looks for a better plan and a higher bound in turn: the relaxation, a plan rounded from it, then the same in parts of all plans,
 * the part with the lowest bound first (branch and price: Vanderbeck, "On Dantzig–Wolfe decomposition in integer programming and
 * ways to perform branching in a branch-and-price algorithm", Operations Research 48, 2000).
 */
import { plainColumns, type Column } from './column.ts';
import { dive } from './dive.ts';
import { ceilOf, type Limit, type Question } from './question.ts';
import { relax, type Relaxation } from './relax.ts';
import { offer, raise, type Search } from './search.ts';
import { split } from './split.ts';
import { isSpent } from './work.ts';

/** A part of the plans, with what is known of it. */
interface Part {
  readonly limits: readonly Limit[];
  /** Patterns to start with. */
  readonly columns: readonly Column[];
  /** No plan of the part takes less. */
  readonly bound: number;
  /** Steps allowed to find out whether pieces fit their strips. */
  readonly tries: number;
}

/** Parts still to be looked at, the most promising first, and the least bound of those that cannot be divided any more. */
interface Parts {
  readonly open: Part[];
  stuck: number;
  dives: number;
}

const FIRST_TRIES = 3000;
const MOST_TRIES = 60_000;

/** Yields between steps; ends when the plan is proven best or the work is spent. */
export function* branch(search: Search): Generator<void, void> {
  const { problem, found } = search;
  const columns = [...found.draft.parts.map(({ column }) => column), ...plainColumns(problem, problem.counts)];
  const parts: Parts = { open: [{ limits: [], columns, bound: 0, tries: FIRST_TRIES }], stuck: Number.MAX_SAFE_INTEGER, dives: 0 };
  for (let part = parts.open.shift(); part && !isSpent(search.work); part = parts.open.shift()) {
    if (part.bound < search.found.draft.total) yield* look(search, part, parts);
    raise(search, parts.open.reduce((least, { bound }) => Math.min(least, bound), parts.stuck));
    yield;
  }
}

function* look(search: Search, part: Part, parts: Parts): Generator<void, void> {
  const question = questionOf(search, part);
  const relaxation = yield* relax(question, search.work);
  const bound = Math.max(part.bound, search.reach(ceilOf(relaxation.bound)));
  if (part.limits.length === 0) {
    search.found = { ...search.found, relaxation: relaxation.bound };
    raise(search, bound);
  }
  yield* round(search, question, relaxation, { ...part, bound }, parts);
  if (bound < search.found.draft.total) divide(search, question, relaxation, { ...part, columns: relaxation.columns, bound }, parts);
}

/** At the root plans that take as much are of interest, for the relaxation's own bound; below it only better ones. */
function questionOf({ problem, found }: Search, { limits, columns }: Part): Question {
  return { problem, wanted: problem.counts, limits, columns, ceiling: limits.length === 0 ? found.draft.total : found.draft.total - 1 };
}

/** Sheets are not divided, so they are tried more often. */
const DIVES_INTO_SHEETS = 50;
const DIVES_WITHOUT_CHANCE = 20;

function* round(search: Search, question: Question, relaxation: Relaxation, { bound, tries }: Part, parts: Parts): Generator<void, void> {
  const { work, random, problem } = search;
  const isSheets = problem.cloth.kind === 'sheets';
  const most = tries > FIRST_TRIES ? 0 : isSheets ? DIVES_INTO_SHEETS : 1;
  for (let turn = 0; turn < most && bound < search.found.draft.total && !isSpent(work); turn += 1) {
    const isRandom = isSheets ? turn > 0 : parts.dives > DIVES_WITHOUT_CHANCE;
    yield* dive(question, relaxation, { offer: (draft) => offer(search, draft) - 1, work, ...(isRandom ? { random } : {}) });
    parts.dives += 1;
  }
}

function divide(search: Search, question: Question, relaxation: Relaxation, part: Part, parts: Parts): void {
  const found = split(search, question, relaxation, part);
  if (found !== 'unknown') parts.open.push(...found.map((limits) => ({ ...part, limits: tightest([...part.limits, ...limits]), tries: FIRST_TRIES })).filter(({ limits }) => !limits.some((limit) => contradicts(limit, limits))));
  else if (search.problem.cloth.kind !== 'sheets' && part.tries < MOST_TRIES) parts.open.push({ ...part, tries: MOST_TRIES });
  else parts.stuck = Math.min(parts.stuck, part.bound);
  parts.open.sort((a, b) => a.bound - b.bound || b.limits.length - a.limits.length);
}

/** Of limits on the same, the one that says more. */
function tightest(limits: readonly Limit[]): readonly Limit[] {
  const kept = new Map<string, Limit>();
  for (const limit of limits) {
    const name = `${limit.source} ${limit.item ?? ''} ${limit.sense}`;
    const known = kept.get(name);
    if (!known || (limit.bound - known.bound) * limit.sense > 0) kept.set(name, limit);
  }
  return [...kept.values()];
}

function contradicts({ source, item, sense, bound }: Limit, limits: readonly Limit[]): boolean {
  return sense > 0 && limits.some((other) => other.sense < 0 && other.source === source && other.item === item && other.bound < bound);
}
