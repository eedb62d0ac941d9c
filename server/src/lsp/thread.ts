/**
 * Searches in a thread of their own, which is ended when nobody wants to know any more. Where the thread's program does not stand
 * beside this one (run from its sources), or a thread cannot go on, the search goes on in slices between other work.
 */
import { existsSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Task } from '../cutting/demand.ts';
import type { FromWorker } from './search-worker.ts';
import type { Searching, SearchTold } from './services.ts';
import { inSlices } from './slices.ts';

export function searchApart(task: Task, told: SearchTold): Searching {
  const program = workerProgram();
  return program === undefined ? inSlices(task, told) : inThread(program, task, told);
}

/** Beside the program that runs, wherever a link to it stands. */
function workerProgram(): string | undefined {
  try {
    const program = join(dirname(realpathSync(process.argv[1] ?? '')), 'search.cjs');
    return existsSync(program) ? program : undefined;
  } catch {
    return undefined;
  }
}

function inThread(program: string, task: Task, told: SearchTold): Searching {
  const worker = new Worker(program, { workerData: task });
  let searching: Searching = { cancel: () => void worker.terminate() };
  worker.unref();
  worker.on('message', (message: FromWorker) => {
    if ('packing' in message) told.found(message.packing);
    else told.progress(message.done);
  });
  worker.on('error', () => {
    searching = inSlices(task, told);
  });
  return { cancel: () => searching.cancel() };
}
