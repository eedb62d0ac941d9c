import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CodeAction, DocumentSymbol, MarkupContent, TextDocumentEdit } from 'vscode-languageserver-protocol';
import { RULES } from '../../server/src/checks/list.ts';
import { startSession, type Session } from './client.ts';

const PATTERN = `pattern "Harbour & Sons" {
  units inches
}
fabric ink #22345c "Night"
fabric sand #eadfc8 "Dry"
block Four(a = ink, b = sand) 6" {
  a b
  b a
}
quilt {
  straight 2 by 3
  place { Four }
  border 1" ink
  backing sand
  binding cut 2 1/2" ink
}
size crib 3 by 4
size twin 5 by 7
colorway dawn {
  ink #ff8800 "Dawn"
}
`;

let session: Session;
let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'scant-answers-'));
  session = await startSession({ folders: [pathToFileURL(folder).href] });
});
afterAll(async () => {
  expect(session.faults).toEqual([]);
  expect(await session.stop()).toBe(0);
  rmSync(folder, { recursive: true });
});

let count = 0;
function opened(text: string): string {
  const path = join(folder, `a${(count += 1)}.quilt`);
  writeFileSync(path, text);
  const uri = pathToFileURL(path).href;
  session.open(uri, text);
  return uri;
}

const at = (line: number, character: number): { line: number; character: number } => ({ line, character });

describe('the protocol', () => {
  test('a hover says the cut size', async () => {
    const uri = opened(PATTERN);
    const hover = await session.request('textDocument/hover', { textDocument: { uri }, position: at(6, 2) });
    expect((hover?.contents as MarkupContent).value).toContain('Cut: **3 1/2" square**');
    expect(hover?.range).toEqual({ start: at(6, 2), end: at(6, 3) });
  });

  test('symbols are nested', async () => {
    const uri = opened(PATTERN);
    const symbols = (await session.request('textDocument/documentSymbol', { textDocument: { uri } })) as DocumentSymbol[];
    expect(symbols.map(({ name }) => name)).toEqual(['Harbour & Sons', 'ink', 'sand', 'Four', 'quilt', 'crib', 'twin', 'dawn']);
    expect(symbols[4]?.children?.map(({ name }) => name)).toEqual(['straight', 'place', 'border', 'backing', 'binding']);
  });

  test('formatting edits lead to a text that needs none', async () => {
    const uri = opened(PATTERN.replace('  a b\n', '       a      b\n').replace('straight', '      straight'));
    const options = { tabSize: 2, insertSpaces: true };
    const edits = await session.request('textDocument/formatting', { textDocument: { uri }, options });
    expect(edits?.map(({ range }) => range.start.line)).toEqual(expect.arrayContaining([6, 10]));
    session.edit(uri, ...(edits ?? []).toReversed().map(({ range, newText }) => ({ ...range, text: newText })));
    expect(await session.request('textDocument/formatting', { textDocument: { uri }, options })).toEqual([]);
    session.edit(uri, { start: at(10, 0), end: at(10, 0), text: '   ' });
    const near = await session.request('textDocument/rangeFormatting', { textDocument: { uri }, options, range: { start: at(0, 0), end: at(3, 0) } });
    expect(near).toEqual([]);
  });

  test('a quick fix mends the text it was made for', async () => {
    const uri = opened(PATTERN.replace('backing sand', 'backing snad'));
    const [problem] = await session.diagnostics(uri);
    const range = problem?.range ?? { start: at(0, 0), end: at(0, 0) };
    const actions = (await session.request('textDocument/codeAction', { textDocument: { uri }, range, context: { diagnostics: problem ? [problem] : [] } })) as CodeAction[];
    expect(actions[0]).toMatchObject({ kind: 'quickfix', isPreferred: true, diagnostics: [{ code: 'unknown-name' }] });
    const [edit] = (actions[0]?.edit?.documentChanges ?? []) as TextDocumentEdit[];
    expect(edit?.textDocument).toEqual({ uri, version: 1 });
    session.edit(uri, ...(edit?.edits ?? []).flatMap((each) => ('newText' in each ? [{ ...each.range, text: each.newText }] : [])));
    expect(await session.diagnostics(uri)).toEqual([]);
    const refactorings = await session.request('textDocument/codeAction', { textDocument: { uri }, range, context: { diagnostics: [], only: ['refactor'] } });
    expect(refactorings?.every((action) => 'kind' in action && action.kind?.startsWith('refactor') === true)).toBe(true);
    const extractions = await session.request('textDocument/codeAction', { textDocument: { uri }, range, context: { diagnostics: [], only: ['refactor.extract'] } });
    expect(extractions).toEqual([]);
  });

  test('an unused fabric is tagged and can be allowed', async () => {
    const uri = opened(PATTERN.replace('fabric sand', 'fabric rust #a4502e "Rust"\nfabric sand'));
    const [problem] = await session.diagnostics(uri);
    expect(problem).toMatchObject({ code: 'unused-fabric', tags: [1], data: { rule: 'unused-fabric' } });
    const actions = (await session.request('textDocument/codeAction', { textDocument: { uri }, range: problem?.range, context: { diagnostics: [] } })) as CodeAction[];
    const allow = actions.find(({ title }) => title.startsWith('Allow'));
    const [edit] = (allow?.edit?.documentChanges ?? []) as TextDocumentEdit[];
    session.edit(uri, ...(edit?.edits ?? []).flatMap((each) => ('newText' in each ? [{ ...each.range, text: each.newText }] : [])));
    expect(await session.diagnostics(uri)).toEqual([]);
  });

  test('related places are told', async () => {
    const uri = opened(PATTERN.replace('fabric sand', 'fabric ink #ffffff "Again"\nfabric sand'));
    const [problem] = await session.diagnostics(uri);
    expect(problem?.relatedInformation).toMatchObject([{ location: { uri, range: { start: at(3, 7), end: at(3, 10) } } }]);
  });

  test('completions take the place of the word before the cursor', async () => {
    const uri = opened(PATTERN.replace('backing sand', 'ba'));
    const items = await session.request('textDocument/completion', { textDocument: { uri }, position: at(13, 4) });
    expect(items).toContainEqual(expect.objectContaining({ label: 'backing', textEdit: { range: { start: at(13, 2), end: at(13, 4) }, newText: 'backing' } }));
  });
});

