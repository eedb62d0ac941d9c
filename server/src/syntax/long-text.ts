/** A `"""` text that spans lines: where it ends and what it says. */
import type { Line } from '../text/document.ts';
import type { LineReader } from './reader.ts';
import { endOfLongText, unescape } from './scan.ts';
import { isTopLevelWord } from './words.ts';

export interface LongText {
  /** The line it ends in, and the column behind its end. */
  readonly endLine: number;
  readonly end: number;
  readonly value: string;
  /** The statement at the left edge that ends it although it is not closed; `end` where the document does. */
  readonly endedBy?: { readonly word: string; readonly line: number } | 'end';
}

/** The text opened by the `"""` at a column of line number `at`. */
export function longTextFrom(lines: readonly Line[], at: number, column: number, reader: LineReader): LongText {
  const parts = [(lines[at]?.text ?? '').slice(column + 3)];
  for (let number = at + 1; number < lines.length; number++) {
    const text = lines[number]?.text ?? '';
    const word = wholeStatement(text, reader);
    if (word !== undefined) return { endLine: number - 1, end: lines[number - 1]?.text.length ?? 0, value: valueOf(parts), endedBy: { word, line: number } };
    const end = endOfLongText(text);
    if (end >= 0) return { endLine: number, end, value: valueOf([...parts, text.slice(0, end - 3)]) };
    parts.push(text);
  }
  const last = lines.length - 1;
  return { endLine: last, end: lines[last]?.text.length ?? 0, value: valueOf(parts), endedBy: 'end' };
}

/** The word of a whole top-level statement at the left edge, or undefined. */
function wholeStatement(text: string, reader: LineReader): string | undefined {
  const word = /^[a-z]+/.exec(text)?.[0];
  if (word === undefined || !isTopLevelWord(word)) return undefined;
  const line = reader.line(text);
  const first = line.scan.pieces[0];
  if (!first || line.scan.faults.length > 0) return undefined;
  return reader.read(line, first, 'top').faults.length === 0 ? word : undefined;
}

/** The lines joined by LF, the indentation they share (the first line aside) and empty ends left out. */
function valueOf(lines: readonly string[]): string {
  const [first = '', ...rest] = lines;
  const indents = rest.filter((line) => line.trim() !== '').map((line) => /^[ \t]*/.exec(line)?.[0] ?? '');
  const shared = indents.reduce((common, indent) => commonStart(common, indent), indents[0] ?? '');
  const shifted = rest.map((line) => (line.startsWith(shared) ? line.slice(shared.length) : line.trimStart()));
  return unescape([first.trimStart(), ...shifted].map((line) => line.trimEnd()).join('\n').trim());
}

function commonStart(a: string, b: string): string {
  let length = 0;
  while (length < a.length && a[length] === b[length]) length++;
  return a.slice(0, length);
}
