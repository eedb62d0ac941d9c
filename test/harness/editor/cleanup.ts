// Ends a program tidily: what was started is stopped, last first, on success, failure, Ctrl-C or the death of the program that started this one.
import { mkdtempSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { constants, tmpdir } from 'node:os';
import { join } from 'node:path';

const steps: (() => Promise<void>)[] = [];
let ending: Promise<void> | undefined;

/** Stops one thing at the end; called in the reverse order of the starts. */
export function atEnd(step: () => Promise<void>): void {
  steps.unshift(step);
}

/** An empty folder that is gone at the end. */
export function temporaryFolder(prefix: string): string {
  const folder = mkdtempSync(join(tmpdir(), prefix));
  atEnd(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));
  return folder;
}

/** Stops everything and exits with the code. */
export async function finish(code: number): Promise<never> {
  ending ??= stopAll();
  await ending;
  process.exit(code);
}

/** Runs a program's main function; its result is the exit code. */
export async function runProgram(main: () => Promise<number>): Promise<never> {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.on(signal, () => void finish(128 + constants.signals[signal]));
  }
  const parent = process.ppid;
  setInterval(() => process.ppid !== parent && void finish(1), 500).unref();
  try {
    return await finish(await main());
  } catch (error) {
    console.error(error);
    return finish(1);
  }
}

async function stopAll(): Promise<void> {
  for (const step of steps) await step().catch(console.error);
}
