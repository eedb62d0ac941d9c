/** Problems of the whole workspace: files that nobody has open, told when there is news of them, and not before. */
import { mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { WorkspaceDiagnosticReport } from 'vscode-languageserver-protocol';
import { startSession, type Session } from './client.ts';

const GOOD = 'fabric ink #22345c "Ink"\nblock Buoy 6" {\n  ink ink\n}\nquilt {\n  straight 1 by 1\n  place { Buoy }\n  binding cut 2 1/4" ink\n}\n';
const BAD = GOOD.replace('ink ink', 'ink lost');

let folder: string;
let session: Session;
const uriOf = (name: string): string => pathToFileURL(join(folder, name)).href;
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);
const moved = (name: string, type: 1 | 2 | 3): void => session.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: uriOf(name), type }] });

beforeEach(async () => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'scant-workspace-')));
  write('good.quilt', GOOD);
  write('bad.quilt', BAD);
  write('open.quilt', BAD);
  session = await startSession({ folders: [pathToFileURL(folder).href] });
  session.open(uriOf('open.quilt'), BAD);
});
afterEach(() => {
  expect(session.faults).toEqual([]);
  session.kill();
  rmSync(folder, { recursive: true });
});

/** `bad.quilt: unknown-name`, or `bad.quilt as before`. */
function told({ items }: WorkspaceDiagnosticReport): readonly string[] {
  return items.map((item) => `${item.uri.split('/').at(-1) ?? ''}${item.kind === 'full' ? `: ${item.items.map(({ code }) => String(code)).join(' ')}` : ' as before'}`).sort();
}

function idsOf({ items }: WorkspaceDiagnosticReport): readonly { readonly uri: string; readonly value: string }[] {
  return items.flatMap(({ uri, resultId }) => (resultId === undefined ? [] : [{ uri, value: resultId }]));
}

test('every file that is not open is told of, then what is new', async () => {
  const first = await session.request('workspace/diagnostic', { previousResultIds: [] });
  expect(told(first)).toEqual(['bad.quilt: unknown-name', 'good.quilt: ']);
  const next = session.request('workspace/diagnostic', { previousResultIds: idsOf(first) });
  await session.diagnostics(uriOf('open.quilt'));
  write('bad.quilt', `${GOOD}// the lamp is lit\n`);
  moved('bad.quilt', 2);
  expect(told(await next)).toEqual(['bad.quilt: ', 'good.quilt as before']);
});

test('a file that is gone has no problems any more', async () => {
  const first = await session.request('workspace/diagnostic', { previousResultIds: [] });
  rmSync(join(folder, 'bad.quilt'));
  moved('bad.quilt', 3);
  const next = await session.request('workspace/diagnostic', { previousResultIds: idsOf(first) });
  expect(told(next)).toEqual(['bad.quilt: ', 'good.quilt as before']);
});

test('an editor that asks no more is not kept waiting for', async () => {
  const first = await session.request('workspace/diagnostic', { previousResultIds: [] });
  const { id, response } = session.respond('workspace/diagnostic', { previousResultIds: idsOf(first) });
  await session.diagnostics(uriOf('open.quilt'));
  session.notify('$/cancelRequest', { id });
  expect((await response).error?.code).toBe(-32800);
});
