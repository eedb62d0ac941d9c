/** One statement read by itself: text to node, with what is wrong in it. Everything is in columns of that text. */
import type { Columns } from '../text/place.ts';
import { readerOf } from './build.ts';
import { cellBuilders } from './build-cells.ts';
import { numberBuilders } from './build-numbers.ts';
import { statementBuilders } from './build-statements.ts';
import { fault } from './fault.ts';
import { matchExactly, matchTolerantly } from './grammar.ts';
import { mistakesIn } from './mistakes.ts';
import { junkReading } from './reading.ts';
import type { Reading } from './reading.ts';
import { review } from './review.ts';
import { indentOf } from './scan.ts';
import type { Cell, StatementNode } from './tree.ts';
import { unknownStatement } from './unknown.ts';
import { PLAIN_LINES, isReserved, ruleOf } from './words.ts';
import type { Context } from './words.ts';

/** A node as it is built: with the options that stand twice. */
export type Built = StatementNode & { readonly twice?: readonly Columns[] };

/** Reads a text that is, as a whole, what a rule of the language says; undefined for any other. */
export type ReadWhole = (text: string, rule: string) => Built | undefined;

const build = readerOf({ ...numberBuilders, ...cellBuilders, ...statementBuilders });

export const readWhole: ReadWhole = (text, rule) => {
  const { node } = matchExactly(text, rule);
  return node && build(node);
};

/** A cell of a row by itself; undefined for any other text. */
export function readCell(text: string): Cell | undefined {
  const { node } = matchExactly(text, 'cell');
  return node && build<Cell>(node);
}

/** Reads the statement that stands in `text`, in these braces. */
export function readStatement(text: string, context: Context, whole = readWhole): Reading {
  const readAs = (line: string, rule: string): Reading => readLine(line, rule, whole);
  const word = firstWord(text);
  const rule = ruleOf(context, word);
  if (rule !== undefined) return readAs(text, rule);
  const plain = PLAIN_LINES[context];
  const reading = plain === undefined ? undefined : readAs(text, plain);
  if (reading?.node.broken !== true && reading && !isReserved(word)) return reading;
  return unknownStatement(text, word, context, readAs) ?? reading ?? junkReading(text);
}

function readLine(text: string, rule: string, whole: ReadWhole): Reading {
  const good = whole(text, rule);
  if (good) return reviewed(good, text);
  const match = matchExactly(text, rule);
  const node = matchTolerantly(text, rule);
  if (match.node || !node) return junkReading(text, [fault({ from: indentOf(text), to: text.length }, 'this line cannot be read')]);
  const mistakes = mistakesIn(text, rule, node, match);
  const { node: built, faults } = reviewed(build(node), text);
  const others = faults.filter((each) => !mistakes.some((other) => overlaps(each, other)));
  const isKnownBefore = others.some((each) => each.rule === 'syntax' && mistakes.every((other) => each.from < other.from));
  return { node: { ...built, broken: true }, faults: isKnownBefore ? others : [...mistakes, ...others] };
}

/** The node without what only the review needs, and what the review says. */
function reviewed({ twice, ...node }: Built, text: string): Reading {
  const again = (twice ?? []).map((columns) => fault(columns, `\`${firstWord(text.slice(columns.from))}\` stands here twice`));
  return { node, faults: [...again, ...review(node, text)] };
}

function firstWord(text: string): string {
  return /^[\p{L}_][\p{L}\p{M}\d_]*/u.exec(text.slice(indentOf(text)))?.[0] ?? '';
}

function overlaps(a: Columns, b: Columns): boolean {
  return a.from < b.to && b.from < a.to;
}
