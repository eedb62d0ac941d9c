// The preview in the real editor: it follows the text, keeps the view, outlives errors, and leads from picture to text and back.
import { deepEqual, equal, match, notEqual, ok } from 'node:assert/strict';
import * as vscode from 'vscode';
import { test, until, userTest } from './framework.ts';
import { clickText, press, type, webview } from './user.ts';
import { openPattern, openSample } from './workspace.ts';

const PATTERN = `fabric ink #22345c "Night"
fabric sand #eadfc8 "Dry"
block Solo(only = ink) 6" {
  only
}
quilt {
  straight 1 by 1
  place { Solo }
}
`;

userTest('the preview opens beside the text, which keeps the focus', async () => {
  await start(PATTERN);
  equal(vscode.window.activeTextEditor?.viewColumn, vscode.ViewColumn.One);
  match(await svg(), /#22345c/);
  await type('// typed into the text\n');
  await until(() => vscode.window.activeTextEditor?.document.getText().startsWith('// typed into the text\n') ?? false);
});

userTest('opening it again shows the one that is there', async () => {
  await start(PATTERN);
  await vscode.commands.executeCommand('scant.openPreview');
  equal(previews().length, 1);
});

userTest('the picture follows the text, and the view stays as it was', async () => {
  const { document } = await start(PATTERN);
  for (let clicks = 0; clicks < 3; clicks++) await webview('#tools button[title^="Zoom in"]').click();
  await webview('#stage').apply(`(stage) => stage.focus()`);
  await press('ArrowLeft');
  const before = await transform();
  await edit(document, '#22345c', '#aa5500');
  await until(async () => (await svg()).includes('#aa5500'));
  equal(await transform(), before);
  await edit(document, 'straight 1 by 1', 'straight 2 by 1');
  await until(async () => (await viewBox()) === '0 0 12 6');
  equal(await transform(), before);
  await webview('#tools button[title^="Show all"]').click();
  notEqual(await transform(), before);
});

userTest('a click on a patch lands on its text, another click on what it stands in', async () => {
  await start(PATTERN);
  await webview('#stage').click();
  await until(() => selected() === 'only');
  await webview('#stage').click();
  await until(() => selected() === 'Solo');
  await webview('#stage').click();
  await until(() => selected() === 'only');
  equal(vscode.window.tabGroups.all[0]?.tabs.length, 1);
});

userTest('the cursor in the text outlines what it makes', async () => {
  await start(PATTERN);
  await clickText('only');
  await until(async () => (await outline()) !== '');
  await clickText('straight');
  await until(async () => (await outline()) === '');
});

userTest('an error keeps the last good picture, dimmed and marked, until it is mended', async () => {
  const { document } = await start(PATTERN);
  await edit(document, '  only\n', '  onl\n');
  await until(async () => (await badge()).startsWith('1 error'));
  ok(await webview('#sheet').apply<boolean>(`(sheet) => sheet.classList.contains('dim')`));
  equal(await pictures(), 2);
  await edit(document, 'quilt {', 'quil {');
  await until(async () => !(await badge()).startsWith('1 error'));
  ok((await pictures()) >= 1);
  await edit(document, 'quil {', 'quilt {');
  await edit(document, '  onl\n', '  only\n');
  await until(async () => (await badge()) === '');
  equal(await pictures(), 1);
  ok(!(await webview('#sheet').apply<boolean>(`(sheet) => sheet.classList.contains('dim')`)));
});

userTest('it follows the active file, unless it is locked', async () => {
  await start(PATTERN);
  await show('lamp-room.quilt');
  await until(() => previews()[0] === 'Preview: lamp-room.quilt');
  await webview('#tools button[aria-label="Stay with this file"]').click();
  await until(() => previews()[0] === 'Locked: lamp-room.quilt');
  await show('beacon-star.quilt');
  await vscode.commands.executeCommand('scant.openPreview');
  await until(() => previews().length === 2);
  deepEqual(previews().toSorted(), ['Locked: lamp-room.quilt', 'Preview: beacon-star.quilt']);
});

userTest('a library shows its blocks with their names', async () => {
  await start('fabric ink #22345c "Night"\nblock One 6" { ink }\nblock Two 3" { ink ink }\n');
  match(await webview('.labels').text(), /One\s*Two/);
});

userTest('a size can be chosen', async () => {
  await start(`${PATTERN}size crib 2 by 3\nsize twin 4 by 5\n`);
  await until(async () => (await viewBox()) === '0 0 6 6');
  await webview('select[aria-label="Size"]').apply(`(select) => { select.value = 'twin'; select.dispatchEvent(new Event('change')); }`);
  await until(async () => (await viewBox()) === '0 0 24 30');
});

userTest('a hidden preview comes back as it was', async () => {
  const { document } = await start(PATTERN);
  for (let clicks = 0; clicks < 3; clicks++) await webview('#tools button[title^="Zoom in"]').click();
  await webview('#tools button[title^="Change"]').click();
  const before = await transform();
  await vscode.window.showTextDocument(document, vscode.ViewColumn.Two);
  await until(async () => (await webview('#sheet').count()) === 0);
  await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
  await until(async () => (await webview('#sheet').count()) === 1 && (await pictures()) === 1);
  equal(await transform(), before);
  equal(await webview('#sheet').apply<string>(`() => document.documentElement.dataset.background`), 'white');
});

userTest('nothing in the page runs but its own script', async () => {
  await start(PATTERN);
  const policy = await webview('meta[content*="nonce-"]').attribute('content');
  match(policy ?? '', /default-src 'none'.*script-src 'nonce-[0-9a-f]{32}'/);
  equal(await webview('#sheet').apply<number>(`() => document.querySelectorAll('[onclick], [style*="url"], iframe, object').length`), 0);
});

test('an empty file has words in place of a picture', async () => {
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  await openPattern('');
  await vscode.commands.executeCommand('scant.openPreview');
  await until(() => previews().length === 1);
});

/** The text in the left column, nothing else open, its preview in the right one. */
async function start(text: string): Promise<vscode.TextEditor> {
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  const editor = await openPattern(text);
  await vscode.commands.executeCommand('scant.openPreview');
  await until(async () => (await pictures().catch(() => 0)) === 1);
  return editor;
}

async function show(name: string): Promise<void> {
  await vscode.commands.executeCommand('workbench.action.focusFirstEditorGroup');
  await openSample(name);
}

async function edit(document: vscode.TextDocument, from: string, to: string): Promise<void> {
  const at = document.getText().indexOf(from);
  ok(at >= 0, from);
  const change = new vscode.WorkspaceEdit();
  change.replace(document.uri, new vscode.Range(document.positionAt(at), document.positionAt(at + from.length)), to);
  await vscode.workspace.applyEdit(change);
}

function previews(): string[] {
  const tabs = vscode.window.tabGroups.all.flatMap((group) => group.tabs);
  return tabs.filter(({ input }) => input instanceof vscode.TabInputWebview && input.viewType.endsWith('scant.preview')).map(({ label }) => label);
}

function selected(): string {
  const editor = vscode.window.activeTextEditor;
  return editor?.document.getText(editor.selection) ?? '';
}

const inPicture = (script: string): string => `(sheet) => { const pictures = [...sheet.querySelectorAll('.picture')].map((host) => host.shadowRoot); return ${script}; }`;
const pictures = (): Promise<number> => webview('#sheet').apply(inPicture('pictures.length'));
const svg = (): Promise<string> => webview('#sheet').apply(inPicture(`pictures.map((root) => root.innerHTML).join('')`));
const viewBox = (): Promise<string | null> => webview('#sheet').apply(inPicture(`pictures.at(-1)?.querySelector('svg').getAttribute('viewBox') ?? null`));
const transform = (): Promise<string> => webview('#sheet').apply(`(sheet) => sheet.style.transform`);
const outline = (): Promise<string> => webview('#sheet').apply(`(sheet) => sheet.querySelector('.outline .line').getAttribute('d') ?? ''`);
const badge = (): Promise<string> => webview('#sheet').apply(`() => document.getElementById('badge').textContent`);
