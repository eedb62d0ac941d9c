/** Shows a place of a text in the editor that has it open already, without moving what is in view. */
import { Range, TabInputText, Uri, ViewColumn, window } from 'vscode';
import type { SourceRange } from '../../server/src/lsp/requests.ts';

/** Opens the file when no editor has it, but never in the column `notIn`. */
export async function reveal({ uri, range }: SourceRange, notIn: ViewColumn | undefined): Promise<void> {
  const target = Uri.parse(uri);
  const selection = new Range(range.start.line, range.start.character, range.end.line, range.end.character);
  await window.showTextDocument(target, { selection, viewColumn: columnOf(uri) ?? (notIn === ViewColumn.One ? ViewColumn.Two : ViewColumn.One) });
}

function columnOf(uri: string): ViewColumn | undefined {
  const visible = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri)?.viewColumn;
  if (visible !== undefined) return visible;
  return window.tabGroups.all.find(({ tabs }) => tabs.some(({ input }) => input instanceof TabInputText && input.uri.toString() === uri))?.viewColumn;
}