describe('pictures', () => {
  test('what is shown first, a size, and a colourway', async () => {
    const uri = opened(PATTERN);
    const first = await session.request('scant/preview', { uri });
    expect(first).toMatchObject({ version: 1, title: 'Harbour & Sons', width: 14, height: 20, kind: 'quilt', errors: 0, partial: false, sizes: ['crib', 'twin'], colorways: ['dawn'], size: null, colorway: null });
    expect(first?.svg).toContain('#22345c');
    const twin = await session.request('scant/preview', { uri, size: 'twin', colorway: 'dawn' });
    expect(twin).toMatchObject({ width: 32, height: 44, size: 'twin', colorway: 'dawn' });
    expect(twin?.svg).toContain('#ff8800');
    expect(await session.request('scant/preview', { uri, size: 'queen', colorway: 'dusk' })).toEqual(first);
  });

  test('an edit gives another version and picture, an error leaves what resolves', async () => {
    const uri = opened(PATTERN);
    session.edit(uri, { start: at(6, 2), end: at(6, 3), text: 'oops' });
    expect(await session.request('scant/preview', { uri })).toMatchObject({ version: 2, width: 14, height: 20, errors: 1, partial: true });
    session.edit(uri, { start: at(6, 2), end: at(6, 6), text: 'a' });
    expect(await session.request('scant/preview', { uri })).toMatchObject({ version: 3, errors: 0, partial: false });
  });

  test('an expectation that fails takes nothing out of the picture', async () => {
    const uri = opened(`${PATTERN}expect width at most 3"\n`);
    expect(await session.request('scant/preview', { uri })).toMatchObject({ errors: 2, partial: false });
  });

  test('a file without a quilt shows its blocks, with their names', async () => {
    const uri = opened('fabric ink #22345c "Night"\nblock One 6" { ink }\nblock Two 3" { ink ink }\n');
    const preview = await session.request('scant/preview', { uri });
    expect(preview).toMatchObject({ kind: 'blocks', labels: [{ text: 'One' }, { text: 'Two' }] });
    expect(preview?.width).toBeGreaterThan(9);
    const texts = await session.request('scant/textAt', { uri, x: 1, y: 1 });
    expect(texts.map(({ range }) => range.start)).toEqual([at(1, 15), at(1, 6)]);
  });

  test('an empty file has no picture', async () => {
    const uri = opened('');
    expect(await session.request('scant/preview', { uri })).toMatchObject({ svg: null, width: 0, height: 0, errors: 0, title: '' });
    expect(await session.request('scant/textAt', { uri, x: 0, y: 0 })).toEqual([]);
    expect(await session.request('scant/shapesAt', { uri, position: at(0, 0) })).toEqual({ version: 1, path: '', block: null });
  });

  test('a point leads to its cell, then to the block that stands there', async () => {
    const uri = opened(PATTERN);
    const texts = await session.request('scant/textAt', { uri, x: 1.5, y: 1.5 });
    expect(texts.map(({ range }) => range)).toEqual([{ start: at(6, 2), end: at(6, 3) }, { start: at(11, 10), end: at(11, 14) }]);
    const border = await session.request('scant/textAt', { uri, x: 7, y: 0.5 });
    expect(border[0]?.range.start.line).toBe(12);
    expect(await session.request('scant/textAt', { uri, x: -1, y: 900 })).toEqual([]);
  });

  test('a cell leads to all of its places, a heading to all of its block', async () => {
    const uri = opened(PATTERN);
    const cell = await session.request('scant/shapesAt', { uri, position: at(6, 2) });
    expect(cell?.path.match(/M/g)?.length).toBe(6);
    const heading = await session.request('scant/shapesAt', { uri, position: at(5, 7) });
    expect(heading?.path.match(/M/g)?.length).toBe(24);
    const placed = await session.request('scant/shapesAt', { uri, position: at(11, 11) });
    expect(placed?.path.match(/M/g)?.length).toBe(6);
    const twin = await session.request('scant/shapesAt', { uri, position: at(6, 2), size: 'twin' });
    expect(twin?.path.match(/M/g)?.length).toBe(35);
    expect((await session.request('scant/shapesAt', { uri, position: at(4, 0) }))?.path).toBe('');
  });

  test('every view is drawn, with what stands beside it', async () => {
    const uri = opened(PATTERN);
    const { views = [] } = (await session.request('scant/preview', { uri })) ?? {};
    expect(views.length).toBeGreaterThanOrEqual(10);
    for (const { name } of views) {
      const preview = await session.request('scant/preview', { uri, view: name, position: at(6, 2) });
      expect(preview, name).toMatchObject({ view: name, kind: 'quilt' });
      expect(preview?.svg, name).toContain('<svg');
    }
    expect(await session.request('scant/preview', { uri, view: 'block', position: at(6, 2) })).toMatchObject({ block: 'Four', table: { caption: 'Cut for one block' } });
    expect(await session.request('scant/shapesAt', { uri, view: 'block', position: at(6, 2) })).toMatchObject({ block: 'Four' });
    expect(await session.request('scant/preview', { uri, view: 'no such view' })).toMatchObject({ view: 'whole' });
  });

  test('a tile is written as edits of the version it was drawn from', async () => {
    const uri = opened(PATTERN);
    const sheet = await session.request('scant/preview', { uri, view: 'settings' });
    expect(sheet?.tiles.length).toBeGreaterThanOrEqual(12);
    const written = await session.request('scant/write', { uri, view: 'settings', tile: 'point' });
    expect(written).toMatchObject({ uri, version: 1, colorway: null });
    expect(written?.edits.map(({ text }) => text).join('')).toContain('on_point');
    for (const { range, text } of [...(written?.edits ?? [])].reverse()) session.edit(uri, { ...range, text });
    const after = await session.request('scant/preview', { uri, view: 'settings' });
    expect(after?.tiles.find(({ id }) => id === 'point')?.isSet).toBe(true);
    const colours = await session.request('scant/preview', { uri, view: 'fabrics' });
    const colorway = await session.request('scant/write', { uri, view: 'fabrics', tile: colours?.tiles.find(({ isSet }) => !isSet)?.id ?? '' });
    expect(colorway?.colorway ?? null).toBe(colorway ? 'exchange' : null);
    expect(await session.request('scant/write', { uri, view: 'whole', tile: 'point' })).toBeNull();
    expect(await session.request('scant/write', { uri: 'file:///nowhere.quilt', view: 'settings', tile: 'point' })).toBeNull();
  });

  test('what is shown can be kept', async () => {
    const uri = opened(PATTERN);
    const kept = await session.request('scant/export', { uri, view: 'sizes' });
    expect(kept).toMatchObject({ name: 'sizes' });
    expect(kept?.svg).toContain('<text');
    expect(kept?.html).toContain('What each size takes');
    expect(await session.request('scant/export', { uri: opened(''), view: 'whole' })).toBeNull();
  });

  test('every edit is announced', async () => {
    const uri = opened(PATTERN);
    await session.hear('scant/changed', ({ uris }) => uris.includes(uri));
  });
});

