/**
 * Tables as a spreadsheet file (.xlsx, ECMA-376: a zip file of XML parts). Texts are inline strings, so that no text is taken for a
 * formula, whatever it begins with; numbers are numbers. The first row of each sheet is bold and stays in view. The bytes depend on
 * nothing but the tables.
 */
import { strToU8, zipSync } from 'fflate';
import type { CellValue, SheetTable } from '../booklet/workbook.ts';
import { pieceLabel } from '../cutting/labels.ts';
import { escapeXml } from '../drawing/markup.ts';

/** Names of sheets are those of the catalogue: at most 31 letters, none of `[]:*?/\`. */
export function workbookBytes(tables: readonly SheetTable[]): Uint8Array {
  const parts: readonly (readonly [string, string])[] = [
    ['[Content_Types].xml', contentTypes(tables)],
    ['_rels/.rels', relations([['officeDocument', 'xl/workbook.xml']])],
    ['xl/workbook.xml', workbook(tables)],
    ['xl/_rels/workbook.xml.rels', relations([...tables.map((_, i) => ['worksheet', `worksheets/sheet${i + 1}.xml`] as const), ['styles', 'styles.xml']])],
    ['xl/styles.xml', STYLES],
    ...tables.map((table, i) => [`xl/worksheets/sheet${i + 1}.xml`, worksheet(table)] as const),
  ];
  return zipSync(Object.fromEntries(parts.map(([path, text]) => [path, strToU8(`${HEAD}${text}`)])), { mtime: EPOCH, level: 9 });
}

/** The first moment that a zip file can name; it is written as the machine's own time, and so is this. */
const EPOCH = new Date(1980, 0, 1);

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPES = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** Plain, and bold. */
const STYLES = `<styleSheet xmlns="${MAIN}"><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="0" fontId="1" fillId="0" borderId="0" xfId="0" applyFont="1"/></cellXfs></styleSheet>`;

function contentTypes(tables: readonly SheetTable[]): string {
  const parts = [['/xl/workbook.xml', 'sheet.main'], ['/xl/styles.xml', 'styles'], ...tables.map((_, i) => [`/xl/worksheets/sheet${i + 1}.xml`, 'worksheet'])];
  const overrides = parts.map(([path = '', type = '']) => `<Override PartName="${path}" ContentType="${TYPES}.${type}+xml"/>`);
  return `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${overrides.join('')}</Types>`;
}

function relations(targets: readonly (readonly [string, string])[]): string {
  const all = targets.map(([type, target], i) => `<Relationship Id="rId${i + 1}" Type="${OFFICE}/${type}" Target="${target}"/>`);
  return `<Relationships xmlns="${PACKAGE}/relationships">${all.join('')}</Relationships>`;
}

function workbook(tables: readonly SheetTable[]): string {
  const sheets = tables.map(({ name }, i) => `<sheet name="${escapeXml(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`);
  return `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${sheets.join('')}</sheets></workbook>`;
}

function worksheet({ columns, rows }: SheetTable): string {
  const widths = columns.map((title, i) => `<col min="${i + 1}" max="${i + 1}" width="${widest(title, rows.map((row) => row[i] ?? ''))}" customWidth="1"/>`);
  const lines = [columns, ...rows].map((row, y) => `<row r="${y + 1}">${row.map((value, x) => cell(value, `${pieceLabel(x)}${y + 1}`, y === 0 ? ' s="1"' : '')).join('')}</row>`);
  const view = '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>';
  return `<worksheet xmlns="${MAIN}">${view}<cols>${widths.join('')}</cols><sheetData>${lines.join('')}</sheetData></worksheet>`;
}

/** Nothing for an empty text. */
function cell(value: CellValue, at: string, style: string): string {
  if (value === '') return '';
  if (typeof value === 'number') return `<c r="${at}"${style}><v>${value}</v></c>`;
  return `<c r="${at}"${style} t="inlineStr"><is><t xml:space="preserve">${escapeXml(escapedCodes(value))}</t></is></c>`;
}

/** A text that looks like the format's own escape of a character, `_x0041_`, keeps its look (ECMA-376, 22.4.2.4). */
function escapedCodes(text: string): string {
  return text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_');
}

/** In characters. */
function widest(title: string, values: readonly CellValue[]): number {
  return Math.min(40, Math.max(title.length, ...values.map((value) => `${value}`.length)) + 2);
}
