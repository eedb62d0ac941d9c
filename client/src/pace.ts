/** Work that is asked for often and done seldom: at once, then at most once in a while, never twice at a time. */

export interface Pace {
  /** Asks for a run; many calls before the next run are one. */
  readonly ask: () => void;
  readonly stop: () => void;
}

/** `work` runs at once when nothing ran for `milliseconds`, else when they are over and the last run has ended. */
export function pace(milliseconds: number, work: () => Promise<void>): Pace {
  let wanted = false;
  let running = false;
  let stopped = false;
  let last = -Infinity;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const ask = (): void => {
    wanted = true;
    if (running || stopped || timer !== undefined) return;
    const wait = last + milliseconds - performance.now();
    if (wait <= 0) return void run();
    timer = setTimeout(() => {
      timer = undefined;
      void run();
    }, wait);
  };
  const run = async (): Promise<void> => {
    wanted = false;
    running = true;
    last = performance.now();
    await work().catch(() => undefined);
    running = false;
    if (wanted) ask();
  };
  const stop = (): void => {
    stopped = true;
    clearTimeout(timer);
  };
  return { ask, stop };
}
