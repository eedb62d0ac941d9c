// Opens the served editor's page, which runs a suite, and waits for how it ends.
import { createWriteStream, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { project, type Editor } from './serve.ts';

/** Seconds after which a run that hangs is ended. */
const limit = Number(process.env.SCANT_EDITOR_LIMIT ?? 300);
const traces = join(project, '.cache/editor-run');

/** The suite's exit code; 1 when anything ends before the suite does. A failure leaves its picture behind. */
export async function runSuite(editor: Editor, page: Page, address: string): Promise<number> {
  await keepLog(page);
  const finished = new Promise<number>((resolve) => void page.exposeFunction('codeAutomationExit', resolve));
  const broken = [
    editor.ended.then(() => 'the server ended'),
    new Promise((resolve) => page.once('crash', resolve).once('close', resolve)).then(() => 'the page ended'),
    setTimeout(limit * 1000, `nothing more happened in ${String(limit)} seconds`),
  ];
  await page.goto(address);
  const result = await Promise.race([finished, ...broken]);
  if (result === 0) return 0;
  if (typeof result === 'string') console.error(`The editor's run was cut short: ${result}.`);
  await page.screenshot({ path: join(traces, 'failure.png') }).catch(() => undefined);
  console.error('See .cache/editor-run/log.txt and failure.png.');
  return typeof result === 'number' ? result : 1;
}

/** All that the editor and its extensions log goes to a file; the suite prints its own lines over the bridge. */
async function keepLog(page: Page): Promise<void> {
  mkdirSync(traces, { recursive: true });
  const log = createWriteStream(join(traces, 'log.txt'));
  await page.exposeFunction('codeAutomationLog', (kind: string, parts: unknown[]) => {
    log.write(`${kind}: ${parts.map((part) => (typeof part === 'string' ? part : JSON.stringify(part))).join(' ')}\n`);
  });
}
