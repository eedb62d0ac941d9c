/** What was read for a text is remembered, so that a line is read once for as long as it stands somewhere. */

/** A memory of bounded size: what was not asked for during a whole generation is forgotten. */
export class Memo<V> {
  #limit: number;
  #young = new Map<string, V>();
  #old = new Map<string, V>();

  constructor(limit: number) {
    this.#limit = limit;
  }

  /** Makes room for at least so many. */
  reserve(count: number): void {
    this.#limit = Math.max(this.#limit, count);
  }

  /** The value of a key, made by `make` the first time. */
  get(key: string, make: () => V): V {
    const known = this.#young.get(key);
    if (known !== undefined) return known;
    const value = this.#old.get(key) ?? make();
    if (this.#young.size >= this.#limit) {
      this.#old = this.#young;
      this.#young = new Map();
    }
    this.#young.set(key, value);
    return value;
  }
}
