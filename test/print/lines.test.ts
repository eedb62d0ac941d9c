/** Lines: nothing is lost, nothing is wider than its column, and any text can be written. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fontFiles } from '../../server/src/disk/fonts.ts';
import { linesOf } from '../../server/src/print/lines.ts';
import { closePdf, element, mark, newPage, openPdf, PAPER, widthOf, write, type Pdf } from '../../server/src/print/pdf.ts';
import type { Run } from '../../server/src/print/prose.ts';
import { readPdf, textOf } from './read-pdf.ts';

function blankPdf(title = 'Lines'): Pdf {
  const pdf = openPdf({ title, language: 'en', page: PAPER.letter, fonts: fontFiles() });
  newPage(pdf);
  return pdf;
}

const pdf = blankPdf();
const words = fc.array(fc.string({ unit: fc.constantFrom('a', 'W', 'i', 'ß', '½', '″', '-', 'fi'), minLength: 1, maxLength: 24 }), { minLength: 1, maxLength: 40 });
const runs = fc.array(fc.record({ words, look: fc.constantFrom('plain' as const, 'bold' as const, 'italic' as const) }), { minLength: 1, maxLength: 4 })
  .map((made): readonly Run[] => made.map((run) => ({ text: ` ${run.words.join(' ')}`, look: run.look })));

describe('lines', () => {
  test('hold every letter in order, and none is wider than its column', () => {
    fc.assert(fc.property(runs, fc.integer({ min: 30, max: 400 }), (text, width) => {
      const size = 10;
      const lines = linesOf(pdf, text, { width, size });
      const letters = (all: string): string => all.replace(/\s/g, '');
      expect(letters(lines.flatMap((line) => line.map((span) => span.text)).join(''))).toBe(letters(text.map((run) => run.text).join('')));
      for (const line of lines) for (const span of line) expect(span.x + widthOf(pdf, span.text, { font: span.font, size })).toBeLessThanOrEqual(width + 1);
    }), { numRuns: 60 });
  });

  test('a word is broken only where it is longer than a line', () => {
    fc.assert(fc.property(runs, (text) => {
      const lines = linesOf(pdf, text, { width: 400, size: 10 });
      const given = text.flatMap((run) => run.text.split(' ')).filter((word) => word !== '');
      expect(lines.flatMap((line) => line.map((span) => span.text).join(' ').split(' ')).filter((word) => word !== '')).toEqual(given);
    }), { numRuns: 60 });
  });
});

describe('any text', () => {
  test('can be title and line; what the font has not does not stop it', { timeout: 60_000 }, async () => {
    const texts = ['<&>"\' ]]> \\ ( ) %', '船と灯台', 'שלום', '🧵⛴️', '\uD800 lone', 'tab\tline\nfeed\u0000', 'e\u0301 o\u0308', '𝔘𝔫', '__proto__', 'constructor'];
    for (const text of texts) {
      const made = blankPdf(text);
      mark(element(made, made.root, 'P', { title: text, alt: text }), () => write(made, `${text} end`, 50, 50));
      const read = await readPdf(closePdf(made));
      expect(textOf(read)).toContain('end');
      expect(read.isTagged).toBe(true);
    }
  });
});
