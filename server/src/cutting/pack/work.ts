/** Work is counted instead of timed, so that the same question gets the same answer on a slow machine. */

export interface Work {
  /** Steps of the innermost loops so far. */
  spent: number;
  /** May be set higher for another stage. */
  limit: number;
}

export function isSpent({ spent, limit }: Work): boolean {
  return spent >= limit;
}

/** Whole numbers below 2³², the same for the same seed (mulberry32, Tommy Ettinger, 2017, public domain). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (mixed ^ (mixed >>> 14)) >>> 0;
  };
}
