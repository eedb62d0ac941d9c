/** Measures as a printer sets them, and Markdown as runs. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatLength, formatYards } from '../../server/src/exact/length.ts';
import { fraction } from '../../server/src/exact/number.ts';
import { plainText, proseOf, runsOf } from '../../server/src/print/prose.ts';
import { typeset } from '../../server/src/print/typeset.ts';
import { unset } from './read-pdf.ts';

describe('measures', () => {
  test.each([
    ['Cut 2 squares 2 1/2" wide.', 'Cut 2 squares 2½″ wide.'],
    ['7/8"', '⅞″'],
    ['about 39 13/16" by 5"', 'about 39¹³⁄₁₆″ by 5″'],
    ['1 3/8 yd', '1⅜\u00A0yd'],
    ['40" × 50 1/4"', '40″\u00A0×\u00A050¼″'],
    ['7,5 cm', '7,5\u00A0cm'],
    ['24/7, 3/4 done', '24/7, 3/4 done'],
    ['the block "Star 9" and 9"', 'the block "Star 9" and 9″'],
  ])('%s', (text, printed) => expect(typeset(text)).toBe(printed));

  test('every length that can be printed comes back from the page as it was', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 9999 }), fc.constantFrom(1, 2, 3, 4, 5, 7, 8, 16, 32, 64), (over, under) => {
      const inches = fraction(over, under);
      for (const text of [formatLength(inches, { units: 'inches' }), formatYards(inches), formatLength(inches, { units: 'centimetres' })]) expect(unset(typeset(text))).toBe(text);
    }));
  });
});

describe('Markdown', () => {
  test('bold, italic, breaks and entities', () => {
    expect(runsOf({ markdown: 'a **b** *c*  \nd &amp; e\\*' })).toEqual([
      { text: 'a ', look: 'plain' }, { text: 'b', look: 'bold' }, { text: ' ', look: 'plain' }, { text: 'c', look: 'italic' },
      { text: '\n', look: 'plain' }, { text: 'd & e*', look: 'plain' },
    ]);
  });

  test('plain text is not read as Markdown', () => {
    expect(plainText('a *b* <i>c</i> [d](e)')).toBe('a *b* <i>c</i> [d](e)');
  });

  test('raw HTML is text, an address is shown, a picture is its words', () => {
    expect(plainText({ markdown: '<b>x</b> [y](https://example.org) ![z](https://example.org/z.png)' })).toBe('<b>x</b> y (https://example.org) z');
    expect(plainText({ markdown: '[y](javascript:alert(1))' })).toBe('[y](javascript:alert(1))');
  });

  test('lists, headings and what is nested', () => {
    expect(proseOf('# A\n\nb\n\n- c\n  - d\n- e\n\n1. f\n\n> g').map((part) => (part.kind === 'list' ? [part.ordered, part.items.map((runs) => runs.map(({ text }) => text).join(''))] : [part.kind, part.runs.map(({ text }) => text).join('')]))).toEqual([
      ['heading', 'A'], ['paragraph', 'b'], [false, ['c', 'd', 'e']], [true, ['f']], ['paragraph', 'g'],
    ]);
  });

  test('any text is read', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
      expect(Array.isArray(proseOf(text))).toBe(true);
      expect(typeof plainText({ markdown: text })).toBe('string');
    }), { numRuns: 300 });
  });
});
