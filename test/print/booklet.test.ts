/**
 * booklet.pdf of every sample and size, read back with pdf.js and qpdf: its numbers against pattern.json, its pages, its tags. The
 * pages were looked at as pictures, too; what was seen to be wrong is held by the tests of lines, flow and tables.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { bookOf } from '../../server/src/booklet/book/build.ts';
import { patternJson } from '../../server/src/booklet/pattern-json.ts';
import { fontFiles } from '../../server/src/disk/fonts.ts';
import { bookletPdf } from '../../server/src/print/booklet-pdf.ts';
import type { QuiltView, Snapshot } from '../../server/src/snapshot.ts';
import { printed } from './patterns.ts';
import { readPdf, textOf, unset } from './read-pdf.ts';

const hasQpdf = spawnSync('qpdf', ['--version']).status === 0;

interface Case {
  readonly name: string;
  readonly snapshot: Snapshot;
  readonly quilts: readonly QuiltView[];
  readonly quilt: QuiltView;
}

const cases: readonly Case[] = printed().flatMap(({ name, snapshot }) => {
  const quilts = snapshot.quilts.map((quilt) => quilt.settled);
  return quilts.map((quilt) => ({ name: quilt.name === null ? name : `${name}, ${quilt.name}`, snapshot, quilts, quilt }));
});

function pdfOf({ snapshot, quilts, quilt }: Case): Uint8Array {
  return bookletPdf(bookOf({ pattern: snapshot.pattern, quilts }, quilt), fontFiles());
}

/** As pattern.json has them. */
interface Length {
  readonly text: string;
}

interface Figures {
  readonly sizes: readonly [{
    readonly width: Length;
    readonly height: Length;
    readonly blocks: readonly { readonly name: string; readonly count: number; readonly width: Length; readonly height: Length }[];
    readonly pieces: readonly { readonly fabric: string; readonly cut: { readonly width: Length; readonly height: Length }; readonly cutCount: number; readonly pieces: number }[];
    readonly fabrics: readonly { readonly name: string; readonly label: string; readonly length: Length; readonly buy?: Length; readonly strips: readonly { readonly width: Length; readonly count: number; readonly subcuts: readonly { readonly count: number }[] }[] }[];
    readonly borders: readonly { readonly width: Length; readonly strips: readonly { readonly length: Length; readonly width: Length; readonly count: number }[] }[];
    readonly backing?: { readonly width: Length; readonly height: Length; readonly panels: number; readonly buy: Length };
    readonly batting?: { readonly width: Length; readonly height: Length };
    readonly binding?: { readonly length: Length; readonly strips: number; readonly buy: Length };
    readonly drop?: { readonly mattress: { readonly width: Length; readonly height: Length }; readonly sides: Length; readonly foot: Length };
  }];
}

function figuresOf({ snapshot, quilt }: Case): Figures['sizes'][0] {
  return (JSON.parse(patternJson({ pattern: snapshot.pattern, quilts: [quilt] })) as Figures).sizes[0];
}

/** In a booklet's language the words before a rounded length differ; its digits do not. */
function digits(text: string): string {
  return text.replace(/^(about|less than) /, '');
}

function pair({ width, height }: { readonly width: Length; readonly height: Length }): readonly string[] {
  return [digits(width.text), digits(height.text)];
}

/** Every measure of a size that the booklet must show. */
function measuresIn(size: Figures['sizes'][0]): readonly string[] {
  const { backing, batting, binding, drop } = size;
  return [
    ...pair(size),
    ...size.blocks.flatMap(pair),
    ...size.pieces.flatMap(({ cut }) => pair(cut)),
    ...size.fabrics.flatMap(({ length, buy, strips }) => [digits(length.text), ...(buy ? [digits(buy.text)] : []), ...strips.map(({ width }) => digits(width.text))]),
    ...size.borders.flatMap(({ width, strips }) => [digits(width.text), ...strips.flatMap((strip) => [digits(strip.length.text), digits(strip.width.text)])]),
    ...(backing ? [...pair(backing), digits(backing.buy.text)] : []),
    ...(batting ? pair(batting) : []),
    ...(binding ? [digits(binding.length.text), digits(binding.buy.text)] : []),
    ...(drop ? [...pair(drop.mattress), digits(drop.sides.text).replace('-', ''), digits(drop.foot.text).replace('-', '')] : []),
  ];
}

