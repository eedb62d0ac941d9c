/** pattern.xlsx opened by exceljs, a reader that shares no code with the writer, and compared with pattern.json. */
import ExcelJS from 'exceljs';
import { beforeAll, describe, expect, test } from 'vitest';
import { patternJson } from '../../server/src/booklet/pattern-json.ts';
import { workbookOf } from '../../server/src/booklet/workbook.ts';
import { workbookBytes } from '../../server/src/print/sheet.ts';
import { sample } from '../booklet/sample.ts';

interface Json {
  readonly sizes: readonly {
    readonly name: string;
    readonly width: { readonly in: number };
    readonly pieces: readonly { readonly fabric: string; readonly shape: string; readonly cut: { readonly width: { readonly in: number; readonly text: string } }; readonly cutCount: number; readonly pieces: number; readonly for: string }[];
    readonly fabrics: readonly { readonly name: string; readonly strips: readonly { readonly width: { readonly in: number }; readonly count: number; readonly subcuts: readonly { readonly count: number }[] }[]; readonly length: { readonly in: number }; readonly buy?: { readonly in: number; readonly text: string } }[];
  }[];
}

describe('the sheets of a size', () => {
  const source = sample();
  const [, quilt] = source.quilts;
  if (!quilt) throw new Error('no quilt');
  const json = (JSON.parse(patternJson(source)) as Json).sizes[1];
  let book: ExcelJS.Workbook;
  beforeAll(async () => {
    book = await opened(workbookBytes(workbookOf(source, quilt)));
  }, 60_000);

  test('are four, each with a head that stays in view', () => {
    expect(book.worksheets.map(({ name }) => name)).toEqual(['Needs', 'Pieces', 'Strips', 'Sizes']);
    for (const sheet of book.worksheets) {
      expect(sheet.views[0]).toMatchObject({ state: 'frozen', ySplit: 1 });
      expect(sheet.getRow(1).getCell(1).font.bold).toBe(true);
    }
  });

  test('pieces are those of pattern.json, numbers as numbers', () => {
    const rows = rowsOf(book, 'Pieces');
    expect(rows).toHaveLength(json?.pieces.length ?? -1);
    rows.forEach((row, i) => {
      const piece = json?.pieces[i];
      expect(row).toMatchObject({ fabric: piece?.fabric, shape: piece?.shape, for: piece?.for, cut: piece?.cutCount, 'pieces needed': piece?.pieces, 'cut width': piece?.cut.width.text, 'cut width in inches': piece?.cut.width.in });
    });
  });

  test('needs and strips too', () => {
    const needs = rowsOf(book, 'Needs').filter(({ what }) => what === 'fabric');
    expect(needs.map((row) => [row['fabric'], row['length cut in inches'], row['buy in inches']])).toEqual(json?.fabrics.map(({ name, length, buy }) => [name, length.in, buy?.in]));
    const strips = json?.fabrics.flatMap(({ name, strips: all }) => all.flatMap(({ width, count, subcuts }) => subcuts.map((subcut) => [name, width.in, count, subcut.count])));
    expect(rowsOf(book, 'Strips').map((row) => [row['fabric'], row['strip width in inches'], row['strips'], row['pieces from one strip']])).toEqual(strips);
  });

  test('all sizes stand side by side', () => {
    expect(rowsOf(book, 'Sizes').map((row) => [row['size'], row['width in inches']])).toEqual((JSON.parse(patternJson(source)) as Json).sizes.map(({ name, width }) => [name, width.in]));
  });
});

test('texts stay texts, whatever they look like', async () => {
  const nasty = ['=1+1', '+1', '-2', '@SUM(A1)', '<b>&"\'', '007', '1e5', 'TRUE', '2026-01-01', ' blanks ', 'two\nlines', '_x0041_', 'ink \u{1F9F5}', '\u0001\uFFFF', '\uD800'];
  const book = await opened(workbookBytes([{ name: 'Needs', columns: ['text', 'number'], rows: nasty.map((text, i) => [text, i / 7]) }]));
  const sheet = book.getWorksheet('Needs');
  nasty.forEach((text, i) => {
    const cell = sheet?.getCell(i + 2, 1);
    expect(cell?.type).not.toBe(ExcelJS.ValueType.Formula);
    // exceljs leaves the format's own escapes as they stand in the file.
    const value = (cell?.value as string).replaceAll('_x005F_', '_');
    expect(value).toBe(text.toWellFormed().replace(/[\u0001\uFFFF]/g, '\uFFFD'));
    expect(sheet?.getCell(i + 2, 2).value).toBe(i / 7);
  });
});

test('the same tables give the same bytes', () => {
  const table = { name: 'Needs', columns: ['a'], rows: [['x'], [1]] };
  expect(Buffer.compare(workbookBytes([table]), workbookBytes([table]))).toBe(0);
});

async function opened(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes.buffer as ArrayBuffer);
  return book;
}

/** By the titles of the columns. */
function rowsOf(book: ExcelJS.Workbook, name: string): readonly Readonly<Record<string, unknown>>[] {
  const sheet = book.getWorksheet(name);
  const titles = (sheet?.getRow(1).values as readonly (string | undefined)[]).slice(1);
  return (sheet?.getRows(2, sheet.rowCount - 1) ?? []).map((row) => Object.fromEntries(titles.map((title, i) => [title ?? '', row.getCell(i + 1).value ?? undefined])));
}
