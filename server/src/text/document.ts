/**
 * A document as lines. A `Line` keeps its identity for as long as its text stands, wherever it moves to: whatever was
 * worked out for a line (or a run of lines) stays true while the objects are the same. Columns count UTF-16 units from 0.
 */

/** One line of a document; `text` has no line end. Two lines with the same text are still two objects. */
export interface Line {
  readonly text: string;
  readonly eol: '' | '\n' | '\r\n' | '\r';
  /** The document it belongs to, as an opaque key (a URI or a path). */
  readonly source: string;
}

/** The lines of one document, at least one, in order. Immutable: an edit makes a new one that shares untouched lines. */
export class Document {
  readonly source: string;
  readonly lines: readonly Line[];
  readonly #depth: number;
  readonly #change: Change | undefined;
  #numbers: Map<Line, number> | undefined;

  /** `change`: how it came from an older version. */
  constructor(source: string, lines: readonly Line[], change?: Change) {
    this.source = source;
    this.lines = lines;
    const depth = change ? change.before.#depth + 1 : 0;
    this.#change = change && change.added <= FEW && depth <= FEW ? change : undefined;
    this.#depth = this.#change ? depth : 0;
  }

  /** The number of a line counted from 0, or −1 when the line is not (or no longer) in this document. */
  numberOf(line: Line): number {
    if (this.#numbers || !this.#change) return (this.#numbers ??= numbersOf(this.lines)).get(line) ?? -1;
    const { before, at, removed, added } = this.#change;
    for (let number = at; number < at + added; number += 1) if (this.lines[number] === line) return number;
    const number = before.numberOf(line);
    if (number < at) return number;
    return number < at + removed ? -1 : number - removed + added;
  }

  /** The whole text, line ends as they were. */
  get text(): string {
    return this.lines.map((line) => line.text + line.eol).join('');
  }
}

/** Lines of `before` from number `at` on that were replaced by others, and how many. */
interface Change {
  readonly before: Document;
  readonly at: number;
  readonly removed: number;
  readonly added: number;
}

/** So many edits, and lines of one, are followed back to a version whose lines are numbered: cheaper than to number all anew. */
const FEW = 16;

function numbersOf(lines: readonly Line[]): Map<Line, number> {
  return new Map(lines.map((each, number) => [each, number]));
}

/** A position as editors give it: line and UTF-16 column, both from 0. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

/** Splits a text into a document. A line ends at LF, CRLF or CR; a text without a line end is one line. */
export function documentOf(source: string, text: string): Document {
  return new Document(source, split(source, text));
}

/**
 * The document with the text between two positions replaced. Positions outside the document are moved to its nearest
 * end. Only the lines touched are new objects.
 */
export function replaceRange(document: Document, start: Position, end: Position, text: string): Document {
  const from = clamp(document, start);
  const to = clamp(document, end);
  if (to.line < from.line || (to.line === from.line && to.character < from.character)) {
    return replaceRange(document, end, start, text);
  }
  const first = document.lines[from.line];
  const last = document.lines[to.line];
  if (!first || !last) return document;
  // A CR just before the edit may become one line end with a LF that begins it: take that line in as well.
  const previous = from.character === 0 ? document.lines[from.line - 1] : undefined;
  const lead = previous?.eol === '\r' ? previous.text + previous.eol : '';
  const start0 = lead === '' ? from.line : from.line - 1;
  const fresh = split(document.source, lead + first.text.slice(0, from.character) + text + last.text.slice(to.character) + last.eol);
  const rest = document.lines.slice(to.line + 1);
  if (rest.length > 0) fresh.pop();
  const change = { before: document, at: start0, removed: document.lines.length - start0 - rest.length, added: fresh.length };
  return new Document(document.source, [...document.lines.slice(0, start0), ...fresh, ...rest], change);
}

function clamp(document: Document, position: Position): Position {
  const last = document.lines.length - 1;
  if (position.line > last) return { line: last, character: document.lines[last]?.text.length ?? 0 };
  if (position.line < 0) return { line: 0, character: 0 };
  const length = document.lines[position.line]?.text.length ?? 0;
  return { line: position.line, character: position.character < 0 ? 0 : position.character > length ? length : position.character };
}

function split(source: string, text: string): Line[] {
  const lines: Line[] = [];
  const ends = /\r\n|\n|\r/g;
  let start = 0;
  for (let match = ends.exec(text); match; match = ends.exec(text)) {
    lines.push({ source, text: text.slice(start, match.index), eol: match[0] as Line['eol'] });
    start = ends.lastIndex;
  }
  lines.push({ source, text: text.slice(start), eol: '' });
  return lines;
}
