/** The language service over a real connection, request by request; every message is held against the official types. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CodeAction, CompletionItem, Location, MarkupContent, Position, SemanticTokens, SemanticTokensDelta, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { PULLS, startSession, type Session } from './client.ts';

const BLOCKS = 'fabric rust #a4502e "Rust"\nblock Star(a, b = rust) 6" {\n  a b\n  b a/b\n}\n';
const PATTERN = `import "lib/blocks.quilt" as lib
fabric ink  #22345c "Night"
fabric sand #eadfc8 "Dry"
block Four(top = ink, b = sand) 6" { // allow unused-block
  top b
  b   (top|b)-(b|top)
}
quilt {
  straight 2 by 3
  place { Four lib.Star(ink) }
  border 1" ink
  backing sand
}
size crib 3 by 4
steps {
  "Sew {Four.count} of them."
}
`;

const FULL = {
  ...PULLS,
  workspace: { ...PULLS.workspace, inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true } },
  textDocument: { ...PULLS.textDocument, completion: { completionItem: { snippetSupport: true } } },
};

let session: Session;
let folder: string;
let uri: string;
let library: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'scant-service-'));
  mkdirSync(join(folder, 'lib'));
  writeFileSync(join(folder, 'lib', 'blocks.quilt'), BLOCKS);
  writeFileSync(join(folder, 'a.quilt'), PATTERN);
  uri = pathToFileURL(join(folder, 'a.quilt')).href;
  library = pathToFileURL(join(folder, 'lib', 'blocks.quilt')).href;
  session = await startSession({ folders: [pathToFileURL(folder).href], capabilities: FULL, settings: { annotations: true } });
  session.open(uri, PATTERN);
});
afterAll(async () => {
  expect(session.faults).toEqual([]);
  expect(await session.stop()).toBe(0);
  rmSync(folder, { recursive: true });
});

/** Where a text stands in the pattern, its first letter; `after` counts further. */
function at(text: string, after = 0): Position {
  const index = PATTERN.indexOf(text) + after;
  const before = PATTERN.slice(0, index).split('\n');
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
}

const here = (text: string, after = 0): { textDocument: { uri: string }; position: Position } => ({ textDocument: { uri }, position: at(text, after) });

describe('names', () => {
  test('a definition in another file', async () => {
    const found = (await session.request('textDocument/definition', here('Star'))) as Location;
    expect(found).toEqual({ uri: library, range: { start: { line: 1, character: 6 }, end: { line: 1, character: 10 } } });
  });
  test('a word of wording leads nowhere', async () => {
    expect(await session.request('textDocument/definition', here('Sew'))).toBeNull();
  });
  test('uses in every file, told from either end', async () => {
    const uses = await session.request('textDocument/references', { ...here('Star'), context: { includeDeclaration: true } });
    expect(uses?.map((each) => each.uri).toSorted()).toEqual([uri, library].toSorted());
    const again = await session.request('textDocument/references', { textDocument: { uri: library }, position: { line: 1, character: 8 }, context: { includeDeclaration: false } });
    expect(again?.map((each) => each.uri)).toEqual([uri]);
  });
  test('highlights tell the declaration', async () => {
    const marks = await session.request('textDocument/documentHighlight', here('top', 1));
    expect(marks?.map(({ kind }) => kind)).toEqual([3, 2, 2, 2]);
  });
  test('a name is renamed in both files; open ones with their version, closed ones without', async () => {
    expect(await session.request('textDocument/prepareRename', here('Star', 2))).toMatchObject({ placeholder: 'Star' });
    const edit = await session.request('textDocument/rename', { ...here('Star'), newName: 'Sun' });
    const changes = (edit?.documentChanges ?? []) as TextDocumentEdit[];
    expect(changes.map(({ textDocument, edits }) => [textDocument.uri, textDocument.version, edits.length]).toSorted()).toEqual([[uri, 1, 1], [library, null, 1]].toSorted());
  });
  test('what would mean something else is refused, with the reason', async () => {
    const { error } = await session.respond('textDocument/rename', { ...here('ink'), newName: 'quilt' }).response;
    expect(error).toMatchObject({ code: -32803, message: '`quilt` is a word of the language and cannot be a name.' });
    expect(await session.request('textDocument/prepareRename', here('straight'))).toBeNull();
  });
  test('names of the whole workspace, with progress', async () => {
    const found = await session.request('workspace/symbol', { query: 'str', workDoneToken: 'p1' });
    expect(found?.map(({ name, containerName }) => [name, containerName])).toEqual([['Star', 'blocks.quilt']]);
    const told = session.told.filter(({ method }) => method === '$/progress').map(({ params }) => (params as { value: { kind: string } }).value.kind);
    expect([told[0], told.at(-1)]).toEqual(['begin', 'end']);
  });
  test('a renamed file takes the imports of it along', async () => {
    const moved = await session.request('workspace/willRenameFiles', { files: [{ oldUri: library, newUri: library.replace('blocks', 'stars') }] });
    const [change] = (moved?.documentChanges ?? []) as TextDocumentEdit[];
    expect(change?.edits).toMatchObject([{ newText: '"lib/stars.quilt"', range: { start: at('"lib') } }]);
    const folderMoved = (await session.request('workspace/willRenameFiles', { files: [{ oldUri: pathToFileURL(join(folder, 'lib')).href, newUri: pathToFileURL(join(folder, 'parts')).href }] }));
    expect(JSON.stringify(folderMoved)).toContain('parts/blocks.quilt');
  });
});

