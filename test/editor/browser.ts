// The tests of the extension in a browser: no Node, no disk, the server in a web worker. run-browser.ts bundles this file and has the editor run it.
import * as vscode from 'vscode';
import { runTests, test, until, userTest } from './framework.ts';
import { element, hoverText, webview } from './user.ts';
import { openPattern } from './workspace.ts';

export const run = runTests;

const FOUR = `fabric ink #22345c "Night ferry print"
fabric sand #eadfc8 "Dry sand solid"
block Four 6" {
  ink sand
  sand lost
}
quilt {
  straight 2 by 2
  place { Four }
  binding cut 2 1/4" ink
}
`;

function has(condition: boolean, what: string): void {
  if (!condition) throw new Error(what);
}

function problems({ uri }: vscode.TextDocument): readonly string[] {
  return vscode.languages.getDiagnostics(uri).map(({ message }) => message);
}

function at({ document }: vscode.TextEditor, text: string): vscode.Position {
  return document.positionAt(document.getText().indexOf(text) + 1);
}

test('the extension runs where there is no Node', async () => {
  const extension = vscode.extensions.getExtension('scant.scant');
  has(extension !== undefined, 'it is not there');
  await extension?.activate();
  has(typeof process === 'undefined' || !('versions' in process) || process.versions.node === undefined, 'there is a Node here');
  has(extension?.extensionUri.scheme === 'http', `it comes from ${extension?.extensionUri.toString() ?? ''}`);
});

test('problems are found, and gone when they are mended', async () => {
  const editor = await openPattern(FOUR);
  await until(() => problems(editor.document).some((message) => message.includes('`lost`')));
  await editor.edit((edit) => edit.replace(new vscode.Range(4, 7, 4, 11), 'ink'));
  await until(() => problems(editor.document).every((message) => !message.includes('`lost`')));
});

test('completion, definition and layout answer', async () => {
  const editor = await openPattern(FOUR.replace('lost', 'ink'));
  const { uri } = editor.document;
  const offered = (): Thenable<vscode.CompletionList> => vscode.commands.executeCommand('vscode.executeCompletionItemProvider', uri, at(editor, 'Four }'));
  await until(async () => (await offered()).items.some(({ label }) => label === 'Four'));
  const found = await vscode.commands.executeCommand<vscode.Location[]>('vscode.executeDefinitionProvider', uri, at(editor, 'ink sand'));
  has(found[0]?.range.start.line === 0, 'the definition is not that of the fabric');
  const edits = await vscode.commands.executeCommand<vscode.TextEdit[]>('vscode.executeFormatDocumentProvider', uri, { tabSize: 2, insertSpaces: true });
  has(edits.some(({ newText }) => newText.trim() === ''), 'the columns are not laid out');
});

test('an imported file is read through the editor', async () => {
  const library = await openPattern('fabric rust #a4502e "Rust"\nblock Buoy 6" {\n  rust rust\n}\n');
  const name = library.document.uri.path.split('/').at(-1) ?? '';
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  const { document } = await openPattern(`import "${name}" as lib\nquilt {\n  straight 2 by 2\n  place { lib.Buoy lib.Bouy }\n}\n`);
  await until(() => problems(document).some((message) => message.includes('lib.Bouy')) && problems(document).every((message) => !message.includes(name)));
});

userTest('a hover shows what a patch is cut to', async () => {
  await openPattern(FOUR.replace('lost', 'ink'));
  await hoverText('sand ink');
  await until(async () => (await element('.monaco-hover:visible').count()) > 0 && (await element('.monaco-hover:visible').text()).includes('in Four'));
});

userTest('the preview draws the quilt', async () => {
  await openPattern(FOUR.replace('lost', 'ink'));
  await vscode.commands.executeCommand('scant.openPreview');
  await until(async () => (await webview('#sheet svg').count()) > 0);
});

test('what needs a disk is not offered', async () => {
  has((await vscode.tasks.fetchTasks({ type: 'scant' })).length === 0, 'a task is offered');
});
