// Saving in the real editor: what is written beside the pattern, what is not, and when.
import { deepEqual, match, ok } from 'node:assert/strict';
import * as vscode from 'vscode';
import { test, until } from './framework.ts';
import { openPattern } from './workspace.ts';

const PATTERN = `pattern "Saved" {
  units inches
}
fabric ink #22345c "Night"
block Solo 6" { ink }
quilt {
  straight 2 by 2
  place { Solo }
}
`;

test('a save writes the pictures, the cut list and the printed pattern', async () => {
  const { document } = await openPattern(PATTERN);
  await save(document, '// saved\n');
  await until(async () => (await written(document)).includes('cutting.md'));
  await until(async () => (await written(document)).includes('booklet.pdf'));
  const names = (await written(document)).filter((name) => !name.startsWith('.')).toSorted();
  deepEqual(names, ['blocks', 'booklet.html', 'booklet.pdf', 'cutting', 'cutting.csv', 'cutting.md', 'pattern.json', 'pattern.svg', 'pattern.xlsx', 'quilt.svg', 'steps', 'steps.md']);
  match(await read(document, 'booklet.pdf'), /^%PDF-1/);
  match(await read(document, 'cutting.md'), /ink/);
  match(await read(document, 'quilt.svg'), /<svg[^>]*viewBox="0 0 12 12"/);
});

test('a save of a pattern with errors leaves what was there', async () => {
  const { document } = await openPattern(PATTERN);
  await save(document, '// saved\n');
  await until(async () => (await written(document)).includes('quilt.svg'));
  const before = await read(document, 'quilt.svg');
  await save(document, '}\n');
  await new Promise((resolve) => setTimeout(resolve, 1000));
  ok((await read(document, 'quilt.svg')) === before);
});

test('a save writes nothing where that is wanted', async () => {
  const settings = vscode.workspace.getConfiguration('scant');
  await settings.update('buildOnSave', 'off', vscode.ConfigurationTarget.Workspace);
  const { document } = await openPattern(PATTERN);
  await save(document, '// saved\n');
  await new Promise((resolve) => setTimeout(resolve, 1000));
  deepEqual(await written(document), []);
  await settings.update('buildOnSave', undefined, vscode.ConfigurationTarget.Workspace);
});

test('the command writes everything', async () => {
  const { document } = await openPattern(PATTERN);
  void vscode.commands.executeCommand('scant.build');
  await until(async () => (await written(document)).includes('pattern.json'));
  ok((JSON.parse(await read(document, 'pattern.json')) as { title: string }).title === 'Saved');
});

async function save(document: vscode.TextDocument, text: string): Promise<void> {
  const change = new vscode.WorkspaceEdit();
  change.insert(document.uri, new vscode.Position(0, 0), text);
  await vscode.workspace.applyEdit(change);
  await document.save();
}

function output(document: vscode.TextDocument, ...names: string[]): vscode.Uri {
  const name = document.uri.path.replace(/^.*\//, '').replace(/\.quilt$/, '');
  return vscode.Uri.joinPath(document.uri, '..', 'out', name, ...names);
}

async function written(document: vscode.TextDocument): Promise<string[]> {
  return (await Promise.resolve(vscode.workspace.fs.readDirectory(output(document))).catch(() => [])).map(([name]) => name);
}

async function read(document: vscode.TextDocument, name: string): Promise<string> {
  return Buffer.from(await vscode.workspace.fs.readFile(output(document, name))).toString();
}
