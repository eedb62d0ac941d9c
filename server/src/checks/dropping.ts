/** The mend that takes a statement out of the text: its lines too, where nothing else stands in them. */
import type { Document, Line } from '../text/document.ts';
import type { Place } from '../text/place.ts';
import type { TextEdit } from '../text/problem.ts';

/** A comment behind the statement stays. Of two empty lines around it one goes along. */
export function dropping(document: Document, place: Place): TextEdit {
  const last = place.endLine ?? place.line;
  const behind = last.text.slice(place.to);
  if (place.line.text.slice(0, place.from).trim() !== '' || (behind.trim() !== '' && !/^\s*\/\//.test(behind))) return { place, text: '' };
  if (behind.trim() !== '') return { place: upTo(place, last, last.text.indexOf('//', place.to)), text: '' };
  const number = document.numberOf(last);
  const first = document.numberOf(place.line);
  const isApart = isEmpty(document.lines[first - 1]) && isEmpty(document.lines[number + 1]);
  const next = document.lines[number + (isApart ? 2 : 1)] ?? document.lines[number + 1];
  return { place: next ? upTo(place, next, 0) : upTo(place, last, last.text.length), text: '' };
}

function upTo({ line }: Place, endLine: Line, to: number): Place {
  return endLine === line ? { line, from: 0, to } : { line, from: 0, to, endLine };
}

function isEmpty(line: Line | undefined): boolean {
  return line?.text.trim() === '';
}