/** A cell that is broken into lines goes on with pieces and letters, or with words for them. */
function joined(lines: readonly string[]): readonly string[] {
  const whole: string[] = [];
  for (const line of lines) {
    if (/^(\d+ [A-Z]{1,2}\b(?! \d)|\(|deep|tief)/.test(line) && whole.length > 0) whole.push(`${whole.pop() ?? ''} ${line}`);
    else whole.push(line);
  }
  return whole;
}

describe.each(cases)('$name', (each) => {
  const bytes = pdfOf(each);
  const read = readPdf(bytes);

  test('every measure of pattern.json is on its pages', async () => {
    const text = unset(textOf(await read));
    const missing = measuresIn(figuresOf(each)).filter((measure) => !new RegExp(`(?<![\\d./])${measure.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}`).test(text));
    expect([...new Set(missing)]).toEqual([]);
  });

  test('the rows of the cutting tables are those of pattern.json', async () => {
    const lines = joined((await read).pages.flatMap((page) => page.lines.map((line) => unset(line.text))));
    const { fabrics, pieces } = figuresOf(each);
    const printedStrips = lines.flatMap((line) => {
      const [, count, width, cuts = ''] = /^(\d+) (?:strips?|Streifen) (.+?) × (?:WOF|SB|.*selvage|.*Webkante)\s*(.*)$/.exec(line) ?? [];
      return count === undefined ? [] : [`${count} of ${width ?? ''}: ${[...cuts.matchAll(/(\d+) [A-Z]+\b/g)].map(([, number]) => number).join(' ')}`];
    });
    const strips = fabrics.flatMap((fabric) => fabric.strips.map(({ width, count, subcuts }) => `${count} of ${width.text}: ${subcuts.map((subcut) => subcut.count).join(' ')}`));
    expect(printedStrips.sort()).toEqual(strips.sort());
    const counts = lines.flatMap((line) => {
      const [, cut, have] = /^[A-Z]{1,2} (\d+) (?:squares?|rectangles?|strips?|Quadrate?|Rechtecke?|Streifen) .*? (\d+) (?:squares?|rectangles?|strips?|shapes?|HST|QST|side|corner|Quadrate?|Rechtecke?|Streifen|HQD|VQD|Seiten|Eck|Form)/.exec(line) ?? [];
      return cut === undefined ? [] : [`${cut} → ${have ?? ''}`];
    });
    expect(counts.sort()).toEqual(pieces.map((piece) => `${piece.cutCount} → ${piece.pieces}`).sort());
  });

  test('pages are A4 or Letter in points, and say which they are', async () => {
    const { pages } = await read;
    const [width, height] = each.snapshot.pattern.rules.units === 'inches' ? [612, 792] : [595.276, 841.89];
    for (const page of pages) {
      expect(page.width).toBeCloseTo(width ?? 0, 2);
      expect(page.height).toBeCloseTo(height ?? 0, 2);
    }
    const numbered = pages.map(({ lines }) => lines.at(0) && lines.some(({ text }) => /^(Page|Seite) \d+ (of|von) \d+$/.test(text)));
    expect(numbered.filter((has) => !has).length, 'cover and back page alone have no number').toBe(2);
  });

  test('it is tagged, and says its title and its language', async () => {
    const { isTagged, title, language, pages, outline } = await read;
    expect({ isTagged, title, language }).toEqual({ isTagged: true, title: each.snapshot.pattern.title, language: each.snapshot.pattern.language ?? 'en' });
    const tags = pages.flatMap((page) => page.tags);
    for (const tag of ['H1', 'H2', 'P', 'L', 'LI', 'Table', 'TR', 'TH', 'TD', 'Figure']) expect(tags.map((tagged) => tagged.tag), tag).toContain(tag);
    expect(tags.filter(({ tag, alt }) => tag === 'Figure' && (alt ?? '').trim() === '')).toEqual([]);
    expect(outline.length).toBeGreaterThan(8);
    expect(pages.length > 8 ? (pages[1]?.links ?? 0) : 1).toBeGreaterThan(0);
  });

  test('no page ends with a heading, and no line leaves the page', async () => {
    const { pages } = await read;
    for (const { lines, height } of pages) {
      const text = lines.filter(({ y }) => y > 60 && y < height - 52);
      const last = text.reduce<(typeof text)[number] | undefined>((lowest, line) => (lowest && lowest.y <= line.y ? lowest : line), undefined);
      expect(last?.size ?? 0, last?.text ?? '').toBeLessThan(13.4);
      for (const { y } of lines) expect(y).toBeGreaterThan(30);
    }
  });

  test('its fonts are embedded', () => {
    const text = Buffer.from(bytes).toString('latin1');
    const named = [...text.matchAll(/\/BaseFont \/(\S+)/g)].map(([, name]) => name);
    expect(named.length).toBeGreaterThan(0);
    expect([...text.matchAll(/\/Type \/FontDescriptor/g)].length).toBe([...text.matchAll(/\/FontFile2 /g)].length);
    for (const name of named) expect(name).toMatch(/^[A-Z]{6}\+SourceSans3-/);
  });

  test('the same bytes twice', () => {
    expect(Buffer.compare(Buffer.from(pdfOf(each)), Buffer.from(bytes))).toBe(0);
  });

  // CI installs qpdf; elsewhere it may be missing, and pdf.js has read the file all the same.
  test.skipIf(!hasQpdf && process.env['CI'] === undefined)('qpdf finds nothing wrong', () => {
    const folder = mkdtempSync(join(tmpdir(), 'scant-print-'));
    const file = join(folder, 'booklet.pdf');
    writeFileSync(file, bytes);
    const { status, stdout, stderr } = spawnSync('qpdf', ['--check', file], { encoding: 'utf8' });
    rmSync(folder, { recursive: true });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('No syntax or stream encoding errors');
  });
});
