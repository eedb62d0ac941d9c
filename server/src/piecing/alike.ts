/** Regions met before: those that look alike at a glance are compared closely, and what was found for the first serves the next. */
import { printOf } from './canonical.ts';
import type { Reading } from './canonical.ts';

export interface AlikeOptions {
  /** Equal for patches of the same shape and fabric. */
  readonly kinds: readonly number[];
  /** Tells when one region is another, turned; without it none is. */
  readonly read?: (patches: readonly number[]) => Reading;
}

interface Seen<T> {
  readonly patches: readonly number[];
  readonly draft: T;
  reading?: Reading;
}

export class Alikes<T> {
  readonly #options: AlikeOptions;
  readonly #seen = new Map<string, Seen<T>[]>();

  constructor(options: AlikeOptions) {
    this.#options = options;
  }

  printOf(patches: readonly number[]): string {
    return printOf(this.#options.kinds, patches);
  }

  /** What was found for a region that this one is a turned copy of, with the patches that match. */
  find(patches: readonly number[]): { readonly draft: T; readonly patches: ReadonlyMap<number, number> } | undefined {
    const { read } = this.#options;
    const near = read && this.#seen.get(this.printOf(patches));
    if (!near) return undefined;
    const { key, order } = read(patches);
    for (const seen of near) {
      seen.reading ??= read(seen.patches);
      if (seen.reading.key === key) return { draft: seen.draft, patches: new Map(seen.reading.order.map((patch, i) => [patch, order[i] ?? patch])) };
    }
    return undefined;
  }

  add(patches: readonly number[], draft: T): void {
    const print = this.printOf(patches);
    const near = this.#seen.get(print);
    if (near) near.push({ patches, draft });
    else this.#seen.set(print, [{ patches, draft }]);
  }
}
