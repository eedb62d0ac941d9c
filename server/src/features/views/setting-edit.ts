/** Writes another setting into the text: the statements that say how the quilt is set are replaced, all others and every comment stay. */
import type { Snapshot } from '../../snapshot.ts';
import type { Body, Statement, StatementKind } from '../../syntax/tree.ts';
import type { Line } from '../../text/document.ts';
import { placeIn } from '../../text/place.ts';
import type { TextEdit } from '../../text/problem.ts';
import { eolOf } from '../refactor/edit.ts';
import { scanLine } from '../../syntax/scan.ts';

const SETTING: readonly StatementKind[] = ['straight', 'on_point', 'grid', 'rows', 'row', 'place', 'between', 'sashing'];
/** Only said on point: what the quilt says of them there is kept. */
const ON_POINT: readonly StatementKind[] = ['edges', 'corners', 'float'];

/** Undefined for a quilt whose braces are not closed. */
export function settingEdits(snapshot: Snapshot, lines: readonly string[], on: 'straight' | 'on_point'): readonly TextEdit[] | undefined {
  const { quilt } = snapshot.pattern;
  if (!quilt) return appended(snapshot, lines);
  const { body } = quilt;
  if (!body?.close) return undefined;
  const kept = on === 'on_point' ? ON_POINT.filter((kind) => body.statements.some(({ node }) => node.kind === kind)) : [];
  const written = kept.includes('edges') ? lines.filter((line) => !line.startsWith('edges ')) : lines;
  const old = body.statements.filter(({ node }) => SETTING.includes(node.kind) || (ON_POINT.includes(node.kind) && !kept.includes(node.kind)));
  return old.length > 0 && old.every((statement) => standsAlone(statement, body)) ? replaced(snapshot, old, written) : rewritten(snapshot, body, { written, old });
}

function appended({ document }: Snapshot, lines: readonly string[]): readonly TextEdit[] {
  const last = document.lines.at(-1);
  const eol = eolOf(document);
  if (!last) return [];
  const lead = last.text === '' ? eol : eol + eol;
  return [{ place: placeIn(last, { from: last.text.length, to: last.text.length }), text: `${lead}quilt {${eol}${lines.map((line) => `  ${line}${eol}`).join('')}}${eol}` }];
}

/** Nothing but a comment shares its lines with it. */
function standsAlone({ place, line }: Statement, { open, close }: Body): boolean {
  const end = place.endLine ?? line;
  return line !== open.line && end !== close?.line && line.text.slice(0, place.from).trim() === '' && /^\s*(?:\/\/.*)?$/.test(end.text.slice(place.to));
}

/** The first of them becomes the new lines, the others go; comments that stood beside or in them stand above. */
function replaced(snapshot: Snapshot, old: readonly Statement[], written: readonly string[]): readonly TextEdit[] {
  const { document } = snapshot;
  const eol = eolOf(document);
  const [first] = old;
  const indent = first?.line.text.slice(0, first.place.from) ?? '';
  const comments = old.flatMap((statement) => commentsIn(snapshot, statement));
  const text = [...comments, ...written].map((line) => `${indent}${line}${eol}`).join('');
  return old.map((statement) => {
    const next = document.lines[document.numberOf(statement.place.endLine ?? statement.line) + 1];
    const { line } = statement;
    return { place: { line, from: 0, to: 0, ...(next && { endLine: next }) }, text: statement === first ? text : '' };
  });
}

/** The whole body anew, one statement a line. */
function rewritten(snapshot: Snapshot, body: Body, { written, old }: { readonly written: readonly string[]; readonly old: readonly Statement[] }): readonly TextEdit[] {
  const { document } = snapshot;
  const { open, close } = body;
  if (!close) return [];
  const eol = eolOf(document);
  const gone = new Set(old);
  const kept = body.statements.filter((statement) => !gone.has(statement)).map((statement) => sourceOf(snapshot, statement));
  const comments = linesOf(snapshot, open.line, close.line).flatMap((line) => commentIn(line));
  const text = [...comments, ...written, ...kept].map((line) => `  ${line}${eol}`).join('');
  return [{ place: { line: open.line, from: open.to, to: close.from, ...(open.line !== close.line && { endLine: close.line }) }, text: eol + text }];
}

/** As it stands in the text, comments left out: they are kept by themselves. */
function sourceOf(snapshot: Snapshot, { line, place }: Statement): string {
  const lines = linesOf(snapshot, line, place.endLine ?? line);
  return lines.map((each, i) => {
    const end = Math.min(scanLine(each.text).comment ?? Infinity, i + 1 === lines.length ? place.to : Infinity);
    return each.text.slice(i === 0 ? place.from : 0, end).trimEnd();
  }).join(eolOf(snapshot.document));
}

function commentsIn(snapshot: Snapshot, { line, place }: Statement): readonly string[] {
  return linesOf(snapshot, line, place.endLine ?? line).flatMap(commentIn);
}

function commentIn({ text }: Line): readonly string[] {
  const { comment } = scanLine(text);
  return comment === undefined ? [] : [text.slice(comment).trimEnd()];
}

function linesOf({ document }: Snapshot, first: Line, last: Line): readonly Line[] {
  return document.lines.slice(document.numberOf(first), document.numberOf(last) + 1);
}
