/**
 * Tree to canonical text: two blanks an indent, columns of cells and of like lines lined up, blanks as in the language's own
 * examples, at most one empty line. Comments stay, lines with a syntax problem stay as they are, and twice is once.
 */
import type { Line } from '../text/document.ts';
import type { TextEdit } from '../text/problem.ts';
import { walkStatements } from './find.ts';
import { isAllBlank, scanLine } from './scan.ts';
import { seamsIn, tidied } from './tidy.ts';
import type { Row } from './tidy.ts';
import type { Statement, Tree } from './tree.ts';
import { BRACES, isReserved } from './words.ts';

const INDENT = '  ';

/** The edits that bring a document into canonical layout; none where it is in it. */
export function format(tree: Tree): TextEdit[] {
  const { lines } = tree.document;
  return layOut(tree).flatMap(({ line, text, eol }, number) => {
    const next = lines[number + 1];
    if (text === undefined) return next ? [{ place: { line, from: 0, to: 0, endLine: next }, text: '' }] : [];
    const end = line.text.length;
    return [...difference(line, text), ...(eol === line.eol ? [] : [{ place: { line, from: end, to: end }, text: eol }])];
  });
}

/** The whole document in canonical layout. */
export function formatTree(tree: Tree): string {
  return layOut(tree).map(({ text, eol }) => (text === undefined ? '' : text + eol)).join('');
}

/** A line with its new text (undefined: taken out) and line end. */
interface Laid {
  readonly line: Line;
  readonly text: string | undefined;
  readonly eol: string;
}

function layOut(tree: Tree): Laid[] {
  const { document } = tree;
  const kept = untouched(tree);
  const texts = linedUp(document.lines.map((line) => (kept.has(line) ? undefined : line)), placesOf(tree));
  const laid = document.lines.map((line, number) => ({ line, text: texts[number] ?? line.text, eol: line.eol }));
  return withLineEnd(withoutGaps(laid, kept));
}

/** What changes between a line and its new text, without what they share at both ends. */
function difference(line: Line, fresh: string): TextEdit[] {
  const old = line.text;
  if (fresh === old) return [];
  const least = Math.min(old.length, fresh.length);
  let from = 0;
  while (from < least && old[from] === fresh[from]) from++;
  let end = 0;
  while (end < least - from && old[old.length - 1 - end] === fresh[fresh.length - 1 - end]) end++;
  return [{ place: { line, from, to: old.length - end }, text: fresh.slice(from, fresh.length - end) }];
}

// ---------------------------------------------------------------------------------------------- what is left alone

/** Lines with a syntax problem, with direction marks and the like, inside texts, and of statements whose braces do not match. */
function untouched(tree: Tree): ReadonlySet<Line> {
  const kept = new Set(tree.problems.filter(({ rule }) => rule === 'syntax' || rule === 'too-large').map(({ place }) => place.line));
  for (const line of tree.document.lines) if (/[\u1680\u2000-\u200A\u200E\u200F\u202A-\u202F\u205F\u2066-\u2069\u3000\uFEFF]/.test(line.text)) kept.add(line);
  for (const statement of tree.statements) if (!isSettled(statement)) keepLines(tree, statement.line, statement.place.endLine, kept);
  for (const { node } of walkStatements(tree)) {
    for (const part of Object.values(node) as { readonly place?: { readonly line: Line; readonly endLine?: Line } }[]) {
      if (part?.place?.endLine) keepLines(tree, tree.document.lines[tree.document.numberOf(part.place.line) + 1], part.place.endLine, kept);
    }
  }
  return kept;
}

/** Whether the nesting does not hang on how far lines are indented: braces match, and no statement stands in the wrong ones. */
function isSettled({ node, line, body }: Statement): boolean {
  if (node.kind === 'junk' && isReserved(line.text.slice(node.from).split(/[^a-z_]/)[0] ?? '')) return false;
  if (!body) return BRACES[node.kind]?.must !== true;
  return body.close !== undefined && body.open.from < body.open.to && body.statements.every(isSettled);
}

function keepLines({ document }: Tree, first: Line | undefined, last: Line | undefined, kept: Set<Line>): void {
  if (!first) return;
  const from = document.numberOf(first);
  const to = last ? document.numberOf(last) : from;
  for (const line of document.lines.slice(from, to + 1)) kept.add(line);
}

