/** Problems as marked text: the line, `^^^ rule: message` under it, and what the fix would make of the line. */
import type { Document, Line } from '../../server/src/text/document.ts';
import type { Problem, TextEdit } from '../../server/src/text/problem.ts';

/** Every problem of a document, in order. An empty place is marked `|`. */
export function marked(document: Document, problems: readonly Problem[]): string {
  let last: Line | undefined;
  return problems.map((problem) => {
    const { line } = problem.place;
    const prefix = `${document.numberOf(line) + 1}: `;
    const shown = line === last ? '' : `${prefix}${line.text}\n`;
    last = line;
    return shown + marks(problem, prefix.length);
  }).join('\n');
}

function marks({ place, rule, message, fix }: Problem, indent: number): string {
  const width = (place.endLine ? place.line.text.length : place.to) - place.from;
  const under = ' '.repeat(indent + place.from) + (width === 0 ? '|' : '^'.repeat(width));
  const mended = fix ? `\n${' '.repeat(indent)}${fix.title} -> ${applied(place.line, fix.edits).trim()}` : '';
  return `${under} ${rule}: ${message}${mended}`;
}

/** The text of a line with the edits that touch it made. */
export function applied(line: Line, edits: readonly TextEdit[]): string {
  return [...edits].filter(({ place }) => place.line === line).sort((a, b) => b.place.from - a.place.from)
    .reduce((text, { place, text: fresh }) => text.slice(0, place.from) + fresh + text.slice(place.to), line.text);
}
