// The language service in the real editor, asked as the editor's own commands ask it: names across files, figures, colours, the side bar, tasks.
import { deepEqual, equal, match, ok } from 'node:assert/strict';
import * as vscode from 'vscode';
import { test, until, userTest } from './framework.ts';
import { element, press, webview } from './user.ts';
import { openPattern } from './workspace.ts';

const LIBRARY = `fabric rust #a4502e "Rust"
block Star(a, b = rust) 6" {
  a b
  b a
}
`;

function pattern(library: string): string {
  return `import "${library}" as lib
fabric ink #22345c "Night"
block Four(top = ink) 6" {
  top lib.rust
}
quilt {
  straight 2 by 2
  place { lib.Star(ink) Four }
}
`;
}

async function ask<T>(command: string, ...args: readonly unknown[]): Promise<T> {
  return vscode.commands.executeCommand<T>(command, ...args);
}

function at(document: vscode.TextDocument, text: string, after = 0): vscode.Position {
  return document.positionAt(document.getText().indexOf(text) + after);
}

function nameOf({ uri }: vscode.TextDocument): string {
  return uri.path.slice(uri.path.lastIndexOf('/') + 1);
}

test('completion offers names with their colours, and blocks with a drawing', async () => {
  const { document } = await openPattern(pattern('none.quilt'));
  const offered = (): Promise<vscode.CompletionList> => ask('vscode.executeCompletionItemProvider', document.uri, at(document, 'Four }'), undefined, 60);
  // The first test of all: the server may still be starting.
  await until(async () => (await offered()).items.some(({ label }) => label === 'ink'));
  const list = await offered();
  const ink = list.items.find(({ label }) => label === 'ink');
  equal(ink?.kind, vscode.CompletionItemKind.Color);
  const goose = list.items.find(({ label }) => label === 'goose');
  ok(goose?.documentation instanceof vscode.MarkdownString);
  match(goose.documentation.value, /data:image\/svg\+xml/);
});

test('a block is renamed in both files', async () => {
  const library = (await openPattern(LIBRARY)).document;
  const { document } = await openPattern(pattern(nameOf(library)));
  const edit = await ask<vscode.WorkspaceEdit>('vscode.executeDocumentRenameProvider', document.uri, at(document, 'Star', 2), 'Sun');
  ok(await vscode.workspace.applyEdit(edit));
  await until(() => document.getText().includes('lib.Sun(ink)') && library.getText().includes('block Sun('));
  const [definition] = await ask<vscode.Location[]>('vscode.executeDefinitionProvider', document.uri, at(document, 'Sun', 1));
  equal(definition?.uri.toString(), library.uri.toString());
  await vscode.workspace.saveAll();
});

test('an import follows its file', async () => {
  const library = (await openPattern(LIBRARY)).document;
  const { document } = await openPattern(pattern(nameOf(library)));
  const edit = new vscode.WorkspaceEdit();
  edit.renameFile(library.uri, vscode.Uri.joinPath(library.uri, `../moved-${nameOf(library)}`));
  ok(await vscode.workspace.applyEdit(edit));
  await until(() => document.getText().includes(`import "moved-${nameOf(library)}"`));
  await vscode.workspace.saveAll();
});

test('figures come and go with one switch', async () => {
  const { document } = await openPattern(pattern('none.quilt'));
  const whole = new vscode.Range(0, 0, document.lineCount, 0);
  const hints = async (): Promise<number> => (await ask<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, whole)).length;
  const lenses = async (): Promise<number> => (await ask<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri)).length;
  deepEqual([await hints(), await lenses()], [0, 0]);
  await vscode.commands.executeCommand('scant.toggleAnnotations');
  await until(async () => (await hints()) > 0 && (await lenses()) > 0);
  await vscode.commands.executeCommand('scant.toggleAnnotations');
  await until(async () => (await hints()) === 0);
});

