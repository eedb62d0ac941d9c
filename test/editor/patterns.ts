// Writing a pattern in the real editor: problems while typing, hovers, mends, the outline, formatting, the page of a rule.
import { deepEqual, equal, match, ok } from 'node:assert/strict';
import * as vscode from 'vscode';
import { test, until, userTest } from './framework.ts';
import { clickText, element, hoverText, press, type } from './user.ts';
import { openPattern, openSample } from './workspace.ts';

const PATTERN = `fabric ink #22345c "Night"
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

test('a sample has no problem', async () => {
  for (const name of ['harbour-mail.quilt', 'beacon-star.quilt', 'lamp-room.quilt', 'mail-boat-sampler.quilt']) {
    const { document } = await openSample(name);
    await settled(document);
    deepEqual(grave(document), []);
  }
});

userTest('a slip is underlined as it is typed, and the line goes when it is mended', async () => {
  const { document } = await openPattern(PATTERN);
  await settled(document);
  await clickText('  b a');
  await press('End');
  await type('x');
  await until(() => grave(document).length > 0);
  match(grave(document).join(), /unknown-name.*ax/);
  await until(async () => (await element('.squiggly-error').count()) > 0);
  await press('Backspace');
  await until(() => grave(document).length === 0);
  await until(async () => (await element('.squiggly-error').count()) === 0);
});

userTest('a hover over a patch says its cut size', async () => {
  await openPattern(PATTERN.replace('  a b', '  first b').replace('a = ink', 'first = ink').replace('  b a', '  b first'));
  await hoverText('  first b'.trim());
  const text = await element('.monaco-hover:visible').text();
  match(text, /square in Four/);
  match(text, /Cut: 3 1\/2" square/);
  await press('Escape');
});

test('a quick fix mends the name', async () => {
  const { document } = await openPattern(PATTERN.replace('place { Four }', 'place { Fuor }'));
  await settled(document);
  const range = document.lineAt(8).range;
  const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>('vscode.executeCodeActionProvider', document.uri, range);
  const preferred = actions.find(({ isPreferred }) => isPreferred);
  ok(preferred?.edit);
  await vscode.workspace.applyEdit(preferred.edit);
  equal(document.lineAt(8).text, '  place { Four }');
  await until(() => grave(document).length === 0);
});

test('a problem links to the page of its rule', async () => {
  const { document } = await openPattern(PATTERN.replace('place { Four }', 'place { Fuor }'));
  await until(() => vscode.languages.getDiagnostics(document.uri).length > 0);
  const codes = vscode.languages.getDiagnostics(document.uri).map((problem) => problem.code);
  const code = codes.find((each) => typeof each === 'object' && each.value === 'unknown-name');
  ok(typeof code === 'object');
  equal(code.target.toString(), 'scant-rule:/unknown-name.md');
  const page = await vscode.workspace.openTextDocument(code.target);
  match(page.getText(), /^# .*unknown-name/);
});

test('the outline names what is declared', async () => {
  const { document } = await openPattern(PATTERN);
  await settled(document);
  const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[]>('vscode.executeDocumentSymbolProvider', document.uri);
  deepEqual(symbols.map(({ name }) => name), ['ink', 'sand', 'Four', 'quilt']);
});

test('formatting lays out the file', async () => {
  const { document } = await openPattern(PATTERN.replace('  a b\n', '      a     b\n'));
  await settled(document);
  const edits = await vscode.commands.executeCommand<vscode.TextEdit[]>('vscode.executeFormatDocumentProvider', document.uri, { tabSize: 2, insertSpaces: true });
  ok(edits.length > 0);
});

test('an unsaved file is checked, and its problems go with it', async () => {
  const document = await vscode.workspace.openTextDocument({ language: 'quilt', content: '}' });
  await vscode.window.showTextDocument(document);
  await until(() => grave(document).length === 1);
  await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  await until(() => vscode.languages.getDiagnostics(document.uri).length === 0);
});

test('a server that is started again goes on', async () => {
  const { document } = await openPattern(`}\n${PATTERN}`);
  await until(() => grave(document).length === 1);
  await vscode.commands.executeCommand('scant.restartServer');
  await settled(document);
  await until(() => grave(document).length === 1);
});

/** Errors and warnings, as one line each. */
function grave(document: vscode.TextDocument): string[] {
  return vscode.languages
    .getDiagnostics(document.uri)
    .filter(({ severity }) => severity <= vscode.DiagnosticSeverity.Warning)
    .map(({ code, message }) => `${String(typeof code === 'object' ? code.value : code)}: ${message}`);
}

/** The server has read the file: it answers about it. */
async function settled(document: vscode.TextDocument): Promise<void> {
  await until(async () => (await vscode.commands.executeCommand<unknown[] | undefined>('vscode.executeDocumentSymbolProvider', document.uri)) !== undefined);
}
