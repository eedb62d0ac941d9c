import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { PUSHED, pushed, startSession, type Session, type SessionOptions } from './client.ts';

const BLOCKS = 'block Four(a, b) 6" {\n  a b\n  b a\n}\n';
const USER = `import "lib/my blocks.quilt" as lib
fabric ink #22345c "Night"
fabric sand #eadfc8 "Dry"
quilt {
  straight 2 by 2
  place { lib.Four(ink, sand) }
}
`;

let folder: string;
let session: Session | undefined;
beforeEach(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'scant imports é-')));
  mkdirSync(join(folder, 'lib'));
});
afterEach(() => {
  expect(session?.faults).toEqual([]);
  session?.kill();
  rmSync(folder, { recursive: true });
});

async function start(options: SessionOptions = {}): Promise<Session> {
  session = await startSession({ folders: [pathToFileURL(folder).href], ...options });
  return session;
}

const uriOf = (name: string): string => pathToFileURL(join(folder, name)).href;
/** The same address as editors write it: more is escaped. */
const escaped = (name: string): string => uriOf(name).replaceAll('(', '%28').replace(/^file:\/\/\//, 'file:///').replaceAll('-', '%2D');
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);
const at = (line: number, character: number): { line: number; character: number } => ({ line, character });
const codes = async (one: Session, uri: string): Promise<readonly unknown[]> => (await one.diagnostics(uri)).map(({ code }) => code);
const times = (one: Session, method: string): number => [...one.asked, ...one.told].filter((each) => each.method === method).length;

test('blocks come from files on the disk', async () => {
  write('lib/my blocks.quilt', BLOCKS);
  const one = await start();
  one.open(uriOf('a.quilt'), USER);
  expect(await codes(one, uriOf('a.quilt'))).toEqual([]);
  expect(await one.request('scant/preview', { uri: uriOf('a.quilt') })).toMatchObject({ width: 12, errors: 0 });
});

test('an open editor wins over the disk, however its address is written, until it is closed', async () => {
  write('lib/my blocks.quilt', BLOCKS);
  const one = await start();
  one.open(uriOf('a.quilt'), USER);
  one.open(escaped('lib/my blocks.quilt'), BLOCKS.replace('Four', 'Five'));
  expect(await codes(one, uriOf('a.quilt'))).toContain('unknown-name');
  one.close(escaped('lib/my blocks.quilt'));
  expect(await codes(one, uriOf('a.quilt'))).toEqual([]);
});

test('importers are looked at again when an imported text is edited', async () => {
  write('lib/my blocks.quilt', BLOCKS);
  const one = await start();
  one.open(uriOf('a.quilt'), USER);
  expect(await codes(one, uriOf('a.quilt'))).toEqual([]);
  const before = times(one, 'workspace/diagnostic/refresh');
  one.open(uriOf('lib/my blocks.quilt'), BLOCKS);
  one.edit(uriOf('lib/my blocks.quilt'), { start: at(0, 6), end: at(0, 10), text: 'Five' });
  await one.hear('scant/changed', ({ uris }) => uris.includes(uriOf('a.quilt')) && uris.includes(uriOf('lib/my blocks.quilt')));
  expect(await codes(one, uriOf('a.quilt'))).toContain('unknown-name');
  expect(times(one, 'workspace/diagnostic/refresh')).toBeGreaterThan(before);
});