describe('looks', () => {
  test('colours of names: whole, in part, and what changed', async () => {
    const whole = (await session.request('textDocument/semanticTokens/full', { textDocument: { uri } })) as SemanticTokens;
    expect(whole.data.length % 5).toBe(0);
    const part = await session.request('textDocument/semanticTokens/range', { textDocument: { uri }, range: { start: at('block Four'), end: at('  top b') } });
    expect(part?.data.length).toBeGreaterThan(10);
    session.edit(uri, { start: { line: 0, character: 0 }, end: { line: 0, character: 0 }, text: '// one more\n' });
    const delta = (await session.request('textDocument/semanticTokens/full/delta', { textDocument: { uri }, previousResultId: whole.resultId ?? '' })) as SemanticTokensDelta;
    expect(delta.edits).toEqual([{ start: 0, deleteCount: 1, data: [1] }]);
    session.edit(uri, { start: { line: 0, character: 0 }, end: { line: 1, character: 0 }, text: '' });
    expect(await session.request('textDocument/semanticTokens/full/delta', { textDocument: { uri }, previousResultId: 'lost' })).toMatchObject({ data: whole.data });
  });
  test('swatches and the picker', async () => {
    const [first] = await session.request('textDocument/documentColor', { textDocument: { uri } });
    expect(first?.range.start).toEqual(at('#22345c'));
    const [given] = await session.request('textDocument/colorPresentation', { textDocument: { uri }, color: { red: 1, green: 0.5, blue: 0, alpha: 0.3 }, range: first?.range });
    expect(given).toMatchObject({ label: '#ff8000', textEdit: { newText: '#ff8000', range: first?.range } });
  });
  test('folds, selections, links', async () => {
    expect((await session.request('textDocument/foldingRange', { textDocument: { uri } }))?.map(({ startLine, endLine }) => [startLine, endLine])).toEqual([[3, 5], [7, 11], [14, 15]]);
    const [chain] = (await session.request('textDocument/selectionRange', { textDocument: { uri }, positions: [at('(top|b)', 2)] })) ?? [];
    expect(chain?.range).toEqual({ start: at('(top|b)', 1), end: at('(top|b)', 4) });
    expect(chain?.parent?.parent).toBeDefined();
    const links = await session.request('textDocument/documentLink', { textDocument: { uri } });
    expect(links?.map(({ target }) => target)).toEqual([library, 'scant-rule:/unused-block.md']);
  });
  test('figures where they are asked for', async () => {
    const hints = await session.request('textDocument/inlayHint', { textDocument: { uri }, range: { start: at('import'), end: at('quilt {') } });
    expect(hints?.map(({ label }) => label)).toContain('7 patches');
    const lenses = await session.request('textDocument/codeLens', { textDocument: { uri } });
    expect(lenses?.map(({ command }) => command?.command)).toContain('scant.openPreview');
    expect(lenses?.map(({ command }) => command?.title).join('\n')).toMatch(/20" by 26", \d+ patches, .* yd/);
  });
  test('an editor that does not ask for figures gets none', async () => {
    const quiet = await startSession({});
    quiet.open(uri, PATTERN);
    expect(await quiet.request('textDocument/inlayHint', { textDocument: { uri }, range: { start: at('import'), end: at('quilt {') } })).toBeNull();
    expect(await quiet.request('textDocument/codeLens', { textDocument: { uri } })).toBeNull();
    expect(quiet.faults).toEqual([]);
    await quiet.stop();
  });
});

