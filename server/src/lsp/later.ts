/**
 * Problems that take longer than a keystroke: worked out between messages, for the newest text only, the one edited last first.
 * What is said at once is in the snapshot (`early`); who waits here is told when there is no more to say.
 */
import type { Snapshot } from '../snapshot.ts';
import { turn } from './guard.ts';

export interface Later {
  /** The text may be another: its problems are to be worked out. */
  readonly follow: (uri: string) => void;
  readonly forget: (uri: string) => void;
  /** Settles when all that was followed is worked out. */
  readonly settled: () => Promise<void>;
}

export interface LaterOptions {
  /** The newest; undefined for a text that is not open any more. */
  readonly snapshotOf: (uri: string) => Snapshot | undefined;
  /** All problems of the newest text are at hand. */
  readonly onDone: (uri: string, snapshot: Snapshot) => void;
  readonly onError: (error: unknown) => void;
}

/** Work goes on for so long before messages that have come in are looked at, in milliseconds. */
const SLICE = 8;

/** The longest rest before work begins, and that of a text that was never worked out: what is said at once comes first. In milliseconds. */
const LONGEST_REST = 1000;
const FIRST_REST = 30;

export function laterOf({ snapshotOf, onDone, onError }: LaterOptions): Later {
  const wanted = new Set<string>();
  const took = new Map<string, number>();
  const waiting: (() => void)[] = [];
  let runs = false;
  let asked = 0;

  const run = async (): Promise<void> => {
    runs = true;
    for (let uri = newest(wanted); uri !== undefined; uri = newest(wanted)) {
      await rested(uri);
      const snapshot = snapshotOf(uri);
      if (!snapshot || (await isFinished(uri, snapshot))) wanted.delete(uri);
    }
    runs = false;
    waiting.splice(0).forEach((settle) => settle());
  };
  /** What took long the last time begins when nothing has been typed for as long. */
  const rested = async (uri: string): Promise<void> => {
    const rest = Math.min(LONGEST_REST, took.get(uri) ?? FIRST_REST);
    for (let before = -1; rest > SLICE && before !== asked; ) {
      before = asked;
      await new Promise((resolve) => setTimeout(resolve, rest));
    }
    await turn();
  };
  const isFinished = async (uri: string, snapshot: Snapshot): Promise<boolean> => {
    const steps = snapshot.workOut();
    let spent = 0;
    for (let done = false; !done; ) {
      const start = performance.now();
      while (!done && performance.now() - start < SLICE) done = steps.next().done === true;
      spent += performance.now() - start;
      if (!done) await turn();
      if (wanted.has(uri) && snapshotOf(uri) === snapshot) continue;
      // Typed on meanwhile: the next try waits for a longer rest.
      took.set(uri, Math.max(spent, 2 * (took.get(uri) ?? FIRST_REST)));
      return !wanted.has(uri);
    }
    took.set(uri, spent);
    onDone(uri, snapshot);
    return true;
  };
  return {
    follow: (uri) => {
      asked += 1;
      wanted.delete(uri);
      wanted.add(uri);
      if (!runs) void run().catch(onError);
    },
    forget: (uri) => {
      wanted.delete(uri);
      took.delete(uri);
    },
    settled: () => (runs ? new Promise((settle) => waiting.push(settle)) : Promise.resolve()),
  };
}

function newest(uris: ReadonlySet<string>): string | undefined {
  return [...uris].at(-1);
}
