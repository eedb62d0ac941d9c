// The folder that the tests' editor has open: a copy of the samples, to be written in freely.
import * as vscode from 'vscode';

let count = 0;

/** A new pattern with the text, saved in the workspace and shown. */
export async function openPattern(text: string): Promise<vscode.TextEditor> {
  count += 1;
  const file = inWorkspace(`test-${count}.quilt`);
  await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(text));
  return vscode.window.showTextDocument(file);
}

/** One of the samples, shown. */
export function openSample(name: string): Thenable<vscode.TextEditor> {
  return vscode.window.showTextDocument(inWorkspace(name));
}

function inWorkspace(name: string): vscode.Uri {
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  if (folder === undefined) throw new Error('The tests need a folder that is open.');
  return vscode.Uri.joinPath(folder.uri, name);
}
