/**
 * Better cutting plans for the open patterns, one search after another, the pattern edited last first. A search for what no open
 * pattern asks any more is cancelled. While one takes its time, the editor is told how far it is.
 */
import { ordersOf } from '../cutting/build.ts';
import type { Order } from '../cutting/demand.ts';
import { hasBest, keepBest } from '../cutting/search.ts';
import type { Snapshot } from '../snapshot.ts';
import type { Searching, Services } from './services.ts';

export interface Searches {
  /** The pattern is as in the snapshot now. */
  readonly follow: (uri: string, snapshot: Snapshot) => void;
  /** Nobody looks at it any more. */
  readonly forget: (uri: string) => void;
}

export interface SearchesOptions {
  readonly search: Services['search'];
  /** All that a pattern asks for is found. */
  readonly onFound: (uri: string) => void;
  /** Shows how far a search is, until it is told that it ended. */
  readonly onProgress: () => Progress;
}

export interface Progress {
  readonly report: (done: number) => void;
  readonly end: () => void;
}

interface Running {
  readonly order: Order;
  readonly searching: Searching;
  readonly stopTelling: () => void;
}

export function searchesOf({ search, onFound, onProgress }: SearchesOptions): Searches {
  const wanted = new Map<string, readonly Order[]>();
  let running: Running | undefined;

  const go = (): void => {
    if (running) return;
    for (const [uri, orders] of [...wanted].reverse()) {
      const order = orders.find(({ key }) => !hasBest(key));
      if (order) return start(order);
      wanted.delete(uri);
      if (orders.length > 0) onFound(uri);
    }
  };
  const start = (order: Order): void => {
    const telling = tellingAfter(onProgress);
    const searching = search(order.task, {
      progress: telling.report,
      found: (packing) => {
        keepBest(order.key, packing);
        stop();
        go();
      },
    });
    running = { order, searching, stopTelling: telling.end };
  };
  const stop = (): void => {
    running?.searching.cancel();
    running?.stopTelling();
    running = undefined;
  };
  const stopUnwanted = (): void => {
    const key = running?.order.key;
    if (key !== undefined && ![...wanted.values()].some((orders) => orders.some((order) => order.key === key))) stop();
    go();
  };
  return {
    follow: (uri, snapshot) => {
      wanted.delete(uri);
      wanted.set(uri, ordersIn(snapshot).filter(({ key }) => !hasBest(key)));
      stopUnwanted();
    },
    forget: (uri) => {
      wanted.delete(uri);
      stopUnwanted();
    },
  };
}

/** What its quilts ask for, the one that is shown first. */
function ordersIn({ shown, quilts, pattern }: Snapshot): readonly Order[] {
  const all = [...(shown ? [shown] : []), ...quilts].flatMap(({ plan }) => ordersOf(plan, pattern));
  return [...new Map(all.map((order) => [order.key, order])).values()];
}

/** A search that is over sooner, in milliseconds, is not worth a message. */
const PATIENCE = 500;

function tellingAfter(onProgress: () => Progress): Progress {
  let progress: Progress | undefined;
  let done = 0;
  const timer = setTimeout(() => {
    progress = onProgress();
    progress.report(done);
  }, PATIENCE);
  timer.unref();
  return {
    report: (share) => {
      done = share;
      progress?.report(share);
    },
    end: () => {
      clearTimeout(timer);
      progress?.end();
    },
  };
}
