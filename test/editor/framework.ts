// Names tests, runs them one after another with a time limit and counts: small, so that nothing else has to be loaded into the editor.
import { commands } from 'vscode';
import { hasUser, print, screenshot } from './user.ts';

interface Test {
  readonly name: string;
  readonly run: () => Promise<void>;
  readonly needsUser: boolean;
}

/** Longest a test may take, and longest it may wait for one thing. */
const limit = 60_000;
const patience = 10_000;
const tests: Test[] = [];

/** A test that only asks the extension API. */
export function test(name: string, run: () => Promise<void>): void {
  tests.push({ name, run, needsUser: false });
}

/** A test that presses keys, clicks or looks: skipped where there is nobody to do it. */
export function userTest(name: string, run: () => Promise<void>): void {
  tests.push({ name, run, needsUser: true });
}

/** Runs all tests (or those whose name contains SCANT_EDITOR_ONLY); throws when one failed. */
export async function runTests(): Promise<void> {
  const chosen = tests.filter((each) => each.name.includes(process.env.SCANT_EDITOR_ONLY ?? ''));
  const runnable = chosen.filter((each) => hasUser || !each.needsUser);
  let failed = 0;
  for (const each of runnable) failed += (await passes(each)) ? 0 : 1;
  const skipped = chosen.length - runnable.length;
  await print(`${runnable.length - failed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
  if (failed > 0) throw new Error(`${failed} failed`);
}

/** Waits until the condition holds; fails when it does not within 10 seconds. */
export async function until(condition: () => boolean | PromiseLike<boolean>): Promise<void> {
  const end = Date.now() + patience;
  while (!(await condition())) {
    if (Date.now() > end) throw new Error(`This never came true: ${condition.toString()}`);
    await sleep(50);
  }
}

async function passes({ name, run }: Test): Promise<boolean> {
  const start = Date.now();
  try {
    await commands.executeCommand('workbench.action.files.saveAll');
    await commands.executeCommand('workbench.action.closeAllEditors');
    await Promise.race([run(), timeUp()]);
    await print(`  ok ${name} (${Date.now() - start} ms)`);
    return true;
  } catch (error) {
    await print(`FAIL ${name}\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    if (hasUser) await takePicture(name);
    return false;
  }
}

/** What the user saw when it failed. */
async function takePicture(name: string): Promise<void> {
  const path = `.cache/editor-run/${name.replaceAll(/\W+/g, '-')}.png`;
  await screenshot(path);
  await print(`     ${path}`);
}

async function timeUp(): Promise<never> {
  await sleep(limit);
  throw new Error(`not done in ${limit / 1000} seconds`);
}

function sleep(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
