/** `scant format`, `explain` and `new`. */
import { statSync, utimesSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RULES } from '../../server/src/checks/list.ts';
import { bench, GOOD } from './command-line.ts';

const ROUGH = GOOD.replace('  straight 2 by 3', 'straight   2 by 3   ').replace('fabric sand  #', 'fabric sand #');

describe('format', () => {
  it('writes what differs and names it', async () => {
    const table = bench({ 'a.quilt': ROUGH, 'b.quilt': GOOD });
    utimesSync(table.at('b.quilt'), 1, 1);
    expect(await table.scant(['format', '.'])).toEqual({ code: 0, out: 'a.quilt\n', err: '' });
    expect(table.read('a.quilt')).toBe(GOOD);
    expect(statSync(table.at('b.quilt')).mtimeMs).toBe(1000);
    expect(await table.scant(['format', '.'])).toEqual({ code: 0, out: '', err: '' });
  });
  it('--check changes nothing and exits with 1', async () => {
    const table = bench({ 'a.quilt': ROUGH, 'b.quilt': GOOD });
    expect(await table.scant(['format', '--check', '.'])).toEqual({ code: 1, out: 'a.quilt\n', err: '' });
    expect(table.read('a.quilt')).toBe(ROUGH);
    expect((await table.scant(['format', '--check', 'b.quilt'])).code).toBe(0);
    expect((await table.scant(['format', '--check', 'a.quilt', 'none.quilt'])).code).toBe(2);
  });
  it('keeps a byte order mark', async () => {
    const table = bench({ 'a.quilt': `\uFEFF${ROUGH}` });
    await table.scant(['format', 'a.quilt']);
    expect(table.read('a.quilt')).toBe(`\uFEFF${GOOD}`);
  });
});

describe('explain', () => {
  it.each(RULES.map((rule) => rule.id))('%s has a page', async (id) => {
    const { code, out } = await bench().scant(['explain', id]);
    expect(code).toBe(0);
    expect(out).toContain(`(\`${id}\`)`);
  });
  it('lists the rules', async () => {
    const { out } = await bench().scant(['explain']);
    expect(out.trimEnd().split('\n')).toHaveLength(RULES.length);
  });
});

describe('new', () => {
  it('makes a pattern that has nothing wrong with it', async () => {
    const table = bench({ 'p/keep': '' });
    expect(await table.scant(['new', 'harbour-mail'])).toEqual({ code: 0, out: 'harbour-mail.quilt\n', err: '' });
    expect(table.read('harbour-mail.quilt')).toMatch(/^pattern "Harbour mail" \{\n/);
    expect(await table.scant(['new', 'p/x.quilt'])).toEqual({ code: 0, out: 'p/x.quilt\n', err: '' });
    expect((await table.scant(['check', '.'])).out).toBe('no problems in 2 files\n');
    expect((await table.scant(['build', '.'])).code).toBe(0);
    expect((await table.scant(['format', '--check', '.'])).out).toBe('');
  });
  it('escapes a title', async () => {
    const table = bench();
    await table.scant(['new', 'a"b\\c']);
    expect((await table.scant(['check', '.'])).code).toBe(0);
  });
  it('leaves what is there', async () => {
    const table = bench({ 'a.quilt': 'mine' });
    expect(await table.scant(['new', 'a'])).toEqual({ code: 2, out: '', err: 'scant: a.quilt is there already\n' });
    expect(table.read('a.quilt')).toBe('mine');
    expect(await table.scant(['new', 'none/a'])).toMatchObject({ code: 2, err: 'scant: cannot write none/a.quilt: no such file or folder\n' });
  });
});
