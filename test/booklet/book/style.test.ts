/**
 * Every text of every booklet, of all samples and sizes, in both unit systems and both languages, as an editor would read it: no doubled
 * blank, no `1 strips`, no braces left, no measure without its unit. And the two catalogues against each other.
 */
import { describe, expect, test } from 'vitest';
import type { Block, Book, Text } from '../../../server/src/booklet/book/book.ts';
import { bookOf } from '../../../server/src/booklet/book/build.ts';
import type { Language } from '../../../server/src/booklet/words/catalogue.ts';
import { DE } from '../../../server/src/booklet/words/de.ts';
import { EN } from '../../../server/src/booklet/words/en.ts';
import { snapshotOfText } from '../../harness/snapshot.ts';
import { sampleTexts } from '../../print/patterns.ts';

interface Edition {
  readonly name: string;
  readonly language: Language;
  readonly texts: readonly string[];
}

function textOf(text: Text): string {
  return typeof text === 'string' ? text : text.markdown;
}

function textsIn(block: Block): readonly string[] {
  switch (block.kind) {
    case 'heading':
    case 'paragraph':
      return [textOf(block.text)];
    case 'list':
      return block.items.map(textOf);
    case 'table':
      return [block.title, ...block.head, ...block.rows.flatMap((row) => row.map(({ text }) => textOf(text)))];
    case 'figure':
      return [block.alt, ...(block.caption === undefined ? [] : [block.caption])];
    case 'figures':
      return block.figures.flatMap(textsIn);
    case 'step':
      return [...textsIn(block.figure), ...textsIn(block.list)];
    case 'caution':
      return [block.title, ...block.items.map(textOf)];
    case 'prose':
      return [block.markdown];
  }
}

function allTexts({ cover, chapters, furniture }: Book): readonly string[] {
  return [furniture.contents, ...cover.flatMap(textsIn), ...chapters.flatMap(({ title, blocks }) => [title, ...blocks.flatMap(textsIn)])];
}

/** The same text with its `units` exchanged: what is written in inches is printed in centimetres, and the other way round. */
function inUnits(text: string, units: 'inches' | 'centimetres'): string {
  return text.replace(/units (inches|centimetres)/, `units ${units}`);
}

const editions: readonly Edition[] = sampleTexts().flatMap(({ name, text, files }) =>
  (['inches', 'centimetres'] as const).flatMap((units) => {
    const { pattern, quilts } = snapshotOfText(inUnits(text, units), files);
    return (['en', 'de'] as const).map((language) => ({
      name: `${name}, ${units}, ${language}`,
      language,
      texts: quilts.flatMap((quilt) => allTexts(bookOf({ pattern: { ...pattern, language }, quilts }, quilt))),
    }));
  }),
);

const NOUNS = 'strips|squares|rectangles|triangles|shapes|panels|pieces|prints|blocks|units|seams|segments|sizes|Quadrate|Rechtecke|Seitendreiecke|Eckdreiecke|Formen|Bahnen|Nähten|Teile|Stoffe|Stücke';
const SINGLE = 'strip|square|rectangle|panel|piece|print|Quadrat|Rechteck|Bahn|Naht|Teil|Stück';

describe.each(editions)('$name', ({ language, texts }) => {
  const faults = (pattern: RegExp): readonly string[] => texts.filter((text) => pattern.test(text));

  test('blanks and marks stand where they should', () => {
    expect(texts.length).toBeGreaterThan(100);
    expect(faults(/ {2}|^\s|\s$| [,.;:!?](?:\s|$)|\.\.(?!\.)|,,|\(\s|\s\)/)).toEqual([]);
  });

  test('plurals are right', () => {
    expect(faults(new RegExp(`(?<![\\d.,/¼-¾] ?)\\b1[ \\u00A0](?:${NOUNS})\\b`))).toEqual([]);
    expect(faults(new RegExp(`\\b(?:[02-9]|\\d{2,})[ \\u00A0](?:${SINGLE})\\b(?! (?:of|wide))`))).toEqual([]);
  });

  test('nothing is left to fill in', () => {
    expect(faults(/[{}]|undefined|null|NaN|\[object/)).toEqual([]);
  });

  test('a measure has its unit', () => {
    // A fraction is always of an inch or a yard; × stands between two measures, or counts something.
    expect(faults(/\d\/\d+(?![\d"]| yd|⁄)/)).toEqual([]);
    expect(faults(/(?:^|[^\d.,/])\d+(?:[.,]\d+)? × \d+(?:[.,]\d+)?(?![\d.,]| ?cm|"| \d+\/\d+")/)).toEqual([]);
    expect(faults(/\d[.,]\d+(?!\d| ?(?:cm|m|%)\b|%|")/)).toEqual([]);
  });

  test('sentences end, and begin with a capital letter', () => {
    const sentences = texts.filter((text) => /\.$/.test(text));
    expect(sentences.length).toBeGreaterThan(20);
    expect(sentences.filter((text) => /^[a-z]/.test(text) && !/^[\w.]+(?:\([^)]*\))?[:,]? /.test(text))).toEqual([]);
  });

  test('numbers are written as the language writes them', () => {
    const own = language === 'de' ? /\d\.\d/ : /\d,\d/;
    expect(faults(own)).toEqual([]);
  });
});

describe('the catalogues', () => {
  const keysOf = (value: object, path = ''): readonly string[] => Object.entries(value).flatMap(([key, each]) => (typeof each === 'object' && each !== null && !Array.isArray(each) ? keysOf(each as object, `${path}${key}.`) : [`${path}${key}`]));
  const at = (value: object, path: string): unknown => path.split('.').reduce<unknown>((found, key) => (found as Readonly<Record<string, unknown>>)[key], value);

  test('have the same keys, and lists of the same length', () => {
    expect(keysOf(DE)).toEqual(keysOf(EN));
    const lengths = (words: object): readonly unknown[] => keysOf(words).map((path) => [path, (at(words, path) as { readonly length?: number } | undefined)?.length]).filter(([, length], i) => Array.isArray(at(words, keysOf(words)[i] ?? '')) && length !== undefined);
    expect(lengths(DE)).toEqual(lengths(EN));
  });

  test('say things in their own words', () => {
    const shared = keysOf(EN).filter((path) => typeof at(EN, path) === 'string' && at(EN, path) === at(DE, path));
    expect(shared).toEqual(['voice.by']);
  });
});