// ---------------------------------------------------------------------------------------------- indents and columns

/** For the lines that begin a statement or a closing brace: how deep it stands, and the statement. */
interface LinePlace {
  readonly depth: number;
  readonly first?: Statement;
  readonly closes?: true;
  readonly seams: readonly number[];
}

function placesOf(tree: Tree): ReadonlyMap<Line, LinePlace> {
  const places = new Map<Line, LinePlace>();
  for (const statement of walkStatements(tree)) {
    const known = places.get(statement.line);
    const seams = [...(known?.seams ?? []), ...seamsIn(statement.node)];
    places.set(statement.line, known ? { ...known, seams } : { depth: depthOf(statement), first: statement, seams });
    const close = statement.body?.close;
    if (close && isAllBlank(close.line.text.slice(0, close.from))) places.set(close.line, { depth: depthOf(statement), closes: true, seams: places.get(close.line)?.seams ?? [] });
  }
  return places;
}

function depthOf({ parent }: Statement): number {
  return parent ? 1 + depthOf(parent) : 0;
}

/** The new texts of lines (undefined stays undefined): indented, and lined up with the lines like them around them. */
function linedUp(lines: readonly (Line | undefined)[], places: ReadonlyMap<Line, LinePlace>): (string | undefined)[] {
  const rows = lines.map((line) => line && rowOf(line, places.get(line)));
  const tables = tablesOf(rows);
  const depths = depthsOf(lines.map((line) => line && places.get(line)));
  return rows.map((row, number) => row && (INDENT.repeat(depths[number] ?? 0) + joined(row, tables[number])).trimEnd());
}

type PlacedRow = Row & { readonly depth: number };

function rowOf(line: Line, place: LinePlace | undefined): PlacedRow {
  return { ...tidied(scanLine(line.text), line.text, place?.first, new Set(place?.seams)), depth: place?.depth ?? 0 };
}

/** A comment by itself stands as deep as what follows it; before a closing brace, as deep as what that closes. */
function depthsOf(places: readonly (LinePlace | undefined)[]): number[] {
  let behind = 0;
  return places.toReversed().map((place) => {
    if (place) behind = place.depth + (place.closes ? 1 : 0);
    return place?.depth ?? behind;
  }).reverse();
}

interface Table {
  readonly widths: number[];
  gap: number;
  rows: number;
}

/** The table each row belongs to: rows of one family that follow each other, comments between them aside. */
function tablesOf(rows: readonly (PlacedRow | undefined)[]): (Table | undefined)[] {
  let table: Table | undefined;
  let last: PlacedRow | undefined;
  return rows.map((row) => {
    if (!row || row.columns[0]?.startsWith('//')) return undefined;
    if (row.family === undefined || row.family !== last?.family || row.depth !== last.depth) table = undefined;
    last = row;
    if (row.family === undefined) return undefined;
    table ??= { widths: [], gap: 0, rows: 0 };
    table.rows++;
    table.gap = Math.max(table.gap, row.gap);
    for (const [index, text] of row.columns.slice(0, -1).entries()) table.widths[index] = Math.max(table.widths[index] ?? 0, text.length);
    return table;
  });
}

function joined({ columns, alone }: Row, table: Table | undefined): string {
  if (!table) return columns.join(' ');
  const gap = table.rows === 1 ? alone ?? table.gap : table.gap;
  return columns.map((text, index) => (index === columns.length - 1 ? text : text.padEnd((table.widths[index] ?? 0) + gap))).join('');
}

// ---------------------------------------------------------------------------------------------- empty lines, line ends

/** At most one empty line between others, none at the start, none at the end. */
function withoutGaps(laid: readonly Laid[], kept: ReadonlySet<Line>): Laid[] {
  const isGap = ({ line, text }: Laid): boolean => text === '' && !kept.has(line);
  const last = laid.findLastIndex((each) => !isGap(each));
  return laid.map((each, number) => {
    const before = laid[number - 1];
    const extra = isGap(each) && each.eol !== '' && (!before || isGap(before) || number > last);
    return extra ? { ...each, text: undefined } : each;
  });
}

/** The last line that has text ends like the first. */
function withLineEnd(laid: readonly Laid[]): Laid[] {
  const eol = laid[0]?.eol || '\n';
  return laid.map((each, number) => (number === laid.length - 1 && each.text !== '' && each.text !== undefined ? { ...each, eol } : each));
}
