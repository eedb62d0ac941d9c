/** The pictures of the blocks in the handbook are those the tool draws today. `UPDATE_EXPECTED=1` draws them anew. */
import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { DOMParser } from '@xmldom/xmldom';
import { beforeAll, describe, expect, test } from 'vitest';
import { contactSheet } from '../harness/contact-sheet.ts';
import { EVERY_BLOCK, read } from './blocks.ts';

const FOLDER = new URL('../../samples/handbook/blocks/', import.meta.url);
const FILES = contactSheet();

beforeAll(() => {
  if (process.env['UPDATE_EXPECTED'] !== '1') return;
  rmSync(FOLDER, { recursive: true, force: true });
  mkdirSync(FOLDER, { recursive: true });
  for (const [name, text] of FILES) writeFileSync(new URL(name, FOLDER), text);
});

describe('the contact sheet', () => {
  test('has these files and no other', () => expect(readdirSync(FOLDER).sort()).toEqual([...FILES.keys()].sort()));

  test.each([...FILES])('%s is fresh', (name, text) => expect(readFileSync(new URL(name, FOLDER), 'utf8')).toBe(text));

  test('shows every block once', () => {
    const page = FILES.get('README.md') ?? '';
    expect([...page.matchAll(/!\[(\w+)\]\((\w+)\.svg\)/g)].map(([, name, file]) => (name === file ? name : file)).sort()).toEqual(EVERY_BLOCK.map(({ name }) => name).sort());
  });

  test('the pattern on its page has no problem', () => {
    const [, pattern = ''] = /```\n([^]*?)```/.exec(FILES.get('README.md') ?? '') ?? [];
    const { problems, quilts } = read(pattern);
    expect(problems.map(({ message }) => message)).toEqual([]);
    expect(quilts[0]?.layout.blocks.map(({ count }) => count)).toEqual([8, 8]);
  });

  test('every picture is a whole drawing of a fair size', () => {
    for (const [name, text] of FILES) {
      if (!name.endsWith('.svg')) continue;
      const faults: string[] = [];
      const root = new DOMParser({ onError: (level, message) => void faults.push(`${level}: ${message}`) }).parseFromString(text, 'image/svg+xml').documentElement;
      expect(faults, name).toEqual([]);
      expect(root?.getElementsByTagName('path').length, name).toBeGreaterThanOrEqual(2);
      expect([root?.getAttribute('width'), root?.getAttribute('height')].filter((side) => side === '1.5in').length, name).toBeGreaterThanOrEqual(1);
      expect(text.length, name).toBeLessThan(6000);
    }
  });

  test('the same text every time', () => expect([...contactSheet()]).toEqual([...FILES]));
});