describe('writing', () => {
  test('a block shows its drawing when it is looked at', async () => {
    const items = (await session.request('textDocument/completion', here('Four lib'))) as CompletionItem[];
    const item = items.find(({ label }) => label === 'nine_patch');
    expect(item).toMatchObject({ insertTextFormat: 2, textEdit: { newText: 'nine_patch(${1:a}, ${2:b})' } });
    const looked = await session.request('completionItem/resolve', item);
    expect((looked.documentation as MarkupContent).value).toContain('](data:image/svg+xml;base64,');
    expect(items.find(({ label }) => label === 'ink')).toMatchObject({ kind: 16, documentation: '#22345c' });
    expect(await session.request('completionItem/resolve', { label: 'x' })).toEqual({ label: 'x' });
  });
  test('the path of an import: libraries of the tool, files of the workspace', async () => {
    const items = (await session.request('textDocument/completion', here('lib/blocks.quilt'))) as CompletionItem[];
    expect(items.map(({ label }) => label)).toEqual(['traditional', 'lib/blocks.quilt']);
  });
  test('what a block is given', async () => {
    const help = await session.request('textDocument/signatureHelp', here('Star(', 5));
    expect(help?.signatures[0]).toMatchObject({ label: 'lib.Star(a, b = rust)', parameters: [{ label: [9, 10] }, { label: [12, 20] }] });
  });
  test('layout while one types', async () => {
    session.edit(uri, { start: at('  top b'), end: at('  top b'), text: '      ' });
    const edits = await session.request('textDocument/onTypeFormatting', { textDocument: { uri }, position: { line: 5, character: 0 }, ch: '\n', options: { tabSize: 2, insertSpaces: true } });
    expect(edits?.map(({ range }) => range.start.line)).toEqual([4]);
    session.edit(uri, { start: at('  top b'), end: { ...at('  top b'), character: 6 }, text: '' });
  });
  test('a refactoring gives a text in which nothing is wrong', async () => {
    const position = at('(top|b)', 7);
    const actions = (await session.request('textDocument/codeAction', { textDocument: { uri }, range: { start: position, end: position }, context: { diagnostics: [], only: ['refactor.extract'] } })) as CodeAction[];
    expect(actions.map(({ title, kind }) => [title, kind])).toEqual([['Extract a block', 'refactor.extract']]);
    const [change] = (actions[0]?.edit?.documentChanges ?? []) as TextDocumentEdit[];
    const copy = uri.replace('a.quilt', 'copy.quilt');
    session.open(copy, PATTERN);
    session.edit(copy, ...editsOf(change));
    expect((await session.diagnostics(copy)).filter(({ severity }) => (severity ?? 1) < 4)).toEqual([]);
    session.close(copy);
  });
  test('every certain fix at once', async () => {
    const other = uri.replace('a.quilt', 'other.quilt');
    session.open(other, 'fabric ink #22345c "Night"\nfabric sand #eadfc8 "Dry"\nblock A 6" {\n  inkk sandd\n}\nquilt {\n  straight 1 by 1\n  place { A }\n  bordr 1" ink\n}\n');
    const [all] = (await session.request('textDocument/codeAction', { textDocument: { uri: other }, range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, context: { diagnostics: [], only: ['source.fixAll'] } })) as CodeAction[];
    const [change] = (all?.edit?.documentChanges ?? []) as TextDocumentEdit[];
    session.edit(other, ...editsOf(change));
    expect(await session.diagnostics(other)).toEqual([]);
    session.close(other);
  });
});

describe('at a glance', () => {
  test('a pattern in a line, and row by row', async () => {
    expect((await session.request('scant/headline', { uri }))?.figures).toMatch(/^14" by 20", \d+ patches, .* yd$/);
    const summary = await session.request('scant/summary', { uri });
    expect(summary?.sizes.map(({ label }) => label)).toEqual(['crib']);
    expect(summary?.fabrics.map(({ label, colour }) => [label, colour])).toEqual([['ink', '#22345c'], ['sand', '#eadfc8']]);
    expect(summary?.blocks[0]).toMatchObject({ label: 'Four', at: { uri, range: { start: at('Four') } } });
    expect(await session.request('scant/headline', { uri: `${uri}x` })).toBeNull();
  });
  test('a fenced pattern is drawn, and its errors told by line', async () => {
    expect((await session.request('scant/draw', { text: 'fabric ink #22345c "N"\nblock A 6" { ink }\n' })).svg).toMatch(/^<svg/);
    expect((await session.request('scant/draw', { text: 'block A 6" {\n  lost\n}\n' })).errors[0]).toMatch(/^2: no fabric or block is called/);
  });
});

