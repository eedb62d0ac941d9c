/** The word that was probably meant. */

/** The candidate nearest to a misspelt word: another case, a beginning of it, or few slips away. */
export function closest(word: string, candidates: Iterable<string>): string | undefined {
  const typed = word.toLowerCase();
  let best: string | undefined;
  let least = slipsAllowed(typed) + 1;
  for (const candidate of candidates) {
    const slips = typed.length >= 3 && candidate.startsWith(typed) ? Math.min(1, candidate.length - typed.length) : distance(typed, candidate);
    if (slips < least || (slips === least && best?.[0] !== typed[0] && candidate.startsWith(typed[0] ?? ''))) {
      best = candidate;
      least = slips;
    }
  }
  return least <= slipsAllowed(typed) ? best : undefined;
}

/** `; did you mean …?`, or nothing. */
export function didYouMean(suggestion: string | undefined): string {
  return suggestion === undefined ? '' : `; did you mean \`${suggestion}\`?`;
}

/** Words as a message shows them: not longer than a line has room for. */
export function shown(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

function slipsAllowed(word: string): number {
  return word.length < 3 ? 0 : word.length < 5 ? 1 : word.length < 9 ? 2 : 3;
}

/** Damerau–Levenshtein distance (optimal string alignment): letters inserted, left out, changed, or two neighbours swapped. */
export function distance(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 3) return Math.abs(a.length - b.length);
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const here = [row];
    for (let column = 1; column <= b.length; column++) {
      const change = a[row - 1] === b[column - 1] ? 0 : 1;
      const swap = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1] ? (before[column - 2] ?? 0) + 1 : Infinity;
      here[column] = Math.min((above[column] ?? 0) + 1, (here[column - 1] ?? 0) + 1, (above[column - 1] ?? 0) + change, swap);
    }
    before = above;
    above = here;
  }
  return above[b.length] ?? 0;
}
