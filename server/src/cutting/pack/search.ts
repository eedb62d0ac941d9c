/** What a search keeps in hand: the best plan so far and how low any plan can be. */
import { comparePlans, written, type Draft, type Written } from './draft.ts';
import { NO_BOUND, type Bound } from './question.ts';
import { reachFor } from './reach.ts';
import type { Problem } from './problem.ts';
import { randomFrom, type Work } from './work.ts';

export interface Found {
  readonly draft: Draft;
  readonly written: Written;
  /** No plan takes less. */
  readonly lowerBound: number;
  /** Of the linear relaxation. */
  readonly relaxation: Bound;
}

/** `found` is replaced, never changed. */
export interface Search {
  readonly problem: Problem;
  readonly work: Work;
  readonly random: () => number;
  /** The least sum of heights that is no less. */
  readonly reach: (length: number) => number;
  found: Found;
}

export function openSearch(problem: Problem, draft: Draft, seed: number, effort: number): Search {
  const reach = reachFor(problem);
  return {
    problem,
    work: { spent: 0, limit: effort },
    random: randomFrom(seed),
    reach,
    found: { draft, written: written(problem, draft), lowerBound: Math.min(draft.total, reach(areaBound(problem))), relaxation: NO_BOUND },
  };
}

/** What the pieces cover, in whole steps of length or in whole sheets. */
function areaBound({ cloth, items }: Problem): number {
  const area = items.reduce((total, { size }) => total + BigInt(size.width) * BigInt(size.height) * BigInt(size.count), 0n);
  const whole = BigInt(cloth.width) * BigInt(cloth.kind === 'sheets' ? cloth.height : 1);
  return Number((area + whole - 1n) / whole);
}

/** Keeps the plan if it is better; the total of the best plan. */
export function offer(search: Search, draft: Draft): number {
  const { found, problem } = search;
  if (draft.total > found.draft.total) return found.draft.total;
  const read = written(problem, draft);
  if (comparePlans({ ...draft, counters: read.counters }, { ...found.draft, counters: found.written.counters }) < 0) search.found = { ...found, draft, written: read };
  return search.found.draft.total;
}

/** Takes note that no plan takes less, unless it is the best there is. */
export function raise(search: Search, bound: number): void {
  const { found } = search;
  search.found = { ...found, lowerBound: Math.max(found.lowerBound, Math.min(bound, found.draft.total)) };
}