function editsOf(change: TextDocumentEdit | undefined): { start: Position; end: Position; text: string }[] {
  return (change?.edits ?? []).flatMap((each) => ('newText' in each ? [{ ...each.range, text: each.newText }] : [])).toReversed();
}

/** Columns as an editor counts them that counts so. */
const COUNTS = {
  'utf-8': (text: string) => Buffer.byteLength(text),
  'utf-16': (text: string) => text.length,
  'utf-32': (text: string) => Array.from(text).length,
} as const;

describe.each(Object.entries(COUNTS))('an editor that counts in %s', (encoding, count) => {
  const before = 'fabric näher𝒬 #22345c "Größe 🧵🧵"\n';
  const row = '  näher𝒬/näher𝒬  snad𝒬  Zweck';
  const text = `${before}block Zweck𝒬 6" { näher𝒬 } // ü\nblock Zwo 12" {\n${row}\n}\n`;
  const column = (line: string, upTo: number): number => count(line.slice(0, upTo));
  let own: Session;
  const file = 'file:///encoded/a.quilt';
  beforeAll(async () => {
    own = await startSession({ capabilities: { ...PULLS, general: { positionEncodings: [encoding, 'utf-16'] } } });
    own.open(file, text);
  });
  afterAll(async () => {
    expect(own.faults).toEqual([]);
    await own.stop();
  });

  test('problems, names, colours and edits are where it counts them', async () => {
    const wrong = (await own.diagnostics(file)).find(({ message }) => isAbout(message, 'snad'));
    const start = row.indexOf('snad');
    expect(wrong?.range).toEqual({ start: { line: 3, character: column(row, start) }, end: { line: 3, character: column(row, start + 'snad𝒬'.length) } });
    const second = row.indexOf('näher𝒬', 4);
    const found = await own.request('textDocument/references', { textDocument: { uri: file }, position: { line: 3, character: column(row, second + 2) }, context: { includeDeclaration: true } });
    expect(found?.map(({ range }) => [range.start.line, range.start.character, range.end.character - range.start.character])).toEqual([
      [0, 7, count('näher𝒬')], [1, column('block Zweck𝒬 6" { ', 18 + 1), count('näher𝒬')], [3, 2, count('näher𝒬')], [3, column(row, second), count('näher𝒬')],
    ]);
    const [swatch] = await own.request('textDocument/documentColor', { textDocument: { uri: file } });
    expect(swatch?.range.start.character).toBe(column(before, before.indexOf('#')));
    const tokens = await own.request('textDocument/semanticTokens/full', { textDocument: { uri: file } });
    expect(tokens?.data.slice(0, 5)).toEqual([0, 7, count('näher𝒬'), 0, 1]);
    const renamed = (await own.request('textDocument/rename', { textDocument: { uri: file }, position: { line: 0, character: 8 }, newName: 'tinte' })) as WorkspaceEdit;
    expect(JSON.stringify(renamed)).toContain(`"character":${column(row, second)}`);
  });
  test('its edits land where it means them', async () => {
    const start = column(row, row.indexOf('snad'));
    own.edit(file, { start: { line: 3, character: start }, end: { line: 3, character: start + count('snad𝒬') }, text: 'näher𝒬' });
    expect((await own.diagnostics(file)).filter(({ message }) => isAbout(message, 'snad'))).toEqual([]);
  });
});

test('a search of the workspace stops when it is told to', async () => {
  for (let index = 0; index < 200; index += 1) writeFileSync(join(folder, `many${index}.quilt`), BLOCKS.repeat(20).replaceAll('Star', `Star${index}`));
  const sent = session.respond('workspace/symbol', { query: '' });
  session.notify('$/cancelRequest', { id: sent.id });
  expect((await sent.response).error?.code).toBe(-32800);
});

function isAbout(message: string | MarkupContent, word: string): boolean {
  return (typeof message === 'string' ? message : message.value).includes(word);
}