test('a refactoring is applied as the editor applies it', async () => {
  const { document } = await openPattern(pattern('none.quilt').replace('  top lib.rust', '  (top|ink)-ink  top'));
  const position = at(document, 'top|', 1);
  const actions = await ask<vscode.CodeAction[]>('vscode.executeCodeActionProvider', document.uri, new vscode.Range(position, position), 'refactor.extract');
  const edit = actions.find(({ title }) => title === 'Extract a block')?.edit;
  ok(edit && (await vscode.workspace.applyEdit(edit)));
  match(document.getText(), /block Unit\(top\)[^]*Unit\(top\) {2}top/);
});

userTest('the colour of a fabric has a swatch', async () => {
  await openPattern(pattern('none.quilt'));
  await until(async () => (await element('.colorpicker-color-decoration').count()) > 0);
});

userTest('the foot of the window says what comes out, and how many errors there are', async () => {
  const library = (await openPattern(LIBRARY)).document;
  await openPattern(pattern(nameOf(library)));
  const status = element('[id="scant.scant.scant.status"]');
  await until(async () => (await status.count()) > 0 && /12" by 12", 1[0-9] patches/.test(await status.text()));
  await openPattern('quilt {\n  straight 2 by 2\n  place { Lost }\n}\n');
  await until(async () => /1 error/.test(await status.text()));
});

userTest('the side bar lists what the pattern is made of, and leads to it', async () => {
  await openPattern('fabric ink #22345c "Night"\nblock Four 6" { ink }\nquilt {\n  straight 2 by 2\n  place { Four }\n}\nsize crib 3 by 4\n');
  await vscode.commands.executeCommand('scant.pattern.focus');
  await until(async () => (await element('.sidebar .monaco-list-row:has-text("crib")').count()) > 0);
  await element('.sidebar .monaco-list-row:has-text("crib")').click();
  await until(() => vscode.window.activeTextEditor?.selection.active.line === 6);
});

test('the task that checks patterns is offered', async () => {
  const tasks = await vscode.tasks.fetchTasks({ type: 'scant' });
  deepEqual(tasks.map(({ name }) => name), ['check']);
});

test('the walkthrough opens, and a new pattern begins without a problem', async () => {
  await vscode.commands.executeCommand('scant.openWalkthrough');
  await vscode.commands.executeCommand('scant.newPattern');
  await until(() => vscode.window.activeTextEditor?.document.languageId === 'quilt');
  const uri = vscode.window.activeTextEditor?.document.uri;
  ok(uri);
  equal(vscode.languages.getDiagnostics(uri).length, 0);
  await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
});

userTest('a fenced pattern is drawn in the Markdown preview', async () => {
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  ok(folder);
  const file = vscode.Uri.joinPath(folder.uri, 'pattern.md');
  await vscode.workspace.fs.writeFile(file, new TextEncoder().encode('# Lamps\n\n```quilt\nfabric ink #22345c "Ink"\nblock Lamp 6" {\n  ink ink\n}\n```\n'));
  await vscode.window.showTextDocument(file);
  await vscode.commands.executeCommand('markdown.showPreview');
  await until(async () => (await webview('img[alt="The pattern, drawn"]').count()) === 1);
});

userTest('the walkthrough is done when the user has done each of its steps', async () => {
  await vscode.commands.executeCommand('scant.openWalkthrough');
  await until(async () => (await element('.getting-started-step').count()) === 5);
  await choose('New Pattern');
  await until(() => vscode.window.activeTextEditor?.document.languageId === 'quilt');
  for (const title of ['Open Preview to the Side', 'Show or Hide Figures in the Text', 'Show or Hide Figures in the Text', 'Build This Pattern', 'Explain a Rule']) await choose(title);
  await press('Escape');
  await vscode.commands.executeCommand('scant.openWalkthrough');
  await until(async () => (await element('.getting-started-step .codicon-getting-started-step-checked').count()) === 5);
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
});

/** From the palette, as the editor counts it. */
async function choose(title: string): Promise<void> {
  await vscode.commands.executeCommand('workbench.action.focusFirstEditorGroup');
  await vscode.commands.executeCommand('workbench.action.quickOpen', `>Scant: ${title}`);
  await until(async () => (await element(`.quick-input-list .monaco-list-row.focused:has-text("${title}")`).count()) > 0);
  await press('Enter');
  await new Promise((resolve) => setTimeout(resolve, 500));
}
