/** Searches on the thread that answers, in slices between its other work. */
import type { Task } from '../cutting/demand.ts';
import { searchSteps } from '../cutting/search.ts';
import type { Searching, SearchTold } from './services.ts';

/** About how long others wait, in milliseconds. */
const SLICE = 8;

export function inSlices(task: Task, { progress, found }: SearchTold): Searching {
  const steps = searchSteps(task);
  let isWanted = true;
  const go = (): void => {
    if (!isWanted) return;
    const until = performance.now() + SLICE;
    let step = steps.next();
    while (!step.done && performance.now() < until) step = steps.next();
    if (step.done) return found(step.value);
    progress(step.value);
    setImmediate(go);
  };
  setImmediate(go);
  return {
    cancel: () => {
      isWanted = false;
    },
  };
}