test('importers are looked at again when a file changes, goes and comes on the disk', async () => {
  const one = await start();
  expect(await one.request('textDocument/hover', { textDocument: { uri: 'x' }, position: at(0, 0) })).toBeNull();
  expect(one.asked.find(({ method, params }) => method === 'client/registerCapability' && JSON.stringify(params).includes('**/*.quilt'))).toBeDefined();
  one.open(uriOf('a.quilt'), USER);
  expect(await codes(one, uriOf('a.quilt'))).toContain('import-missing');
  const told = (type: number): void => one.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: uriOf('lib/my blocks.quilt'), type }] });
  write('lib/my blocks.quilt', BLOCKS);
  told(1);
  expect(await codes(one, uriOf('a.quilt'))).toEqual([]);
  write('lib/my blocks.quilt', BLOCKS.replace('Four', 'Others'));
  told(2);
  expect(await codes(one, uriOf('a.quilt'))).toContain('unknown-name');
  rmSync(join(folder, 'lib/my blocks.quilt'));
  told(3);
  expect(await codes(one, uriOf('a.quilt'))).toContain('import-missing');
  expect(times(one, 'workspace/diagnostic/refresh')).toBe(3);
});

test('pushed problems of importers are pushed again', async () => {
  write('lib/my blocks.quilt', BLOCKS);
  const one = await start({ capabilities: PUSHED });
  one.open(uriOf('a.quilt'), USER);
  await one.hear('textDocument/publishDiagnostics', ({ uri, diagnostics }) => uri === uriOf('a.quilt') && diagnostics.length === 0);
  one.open(uriOf('lib/my blocks.quilt'), BLOCKS.replace('Four', 'Five'));
  await one.hear('textDocument/publishDiagnostics', ({ uri, diagnostics }) => uri === uriOf('a.quilt') && diagnostics.length > 0);
  one.close(uriOf('a.quilt'));
  await one.hear('textDocument/publishDiagnostics', ({ uri, version }) => uri === uriOf('a.quilt') && version === undefined);
  expect(pushed(one, uriOf('a.quilt'))?.diagnostics).toEqual([]);
});

test('files outside the workspace are not read', async () => {
  const one = await start();
  one.open(uriOf('a.quilt'), `import "../other.quilt"\n${BLOCKS}`);
  expect(await codes(one, uriOf('a.quilt'))).toContain('import-missing');
});

test('a ring of imports is told, and ends', async () => {
  write('b.quilt', 'import "c.quilt"\n');
  write('c.quilt', 'import "b.quilt"\n');
  const one = await start();
  one.open(uriOf('b.quilt'), 'import "c.quilt"\n');
  expect(await codes(one, uriOf('b.quilt'))).toEqual(['import-cycle']);
  one.open(uriOf('d.quilt'), 'import "d.quilt"\n');
  expect(await codes(one, uriOf('d.quilt'))).toEqual(['import-cycle']);
});

test('a patch of an imported block leads to its file', async () => {
  write('lib/my blocks.quilt', BLOCKS);
  const one = await start();
  one.open(uriOf('a.quilt'), USER);
  const texts = await one.request('scant/textAt', { uri: uriOf('a.quilt'), x: 1, y: 1 });
  expect(texts.map(({ uri, range }) => [uri, range.start])).toEqual([
    [uriOf('lib/my blocks.quilt'), at(1, 2)],
    [uriOf('a.quilt'), at(5, 10)],
  ]);
});

test('folders come and go', async () => {
  write('lib/my blocks.quilt', BLOCKS);
  const one = await start({ folders: [pathToFileURL(join(folder, 'lib')).href] });
  one.open(uriOf('lib/a.quilt'), 'import "../b.quilt"\n');
  expect(await codes(one, uriOf('lib/a.quilt'))).toContain('import-missing');
  write('b.quilt', BLOCKS);
  one.notify('workspace/didChangeWorkspaceFolders', { event: { added: [{ uri: pathToFileURL(folder).href, name: 'all' }], removed: [] } });
  expect(await codes(one, uriOf('lib/a.quilt'))).toEqual([]);
});

test('a file that is open and not yet on the disk can be imported', async () => {
  const one = await start();
  one.open(uriOf('a.quilt'), USER);
  expect(await codes(one, uriOf('a.quilt'))).toContain('import-missing');
  one.open(uriOf('lib/my blocks.quilt'), BLOCKS);
  expect(await codes(one, uriOf('a.quilt'))).toEqual([]);
});
