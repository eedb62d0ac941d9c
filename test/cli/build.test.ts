/** `scant build`: which files, where, and what it leaves alone. */
import { mkdirSync, rmSync, statSync, symlinkSync, utimesSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { areasByFill, parseXml } from '../drawing/read-svg.ts';
import { BAD, bench, GOOD, SIZES, WARNED } from './command-line.ts';

const DRAWINGS = ['steps/block-1.svg', 'steps/press-1.svg', 'steps/rows.svg', 'steps/unit-1.svg', 'steps/unit-2.svg'];
const SET = ['.scant', 'blocks/Star.svg', 'booklet.html', 'booklet.pdf', 'cutting.csv', 'cutting.md', 'cutting/ink.svg', 'cutting/sand.svg', 'pattern.json', 'pattern.svg', 'pattern.xlsx', 'quilt.svg', 'steps.md', ...DRAWINGS];
const below = (folder: string, files: readonly string[]): string[] => files.map((file) => `${folder}/${file}`);

describe('a pattern without sizes', () => {
  it('goes to out/<file name> beside it', async () => {
    const table = bench({ 'p/Harbour Mail.quilt': GOOD });
    const { code, out, err } = await table.scant(['build', 'p/Harbour Mail.quilt']);
    expect(code).toBe(0);
    expect(table.list()).toEqual(['p/Harbour Mail.quilt', ...below('p/out/Harbour Mail', SET)]);
    expect(out.trimEnd().split('\n').sort()).toEqual(below('p/out/Harbour Mail', SET.filter((path) => path !== '.scant')));
    expect(err).toBe(`p/Harbour Mail.quilt: ${SET.length - 1} files written, 0 unchanged\n`);
  });
  it('draws the quilt at true size, every patch in its colour', async () => {
    const table = bench({ 'a.quilt': GOOD });
    await table.scant(['build', 'a.quilt']);
    const svg = table.read('out/a/quilt.svg');
    expect(parseXml(svg).getAttribute('width')).toBe('16in');
    expect(parseXml(svg).getAttribute('height')).toBe('22in');
    const areas = areasByFill(svg);
    // A block has 5 sand squares of 4 sq in less 4 halves … counted: 4 squares and 4 halves are sand, 1 and 4 halves ink.
    expect(areas['#eadfc8']).toBeCloseTo(6 * (4 * 4 + 4 * 2), 6);
    expect(areas['#22345c']).toBeCloseTo(6 * (4 + 4 * 2) + (16 * 22 - 12 * 18), 6);
    expect(areasByFill(table.read('out/a/blocks/Star.svg'))).toEqual({ '#eadfc8': 24, '#22345c': 12 });
    expect(parseXml(svg).getElementsByTagName('title')[0]?.textContent).toBe('Harbour Mail');
  });
  it('writes figures that agree', async () => {
    const table = bench({ 'a.quilt': GOOD });
    await table.scant(['build', 'a.quilt']);
    const figures = JSON.parse(table.read('out/a/pattern.json')) as { scant: number; sizes: { name: null; width: { in: number } }[] };
    expect(figures).toMatchObject({ scant: 1, title: 'Harbour Mail', sizes: [{ name: null, width: { in: 16 }, height: { in: 22 } }] });
  });
  it('writes the same bytes twice, and then nothing', async () => {
    const table = bench({ 'a.quilt': GOOD });
    await table.scant(['build', 'a.quilt', '--out', 'x']);
    await table.scant(['build', 'a.quilt', '--out', 'y']);
    for (const path of SET) expect(table.read(`x/${path}`)).toBe(table.read(`y/${path}`));
    for (const path of SET) utimesSync(table.at(`x/${path}`), 1, 1);
    const { out, err } = await table.scant(['build', 'a.quilt', '--out', 'x']);
    expect({ out, err }).toEqual({ out: '', err: `a.quilt: 0 files written, ${SET.length - 1} unchanged\n` });
    for (const path of SET) expect(statSync(table.at(`x/${path}`)).mtimeMs).toBe(1000);
  });
});

describe('a pattern with sizes', () => {
  it('has a folder each, and figures of all at the top', async () => {
    const table = bench({ 'a.quilt': SIZES });
    expect((await table.scant(['build', 'a.quilt', '--out', 'o'])).code).toBe(0);
    const inEach = SET.filter((path) => path !== '.scant');
    expect(table.list()).toEqual(['a.quilt', 'o/.scant', ...below('o/crib', inEach), 'o/pattern.json', ...below('o/twin', inEach)]);
    const names = (path: string): unknown => (JSON.parse(table.read(path)) as { sizes: { name: string }[] }).sizes.map((size) => size.name);
    expect(names('o/pattern.json')).toEqual(['crib', 'twin']);
    expect(names('o/twin/pattern.json')).toEqual(['twin']);
    expect(parseXml(table.read('o/twin/quilt.svg')).getAttribute('width')).toBe('22in');
  });
  it('builds one size in the same place', async () => {
    const table = bench({ 'a.quilt': SIZES });
    await table.scant(['build', 'a.quilt', '--out', 'all']);
    await table.scant(['build', 'a.quilt', '--out', 'one', '--size', 'twin']);
    expect(table.list().filter((path) => path.startsWith('one/')).map((path) => path.slice(4))).toEqual(['.scant', ...below('twin', SET.filter((path) => path !== '.scant')).filter((path) => path < 'pattern'), 'pattern.json', ...below('twin', SET.filter((path) => path !== '.scant'))].filter((path, index, all) => all.indexOf(path) === index));
    expect(table.read('one/twin/cutting.md')).toBe(table.read('all/twin/cutting.md'));
    expect(table.read('one/twin/pattern.json')).toBe(table.read('all/twin/pattern.json'));
  });
  it('says which sizes and colorways there are', async () => {
    const table = bench({ 'a.quilt': SIZES, 'b.quilt': GOOD });
    expect(await table.scant(['build', 'a.quilt', '--size', 'queen'])).toMatchObject({ code: 2, err: 'scant: a.quilt: there is no size "queen": the pattern has crib, twin\n' });
    expect(await table.scant(['build', 'b.quilt', '--colorway', 'dusk'])).toMatchObject({ code: 2, err: 'scant: b.quilt: there is no colorway "dusk"; the pattern names none\n' });
    expect(table.list()).toEqual(['a.quilt', 'b.quilt']);
  });
  it('wears a colorway', async () => {
    const table = bench({ 'a.quilt': SIZES });
    await table.scant(['build', 'a.quilt', '--colorway', 'dusk', '--only', 'svg']);
    expect(table.read('out/a/crib/quilt.svg')).toContain('#553366');
    expect(table.read('out/a/crib/quilt.svg')).not.toContain('#22345c');
    expect(table.read('out/a/crib/blocks/Star.svg')).toContain('#553366');
  });
});

describe('--only', () => {
  it.each([
    ['quilt', ['quilt.svg']],
    ['svg', ['blocks/Star.svg', 'cutting/ink.svg', 'cutting/sand.svg', 'pattern.svg', 'quilt.svg', ...DRAWINGS]],
    ['steps', ['steps.md', ...DRAWINGS]],
    ['md', ['cutting.md', 'steps.md']],
    ['cutting', ['cutting.csv', 'cutting.md', 'cutting/ink.svg', 'cutting/sand.svg']],
    ['booklet', ['booklet.html', 'booklet.pdf']],
    ['pdf', ['booklet.pdf']],
    ['csv,json', ['cutting.csv', 'pattern.json']],
    ['cutting.md', ['cutting.md']],
  ])('%s', async (only, files) => {
    const table = bench({ 'a.quilt': GOOD });
    expect((await table.scant(['build', 'a.quilt', '--out', 'o', '--only', only])).code).toBe(0);
    expect(table.list()).toEqual(['a.quilt', 'o/.scant', ...below('o', files)]);
  });
});

describe('blocks', () => {
  const shapes = `fabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\nfabric rust #a4502e "Rust"\n\nblock Nine(a = ink) 6" {\n  a    sand a\n  sand a    sand\n  a    sand a\n}\n`;
  it('are named plainly when used one way, by their arguments otherwise', async () => {
    const table = bench({ 'a.quilt': `${shapes}\nquilt {\n  straight 2 by 1\n  place { Nine(rust) }\n}\n`, 'b.quilt': `${shapes}\nquilt {\n  straight 2 by 1\n  place { Nine(rust) Nine }\n}\n` });
    await table.scant(['build', 'a.quilt', 'b.quilt', '--only', 'blocks']);
    expect(table.list().filter((path) => path.endsWith('.svg'))).toEqual(['out/a/blocks/Nine.svg', 'out/b/blocks/Nine-rust.svg', 'out/b/blocks/Nine.svg']);
  });
  it('of a library are all it writes', async () => {
    const table = bench({ 'lib.quilt': shapes });
    expect((await table.scant(['build', 'lib.quilt'])).code).toBe(0);
    expect(table.list()).toEqual(['lib.quilt', 'out/lib/.scant', 'out/lib/blocks/Nine.svg']);
  });
});

describe('several files', () => {
  it('go on after one with errors; the worst code counts', async () => {
    const table = bench({ 'a.quilt': BAD, 'b.quilt': GOOD });
    const { code, err } = await table.scant(['build', 'a.quilt', 'b.quilt']);
    expect(code).toBe(1);
    expect(err).toMatch(/^a\.quilt:11:14: error unknown-name: .*\na\.quilt: 1 error in 1 file; nothing written\nb\.quilt: \d+ files written, 0 unchanged\n$/);
    expect((await table.scant(['build', 'a.quilt', 'none.quilt', 'b.quilt'])).code).toBe(2);
  });
  it('have a folder each in --out', async () => {
    const table = bench({ 'p/a.quilt': GOOD, 'p/sub/b.quilt': GOOD, 'q/c.quilt': GOOD });
    await table.scant(['build', 'p', 'q/c.quilt', '--out', 'o', '--only', 'quilt']);
    expect(table.list().filter((path) => path.endsWith('.svg'))).toEqual(['o/a/quilt.svg', 'o/c/quilt.svg', 'o/sub/b/quilt.svg']);
  });
  it('do not overwrite each other', async () => {
    const table = bench({ 'p/a.quilt': GOOD, 'q/a.quilt': GOOD });
    expect(await table.scant(['build', 'p/a.quilt', 'q/a.quilt', '--out', 'o'])).toMatchObject({ code: 2, err: expect.stringContaining('p/a.quilt and q/a.quilt would be written to the same folder') as string });
    expect(table.list()).toEqual(['p/a.quilt', 'q/a.quilt']);
  });
});

describe('what is there already', () => {
  it('stays when the pattern has errors', async () => {
    const table = bench({ 'a.quilt': GOOD });
    await table.scant(['build', 'a.quilt']);
    const before = table.list().map((path) => [path, table.read(path)]);
    table.write('a.quilt', BAD);
    expect((await table.scant(['build', 'a.quilt'])).code).toBe(1);
    table.write('a.quilt', GOOD);
    expect(table.list().map((path) => [path, table.read(path)])).toEqual(before);
  });
  it('is not overwritten where a person edited it', async () => {
    const table = bench({ 'a.quilt': GOOD });
    await table.scant(['build', 'a.quilt']);
    table.write('out/a/cutting.md', 'my notes');
    const { code, err } = await table.scant(['build', 'a.quilt']);
    expect(code).toBe(2);
    expect(err).toBe(`scant: a.quilt: ${table.at('out/a/cutting.md')} has been edited by hand; move it away (scant build --force overwrites it)\n`);
    expect(table.read('out/a/cutting.md')).toBe('my notes');
    expect((await table.scant(['build', 'a.quilt', '--force'])).code).toBe(0);
    expect(table.read('out/a/cutting.md')).not.toBe('my notes');
  });
  it('goes when a whole build no longer makes it, and stays in a partial one', async () => {
    const table = bench({ 'a.quilt': GOOD });
    await table.scant(['build', 'a.quilt']);
    table.write('a.quilt', GOOD.replaceAll('Star', 'Moon'));
    await table.scant(['build', 'a.quilt', '--only', 'blocks']);
    expect(table.list().filter((path) => path.includes('blocks'))).toEqual(['out/a/blocks/Moon.svg', 'out/a/blocks/Star.svg']);
    expect((await table.scant(['build', 'a.quilt'])).err).toMatch(/, 1 removed\n$/);
    expect(table.list().filter((path) => path.includes('blocks'))).toEqual(['out/a/blocks/Moon.svg']);
  });
  it('can be a link or a folder in the way: nothing is written', async () => {
    const table = bench({ 'a.quilt': GOOD, 'far/keep': '' });
    await table.scant(['build', 'a.quilt']);
    rmSync(table.at('out/a/quilt.svg'));
    mkdirSync(table.at('out/a/quilt.svg'));
    expect(await table.scant(['build', 'a.quilt'])).toMatchObject({ code: 2, err: expect.stringContaining('quilt.svg is a folder') as string });
    rmSync(table.at('out'), { recursive: true });
    symlinkSync(table.at('far'), table.at('out'));
    const linked = bench({ 'ws/a.quilt': GOOD, 'far/keep': '' });
    symlinkSync(linked.at('far'), linked.at('ws/out'));
    expect(await linked.scant(['build', 'ws/a.quilt'])).toMatchObject({ code: 2, err: expect.stringContaining('is a link that leads out of') as string });
  });
});

describe('problems of a build', () => {
  it('are told when they are warnings, and do not stop it', async () => {
    const { code, err } = await bench({ 'a.quilt': WARNED }).scant(['build', 'a.quilt', '--only', 'quilt']);
    expect(code).toBe(0);
    expect(err).toMatch(/^a\.quilt:8:8: warning unused-fabric: .*\na\.quilt: 1 file written, 0 unchanged\n$/);
  });
});

describe('--watch', () => {
  it('builds again when the file or an import changes, not for its own outputs, and ends', async () => {
    const table = bench({ 'a.quilt': `import "lib.quilt"\n${GOOD.replace(/fabric ink.*\n/, '')}`, 'lib.quilt': 'fabric ink #22345c "Ink"\n' });
    const stop = new AbortController();
    let builds = 0;
    const seen: (() => void)[] = [];
    const done = table.scant(['build', 'a.quilt', '--watch', '--only', 'quilt'], {
      stop: stop.signal,
      onOutput: (text) => {
        if (/files? written|nothing written/.test(text)) builds += 1;
        if (/written|watching/.test(text)) seen.splice(0).forEach((each) => each());
      },
    });
    const next = (): Promise<void> => new Promise((resolve) => seen.push(resolve));
    await quiet();
    expect(builds).toBe(1);
    let change = next();
    table.write('lib.quilt', 'fabric ink #112233 "Ink"\n');
    await change;
    expect(table.read('out/a/quilt.svg')).toContain('#112233');
    change = next();
    table.write('lib.quilt', 'fabric inc #112233 "Ink"\n');
    await change;
    change = next();
    table.write('lib.quilt', 'fabric ink #445566 "Ink"\n');
    await change;
    expect(table.read('out/a/quilt.svg')).toContain('#445566');
    await quiet();
    expect(builds).toBe(4);
    stop.abort();
    expect((await done).code).toBe(0);
  });
});

function quiet(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 400));
}

