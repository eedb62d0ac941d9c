/** Laying out a part of a text: the edits that laying out all of it has there. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formattingOf } from '../../server/src/features/formatting.ts';
import { formattingAfter } from '../../server/src/features/typing.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { project } from '../harness/fresh.ts';

const SAMPLES = ['harbour-mail', 'lamp-room', 'mail-boat-sampler'].map((name) => readFileSync(join(project, 'samples', `${name}.quilt`), 'utf8'));
const EDIT = fc.record({ at: fc.double({ min: 0, max: 1, noNaN: true }), cut: fc.nat(6), text: fc.constantFrom('  ', '\n', '\n\n\n', '{', '}', '"', '"""', ' // the lamp', 'ink') });

test('lines by themselves are laid out as in the whole text', () => {
  fc.assert(
    fc.property(fc.constantFrom(...SAMPLES), fc.array(EDIT, { maxLength: 6 }), fc.nat(200), fc.nat(8), (sample, edits, line, length) => {
      const text = edits.reduce((before, { at, cut, text: put }) => before.slice(0, Math.floor(at * before.length)) + put + before.slice(Math.floor(at * before.length) + cut), sample);
      const document = documentOf('a.quilt', text);
      const tree = parse(document);
      const start = Math.min(line, document.lines.length - 1);
      const end = Math.min(start + length, document.lines.length - 1);
      const whole = formattingOf({ document, tree }).filter(({ range }) => range.start.line >= start && range.start.line <= end);
      expect(formattingOf({ document, tree }, { start: { line: start, character: 0 }, end: { line: end, character: 0 } })).toEqual(whole);
    }),
    { numRuns: Number(process.env.FUZZ_RUNS ?? 40) * 5 },
  );
});

test('a key costs its lines, not the text', () => {
  const block = (index: number): string => `block B${index} 6" {\n  ink   sand\n    sand ink\n}\n\n`;
  const document = documentOf('a.quilt', `fabric ink #22345c "Ink"\n\n${Array.from({ length: 4000 }, (_, index) => block(index)).join('')}`);
  const tree = parse(document);
  document.numberOf(document.lines[0] ?? { text: '', eol: '', source: '' });
  const whole = best(() => formattingOf({ document, tree }));
  const key = best(() => formattingAfter({ document, tree }, { line: 10_005, character: 0 }, '\n'));
  expect(key / whole).toBeLessThan(0.3);
});

/** The quickest of a few goes, in milliseconds. */
function best(work: () => unknown): number {
  return Math.min(...Array.from({ length: 5 }, () => {
    const start = performance.now();
    expect(work()).not.toEqual([]);
    return performance.now() - start;
  }));
}
