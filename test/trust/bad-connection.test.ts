/** Bad input over a real connection: the server as it is shipped, with the memory of a small machine, answers about every text and goes on. */
import { readFileSync, readdirSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver-protocol';
import { startSession, type Session } from '../lsp/client.ts';
import { BAD_INPUTS, BEFORE, BEHIND, LARGE_FILES } from './bad-inputs.ts';

/** Of the heap, in MiB: a quarter of what Node takes on a machine of 4 GiB. */
const MEMORY = 512;
/** As few problems as a list can show are sent; the last of them says how many there are. */
const MOST_PROBLEMS = 1000;

let session: Session;
beforeAll(async () => {
  session = await startSession({ execArgv: [`--max-old-space-size=${MEMORY}`] });
}, 60_000);
afterAll(async () => {
  expect(session.faults).toEqual([]);
  expect(session.told.filter(({ method, params }) => method === 'window/logMessage' && (params as { type: number }).type === 1)).toEqual([]);
  const peak = peakOf(session.pid);
  expect(await session.stop()).toBe(0);
  if (peak !== undefined) console.log(`${BAD_INPUTS.length + LARGE_FILES.length} bad texts over one connection: the server took ${peak.toFixed(0)} MiB at most`);
});

test.each(BAD_INPUTS)('$name', async ({ text }) => {
  const uri = 'untitled:bad.quilt';
  session.open(uri, `${BEFORE}${text()}${BEHIND}`);
  const problems = await session.diagnostics(uri);
  expect(problems.length).toBeLessThanOrEqual(MOST_PROBLEMS);
  const hover = await session.request('textDocument/hover', { textDocument: { uri }, position: { line: 3, character: 3 } });
  expect((hover?.contents as MarkupContent).value).toContain('ink');
  session.edit(uri, { start: { line: 2, character: 0 }, end: { line: 2, character: 0 }, text: '\n' });
  await session.diagnostics(uri);
  expect((await session.request('scant/preview', { uri }))?.version).toBeGreaterThan(1);
  session.close(uri);
});

test.each(LARGE_FILES)('$name', async ({ text, says }) => {
  const uri = 'untitled:large.quilt';
  session.open(uri, text());
  const problems = await session.diagnostics(uri);
  expect(problems.length).toBeLessThanOrEqual(MOST_PROBLEMS);
  if (says) expect(problems.map(({ code }) => code)).toContain(says[0]);
  if (problems.length === MOST_PROBLEMS) expect(problems.at(-1)?.message).toMatch(/^[\d,]+ more problems? (is|are) not listed$/);
  session.close(uri);
}, 60_000);

test('the samples, a few characters at a time', async () => {
  const samples = new URL('../../samples/', import.meta.url);
  const STEP = 29;
  for (const name of readdirSync(samples).filter((each) => each.endsWith('.quilt'))) {
    const uri = `untitled:${name}`;
    const text = readFileSync(new URL(name, samples), 'utf8');
    session.open(uri, '');
    for (let end = 0; end < text.length; end += STEP) {
      const lines = text.slice(0, end).split('\n');
      const at = { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
      session.edit(uri, { start: at, end: at, text: text.slice(end, end + STEP) });
      for (const { message } of await session.diagnostics(uri)) expect(message).not.toMatch(/undefined|NaN/);
    }
    const whole = `untitled:whole-${name}`;
    session.open(whole, text);
    expect(JSON.stringify(await session.diagnostics(uri)).replaceAll(uri, whole)).toBe(JSON.stringify(await session.diagnostics(whole)));
    session.close(uri);
    session.close(whole);
  }
}, 120_000);

/** The most memory a process has had, in MiB, where the system tells (Linux). */
function peakOf(pid: number): number | undefined {
  try {
    return Number(/VmHWM:\s*(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;
  } catch {
    return undefined;
  }
}
