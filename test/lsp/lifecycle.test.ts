import { afterEach, expect, test } from 'vitest';
import { PULLS, PUSHED, greeting, startSession, type Session, type SessionOptions } from './client.ts';

const sessions: Session[] = [];
afterEach(() => {
  for (const session of sessions.splice(0)) {
    expect(session.faults).toEqual([]);
    session.kill();
  }
});

async function start(options: SessionOptions = {}): Promise<Session> {
  const session = await startSession(options);
  sessions.push(session);
  return session;
}

test('announces what it can do, and pull diagnostics only to those who pull', async () => {
  const pulling = await start({ greeting: 'none' });
  const { capabilities } = await pulling.request('initialize', greeting({}));
  expect(capabilities.positionEncoding).toBe('utf-16');
  expect(capabilities.diagnosticProvider).toMatchObject({ interFileDependencies: true, workspaceDiagnostics: true });
  const waiting = await start({ greeting: 'none' });
  expect((await waiting.request('initialize', greeting({ capabilities: PUSHED }))).capabilities.diagnosticProvider).toBeUndefined();
});

test('nothing is answered before initialize', async () => {
  const session = await start({ greeting: 'none' });
  for (const method of ['textDocument/hover', 'scant/preview', 'shutdown/late', 'textDocument/diagnostic']) {
    const { error } = await session.respond(method, { textDocument: { uri: 'file:///a.quilt' }, position: { line: 0, character: 0 } }).response;
    expect([method, error?.code]).toEqual([method, -32002]);
  }
  session.notify('textDocument/didOpen', { textDocument: { uri: 'file:///a.quilt', languageId: 'quilt', version: 1, text: '}}' } });
  await session.request('initialize', greeting({}));
  session.notify('initialized', {});
  expect(await session.diagnostics('file:///a.quilt')).toEqual([]);
});

test('a second initialize is refused', async () => {
  const session = await start();
  expect((await session.respond('initialize', greeting({})).response).error?.code).toBe(-32600);
  session.open('file:///a.quilt', '}\n');
  expect((await session.diagnostics('file:///a.quilt')).length).toBe(1);
});

test('after shutdown nothing is answered, and exit ends with 0', async () => {
  const session = await start();
  expect((await session.respond('shutdown', undefined).response).error).toBeUndefined();
  const { error } = await session.respond('textDocument/hover', { textDocument: { uri: 'file:///a.quilt' }, position: { line: 0, character: 0 } }).response;
  expect(error?.code).toBe(-32600);
  session.notify('exit', undefined);
  expect(await session.ended).toBe(0);
});

test('exit without shutdown ends with 1', async () => {
  const session = await start();
  session.notify('exit', undefined);
  expect(await session.ended).toBe(1);
});

test('an unknown request is refused and an unknown notification passed over', async () => {
  const session = await start();
  expect((await session.respond('quilt/unknown', {}).response).error?.code).toBe(-32601);
  session.notify('quilt/unknown', {});
  session.notify('$/unknown', {});
  expect(await session.request('textDocument/hover', { textDocument: { uri: 'file:///a.quilt' }, position: { line: 0, character: 0 } })).toBeNull();
});

test('a file that is neither open nor there has nothing', async () => {
  const session = await start();
  const textDocument = { uri: 'file:///nowhere/at/all.quilt' };
  const position = { line: 3, character: 7 };
  const range = { start: position, end: position };
  expect(await session.diagnostics(textDocument.uri)).toEqual([]);
  expect(await session.request('textDocument/documentSymbol', { textDocument })).toBeNull();
  expect(await session.request('textDocument/formatting', { textDocument, options: { tabSize: 2, insertSpaces: true } })).toBeNull();
  expect(await session.request('textDocument/codeAction', { textDocument, range, context: { diagnostics: [] } })).toBeNull();
  expect(await session.request('textDocument/completion', { textDocument, position })).toBeNull();
  expect(await session.request('scant/preview', textDocument)).toBeNull();
  expect(await session.request('scant/shapesAt', { ...textDocument, position })).toBeNull();
  expect(await session.request('scant/textAt', { ...textDocument, x: 1, y: 1 })).toEqual([]);
  expect((await session.request('scant/build', { ...textDocument, what: 'everything' })).refused?.why).toBe('unknown');
  expect(await session.request('scant/preview', { uri: 'not a uri' })).toBeNull();
});

test('settings are asked for, and taken at once', async () => {
  const session = await start({ settings: { hints: false }, capabilities: PULLS });
  await session.hear('scant/changed', () => true).catch(() => undefined);
  expect(session.asked.find(({ method }) => method === 'workspace/configuration')?.params).toEqual({ items: [{ section: 'scant' }] });
  session.open('file:///a.quilt', 'fabric ink #22345c "Night"\nfabric rust #a4502e "Rust"\nblock A 6" { ink }\nquilt {\n straight 1 by 1\n place { A }\n}\n');
  expect((await session.diagnostics('file:///a.quilt')).filter(({ severity }) => severity === 4)).toEqual([]);
});

test('malformed parameters are answered, and the server goes on', async () => {
  const session = await start();
  for (const params of [{}, { textDocument: null }, { textDocument: { uri: 7 } }, { textDocument: { uri: 'file:///a' }, position: null }]) {
    for (const method of ['textDocument/hover', 'textDocument/diagnostic', 'scant/preview', 'scant/textAt', 'textDocument/codeAction']) await session.respond(method, params).response;
    session.notify('textDocument/didChange', params);
    session.notify('textDocument/didOpen', params);
  }
  session.open('file:///b.quilt', '}\n');
  expect((await session.diagnostics('file:///b.quilt')).length).toBe(1);
});
