/**
 * cutting.csv: one row a piece, for spreadsheets, by RFC 4180 (lines end in CR LF, quotes are doubled). A cell that a
 * spreadsheet would run as a formula gets an apostrophe in front (https://owasp.org/www-community/attacks/CSV_Injection).
 */
import { toNumber } from '../exact/number.ts';
import { pieceLabel } from '../cutting/labels.ts';
import type { Piece } from '../cutting/plan.ts';
import type { BookletQuilt, BookletSource } from './source.ts';
import { printerFor, type Printer } from './words.ts';

/** The pieces of one quilt, in the order of its plan. */
export function cuttingCsv({ pattern }: BookletSource, quilt: BookletQuilt): string {
  const { columns, rows } = piecesTable(quilt, printerFor(pattern.rules.units));
  return [columns, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

/** A row a piece, as many cells as columns. */
export function piecesTable(quilt: BookletQuilt, print: Printer): { readonly columns: readonly string[]; readonly rows: readonly (readonly (string | number)[])[] } {
  return {
    columns: COLUMNS.map(([name]) => name),
    rows: quilt.plan.pieces.map((piece, i) => COLUMNS.map(([, value]) => value({ piece, letter: pieceLabel(i), quilt, print }))),
  };
}

interface Row {
  readonly piece: Piece;
  /** As in the cutting layouts. */
  readonly letter: string;
  readonly quilt: BookletQuilt;
  readonly print: Printer;
}

const COLUMNS: readonly (readonly [string, (row: Row) => string | number])[] = [
  ['size', ({ quilt }) => quilt.name ?? ''],
  ['fabric', ({ piece }) => piece.fabric.name],
  ['label', ({ piece }) => piece.fabric.label],
  ['for', ({ piece }) => piece.for],
  ['shape', ({ piece }) => piece.shape],
  ['finished width', ({ piece, print }) => print.length(piece.finished.width)],
  ['finished height', ({ piece, print }) => print.length(piece.finished.height)],
  ['cut width', ({ piece, print }) => print.length(piece.cut.width)],
  ['cut height', ({ piece, print }) => print.length(piece.cut.height)],
  ['cut width in inches', ({ piece }) => toNumber(piece.cut.width)],
  ['cut height in inches', ({ piece }) => toNumber(piece.cut.height)],
  ['cut', ({ piece }) => piece.cutCount],
  ['then', ({ piece }) => piece.method],
  ['pieces from each', ({ piece }) => piece.piecesPerCut],
  ['pieces needed', ({ piece }) => piece.pieces],
  ['letter', ({ letter }) => letter],
];

/** A number as it is; a text so that it stays a text. */
export function cell(value: string | number): string {
  if (typeof value === 'number') return `${value}`;
  const text = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
