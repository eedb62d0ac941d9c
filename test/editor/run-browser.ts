// Runs browser.ts in the served editor's own browser: the extension in the web extension host, its server in a web worker.
import { spawnSync } from 'node:child_process';
import { rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import type { Page } from 'playwright-core';
import { openBridge } from '../harness/editor/bridge.ts';
import { openPage } from '../harness/editor/browser.ts';
import { atEnd, runProgram } from '../harness/editor/cleanup.ts';
import { addressOf, copyOfSamples, editorHome, project, serveEditor, type Editor } from '../harness/editor/serve.ts';
import { runSuite } from '../harness/editor/suite-run.ts';

const suite = 'dist/editor-suite-browser.cjs';

await runProgram(main);

async function main(): Promise<number> {
  const { status } = spawnSync(process.execPath, [join(project, 'test/harness/editor/install.mjs')], { stdio: 'inherit' });
  if (status !== 0) throw new Error('The editor could not be installed.');
  const page = await openPage({ width: 1280, height: 800 });
  await bundle(await openBridge(page));
  const editor = await serveEditor();
  await putIn(page, editor, await placeIn(editor));
  return runSuite(editor, page, addressOf(editor, copyOfSamples(), [['extensionDevelopmentKind', 'web']]));
}

/** The suite, which knows nothing of a machine: what the other one reads from the environment is written into it. */
async function bundle(bridge: string): Promise<void> {
  await build({
    entryPoints: [join(import.meta.dirname, 'browser.ts')],
    outfile: join(project, suite),
    bundle: true,
    platform: 'browser',
    format: 'cjs',
    external: ['vscode'],
    define: { 'process.env.SCANT_USER': JSON.stringify(bridge), 'process.env.SCANT_EDITOR_ONLY': JSON.stringify(process.env.SCANT_EDITOR_ONLY ?? '') },
    logLevel: 'warning',
  });
}

/** A web extension is fetched from the editor's own address, so the project stands among its files; the path there. */
async function placeIn({ authority }: Editor): Promise<string> {
  const name = `scant-${process.pid}`;
  const link = join(editorHome, 'node_modules/code-server/lib/vscode', name);
  symlinkSync(project, link);
  atEnd(() => Promise.resolve(rmSync(link)));
  const html = await (await fetch(`http://${authority}/`)).text();
  const files = /workbench-web-base-url" data-settings="([^"]*)"/.exec(html)?.[1];
  if (files === undefined) throw new Error('The editor\'s page does not say where its files are.');
  return `/${files}/${name}`;
}

/** The served page says which extensions are being developed; ours and its tests are put in there as the editor reads it. */
async function putIn(page: Page, { authority }: Editor, path: string): Promise<void> {
  const at = (file: string): object => ({ scheme: 'http', authority, path: path + file });
  const options = JSON.stringify({ extensions: [at('')], extensionTestsPath: at(`/${suite}`) });
  await page.addInitScript(`{
    const getAttribute = Element.prototype.getAttribute;
    Element.prototype.getAttribute = function (name) {
      const value = getAttribute.call(this, name);
      if (this.id !== 'vscode-workbench-web-configuration' || name !== 'data-settings') return value;
      const given = JSON.parse(value);
      return JSON.stringify({ ...given, developmentOptions: { ...given.developmentOptions, ...${options} } });
    };
  }`);
}
