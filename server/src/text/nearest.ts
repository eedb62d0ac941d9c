/** The word of a list that was probably meant by a misspelt one: one ranking for keywords, names, options and paths. */

/**
 * The nearest of `words`, or undefined when none is near: no edit for one letter, one edit for up to four, two for up to eight,
 * three beyond. An edit inserts, drops or changes a letter or swaps two neighbours (Damerau–Levenshtein, optimal string alignment);
 * a difference in case alone is none, and a word of which at least three letters are written is one edit away. Of equally near
 * ones the first with the same first letter, then the first.
 */
export function nearestWord(word: string, words: Iterable<string>): string | undefined {
  const typed = word.toLowerCase();
  let best: string | undefined;
  let least = editsAllowed(typed) + 1;
  for (const each of words) {
    if (each === word) continue;
    const distance = distanceFrom(typed, each.toLowerCase(), least);
    if (distance < least || (distance === least && best !== undefined && !startsAlike(best, typed) && startsAlike(each, typed))) {
      best = each;
      least = distance;
    }
  }
  return best;
}

/** The edits from a beginning or a slip to the word; `most` and above are not told apart from each other. */
function distanceFrom(typed: string, word: string, most: number): number {
  if (typed.length >= 3 && word.startsWith(typed)) return Math.min(1, word.length - typed.length);
  return Math.abs(word.length - typed.length) > most ? most + 1 : editDistance(typed, word);
}

function startsAlike(word: string, typed: string): boolean {
  return word[0]?.toLowerCase() === typed[0];
}

function editsAllowed(word: string): number {
  if (word.length < 2) return 0;
  return word.length < 5 ? 1 : word.length < 9 ? 2 : 3;
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
