/** Least cloth, then the least labour: a plan at once, a better one step by step, and how far from the best it can be at most. */
import { branch } from './branch.ts';
import { firstFit, type Habit } from './first-fit.ts';
import { draftOf, type Draft } from './draft.ts';
import { problemOf, type Problem } from './problem.ts';
import { offer, openSearch, type Search } from './search.ts';
import { tidy } from './tidy.ts';
import type { Cloth, Demand, PackOptions, Packing } from './types.ts';

export interface Step {
  readonly packing: Packing;
  /** How much of the work allowed is done, 0 to 1; the search may end sooner. */
  readonly done: number;
}

const EFFORT = 350_000_000;

/** First fit, the highest strips first, as by hand. Its bound is the area's alone. */
export function firstPlan(demand: readonly Demand[], cloth: Cloth): Packing {
  const problem = problemOf(demand, cloth);
  return packingOf(openSearch(problem, firstFit(problem, problem.counts, 'least'), 0, 0));
}

/** The best of the ways a person may lay them by hand. */
export function firstPlans(demand: readonly Demand[], cloth: Cloth): Packing {
  return packingOf(begun(problemOf(demand, cloth), 0, 0));
}

function begun(problem: Problem, seed: number, effort: number): Search {
  const search = openSearch(problem, firstFit(problem, problem.counts, 'least'), seed, effort);
  for (const habit of OTHER_HABITS) offer(search, firstFit(problem, problem.counts, habit));
  if (problem.items.length <= FEW) offer(search, apart(problem));
  return search;
}

/** Of more kinds than these it is never best to keep all apart. */
const FEW = 40;

/** Each kind in strips of its own. */
function apart(problem: Problem): Draft {
  const alone = problem.counts.map((count, item) => {
    const wanted = problem.counts.map((_, other) => (other === item ? count : 0));
    return OTHER_HABITS.map((habit) => firstFit(problem, wanted, habit)).reduce((best, each) => (each.total < best.total ? each : best), firstFit(problem, wanted, 'least'));
  });
  return draftOf(problem, alone.flatMap(({ parts }) => parts));
}

/** Gets better step by step; may be left after any of them. Returns the last. */
export function* better(demand: readonly Demand[], cloth: Cloth, { seed = 1, effort = EFFORT, enough = () => false }: PackOptions = {}): Generator<Step, Packing> {
  const problem = problemOf(demand, cloth);
  const search = begun(problem, seed, effort * (1 - TIDYING));
  if (problem.items.length === 0) return packingOf(search);
  const step = (): Step => ({ packing: packingOf(search), done: Math.min(1, search.work.spent / effort) });
  for (const stage = branch(search); !enough(search.found.draft.total, search.found.lowerBound) && !stage.next().done; ) yield step();
  search.work.limit = search.work.spent + effort * TIDYING;
  for (const stage = tidy(search); !stage.next().done; ) yield step();
  return packingOf(search);
}

/** The share of the work that goes into plans that take the same cloth. */
const TIDYING = 0.3;

const OTHER_HABITS: readonly Habit[] = ['low', 'high'];

/** All the steps at once. */
export function packStrips(demand: readonly Demand[], cloth: Cloth, options: PackOptions = {}): Packing {
  const steps = better(demand, cloth, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function packingOf({ problem, found }: Search): Packing {
  const { draft, written, lowerBound, relaxation } = found;
  return {
    strips: written.strips,
    sheets: written.sheets,
    total: draft.total,
    lowerBound,
    relaxation: Number(relaxation.over) / Number(relaxation.unit),
    provenOptimal: lowerBound === draft.total,
    counters: written.counters,
    tooLarge: problem.tooLarge,
  };
}
