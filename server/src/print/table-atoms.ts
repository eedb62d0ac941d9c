/** Tables as atoms: a row is never split, and the head stands again at the top of the next page. */
import type { Cell, Table } from '../booklet/book/book.ts';
import { holderIn, type Column, type Holder } from './column.ts';
import type { Atom } from './flow.ts';
import { linesOf, widthsOf, type Line } from './lines.ts';
import { boxAt, drawLine, drawOutline } from './picture.ts';
import { artifact, mark } from './pdf.ts';
import { runsOf } from './prose.ts';
import { baselineOf, RULE, STYLES, TINT, type Style } from './styles.ts';
import { drawSwatch, writeLine } from './text-atoms.ts';

const BESIDE = 5;
const ABOVE = 3;
/** A swatch and the room behind it. */
const SWATCH = 13;

export function tableAtoms(column: Column, table: Table): readonly Atom[] {
  const { pdf } = column;
  const grid: Grid = { column, widths: columnWidths(column, table), ...(table.strong !== undefined && { strong: table.strong }) };
  const holder = holderIn(pdf, column.holder, 'Table', { title: table.title });
  const head = rowOf(table.head.map((text) => ({ text })), grid, STYLES.tableHead);
  const headRow = holderIn(pdf, holder, 'TR');
  const rows = table.rows.map((cells) => rowOf(cells, grid, STYLES.table));
  return [
    { height: head.height, gap: 8, glued: true, draw: (y) => drawRow(head, grid, y, () => holderIn(pdf, headRow, 'TH', { scope: 'Column' })) },
    ...rows.map((row, i): Atom => {
      const own = holderIn(pdf, holder, 'TR');
      return {
        height: row.height,
        gap: 0,
        glued: i === rows.length - 2 || (i === 0 && rows.length > 2),
        head: { height: head.height, draw: (y) => drawRow(head, grid, y) },
        draw: (y) => drawRow(row, grid, y, (cell) => (cell === 0 ? holderIn(pdf, own, 'TH', { scope: 'Row' }) : holderIn(pdf, own, 'TD'))),
      };
    }),
  ];
}

interface Grid {
  readonly column: Column;
  readonly widths: readonly number[];
  readonly strong?: number;
}

interface Row {
  readonly height: number;
  readonly style: Style;
  readonly cells: readonly { readonly lines: readonly Line[]; readonly swatch?: string }[];
}

function rowOf(cells: readonly Cell[], { column, widths }: Grid, style: Style): Row {
  const set = cells.map(({ text, swatch }, i) => {
    const room = (widths[i] ?? 0) - 2 * BESIDE - (swatch === undefined ? 0 : SWATCH);
    return { lines: linesOf(column.pdf, runsOf(text), { width: room, size: style.size, font: style.font }), ...(swatch !== undefined && { swatch }) };
  });
  return { cells: set, style, height: Math.max(...set.map(({ lines }) => lines.length), 1) * style.leading + 2 * ABOVE };
}

/** Without holders the row is drawn again, and not read out. */
function drawRow({ cells, height, style }: Row, { column, widths, strong }: Grid, y: number, holderOf?: (cell: number) => Holder): void {
  const { pdf, x, width } = column;
  const starts = widths.map((_, i) => x + widths.slice(0, i).reduce((sum, each) => sum + each, 0));
  artifact(pdf, () => {
    if (strong !== undefined) drawOutline(pdf, boxAt(starts[strong] ?? x, y, widths[strong] ?? 0, height), undefined, { fill: TINT });
    drawLine(pdf, [x, y + height, x + width, y + height], { stroke: style === STYLES.tableHead ? '#404040' : RULE, width: style === STYLES.tableHead ? 0.8 : 0.4 });
  });
  cells.forEach(({ lines, swatch }, i) => {
    const left = (starts[i] ?? x) + BESIDE;
    if (swatch !== undefined) drawSwatch(pdf, swatch, { x: left, y: y + ABOVE + baselineOf(style) - style.size * 0.8, size: style.size });
    const from = left + (swatch === undefined ? 0 : SWATCH);
    const draw = (): void => lines.forEach((line, n) => writeLine(pdf, line, from, y + ABOVE + n * style.leading, style));
    if (holderOf) mark(holderOf(i)(), draw);
    else artifact(pdf, draw);
  });
}

/** As wide as its texts where there is room; else the widest give way, no column narrower than its longest word. */
function columnWidths({ pdf, width }: Column, { head, rows }: Table): readonly number[] {
  const all = [{ cells: head.map((text): Cell => ({ text })), style: STYLES.tableHead }, ...rows.map((cells) => ({ cells, style: STYLES.table }))];
  const needs = head.map((_, i) => {
    const each = all.map(({ cells, style }) => {
      const cell = cells[i] ?? { text: '' };
      const extra = 2 * BESIDE + (cell.swatch === undefined ? 0 : SWATCH);
      const { whole, word } = widthsOf(pdf, runsOf(cell.text), style);
      return { whole: whole + extra, word: word + extra };
    });
    return { whole: Math.max(...each.map(({ whole }) => whole)), word: Math.max(...each.map(({ word }) => word)) };
  });
  const wholes = needs.reduce((sum, { whole }) => sum + whole, 0);
  if (wholes <= width) return needs.map(({ whole }) => whole + ((width - wholes) * whole) / wholes);
  const words = needs.reduce((sum, { word }) => sum + word, 0);
  const spare = Math.max(0, width - words);
  const wanted = wholes - words;
  return words > width ? needs.map(({ word }) => (word * width) / words) : needs.map(({ whole, word }) => word + (spare * (whole - word)) / wanted);
}
