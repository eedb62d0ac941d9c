import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { GRAMMARS } from '../../server/src/syntax/grammar.ts';
import { readWhole } from '../../server/src/syntax/read.ts';
import { readByShape } from '../../server/src/syntax/shape.ts';
import { STATEMENT_WORDS } from '../../server/src/syntax/words.ts';

const byShape = readByShape(10_000);
const cases = [...GRAMMARS.source.matchAll(/^\s*\/\/[+-] ([A-Z]\w+): (.*)$/gm)].map(([, rule = '', text = '']) => ({ rule, text }));
const statements = Object.values(STATEMENT_WORDS).flat();

function both(text: string, rule: string): void {
  const json = (value: unknown): string => JSON.stringify(value, (_, each: unknown) => (typeof each === 'bigint' ? `${each}` : each)) ?? 'nothing';
  expect(json(byShape(text, rule)), `${rule}: ${text}`).toBe(json(readWhole(text, rule)));
}

describe('reading by shape is reading', () => {
  test('for the cases of the grammar, and with other names, numbers and blanks', () => {
    for (const { rule, text } of cases) {
      for (const changed of [text, text.replace(/\b([a-z])\b/g, 'longer_$1'), text.replace(/\d+/g, '12'), text.replaceAll(' ', '   '), `  ${text} `, text.replaceAll('a', 'é'), text.replaceAll('"', '')]) both(changed, rule);
    }
  });

  test('for anything', () => {
    const token = fc.constantFrom('a', 'top', 'Nine', 'lib.Star', '(', ')', '(a|b)', '/', '\\', '|', '-', '@90', '@', '*', '2', '12', '2 1/2', '1/2', '½', '"', '"text"', '"""long"""', '"6\\" x"', '#123456', '#12345', 'cm', 'in', 'by', 'cut', 'corners', 'x', ',', '=', '%', '.', '2.5', '<', '\u00A0', '😀', 'e\u0301', '');
    const line = fc.array(fc.tuple(token, fc.constantFrom('', ' ', '  ', '\t')), { maxLength: 8 }).map((parts) => parts.flat().join(''));
    fc.assert(fc.property(fc.constantFrom(...statements), line, ({ word, rule }, rest) => both(`${word} ${rest}`, rule)), { seed: 11, numRuns: 3000 });
    fc.assert(fc.property(line, (rest) => both(rest, 'Row')), { seed: 12, numRuns: 2000 });
  });
});
