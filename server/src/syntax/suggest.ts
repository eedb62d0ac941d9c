/** The word that was probably meant. */
import { editDistance } from '../text/nearest.ts';

/** The candidate nearest to a misspelt word: another case, a beginning of it, or few slips away. */
export function closest(word: string, candidates: Iterable<string>): string | undefined {
  const typed = word.toLowerCase();
  let best: string | undefined;
  let least = slipsAllowed(typed) + 1;
  for (const candidate of candidates) {
    const slips = typed.length >= 3 && candidate.startsWith(typed) ? Math.min(1, candidate.length - typed.length) : editDistance(typed, candidate);
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
