/** Long work in steps, so that others can have their turn between: a generator that yields where it may be left for a while. */

/** What steps come to in the end. */
export type Steps<T> = Generator<undefined, T>;

/** Does all steps at once. */
export function allSteps<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** What `work` makes of one after another, a step each. */
export function* mapSteps<T, R>(items: Iterable<T>, work: (item: T) => R): Steps<R[]> {
  const results: R[] = [];
  for (const item of items) {
    results.push(work(item));
    yield undefined;
  }
  return results;
}
