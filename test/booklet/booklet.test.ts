/** cutting.md, cutting.csv and pattern.json of a quilt made by hand. */
import { readFileSync, writeFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { cell, cuttingCsv } from '../../server/src/booklet/cutting-csv.ts';
import { cuttingMarkdown } from '../../server/src/booklet/cutting-list.ts';
import { patternJson } from '../../server/src/booklet/pattern-json.ts';
import type { BookletQuilt, BookletSource } from '../../server/src/booklet/source.ts';
import { counted } from '../../server/src/booklet/words.ts';
import { METRIC } from '../cutting/layouts.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { sample, sampleWithoutSizes } from './sample.ts';

function sizeOf(source: BookletSource, index: number): BookletQuilt {
  const found = source.quilts[index];
  if (!found) throw new Error('no such size');
  return found;
}

/** `UPDATE_EXPECTED=1` rewrites what is expected. */
function expectFile(name: string, text: string): void {
  const path = new URL(`expected/${name}`, import.meta.url);
  if (process.env['UPDATE_EXPECTED'] === '1') writeFileSync(path, text);
  expect(text).toBe(readFileSync(path, 'utf8'));
}

describe('cutting.md', () => {
  test('of a throw, as a whole', () => {
    const source = sample();
    expectFile('cutting.md', cuttingMarkdown(source, sizeOf(source, 1)));
  });

  test('the same text every time, ending in one line end', () => {
    const texts = [sample(), sample()].map((source) => cuttingMarkdown(source, sizeOf(source, 0)));
    expect(texts[0]).toBe(texts[1]);
    expect(texts[0]).toMatch(/[^\n]\n$/);
  });

  test('one of each is singular', () => {
    const source = sample();
    const text = cuttingMarkdown(source, sizeOf(source, 0));
    expect(text).toContain('1 Buoy block:');
    expect(text).not.toMatch(/\b1 (strips|squares|rectangles|panels|blocks|triangles)\b/);
    expect(text).not.toMatch(/\b(?!1 )\d+ (strip|square|rectangle|panel|block)\b(?! seam)/);
    expect(counted(2, 'strip')).toBe('2 strips');
  });

  test('a change of one count changes few lines', () => {
    const source = sample();
    const [crib, throwSize] = [0, 1].map((i) => cuttingMarkdown(source, sizeOf(source, i)).split('\n'));
    const changed = throwSize?.filter((line) => !crib?.includes(line)) ?? [];
    expect(changed.length).toBeLessThan((throwSize?.length ?? 0) / 2);
  });

  test('without sizes there is no table of sizes; a title is plain text', () => {
    const source = sampleWithoutSizes();
    const text = cuttingMarkdown({ ...source, pattern: { ...source.pattern, title: '# <b>*x*</b>' } }, sizeOf(source, 0));
    expect(text).not.toContain('## Sizes');
    expect(text.split('\n')[0]).toBe('# \\# \\<b\\>\\*x\\*\\</b\\>: cutting');
  });

  test('metric patterns are printed in centimetres and metres', () => {
    const source = sample(METRIC);
    const text = cuttingMarkdown(source, sizeOf(source, 1));
    expect(text).toMatch(/- Seams: 0.75 cm; cut sizes include them and are rounded up to 0.1 cm\./);
    expect(text).toMatch(/- Buy [\d.]+ m, or [\d /]+ yd\./);
  });
});

describe('cutting.csv', () => {
  test('as a whole', () => {
    const source = sample();
    expectFile('cutting.csv', cuttingCsv(source, sizeOf(source, 1)));
  });

  test('reads back by RFC 4180, every row as wide as the first', () => {
    const source = sample();
    const rows = readCsv(cuttingCsv(source, sizeOf(source, 1)));
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    expect(rows.length).toBe(sizeOf(source, 1).plan.pieces.length + 1);
    expect(rows[1]?.[2]).toBe('Night "ferry" print');
  });

  test.each([
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-2', "'-2"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\tx', "'\tx"],
    ['\rx', `"'\rx"`],
    ['=HYPERLINK("x","y")', `"'=HYPERLINK(""x"",""y"")"`],
    ['a,b', '"a,b"'],
    ['a\nb', '"a\nb"'],
    ['2 1/2"', '"2 1/2"""'],
    ['plain', 'plain'],
  ])('%j is written %j', (value, written) => expect(cell(value)).toBe(written));

  test('numbers are numbers', () => expect([cell(-2), cell(2.5)]).toEqual(['-2', '2.5']));
});

/** A reader written from the grammar in RFC 4180. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/y;
  let row: string[] = [];
  while (field.lastIndex < text.length) {
    const match = field.exec(text);
    if (!match) throw new Error('not RFC 4180');
    row.push(match[1]?.replaceAll('""', '"') ?? match[2] ?? '');
    if (match[3] === '\r\n') {
      rows.push(row);
      row = [];
    }
  }
  return rows;
}

describe('pattern.json', () => {
  const schema = JSON.parse(readFileSync(new URL('../../server/src/booklet/pattern.schema.json', import.meta.url), 'utf8')) as object;
  const validate = new Ajv2020({ strict: true, allErrors: true }).compile(schema);

  test('as a whole', () => {
    expectFile('pattern.json', patternJson(sample()));
  });

  test.each([['two sizes', sample()], ['no sizes', sampleWithoutSizes()], ['metric', sample(METRIC)]])('fits its schema: %s', (_, source) => {
    expect(validate(JSON.parse(patternJson(source))), JSON.stringify(validate.errors)).toBe(true);
  });

  test('a bed and assorted prints', () => {
    const text = 'assorted warm 3 #c0392b "Warm"\nfabric sand #eadfc8\nblock Six 6" {\n  warm sand\n}\nquilt {\n  straight 2 by 2\n  place { Six }\n  binding cut 2" warm\n}\nsize doll 2 by 2 for crib_bed\n';
    const snapshot = snapshotOfText(text);
    const json = JSON.parse(patternJson(snapshot)) as { sizes: { assorted: object[]; drop: object }[] };
    expect(validate(json), JSON.stringify(validate.errors)).toBe(true);
    expect(json.sizes[0]?.assorted).toMatchObject([{ name: 'warm', pieces: 6, prints: [{ fabric: 'warm 1', pieces: 3 }, { fabric: 'warm 2', pieces: 2 }, { fabric: 'warm 3', pieces: 1 }] }]);
    expect(json.sizes[0]?.drop).toMatchObject({ bed: 'crib_bed', sides: { in: -8 }, foot: { in: -40 } });
    const markdown = cuttingMarkdown(snapshot, sizeOf(snapshot, 0));
    expect(markdown).toContain('## warm: Warm (assorted)\n\n- Buy 5/8 yd in all, of 3 prints.\n- 6 pieces, dealt in turn: 3 of warm 1, 2 of warm 2 and 1 of warm 3.');
    expect(markdown).toContain('join it to the other prints for the binding.');
  });

  test('the schema refuses what is wrong', () => {
    const wrong = JSON.parse(patternJson(sample())) as { sizes: Record<string, unknown>[] };
    for (const change of [{ pieces: 3 }, { name: 7 }, { width: '7"' }, { surplus: 1 }, { blocks: [{ name: 'x' }] }, { seams: { count: -1 } }]) {
      expect(validate({ ...wrong, sizes: wrong.sizes.map((size) => ({ ...size, ...change })) }), JSON.stringify(change)).toBe(false);
    }
    const seams = { count: 3, setIn: 0, partial: 0, pressing: { nested: 3, open: 0, conflicts: 0 } };
    expect(validate({ ...wrong, sizes: wrong.sizes.map((size) => ({ ...size, seams })) })).toBe(true);
  });

  test('the same bytes every time, keys in the order of the contract', () => {
    expect(patternJson(sample())).toBe(patternJson(sample()));
    const { sizes } = JSON.parse(patternJson(sampleWithoutSizes())) as { sizes: { name: null; pieces: object[]; fabrics: object[] }[] };
    expect(Object.keys(sizes[0] ?? {})).toEqual(['name', 'width', 'height', 'blocks', 'pieces', 'fabrics', 'borders', 'backing', 'batting', 'binding', 'seams']);
    expect(Object.keys(sizes[0]?.pieces[0] ?? {})).toEqual(['fabric', 'shape', 'finished', 'cut', 'cutCount', 'piecesPerCut', 'pieces', 'for']);
    expect(Object.keys(sizes[0]?.fabrics[0] ?? {})).toEqual(['name', 'label', 'colour', 'lightness', 'value', 'strips', 'length', 'lowerBound', 'provenLeast', 'buy', 'cuts']);
    expect(sizes[0]?.name).toBeNull();
  });
});
