/** Messages stay readable whatever the text holds: a name or a number of thousands of characters is told by its ends. */
import type { Problem } from '../text/problem.ts';

/** UTF-16 units that a message may have. */
const LONGEST = 600;
/** What is kept at the end of a longer one: the limit, or the name a ring comes back to. */
const TAIL = 120;

/** The same problem where its messages are short. */
export function brief(problem: Problem): Problem {
  const { message, related } = problem;
  const isLong = [problem, ...(related ?? [])].some((each) => each.message.length > LONGEST);
  if (!isLong) return problem;
  return { ...problem, message: shortened(message), ...(related && { related: related.map((each) => ({ ...each, message: shortened(each.message) })) }) };
}

/** Cut between characters, never within one. */
function shortened(message: string): string {
  if (message.length <= LONGEST) return message;
  return `${message.slice(0, LONGEST - TAIL).replace(/[\uD800-\uDBFF]$/, '')} … ${message.slice(-TAIL).replace(/^[\uDC00-\uDFFF]/, '')}`;
}
