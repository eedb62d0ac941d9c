/** What the benches share: medians, times, and where the project is. */
import { fileURLToPath } from 'node:url';

/** Of the bundled bench in `.cache/bench`. */
export const project = fileURLToPath(new URL('../..', import.meta.url));

export function median(numbers: readonly number[]): number {
  return [...numbers].sort((a, b) => a - b)[numbers.length >> 1] ?? 0;
}

/** Milliseconds. */
export function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}


/** Milliseconds of processor time. */
export function since(start: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}
