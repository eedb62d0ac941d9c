/** Lines that begin with no statement word of their braces: a misspelt one, one of other braces, or none at all. */
import { nearestWord } from '../text/nearest.ts';
import { fault, moved } from './fault.ts';
import type { Fault } from './fault.ts';
import { junkReading } from './reading.ts';
import type { Reading } from './reading.ts';
import { indentOf } from './scan.ts';
import { didYouMean } from './suggest.ts';
import { shifted } from './walk.ts';
import { STATEMENT_WORDS, contextName, contextsOf, ruleOf } from './words.ts';
import type { Context } from './words.ts';

type ReadAs = (text: string, rule: string) => Reading;

/** The reading of such a line, whose first word is `first`; undefined where it may be a plain line of its braces (a row) after all. */
export function unknownStatement(text: string, first: string, context: Context, readAs: ReadAs): Reading | undefined {
  const from = indentOf(text);
  const others = contextsOf(first);
  if (context === 'unknown') return junkReading(text);
  if (others.length > 0) return junkReading(text, [fault({ from, to: from + first.length }, `${first} stands ${places(others)}, not ${place(context)}`)]);
  const word = hyphened(text.slice(from), context) ?? first;
  const meant = nearestWord(word, STATEMENT_WORDS[context].map((each) => each.word));
  const plain = STATEMENT_WORDS[context].length === 0 || isRowContext(context);
  if (plain && meant === undefined) return undefined;
  const columns = { from, to: from + word.length };
  if (word === '') return junkReading(text, [fault({ from, to: tokenEnd(text, from) }, `\`${text.slice(from, tokenEnd(text, from))}\` begins no statement ${place(context)}`)]);
  const fix = meant === undefined ? undefined : { title: `Write \`${meant}\``, edits: [{ ...columns, text: meant }] };
  const problem = fault(columns, `\`${word}\` is no statement ${place(context)}${didYouMean(meant)}`, fix);
  const read = meant === undefined ? undefined : asMeant(text, word, meant, context, problem, readAs);
  if (plain && !read && !/^\S+\s+["\d]/.test(text.slice(from))) return undefined;
  return read ?? junkReading(text, [problem]);
}

/** `on-point`: a statement word that has an underscore. */
function hyphened(text: string, context: Context): string | undefined {
  const [word = ''] = /^[\p{L}_]+(?:-[\p{L}_]+)+/u.exec(text) ?? [];
  return ruleOf(context, word.replaceAll('-', '_')) === undefined ? undefined : word;
}

/** The line read with the word that was meant, if it makes a whole statement: so what it declares is known. */
function asMeant(text: string, word: string, meant: string, context: Context, problem: Fault, readAs: ReadAs): Reading | undefined {
  const rule = ruleOf(context, meant);
  if (rule === undefined) return undefined;
  const from = indentOf(text);
  const by = word.length - meant.length;
  const { node, faults } = readAs(text.slice(0, from) + meant + text.slice(from + word.length), rule);
  if (node.broken) return undefined;
  return { node: { ...shifted(node, by, from + meant.length), broken: true }, faults: [problem, ...faults.map((each) => moved(each, by))] };
}

function isRowContext(context: Context): boolean {
  return context === 'block' || context === 'turned' || context === 'mirrored';
}

function tokenEnd(text: string, from: number): number {
  return from + (/^\S+/.exec(text.slice(from))?.[0].length ?? 0);
}

function place(context: Context): string {
  return context === 'top' ? 'at the top level' : `in ${contextName(context)}`;
}

/** `in block { }, in turned { } or in mirrored { }`. */
function places(contexts: readonly Context[]): string {
  const all = contexts.map(place);
  const last = all.pop() ?? '';
  return all.length === 0 ? last : `${all.join(', ')} or ${last}`;
}
