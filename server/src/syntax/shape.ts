/**
 * Lines of the same shape are matched once. A shape is a statement with every name, number, text, colour and run of blanks
 * replaced by one stand-in; the grammar takes both or neither, and what it made of the shape is moved to the real columns.
 * Matching is nine tenths of the work, and a pattern has few shapes.
 */
import type { Columns } from '../text/place.ts';
import { textValue } from './build-cells.ts';
import { valueOf } from './build-numbers.ts';
import type { Memo } from './memo.ts';
import { readWhole } from './read.ts';
import type { Built, ReadWhole } from './read.ts';
import { rewritten } from './walk.ts';
import type { Part } from './walk.ts';
import { LANGUAGE_WORDS } from './words.ts';

interface Shape {
  readonly text: string;
  /** For each column of the shape, and the one behind it, the column it stands for; only the ends of stand-ins matter. */
  readonly columns: readonly number[];
}

/** What a shape was read as; `no`: the grammar does not take it. */
export type Template = Built | 'no';

/** Reads whole statements by their shapes. */
export function readByShape(templates: Memo<Template>): ReadWhole {
  return (text, rule) => {
    const shape = shapeOf(text);
    const template = templates.get(`${rule}\0${shape.text}`, () => readWhole(shape.text, rule) ?? 'no');
    return template === 'no' ? undefined : relocated(template, shape, text);
  };
}

/** Text, colour, word, turn, number, blanks; an inch mark goes with what it touches; anything else stands for itself. */
const TOKENS = /"""(?:\\[^]|(?!""")[^])*"""|"(?:\\[^]|[^"\\])*"|#[\da-f]{6}(?![\p{L}\p{M}\d_])|\p{L}[\p{L}\p{M}\d_]*|@\d+|(\d+)"?|[)¼-¾⅐-⅞]"|[ \t]+|[^]/giu;

function shapeOf(text: string): Shape {
  let shape = '';
  const columns: number[] = [];
  for (const { 0: token, 1: digits, index } of text.matchAll(TOKENS)) {
    const standIn = digits === undefined ? standInFor(token) : `1${token.slice(digits.length)}`;
    const lost = token.length - standIn.length;
    for (let column = 0; column < standIn.length; column++) columns.push(index + (column === 0 ? 0 : column + lost));
    shape += standIn;
  }
  columns.push(text.length);
  return { text: shape, columns };
}

function standInFor(token: string): string {
  const first = token[0] ?? '';
  if (first === '"') return token.startsWith('"""') && token.length > 5 ? '""""""' : '""';
  if (first === '#' && token.length > 1) return '#000000';
  if (first === ' ' || first === '\t') return ' ';
  return /^\p{L}/u.test(token) && !LANGUAGE_WORDS.has(token) ? 'a' : token;
}

/** The node of a shape in the columns of a text, saying what stands there. */
function relocated(template: Built, { columns }: Shape, text: string): Built {
  const at = (column: number): number => columns[column] ?? text.length;
  const move = (part: Part): Part => ({ ...rewritten(part, (each) => (each === part ? undefined : move(each))), ...said(part, text, { from: at(part.from), to: at(part.to) }) });
  return move(template) as Built;
}

/** Where a part stands, and what it says if the text tells. */
function said({ kind }: Part, text: string, { from, to }: Columns): object {
  const written = text.slice(from, to);
  switch (kind) {
    case 'name':
      return { from, to, text: written };
    case 'text':
      return { from, to, value: textValue(written) };
    case 'colour':
      return { from, to, value: written.toLowerCase() };
    case 'number':
      return { from, to, value: valueOf(written) };
    default:
      return { from, to };
  }
}
