/** Writes what a tile of the preview stands for into its text. */
import { Range, Uri, WorkspaceEdit, window, workspace } from 'vscode';
import type { Written } from '../../server/src/lsp/requests.ts';

/** False when the text has become another meanwhile: then nothing is written. */
export async function writeTile({ uri, version, edits, title }: Written): Promise<boolean> {
  const target = Uri.parse(uri);
  const document = await workspace.openTextDocument(target);
  // A file that no editor has open has no version yet.
  if (version !== 0 && document.version !== version) {
    void window.showInformationMessage('The text has changed meanwhile. Choose again.');
    return false;
  }
  const edit = new WorkspaceEdit();
  for (const { range: { start, end }, text } of edits) edit.replace(target, new Range(start.line, start.character, end.line, end.character), text);
  const done = await workspace.applyEdit(edit);
  if (done) window.setStatusBarMessage(title, 4000);
  return done;
}
