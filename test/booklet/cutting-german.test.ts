/** cutting.md in German says what it says in English: the same numbers in the same order, in whole German sentences. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { cuttingMarkdown } from '../../server/src/booklet/cutting-list.ts';
import { CUTTING_DE } from '../../server/src/booklet/words/cutting-de.ts';
import { METRIC } from '../cutting/layouts.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import type { BookletSource } from '../../server/src/booklet/source.ts';
import { sample } from './sample.ts';

const SAMPLES = new URL('../../samples/', import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, SAMPLES), 'utf8');
const BLOCKS = { 'blocks/harbour-blocks.quilt': read('blocks/harbour-blocks.quilt') };

const TEXTS: Readonly<Record<string, string>> = Object.fromEntries(['beacon-star', 'harbour-mail', 'lamp-room', 'mail-boat-sampler'].map((name) => [name, read(`${name}.quilt`)]));

const SOURCES: readonly (readonly [string, BookletSource])[] = [
  ...Object.entries(TEXTS).map(([name, text]) => [name, snapshotOfText(text, BLOCKS)] as const),
  ['made by hand', sample()],
  ['made by hand, in centimetres', sample(METRIC)],
];

const CASES = SOURCES.flatMap(([name, source]) => source.quilts.map((quilt) => ({ name: `${name}, ${quilt.name ?? 'one size'}`, source, quilt })));

/** Words of English that no German sentence holds; `in`, `an`, `so`, `am` and `die` are words of both. */
const ENGLISH = /\b(the|and|of|from|for|with|by|to|it|them|each|cut|size|width|buy|is|are|one|or|at|no|than|that|long|wide|strips|squares|rectangles|pieces|finished|about)\b/i;

/** What the author writes: titles, labels and the names of fabrics and blocks. */
function authored({ pattern, quilts }: BookletSource): readonly string[] {
  const blocks = quilts.flatMap(({ layout }) => layout.blocks.map(({ name }) => name));
  const fabrics = [...pattern.fabrics.values()].flatMap(({ name, label }) => [name, label]);
  const colours = pattern.colorways.flatMap(({ name, colours: each }) => [name, ...[...each.values()].map(({ label }) => label ?? '')]);
  return [pattern.title ?? '', ...blocks, ...fabrics, ...colours].filter((each) => each !== '').toSorted((a, b) => b.length - a.length);
}

function withoutNames(text: string, source: BookletSource): string {
  return authored(source).reduce((rest, name) => rest.replaceAll(name, '#'), text.replaceAll(/`[^`]*`/g, '#'));
}

/** `4 7/8`, `2.5` and `2,5`, as English writes them. */
function numbers(text: string): readonly string[] {
  return (text.match(/\d+(?:[.,/]\d+)*/g) ?? []).map((each) => each.replace(',', '.'));
}

function both(source: BookletSource, quilt: BookletSource['quilts'][number]): readonly [string, string] {
  const { pattern, quilts } = source;
  const inLanguage = (language: 'en' | 'de'): string => cuttingMarkdown({ pattern: { ...pattern, language }, quilts }, quilt);
  return [inLanguage('en'), inLanguage('de')];
}

describe.each(CASES)('$name', ({ source, quilt }) => {
  const [english, german] = both(source, quilt);

  test('has the numbers of the English one, in order', () => {
    expect(numbers(german)).toEqual(numbers(english));
    expect(german.split('\n')).toHaveLength(english.split('\n').length);
  });

  test('has no English words but the names', () => {
    expect(withoutNames(english, source)).toMatch(ENGLISH);
    expect(withoutNames(german, source).split('\n').filter((line) => ENGLISH.test(line))).toEqual([]);
  });

  test('has no gaps', () => {
    const text = german.replaceAll(/^ +/gm, '');
    expect(text).not.toMatch(/ {2}|[{}]|undefined|NaN|null| [.,;:]/);
  });

  test('has its plurals right', () => {
    expect(german).not.toMatch(/(?<![\d/,] ?)\b1 (Quadrate|Rechtecke|Bahnen|Blöcke|Stücke|Teile|Stoffen|Formen|Nähte|\p{L}+-Dreiecke|\p{L}+dreiecke)\b/u);
    expect(german).not.toMatch(/(?<![\d/,])(?!1 )\b\d+ (Quadrat|Rechteck|Bahn|Block|Stück|Teil|Form|\p{L}+-Dreieck|\p{L}+dreieck)(?!\p{L})/u);
  });
});

test('the decimal mark is a comma', () => {
  const source = sample(METRIC);
  const text = source.quilts.map((quilt) => both(source, quilt)[1]).join('');
  expect(text).toMatch(/\d,\d+ (cm|m)\b/);
  expect(text).not.toMatch(/\d\.\d/);
});

test('one seam of the backing is singular, two are not', () => {
  expect(CUTTING_DE.panels(2, '1 m', '2 m', 'vertical')).toContain(', 1 senkrechte Naht.');
  expect(CUTTING_DE.panels(3, '1 m', '2 m', 'horizontal')).toContain(', 2 waagerechte Nähte.');
});
