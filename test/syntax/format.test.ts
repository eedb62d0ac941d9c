import { describe, expect, test } from 'vitest';
import { format, formatTree } from '../../server/src/syntax/format.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { checkCases } from './cases.ts';
import { FIRST_PATTERN } from '../harness/first-pattern.ts';

function formatted(text: string): string {
  return formatTree(parse(documentOf('test', text)));
}

describe('layout', () => {
  checkCases('format.txt', (given) => formatted(given).trimEnd());

  test('the first pattern of the language is in it', () => {
    expect(formatted(FIRST_PATTERN)).toBe(FIRST_PATTERN);
    expect(format(parse(documentOf('test', FIRST_PATTERN)))).toEqual([]);
  });

  test('line ends stay what they are', () => {
    expect(formatted('let a=1\r\n\r\n\r\nlet b=2')).toBe('let a = 1\r\n\r\nlet b = 2\r\n');
    expect(formatted('')).toBe('');
    expect(formatted('  \n\n')).toBe('');
    expect(formatted('let a = 1')).toBe('let a = 1\n');
  });

  test('an edit touches no more than what changes', () => {
    const edits = format(parse(documentOf('test', 'let a = 1\nlet   b = 2 // b\n')));
    expect(edits.map(({ place, text }) => [place.from, place.to, text])).toEqual([[4, 6, '']]);
  });
});