describe('--check', () => {
  it('is content with what a build wrote, whatever its line ends', async () => {
    const table = bench({ 'a.quilt': SIZES });
    await table.scant(['build', 'a.quilt']);
    table.write('out/a/crib/steps.md', table.read('out/a/crib/steps.md').replaceAll('\n', '\r\n'));
    const before = table.list();
    expect(await table.scant(['build', 'a.quilt', '--check'])).toEqual({ code: 0, out: '', err: 'a.quilt: as built\n' });
    expect(table.list()).toEqual(before);
  });
  it('names what is missing, differs or is left over, and writes nothing', async () => {
    const table = bench({ 'a.quilt': SIZES });
    await table.scant(['build', 'a.quilt']);
    table.write('a.quilt', SIZES.replace(/^size twin .*\n/m, 'size full 4 by 5\n').replace(/^expect .*\n/gm, ''));
    rmSync(table.at('out/a/crib/quilt.svg'));
    const before = table.list();
    const { code, out } = await table.scant(['build', 'a.quilt', '--check']);
    expect(code).toBe(1);
    const named = out.trimEnd().split('\n');
    expect(named).toEqual(expect.arrayContaining(['out/a/crib/quilt.svg', 'out/a/full/cutting.md', 'out/a/twin/cutting.md', 'out/a/pattern.json']));
    expect(named).not.toContain('out/a/crib/blocks/Star.svg');
    expect(table.list()).toEqual(before);
  });
  it('fails on errors, and does not go with --watch', async () => {
    expect((await bench({ 'a.quilt': BAD }).scant(['build', 'a.quilt', '--check'])).code).toBe(1);
    expect((await bench({ 'a.quilt': GOOD }).scant(['build', 'a.quilt', '--check', '--watch'])).code).toBe(2);
  });
});
