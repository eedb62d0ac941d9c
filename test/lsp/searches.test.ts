/** Better cutting plans while nobody waits: in order, each once, cancelled when nobody wants them, and the same as on the spot. */
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { describe, expect, test } from 'vitest';
import { ordersOf } from '../../server/src/cutting/build.ts';
import type { Order, Task } from '../../server/src/cutting/demand.ts';
import type { Packing } from '../../server/src/cutting/pack/types.ts';
import { hasBest, searchSteps } from '../../server/src/cutting/search.ts';
import type { FromWorker } from '../../server/src/lsp/search-worker.ts';
import { searchesOf, type Searches } from '../../server/src/lsp/searches.ts';
import type { SearchTold } from '../../server/src/lsp/services.ts';
import { searchApart } from '../../server/src/lsp/thread.ts';
import { snapshotOf, type Snapshot } from '../../server/src/snapshot.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { shipped } from '../harness/shipped.ts';
import { hostOf, snapshotOfText } from '../harness/snapshot.ts';

/** No two patterns ask for the same: a third of the block is on the ruler. */
let made = 0;

function patternOf(more = ''): Snapshot {
  made += 1;
  return snapshotOfText(`fabric ink #22345c\nfabric sand #eadfc8\nblock Buoy ${4 + (3 * made) / 8}" {\n  ink/sand sand\n  ink      sand\n}\nquilt {\n  straight 7 by 9\n  place { Buoy }\n  ${more}\n  binding cut 2 1/4" ink\n}\n`);
}

function ordersIn(snapshot: Snapshot): readonly Order[] {
  return snapshot.quilts.flatMap(({ plan }) => ordersOf(plan, snapshot.pattern));
}

function answered({ task }: Order): Packing {
  const steps = searchSteps(task);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

interface Bench {
  readonly searches: Searches;
  readonly begun: { readonly task: Task; readonly told: SearchTold; cancelled: boolean }[];
  readonly found: string[];
}

/** A search begins and goes no further than the test says. */
function bench(): Bench {
  const begun: Bench['begun'] = [];
  const found: string[] = [];
  const searches = searchesOf({
    search: (task, told) => {
      const entry = { task, told, cancelled: false };
      begun.push(entry);
      return { cancel: () => void (entry.cancelled = true) };
    },
    onFound: (uri) => found.push(uri),
    onProgress: () => ({ report: () => undefined, end: () => undefined }),
  });
  return { searches, begun, found };
}

describe('what is looked for', () => {
  test('every fabric once, then it is told', () => {
    const { searches, begun, found } = bench();
    const snapshot = patternOf();
    const orders = ordersIn(snapshot);
    searches.follow('a', snapshot);
    orders.forEach((order, i) => {
      expect([begun.length, found]).toEqual([i + 1, []]);
      expect(begun[i]?.task).toEqual(order.task);
      begun[i]?.told.found(answered(order));
    });
    expect([begun.length, found, orders.every(({ key }) => hasBest(key))]).toEqual([orders.length, ['a'], true]);
    searches.follow('a', snapshot);
    expect([begun.length, found]).toEqual([orders.length, ['a']]);
  });

  test('an edit that asks for something else ends the search for what was asked', () => {
    const { searches, begun } = bench();
    searches.follow('a', patternOf());
    searches.follow('a', patternOf());
    expect(begun.map(({ cancelled }) => cancelled)).toEqual([true, false]);
    searches.forget('a');
    expect(begun.map(({ cancelled }) => cancelled)).toEqual([true, true]);
  });

  test('an edit that asks for the same lets it go on', () => {
    const { searches, begun } = bench();
    const snapshot = patternOf();
    searches.follow('a', snapshot);
    searches.follow('a', snapshot);
    expect(begun.map(({ cancelled }) => cancelled)).toEqual([false]);
  });
});

describe('the same plan everywhere', () => {
  test('in slices between other work', async () => {
    const [order] = ordersIn(patternOf());
    if (!order) throw new Error('nothing to cut');
    const told: number[] = [];
    const packing = await new Promise<Packing>((resolve) => void searchApart(order.task, { progress: (done) => told.push(done), found: resolve }));
    expect(packing).toEqual(answered(order));
    expect(told.every((done) => done >= 0 && done <= 1)).toBe(true);
  });

  test('in the thread that is shipped', async () => {
    const [order] = ordersIn(patternOf());
    if (!order) throw new Error('nothing to cut');
    const worker = new Worker(join(shipped(), 'search.cjs'), { workerData: order.task });
    const packing = await new Promise<Packing>((resolve, reject) => {
      worker.on('message', (message: FromWorker) => {
        if ('packing' in message) resolve(message.packing);
      });
      worker.on('error', reject);
    });
    await worker.terminate();
    expect(packing).toEqual(answered(order));
  });

  test('nothing is told any more once it is cancelled', async () => {
    const [order] = ordersIn(patternOf());
    if (!order) throw new Error('nothing to cut');
    let found = 0;
    searchApart(order.task, { progress: () => undefined, found: () => (found += 1) }).cancel();
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(found).toBe(0);
  });
});

describe('expectations wait for it', () => {
  const text = (side: number): string => `fabric ink #22345c\nblock Buoy ${side}" {\n  ink\n}\nquilt {\n  straight 13 by 17\n  place { Buoy }\n}\nexpect ink at most 1/8 yd\nexpect width at most 1"\n`;
  const failed = ({ problems }: Snapshot): readonly string[] => problems.filter(({ rule }) => rule === 'expect-failed').map(({ message }) => message.split(' is ')[0] ?? '');

  test('what hangs on a plan that is not known is judged when it is, all else at once', () => {
    const typed = (): Snapshot => snapshotOf(documentOf('pattern.quilt', text(5)), 1, hostOf(), undefined, { search: 'later' });
    const before = typed();
    expect(failed(before)).toEqual(['`width`']);
    expect(failed(before.settled)).toEqual(['`ink`', '`width`']);
    expect(failed(typed())).toEqual(['`ink`', '`width`']);
  });
});