describe('outputs', () => {
  test('are written beside the file, once', async () => {
    const uri = opened(PATTERN);
    const some = await session.request('scant/build', { uri, what: 'preview_and_cut_list' });
    expect(some.refused).toBeNull();
    expect(some.written.filter((path) => !/(\.svg|cutting\.(md|csv))$/.test(path))).toEqual([]);
    const all = await session.request('scant/build', { uri, what: 'everything' });
    expect(all.written.filter((path) => some.written.includes(path))).toEqual([]);
    expect(all.unchanged).toBe(some.written.length);
    const again = await session.request('scant/build', { uri, what: 'everything' });
    expect(again).toEqual({ ...all, written: [], unchanged: all.unchanged + all.written.length });
    const out = new URL(`${all.folder ?? ''}/`);
    expect(readdirSync(out).toSorted()).toEqual(expect.arrayContaining(['crib', 'twin']));
    expect(readFileSync(new URL('crib/cutting.md', out), 'utf8')).toContain('ink');
  });

  test('of a save come in two goes: preview and cut list, then all the rest from another process', async () => {
    const uri = opened(PATTERN);
    const { folder, written, refused } = await session.request('scant/build', { uri, what: 'on_save' });
    expect(refused).toBeNull();
    expect(written.filter((path) => !/(\.svg|cutting\.(md|csv))$/.test(path))).toEqual([]);
    await expect.poll(() => existsSync(new URL('twin/booklet.pdf', `${folder ?? ''}/`)), { timeout: 25_000 }).toBe(true);
  });

  test('are refused for a text with errors, and what was there stays', async () => {
    const uri = opened(PATTERN);
    const before = await session.request('scant/build', { uri, what: 'everything' });
    session.edit(uri, { start: at(6, 2), end: at(6, 3), text: 'oops' });
    const refused = await session.request('scant/build', { uri, what: 'everything' });
    expect(refused).toMatchObject({ folder: before.folder, written: [], refused: { why: 'errors' } });
    expect(readdirSync(new URL(before.folder ?? '')).length).toBeGreaterThan(0);
  });
});

test('every rule has a page', async () => {
  const { rules, markdown } = await session.request('scant/explain', {});
  expect(markdown).toBeNull();
  expect(rules.map(({ id }) => id)).toEqual(RULES.map(({ id }) => id));
  for (const { id, title } of rules) expect((await session.request('scant/explain', { rule: id })).markdown).toContain(title);
  expect((await session.request('scant/explain', { rule: '../etc/passwd' })).markdown).toBeNull();
});
