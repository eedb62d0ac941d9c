import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver-protocol';
import { PUSHED, pushed, startSession, type Sent, type Session } from './client.ts';

const GOOD = `fabric ink #22345c "Night"
fabric sand #eadfc8 "Dry"
block Four(a = ink, b = sand) 6" {
  a b
  b a
}
quilt {
  straight 2 by 2
  place { Four }
}
`;

let session: Session;
beforeAll(async () => {
  session = await startSession();
});
afterAll(async () => {
  expect(session.faults).toEqual([]);
  expect(await session.stop()).toBe(0);
});

let count = 0;
function opened(text: string): string {
  const uri = `file:///texts/${(count += 1)}.quilt`;
  session.open(uri, text);
  return uri;
}

const at = (line: number, character: number): { line: number; character: number } => ({ line, character });
const messages = async (uri: string): Promise<readonly string[]> => (await session.diagnostics(uri)).map(({ code, message }) => `${String(code)}: ${typeof message === 'string' ? message : message.value}`);

describe('edits', () => {
  test('a good pattern has no problem; one letter more has one, at its place; taken back it has none', async () => {
    const uri = opened(GOOD);
    expect(await messages(uri)).toEqual([]);
    session.edit(uri, { start: at(3, 3), end: at(3, 3), text: 'x' });
    const [problem, ...others] = await session.diagnostics(uri);
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ code: 'unknown-name', source: 'scant', severity: 1, range: { start: at(3, 2), end: at(3, 4) }, codeDescription: { href: 'scant-rule:/unknown-name.md' } });
    session.edit(uri, { start: at(3, 3), end: at(3, 4), text: '' });
    expect(await messages(uri)).toEqual([]);
  });

  test.each([['LF', '\n'], ['CRLF', '\r\n'], ['CR', '\r']])('%s line ends give the same places', async (_, eol) => {
    const uri = opened(GOOD.replace('a b\n', 'a bad\n').replaceAll('\n', eol));
    const [problem] = await session.diagnostics(uri);
    expect(problem?.range).toEqual({ start: at(3, 4), end: at(3, 7) });
    session.edit(uri, { start: at(3, 5), end: at(3, 99), text: '' });
    expect(await messages(uri)).toEqual([]);
  });

  test('a line end is halved, joined and removed', async () => {
    const uri = opened(GOOD.replaceAll('\n', '\r\n'));
    session.edit(uri, { start: at(0, 99), end: at(1, 0), text: '\r' });
    session.edit(uri, { start: at(1, 0), end: at(1, 0), text: '\n' });
    expect(await messages(uri)).toEqual([]);
    session.edit(uri, { start: at(3, 5), end: at(4, 0), text: '' });
    expect((await messages(uri)).length).toBe(0);
    session.edit(uri, { start: at(3, 8), end: at(3, 8), text: '\r\n' });
    expect(await messages(uri)).toEqual([expect.stringMatching(/^row-length/)]);
    session.edit(uri, { start: at(3, 8), end: at(4, 0), text: '' }, { start: at(3, 5), end: at(3, 5), text: '\n' });
    expect(await messages(uri)).toEqual([]);
  });

  test('columns count UTF-16 units, and an edit may halve a pair', async () => {
    const uri = opened(GOOD.replace('"Night"', '"N🧵ight"').replace('  b a\n', '  b oops // 🧵\n'));
    const [problem] = await session.diagnostics(uri);
    expect(problem?.range).toEqual({ start: at(4, 4), end: at(4, 8) });
    session.edit(uri, { start: at(0, 22), end: at(0, 22), text: 'x' });
    session.edit(uri, { start: at(0, 21), end: at(0, 22), text: '' });
    expect((await session.diagnostics(uri)).map(({ range }) => range)).toContainEqual({ start: at(4, 4), end: at(4, 8) });
    session.edit(uri, { start: at(4, 4), end: at(4, 8), text: 'a' });
    expect((await messages(uri)).filter((message) => message.startsWith('unknown-name'))).toEqual([]);
    const hover: Hover | null = await session.request('textDocument/hover', { textDocument: { uri }, position: at(0, 8) });
    expect((hover?.contents as MarkupContent).value).toMatch(/fabric ink/);
  });

  test('several changes in one notification count one after the other', async () => {
    const uri = opened(GOOD);
    session.edit(uri, { start: at(0, 0), end: at(0, 0), text: 'let u = 3"\n' }, { start: at(3, 30), end: at(3, 32), text: '(u*2)' });
    expect(await messages(uri)).toEqual([]);
  });

  test('the whole text at once', async () => {
    const uri = opened('}}');
    session.notify('textDocument/didChange', { textDocument: { uri, version: 9 }, contentChanges: [{ text: GOOD }] });
    expect(await messages(uri)).toEqual([]);
  });

  test('positions outside the text are moved into it', async () => {
    const uri = opened(GOOD);
    session.edit(uri, { start: at(99, 99), end: at(200, 0), text: 'fabric' });
    expect((await messages(uri)).length).toBeGreaterThan(0);
    expect(await session.request('textDocument/hover', { textDocument: { uri }, position: at(500, 500) })).toBeNull();
  });
});

