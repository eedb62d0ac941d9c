/** The nearest word of a list to a misspelt one, by edits of single letters. */

/**
 * The nearest of `words`, or undefined when none is near: at most one edit for up to four letters, two for up to eight,
 * three beyond. An edit inserts, drops or changes a letter or swaps two neighbours (Damerau–Levenshtein, optimal string
 * alignment); a difference in case alone counts as nearest of all.
 */
export function nearestWord(word: string, words: readonly string[]): string | undefined {
  const limit = word.length <= 4 ? 1 : word.length <= 8 ? 2 : 3;
  let best: string | undefined;
  let least = limit + 1;
  for (const each of words) {
    if (each === word || Math.abs(each.length - word.length) > limit) continue;
    const distance = each.toLowerCase() === word.toLowerCase() ? 0 : editDistance(word, each);
    if (distance < least) {
      best = each;
      least = distance;
    }
  }
  return best;
}

/** The least number of edits that turns `a` into `b`. */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const next = [row];
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      let cost = Math.min((last[column] ?? 0) + 1, (next[column - 1] ?? 0) + 1, (last[column - 1] ?? 0) + (same ? 0 : 1));
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) cost = Math.min(cost, (beforeLast[column - 2] ?? 0) + 1);
      next.push(cost);
    }
    beforeLast = last;
    last = next;
  }
  return last[b.length] ?? 0;
}
