import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { figureOf } from '../../client/src/fenced-words.ts';
import { statusFor } from '../../client/src/status-words.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

describe('the line at the foot of the window', () => {
  test('says what comes out, or how many errors there are', () => {
    expect(statusFor({ version: 1, figures: '20" by 26"', errors: 0 })).toMatchObject({ text: '20" by 26"', command: 'scant.openPreview' });
    expect(statusFor({ version: 1, figures: null, errors: 1 })?.text).toBe('$(error) 1 error');
    expect(statusFor({ version: 1, figures: '20" by 26"', errors: 3 })?.text).toBe('$(error) 3 errors');
    expect(statusFor({ version: 1, figures: null, errors: 0 })).toBeUndefined();
  });
});

test('a fenced pattern cannot act on the page it stands in', () => {
  const html = figureOf({ svg: '<svg><script>alert(1)</script>…</svg>', errors: ['3: no fabric is called `<img onerror=x>`'] });
  expect(html).not.toMatch(/<script|<img onerror/);
  expect(html).toContain('Line 3: no fabric is called `&#60;img onerror=x&#62;`');
  const [, data = ''] = /base64,([^"]*)"/.exec(html) ?? [];
  expect(Buffer.from(data, 'base64').toString()).toContain('…</svg>');
});

test('the patterns that a newcomer sees first have no errors', () => {
  const begin = readFileSync(new URL('../../client/src/begin.ts', import.meta.url), 'utf8');
  const texts = [/const FIRST = `([^`]*)`/.exec(begin)?.[1] ?? ''];
  for (const file of ['new', 'explain']) {
    const markdown = readFileSync(new URL(`../../client/media/start/${file}.md`, import.meta.url), 'utf8');
    texts.push(...Array.from(markdown.matchAll(/```quilt\n([^`]*)```/g), (match) => match[1] ?? ''));
  }
  expect(texts.length).toBe(3);
  for (const text of texts) expect(snapshotOfText(text).problems.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
});

test('the problem matcher reads what the command line writes', () => {
  const manifest = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { contributes: { problemPatterns: { regexp: string }[] } };
  const pattern = new RegExp(manifest.contributes.problemPatterns[0]?.regexp ?? '');
  expect(pattern.exec('samples/my quilts/a.quilt:3:14: warning cut-off-ruler: cut 2 1/3": not on the ruler')?.slice(1)).toEqual(['samples/my quilts/a.quilt', '3', '14', 'warning', 'cut-off-ruler', 'cut 2 1/3": not on the ruler']);
  expect(pattern.test('2 errors, 1 warning in 3 files')).toBe(false);
});