describe('pull', () => {
  test('an unchanged text has an unchanged report', async () => {
    const uri = opened(GOOD.replace('a b', 'a bad'));
    const first = await session.request('textDocument/diagnostic', { textDocument: { uri } });
    const again = await session.request('textDocument/diagnostic', { textDocument: { uri }, previousResultId: first.resultId });
    expect(again).toEqual({ kind: 'unchanged', resultId: first.resultId });
    session.edit(uri, { start: at(0, 0), end: at(0, 0), text: '// more\n' });
    const later = await session.request('textDocument/diagnostic', { textDocument: { uri }, previousResultId: first.resultId });
    expect(later).toMatchObject({ kind: 'full', items: [{ range: { start: at(4, 4) } }] });
  });

  test('a closed text has nothing, and opens again as it is', async () => {
    const uri = opened('}');
    expect((await messages(uri)).length).toBe(1);
    session.close(uri);
    expect(await messages(uri)).toEqual([]);
    session.open(uri, GOOD);
    expect(await messages(uri)).toEqual([]);
  });

  test('an untitled text works, and what it imports is missing', async () => {
    session.open('untitled:Untitled-1', `import "blocks.quilt"\n${GOOD}`);
    expect(await messages('untitled:Untitled-1')).toEqual([expect.stringMatching(/^import-missing/)]);
    expect((await session.request('scant/preview', { uri: 'untitled:Untitled-1' }))?.svg).toMatch(/^<svg/);
    expect((await session.request('scant/build', { uri: 'untitled:Untitled-1', what: 'everything' })).refused?.why).toBe('unsaved');
  });

  test('a cancelled request is answered as cancelled, and the next one is right', async () => {
    const uri = opened(GOOD.repeat(30));
    const ask = (): Sent => session.respond('textDocument/diagnostic', { textDocument: { uri } });
    const sent = session.together(() => Array.from({ length: 10 }, () => {
      const { id, response } = ask();
      session.notify('$/cancelRequest', { id });
      return response;
    }));
    const codes = (await Promise.all(sent)).map(({ error }) => error?.code);
    expect(codes.filter((code) => code === -32800).length).toBeGreaterThan(5);
    expect((await messages(uri)).length).toBeGreaterThan(0);
  });

  test('a question about a text that changes before its answer is not answered from the old one', async () => {
    const uri = opened(GOOD);
    const { response } = session.together(() => {
      const sent = session.respond('textDocument/hover', { textDocument: { uri }, position: at(0, 8) });
      session.edit(uri, { start: at(0, 0), end: at(0, 0), text: '\n\n\n' });
      return sent;
    });
    const { error, result } = await response;
    expect([error?.code, result]).toEqual([-32801, undefined]);
  });
});

describe('push, for editors that do not pull', () => {
  let waiting: Session;
  beforeAll(async () => {
    waiting = await startSession({ capabilities: PUSHED, initializationOptions: {} });
  });
  afterAll(async () => {
    expect(waiting.faults).toEqual([]);
    expect(await waiting.stop()).toBe(0);
  });

  test('problems come with the version they belong to, the newest last, and go when the file is closed', async () => {
    const uri = 'file:///pushed/a.quilt';
    waiting.open(uri, GOOD);
    await waiting.hear('textDocument/publishDiagnostics', (params) => params.uri === uri && params.version === 1 && params.diagnostics.length === 0);
    for (const text of ['}', ' ', '}', ' ', '}']) waiting.edit(uri, { start: at(0, 0), end: at(0, 0), text: `${text}\n` });
    await waiting.hear('textDocument/publishDiagnostics', (params) => params.uri === uri && params.version === 6);
    expect(pushed(waiting, uri)?.diagnostics.map(({ range }) => range.start.line)).toEqual([0, 2, 4]);
    waiting.close(uri);
    await waiting.hear('textDocument/publishDiagnostics', (params) => params.uri === uri && params.version === undefined);
    expect(pushed(waiting, uri)?.diagnostics).toEqual([]);
  });

  test('an editor that is not ours hears nothing of our own, and gets plain text', async () => {
    const uri = 'file:///pushed/b.quilt';
    waiting.open(uri, GOOD);
    const hover = await waiting.request('textDocument/hover', { textDocument: { uri }, position: at(0, 8) });
    expect(hover?.contents).toMatchObject({ kind: 'plaintext' });
    const symbols = await waiting.request('textDocument/documentSymbol', { textDocument: { uri } }).catch((error: unknown) => String(error));
    expect(JSON.stringify(symbols)).toContain('Four');
    expect(waiting.told.filter(({ method }) => method.startsWith('scant/'))).toEqual([]);
    expect(waiting.asked).toEqual([]);
  });
});
