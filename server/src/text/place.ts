/** Where something stands in a text: columns of a line. The line object outlives edits elsewhere, so a place does too. */
import type { Document, Line, Position } from './document.ts';

/** From a column of `line` to a column of `endLine` (of `line` itself when there is none); `to` is exclusive. */
export interface Place {
  readonly line: Line;
  readonly from: number;
  readonly to: number;
  readonly endLine?: Line;
}

/** Columns of one line, `to` exclusive; the line is known from the statement it belongs to. */
export interface Columns {
  readonly from: number;
  readonly to: number;
}

/** A range as editors take it. */
export interface Range {
  readonly start: Position;
  readonly end: Position;
}

export function placeIn(line: Line, columns: Columns): Place {
  return { line, from: columns.from, to: columns.to };
}

/** The place from the start of one to the end of another in the same document. */
export function spanning(first: Place, last: Place): Place {
  const endLine = last.endLine ?? last.line;
  return endLine === first.line ? { line: first.line, from: first.from, to: last.to } : { line: first.line, from: first.from, to: last.to, endLine };
}

/** The range of a place in its document, or undefined when its line is not in that document. */
export function rangeOf(document: Document, place: Place): Range | undefined {
  const line = document.numberOf(place.line);
  const endLine = place.endLine ? document.numberOf(place.endLine) : line;
  if (line < 0 || endLine < 0) return undefined;
  return { start: { line, character: place.from }, end: { line: endLine, character: place.to } };
}

/** Whether a position lies in a place, its end included (a cursor right behind a word is still at the word). */
export function holds(document: Document, place: Place, position: Position): boolean {
  const range = rangeOf(document, place);
  if (!range) return false;
  return before(range.start, position) && before(position, range.end);
}

function before(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character <= b.character);
}
