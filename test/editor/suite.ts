// The tests that need a real editor. run.ts bundles this file and has the editor run it.
import { deepEqual, equal, match, ok } from 'node:assert/strict';
import * as vscode from 'vscode';
import { runTests, test, until, userTest } from './framework.ts';
import { clickText, element, evaluate, hoverText, press, type, webview } from './user.ts';
import { openPattern } from './workspace.ts';
import './faults.ts';
import './language.ts';
import './outputs.ts';
import './patterns.ts';
import './preview.ts';
import './views.ts';

export const run = runTests;

test('the extension starts', async () => {
  const extension = vscode.extensions.getExtension('scant.scant');
  ok(extension);
  await extension.activate();
  ok(extension.isActive);
});

test('a pattern opens', async () => {
  const { document } = await openPattern('first line\nsecond line');
  equal(document.lineCount, 2);
});

userTest('keys typed by the user reach the document and the screen', async () => {
  const { document } = await openPattern('first line\nsecond line');
  await clickText('second');
  await press('End');
  await type(' and more');
  await until(() => document.lineAt(1).text === 'second line and more');
  const shown = await evaluate<string[]>(`[...document.querySelectorAll('.view-line')].map((line) => line.textContent.replaceAll('\\u00a0', ' '))`);
  deepEqual(shown, ['first line', 'second line and more']);
});

userTest('a problem is underlined and a hover shows over it', async () => {
  const { document } = await openPattern('first line\nsecond line');
  const problems = vscode.languages.createDiagnosticCollection('test');
  problems.set(document.uri, [new vscode.Diagnostic(new vscode.Range(0, 0, 0, 5), 'a problem to see', vscode.DiagnosticSeverity.Error)]);
  await until(async () => (await element('.squiggly-error').count()) > 0);
  await hoverText('first');
  match(await element('.monaco-hover:visible').text(), /a problem to see/);
  problems.dispose();
});

userTest('the user clicks in a web view', async () => {
  const panel = vscode.window.createWebviewPanel('test', 'Test', vscode.ViewColumn.Beside, { enableScripts: true });
  const messages: unknown[] = [];
  panel.webview.onDidReceiveMessage((message) => messages.push(message));
  panel.webview.html = `<svg width="90" height="90"><rect id="patch" data-patch="A1" width="90" height="90" fill="teal"/></svg>
    <script>const api = acquireVsCodeApi(); patch.onclick = () => api.postMessage(patch.dataset.patch)</script>`;
  equal(await webview('#patch').attribute('data-patch'), 'A1');
  equal(await webview('#patch').apply<string>(`(element) => element.tagName`), 'rect');
  await webview('#patch').click();
  await until(() => messages.length > 0);
  deepEqual(messages, ['A1']);
  panel.dispose();
});
