/**
 * Plans for what a fabric is asked for: one at once, and the best that is found within a fixed number of steps, which is the same on
 * every machine. Both are kept by what was asked, so a keystroke that changes no demand costs nothing.
 */
import { better, firstPlans } from './pack/pack.ts';
import type { Packing } from './pack/types.ts';
import type { Order, Task } from './demand.ts';

/** `best` may take a second; `at once` takes the best where it is known already. */
export type Effort = 'at once' | 'best';

/** The plan, and whether nothing better is looked for. */
export interface Answer {
  readonly packing: Packing;
  readonly isBest: boolean;
}

export function answerFor({ task, key }: Order, effort: Effort): Answer {
  const best = bests.get(key) ?? (effort === 'best' ? keepBest(key, bestOf(task)) : undefined);
  return best ? { packing: best, isBest: true } : { packing: firsts.get(key) ?? firsts.keep(key, firstPlans(task.demand, task.cloth)), isBest: false };
}

/** Takes a plan that was found elsewhere (`searchSteps` in another thread). */
export function keepBest(key: string, packing: Packing): Packing {
  return bests.keep(key, packing);
}

export function hasBest(key: string): boolean {
  return bests.get(key) !== undefined;
}

/** The search in steps, each with how much of the work is done, 0 to 1; the answer is the last. */
export function* searchSteps({ demand, cloth, bought }: Task): Generator<number, Packing> {
  if (demand.length > MOST_KINDS) return firstPlans(demand, cloth);
  const enough = (total: number, bound: number): boolean => (bought ? stepsOf(total, bought) === stepsOf(bound, bought) : total === bound);
  const steps = better(demand, cloth, { seed: SEED, effort: EFFORT, enough });
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield step.value.done;
  }
}

/** About a quarter of a second. */
const EFFORT = 120_000_000;

const SEED = 1;

/** Of more sizes than these in one fabric the plan by hand stands. */
const MOST_KINDS = 300;

function bestOf(task: Task): Packing {
  const steps = searchSteps(task);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** How many steps of `yardage` a length takes. */
function stepsOf(total: number, { over, under }: NonNullable<Task['bought']>): bigint {
  return (BigInt(total) * over + under - 1n) / under;
}

interface Kept {
  readonly get: (key: string) => Packing | undefined;
  readonly keep: (key: string, packing: Packing) => Packing;
}

/** Of so many the one not asked for the longest is forgotten. */
const MOST_KEPT = 500;

function kept(): Kept {
  const known = new Map<string, Packing>();
  const keep = (key: string, packing: Packing): Packing => {
    known.delete(key);
    known.set(key, packing);
    const [oldest] = known.keys();
    if (known.size > MOST_KEPT && oldest !== undefined) known.delete(oldest);
    return packing;
  };
  return {
    get: (key) => {
      const found = known.get(key);
      return found && keep(key, found);
    },
    keep,
  };
}

const firsts = kept();
const bests = kept();
