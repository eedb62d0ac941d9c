// The views of the preview in the real editor: each is opened and looked into, keeps its place, leads to the text and back, writes into it, and can be used without eyes or mouse.
import { deepEqual, equal, match, notEqual, ok } from 'node:assert/strict';
import * as vscode from 'vscode';
import { test, until, userTest } from './framework.ts';
import { clickText, element, press, print, webview } from './user.ts';
import { openPattern, openSample } from './workspace.ts';

const PATTERN = `fabric ink #22345c "Night"
fabric sand #eadfc8 "Dry"
fabric rust #a4502e "Rust"
block Inner {
  ink sand
  rust sand
}
block Outer 6" {
  Inner@90 sand
  sand rust
}
quilt {
  straight 2 by 2
  place { Outer Outer@180 }
  border 1" rust // kept
  backing sand
}
`;

/** What each view must show of that pattern: a piece of its drawing, and of its words. */
const VIEWS: Readonly<Record<string, { readonly drawn: RegExp; readonly said: RegExp }>> = {
  whole: { drawn: /viewBox="0 0 14 14"/, said: /^$/ },
  block: { drawn: /viewBox="0 0 6 6"[^]*>3 1\/2"</, said: /Outer: 6" by 6" finished, 6 1\/2" by 6 1\/2" with its seams[^]*Cut for one block/ },
  values: { drawn: /#3[0-9a-f]3|#353535|#d[0-9a-f]d/, said: /Every seam between two fabrics[^]*ink\s+22\.\d\s+dark/ },
  mirrors: { drawn: /<use/, said: /Outer between two mirrors/ },
  settings: { drawn: /<use/, said: /Outer in 1[2-4] settings/ },
  fabrics: { drawn: /#22345c/, said: /Outer with its 3 fabrics exchanged/ },
  sewing: { drawn: /<path/, said: /make \d/ },
  pressing: { drawn: /#c1121f/, said: /An arrow shows the side/ },
  cutting: { drawn: /#d9d9d9/, said: /Cloth lies unfolded/ },
  sizes: { drawn: /<use/, said: /Finished\s+14" by 14"/ },
};

const COMMANDS: Readonly<Record<string, string>> = Object.fromEntries(Object.keys(VIEWS).map((name) => [name, `scant.view${name.charAt(0).toUpperCase()}${name.slice(1)}`]));

userTest('each view is opened by its command, and shows what it is for', async () => {
  await start();
  for (const [name, { drawn, said }] of Object.entries(VIEWS)) {
    await show(name);
    match(await svg(), drawn, name);
    match(await words(), said, name);
  }
});

userTest('the list of views is reached and used by the keyboard', async () => {
  await start();
  await webview('#bar select').apply(`(select) => select.focus()`);
  await press('ArrowDown');
  await until(async () => (await shown()) === 'block' && (await webview('#bar button[title="Show or hide the words"]:not([hidden])').count()) === 1);
  await press('Tab');
  equal(await focused(), 'Show or hide the words');
});

userTest('axe finds nothing wrong in any view, in a dark, a light and a high contrast theme', async () => {
  const settings = vscode.workspace.getConfiguration('workbench');
  for (const theme of ['Default Dark Modern', 'Default Light Modern', 'Default High Contrast']) {
    await settings.update('colorTheme', theme, vscode.ConfigurationTarget.Workspace);
    await start();
    for (const name of Object.keys(VIEWS)) {
      await show(name);
      deepEqual(await webview('#stage').audit(), [], `${name}, ${theme}`);
    }
  }
  await settings.update('colorTheme', undefined, vscode.ConfigurationTarget.Workspace);
});

userTest('ten edits move no view, and each view keeps its own place', async () => {
  const { document } = await start();
  const places = new Map<string, string>();
  for (const name of ['block', 'values', 'settings']) {
    await show(name);
    for (let clicks = 0; clicks < 2; clicks++) await webview('#tools button[title^="Zoom in"]').click();
    places.set(name, await transform());
    for (let edit = 0; edit < 10; edit++) await replace(document, /#(?:22345c|22345d)/, edit % 2 === 0 ? '#22345d' : '#22345c');
    await until(async () => !(await svg()).includes('#22345d'));
    equal(await transform(), places.get(name), name);
  }
  for (const [name, place] of places) {
    await show(name);
    equal(await transform(), place, name);
  }
  await show('mirrors');
  notEqual(await transform(), places.get('block'));
});

userTest('an error keeps the last good picture of a view, until it is mended', async () => {
  const { document } = await start();
  for (const name of ['block', 'values', 'sizes']) {
    await show(name);
    await replace(document, '  sand rust\n}\nquilt', '  sand rus\n}\nquilt');
    await until(async () => /^1 error/.test(await badge()));
    ok(await webview('#sheet').apply<boolean>(`(sheet) => sheet.classList.contains('dim')`), name);
    await replace(document, '  sand rus\n}\nquilt', '  sand rust\n}\nquilt');
    await until(async () => (await badge()) === '');
    ok(!(await webview('#sheet').apply<boolean>(`(sheet) => sheet.classList.contains('dim')`)), name);
  }
});

userTest('from a patch of a turned and nested block to its text, and back to every place it has', async () => {
  const { document } = await start();
  // The upper left quarter of the block is `Inner`, turned: what lies upper left in it is `rust`, its second row.
  for (const [name, inches, outlines] of [['block', { x: 0.7, y: 0.7 }, 1], ['whole', { x: 1.7, y: 1.7 }, 4], ['pressing', { x: 0.8, y: 0.8 }, 1]] as const) {
    await vscode.commands.executeCommand('workbench.action.focusFirstEditorGroup');
    await clickText('block Outer');
    await show(name);
    await clickAt(inches);
    await until(() => selected() === 'rust');
    equal(vscode.window.activeTextEditor?.selection.start.line, document.getText().split('\n').indexOf('  rust sand'), name);
    await until(async () => (await outline()).split('M').length - 1 === outlines);
    ok(await webview('#sheet').apply<boolean>(inOutline(inches)), name);
    equal(await shown(), name);
    if (name === 'block') equal(await about(), 'Outer');
  }
});

userTest('a block is looked at when the cursor goes into it', async () => {
  await start();
  await show('block');
  await vscode.commands.executeCommand('workbench.action.focusFirstEditorGroup');
  await clickText('rust sand');
  await until(async () => (await about()) === 'Inner');
  await clickText('border');
  await until(async () => (await about()) === 'Inner');
  await clickText('Outer@180');
  await until(async () => (await about()) === 'Outer');
});

userTest('the settings sheet writes a setting into the text, by mouse and by keyboard', async () => {
  const { document } = await start();
  await show('settings');
  await webview('.tile[data-tile="point"]').click();
  await until(() => document.getText().includes('on_point 2 by 2'));
  match(document.getText(), /place \{ Outer \}\n {2}edges \w+\n {2}border 1" rust \/\/ kept\n {2}backing sand\n/);
  await until(async () => (await webview('.tile[aria-current]').attribute('data-tile')) === 'point');
  deepEqual(vscode.languages.getDiagnostics(document.uri).filter(({ severity }) => severity === vscode.DiagnosticSeverity.Error), []);
  await webview('.tile[data-tile="cornerstones"]').apply(`(tile) => tile.focus()`);
  await press('Enter');
  await until(() => /straight 2 by 2\n {2}place \{ Outer \}\n {2}sashing .* cornerstones/.test(document.getText()));
  await until(async () => (await webview('.tile[aria-current]').attribute('data-tile')) === 'cornerstones');
  equal(await focused(), await webview('.tile[data-tile="cornerstones"]').attribute('aria-label'));
});

userTest('the fabric sheet writes a colourway, which is then shown', async () => {
  const { document } = await start();
  await show('fabrics');
  await webview('.tile:nth-child(2)').click();
  await until(() => document.getText().includes('colorway exchange {'));
  await until(async () => (await webview('select[aria-label="Colourway"]').apply<string>(`(select) => select.value`)) === 'exchange');
});

userTest('the sewing order goes step by step', async () => {
  await start();
  await show('sewing');
  const first = await words();
  await webview('button[title^="Next step"]').click();
  await until(async () => (await steps()).startsWith('Step 2 of'));
  notEqual(await words(), first);
  await webview('#stage').apply(`(stage) => stage.focus()`);
  await press('PageUp');
  await until(async () => (await steps()).startsWith('Step 1 of') && (await words()) === first);
});

userTest('a preview that was hidden comes back in its view', async () => {
  const { document } = await start();
  await show('pressing');
  await vscode.window.showTextDocument(document, vscode.ViewColumn.Two);
  await until(async () => (await webview('#sheet').count()) === 0);
  await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
  await until(async () => (await webview('#sheet').count()) === 1 && (await shown()) === 'pressing');
  match(await svg(), /#c1121f/);
});

userTest('two previews show two views at once', async () => {
  await start();
  await show('block');
  await vscode.commands.executeCommand('workbench.action.focusFirstEditorGroup');
  await vscode.commands.executeCommand('scant.openLockedPreview');
  await until(() => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).filter(({ input }) => input instanceof vscode.TabInputWebview).length === 2);
});

userTest('a picture is saved as SVG and as PNG, and as a page to print', async () => {
  const { document } = await start();
  await show('settings');
  for (const [end, begins, command] of [['svg', '<svg', 'scant.savePicture'], ['png', '\u0089PNG', 'scant.savePicture'], ['html', '<!DOCTYPE html>', 'scant.printPicture']] as const) {
    const target = vscode.Uri.joinPath(document.uri, '..', `saved.${end}`);
    void vscode.commands.executeCommand(command);
    const field = element('.quick-input-widget:visible input');
    await until(async () => (await field.count()) > 0 && /-settings\.(?:svg|html)$/.test(await field.apply<string>(`(input) => input.value`)));
    await field.apply(`(input) => { input.value = ${JSON.stringify(target.path)}; input.dispatchEvent(new Event('input')); }`);
    await press('Enter');
    await until(async () => (await vscode.workspace.fs.stat(target).then(({ size }) => size, () => 0)) > 1000);
    equal(Buffer.from(await vscode.workspace.fs.readFile(target)).toString('latin1').slice(0, begins.length), begins);
  }
});

test('the editor has what a preview needs to stand in its own window', async () => {
  ok((await vscode.commands.getCommands(true)).includes('workbench.action.moveEditorToNewWindow'));
});

userTest('from keystroke to repainted picture, for the crib quilt', async () => {
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  const { document } = await openSample('harbour-mail.quilt');
  await vscode.commands.executeCommand('scant.openPreview');
  await until(async () => (await pictures().catch(() => 0)) === 1);
  const times: number[] = [];
  for (let edit = 0; edit < 12; edit++) {
    const colour = edit % 2 === 0 ? '#22345e' : '#22345c';
    const painted = webview('#sheet').apply<number>(repainted(colour));
    await new Promise((resolve) => setTimeout(resolve, 600));
    const begin = Date.now();
    await replace(document, /#22345[ce]/, colour);
    times.push((await painted) - begin);
  }
  const [median = Infinity] = times.toSorted((a, b) => a - b).slice(6);
  await print(`     keystroke to repainted preview, crib: median ${median} ms of ${times.length}, ${times.join(' ')}`);
  // One frame budget is 50 ms; a machine that runs other work beside it gets room.
  ok(median < 250, `${median} ms`);
  await vscode.commands.executeCommand('workbench.action.files.revert');
});

async function start(): Promise<vscode.TextEditor> {
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  const editor = await openPattern(PATTERN);
  await vscode.commands.executeCommand('scant.openPreview');
  await until(async () => (await pictures().catch(() => 0)) === 1);
  return editor;
}

async function show(name: string): Promise<void> {
  await vscode.commands.executeCommand(COMMANDS[name] ?? '');
  await until(async () => (await shown()) === name && (await pictures()) === 1);
}

async function replace(document: vscode.TextDocument, from: string | RegExp, to: string): Promise<void> {
  const text = document.getText();
  const at = typeof from === 'string' ? text.indexOf(from) : text.search(from);
  const old = typeof from === 'string' ? from : (from.exec(text)?.[0] ?? '');
  ok(at >= 0 && old !== '', String(from));
  const change = new vscode.WorkspaceEdit();
  change.replace(document.uri, new vscode.Range(document.positionAt(at), document.positionAt(at + old.length)), to);
  await vscode.workspace.applyEdit(change);
}

function selected(): string {
  const editor = vscode.window.activeTextEditor;
  return editor?.document.getText(editor.selection) ?? '';
}

/** Presses and lets go where the picture has a point, as a mouse does. */
function clickAt({ x, y }: { readonly x: number; readonly y: number }): Promise<unknown> {
  return webview('#stage').apply(`(stage) => {
    const [, left, top, scale] = /translate\\((.*)px, (.*)px\\) scale\\((.*)\\)/.exec(document.getElementById('sheet').style.transform).map(Number);
    const box = stage.getBoundingClientRect();
    const at = { clientX: box.left + left + ${x} * scale * 10, clientY: box.top + top + ${y} * scale * 10, button: 0, pointerId: 1, bubbles: true };
    stage.setPointerCapture = () => undefined;
    stage.dispatchEvent(new PointerEvent('pointerdown', at));
    stage.dispatchEvent(new PointerEvent('pointerup', at));
  }`);
}

/** Whether the outline goes round a point of the picture. */
function inOutline({ x, y }: { readonly x: number; readonly y: number }): string {
  return `(sheet) => sheet.querySelector('.outline .line').isPointInFill(new DOMPoint(${x}, ${y}))`;
}

/** The time at which a picture with a colour has been painted. */
function repainted(colour: string): string {
  return `(sheet) => new Promise((resolve) => {
    const look = () => [...sheet.querySelectorAll('.picture')].some((host) => host.shadowRoot.innerHTML.includes('${colour}'));
    const watch = new MutationObserver(() => look() && (watch.disconnect(), requestAnimationFrame(() => setTimeout(() => resolve(Date.now())))));
    watch.observe(sheet, { childList: true, subtree: true });
  })`;
}

const inPicture = (script: string): string => `(sheet) => { const pictures = [...sheet.querySelectorAll('.picture')].map((host) => host.shadowRoot); return ${script}; }`;
const pictures = (): Promise<number> => webview('#sheet').apply(inPicture('pictures.length'));
const svg = (): Promise<string> => webview('#sheet').apply(inPicture(`pictures.map((root) => root.innerHTML).join('')`));
const transform = (): Promise<string> => webview('#sheet').apply(`(sheet) => sheet.style.transform`);
const outline = (): Promise<string> => webview('#sheet').apply(`(sheet) => sheet.querySelector('.outline .line').getAttribute('d') ?? ''`);
const badge = (): Promise<string> => webview('#sheet').apply(`() => document.getElementById('badge').textContent`);
const words = (): Promise<string> => webview('#sheet').apply(`() => document.getElementById('words').hidden ? '' : document.getElementById('words').innerText`);
const shown = (): Promise<string> => webview('#bar select').apply(`(select) => select.disabled ? '' : select.value`);
const about = (): Promise<string> => webview('#bar output[aria-label="Block"]').apply(`(output) => output.textContent`);
const steps = (): Promise<string> => webview('.steps output').apply(`(output) => output.textContent`);
const focused = (): Promise<string | null> => webview('#sheet').apply(`() => document.activeElement.getAttribute('aria-label')`);
