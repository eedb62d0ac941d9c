/** What to say about a statement that could not be read as a whole: the common mistakes by name, else what was expected. */
import type { Node } from 'ohm-js';
import type { Columns } from '../text/place.ts';
import { visit } from './build.ts';
import { fault } from './fault.ts';
import type { Fault, LineFix } from './fault.ts';
import { matchExactly } from './grammar.ts';
import { NAMED_MISTAKES, lengthExpected } from './named-mistakes.ts';
import { isBlank } from './scan.ts';
import { nearestWord } from '../text/nearest.ts';
import { didYouMean, shown } from './suggest.ts';
import { OPTION_WORDS } from './words.ts';

/** Where a match of the language itself failed, and what could have stood there. */
export interface Failure {
  readonly at: number;
  readonly expected: readonly string[];
}

/** The faults of a statement: `node` is what the tolerant grammar made of it. At least one. */
export function mistakesIn(text: string, rule: string, node: Node, failure: Failure): Fault[] {
  const named: Fault[] = [];
  visit(node, (each) => {
    const say = NAMED_MISTAKES[each.ctorName];
    if (say) named.push(...say(each, text));
    return !say;
  });
  if (named.length > 0) return named.filter((each, index) => named.findIndex(({ from, message }) => from === each.from && message === each.message) === index);
  return [bracesExpected(text, rule) ?? unread(text, rule, atWord(text, rule, failure))];
}

// ---------------------------------------------------------------------------------------------- without a name

function bracesExpected(text: string, rule: string): Fault | undefined {
  if (rule !== 'Place' && rule !== 'Between') return undefined;
  const [, before = '', word = '', cells = ''] = /^(\s*)(place|between)\s*(.*)$/.exec(text) ?? [];
  if (cells === '' || /^(?:turned|mirrored)\b/.test(cells)) return undefined;
  const from = before.length + word.length;
  const edits = [{ from, to: text.length, text: ` { ${cells.replace(/^\[\s*|\s*\]$/g, '')} }` }];
  return fault({ from, to: text.length }, `the cells of the tile stand in braces: ${word} { … }`, { title: 'Write the braces', edits });
}

function unread(text: string, rule: string, { at, expected }: Failure): Fault {
  const columns = tokenAt(text, at);
  const token = text.slice(columns.from, columns.to);
  if (token === 'cut' && expected.includes('a length')) return unread(text, rule, { at: columns.to, expected: ['a length'] });
  if (token === '') return fault({ from: text.length, to: text.length }, `the statement ends too early: expected ${listed(expected)}`);
  const meant = nearestWord(token, words(expected));
  if (meant !== undefined) return notHere(token, columns, expected, meant);
  return (
    inchMarkApart(text, columns) ?? glued(text, columns) ?? openParenthesis(text, columns) ?? nameForLength(token, columns, expected) ??
    fabricLeftOut(text, rule, columns) ?? wordLeftOut(text, rule, columns, expected) ?? notHere(...joined(text, columns), expected)
  );
}

/** Where a match failed inside a word: the start of the word, and what could have stood there. */
function atWord(text: string, rule: string, { at, expected }: Failure): Failure {
  const isInWord = (column: number): boolean => /[\p{L}\p{M}\d_]/u.test(text[column] ?? ' ');
  let start = at;
  while (isInWord(at) && isInWord(start - 1)) start--;
  if (start === at) return { at, expected };
  const match = matchExactly(`${text.slice(0, start)}\u0001`, rule);
  return match.node ? { at, expected } : { at: start, expected: match.expected };
}

/** A text, a word, a sign: what stands at a column, or behind the blanks there. */
function tokenAt(text: string, at: number): Columns {
  let from = at;
  while (isBlank(text[from])) from++;
  const [token = ''] = /^(?:"[^"]*"?|[\p{L}\p{M}\d_]+(?:-\p{L}[\p{L}\p{M}\d_]*)*|[^\s\p{L}\d"]+(?=[\p{L}\d"])|\S+)/u.exec(text.slice(from)) ?? [];
  return { from, to: from + token.length };
}

function inchMarkApart(text: string, { from, to }: Columns): Fault | undefined {
  const blanks = text[from] === '"' ? /[\d¼-¾⅐-⅞)](\s+)$/.exec(text.slice(0, from))?.[1] : undefined;
  if (blanks === undefined) return undefined;
  const edits = [{ from: from - blanks.length, to: from, text: '' }];
  return fault({ from, to: Math.min(from + 1, to) }, 'the inch mark touches its number (as it stands, a text begins here)', { title: 'Remove the blank before the inch mark', edits });
}

