/** The thread that looks for cutting plans: one task for its life, told how far it is, then what was found. */
import { parentPort, workerData } from 'node:worker_threads';
import type { Task } from '../cutting/demand.ts';
import type { Packing } from '../cutting/pack/types.ts';
import { searchSteps } from '../cutting/search.ts';

export type FromWorker = { readonly done: number } | { readonly packing: Packing };

/** Hundredths of the work are told, not every step. */
let told = 0;
const steps = searchSteps(workerData as Task);
for (let step = steps.next(); ; step = steps.next()) {
  if (step.done) {
    tell({ packing: step.value });
    break;
  }
  if (step.value < told + 0.01) continue;
  told = step.value;
  tell({ done: told });
}

function tell(message: FromWorker): void {
  parentPort?.postMessage(message);
}
