/** The grammar of grammar/quilt.ohm: the language, and the language as it is typed. */
import type { Grammar, Node } from 'ohm-js';
import both, { source } from '../../../grammar/quilt.ohm';

const quilt = both['Quilt'] as Grammar;
const tolerant = both['Tolerant'] as Grammar;
const quiltNodes = quilt.createSemantics();
const tolerantNodes = tolerant.createSemantics();

/** What was read; or how far, and what could have stood there: words of the language in backquotes, else descriptions. */
export type Match =
  | { readonly node: Node }
  | { readonly node?: undefined; readonly at: number; readonly expected: readonly string[] };

/** Matches a piece of text against a statement's rule; everything must be as the language has it. */
export function matchExactly(text: string, rule: string): Match {
  const match = quilt.match(text, rule);
  if (match.succeeded()) return { node: quiltNodes(match) as unknown as Node };
  return { at: failurePosition(match), expected: expectations(match) };
}

/** Matches a piece of text as far as it can be understood. */
export function matchTolerantly(text: string, rule: string): Node | undefined {
  const match = tolerant.match(text, rule);
  return match.succeeded() ? (tolerantNodes(match) as unknown as Node) : undefined;
}

/** The grammars themselves, for tests that look at their rules. */
export const GRAMMARS = { quilt, tolerant, source };

interface Failures {
  getRightmostFailurePosition(): number;
  getRightmostFailures(): readonly { readonly type: string; readonly text: string }[];
}

function failurePosition(match: unknown): number {
  return (match as Failures).getRightmostFailurePosition();
}

function expectations(match: unknown): string[] {
  const failures = (match as Failures).getRightmostFailures();
  const texts = failures.map(({ type, text }) => (type === 'string' ? `\`${text}\`` : text));
  return [...new Set(texts)].sort();
}