/** `4"by`, `a//b`. */
function glued(text: string, { from, to }: Columns): Fault | undefined {
  const comment = /^\S*?\/\//.exec(text.slice(from));
  if (comment) {
    const at = from + comment[0].length - 2;
    return fault({ from: at, to: at + 2 }, 'a comment begins behind a blank', { title: 'Write a blank', edits: [{ from: at, to: at, text: ' ' }] });
  }
  const number = /^\d[\d./⁄¼-¾⅐-⅞]*["″]?(?=[\p{L}_])/u.exec(text.slice(from));
  if (!number) return undefined;
  const at = from + number[0].length;
  return fault({ from, to: Math.max(to, at) }, `a number ends at a blank: \`${shown(text.slice(from).split(/\s/)[0] ?? '')}\` is none`);
}

function openParenthesis(text: string, { from }: Columns): Fault | undefined {
  const open: number[] = [];
  for (let at = from; at < text.length; at++) {
    if (text[at] === '(') open.push(at);
    else if (text[at] === ')') open.pop();
  }
  const last = open.at(-1);
  return last === undefined ? undefined : fault({ from: last, to: last + 1 }, 'this ( is not closed');
}

function nameForLength(token: string, columns: Columns, expected: readonly string[]): Fault | undefined {
  return expected.includes('a length') && /^\p{L}/u.test(token) ? lengthExpected(columns, token) : undefined;
}

/** `backing overhang 4"`: an option was taken for the fabric that is not there. */
function fabricLeftOut(text: string, rule: string, { from }: Columns): Fault | undefined {
  const [option = ''] = /[a-z_]+(?=\s*$)/.exec(text.slice(0, from)) ?? [];
  if (!OPTION_WORDS[rule]?.includes(option)) return undefined;
  const at = text.lastIndexOf(option, from);
  if (!matchExactly(`${text.slice(0, at)}fabric ${text.slice(at)}`, rule).node) return undefined;
  return fault({ from: at, to: at + option.length }, `a fabric is expected before \`${option}\``);
}

/** A word of the language without which the rest cannot stand here: `ink mitred` for `ink corners mitred`, `4 5` for `4 by 5`. */
function wordLeftOut(text: string, rule: string, columns: Columns, expected: readonly string[]): Fault | undefined {
  const whole = words(expected).filter((word) => matchExactly(`${text.slice(0, columns.from)}${word} ${text.slice(columns.from)}`, rule).node);
  const [word] = whole;
  if (word === undefined || whole.length > 1) return undefined;
  const token = text.slice(columns.from, columns.to);
  const fix = { title: `Write \`${word}\``, edits: [{ from: columns.from, to: columns.from, text: `${word} ` }] };
  return fault(columns, `\`${token}\` does not belong here: expected ${listed(expected)}; did you mean \`${word} ${token}\`?`, fix);
}

function notHere(token: string, columns: Columns, expected: readonly string[], meant?: string): Fault {
  const fix: LineFix | undefined = meant === undefined ? undefined : { title: `Write \`${meant}\``, edits: [{ ...columns, text: meant }] };
  const rest = listed(expected);
  const hint = rest === `\`${meant}\`` ? '' : didYouMean(meant);
  return fault(columns, `\`${shown(token)}\` does not belong here${rest === '' ? '' : `: expected ${rest}`}${hint}`, fix);
}

/** The whole of what stands between blanks where a word goes on behind it: `ink/sand`, `2,2,`. */
function joined(text: string, { from, to }: Columns): readonly [string, Columns] {
  const [rest = ''] = /^[/\\|,;:.-]\S*/.exec(text.slice(to)) ?? [];
  return [text.slice(from, to + rest.length), { from, to: to + rest.length }];
}

/** The words of the language among what was expected. */
function words(expected: readonly string[]): string[] {
  return expected.flatMap((each) => /^`([a-z]\w*)`$/.exec(each)?.[1] ?? []);
}

/** `a`, `b` or the end of the line: words first, signs left out. */
function listed(expected: readonly string[]): string {
  const plain = expected.filter((each) => (!each.startsWith('`') && !/^not |^"/.test(each)) || /^`(?:\w+|=)`$/.test(each));
  const items = [...plain.filter((each) => each !== 'end of input'), ...(plain.includes('end of input') ? ['the end of the line'] : [])];
  const last = items.pop() ?? '';
  return items.length === 0 ? last : `${items.join(', ')} or ${last}`;
}
