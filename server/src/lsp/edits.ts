/** Our edits as those of the protocol. */
import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { Snapshot } from '../snapshot.ts';
import { groupedBy } from '../text/grouped.ts';
import { rangeOf } from '../text/place.ts';
import type { TextEdit as Edit } from '../text/problem.ts';
import type { AnswerContext } from './context.ts';

export interface FileEdits {
  readonly snapshot: Snapshot;
  readonly edits: readonly Edit[];
}

/** Edits of several files. An editor that holds a file open refuses edits of another version of it. */
export function workspaceEditOf({ client, isOpen }: Pick<AnswerContext, 'client' | 'isOpen'>, files: readonly FileEdits[]): WorkspaceEdit {
  const changed = files.map(({ snapshot, edits }) => ({ uri: snapshot.document.source, version: snapshot.version, edits: edits.flatMap((edit) => textEditOf(snapshot, edit)) })).filter(({ edits }) => edits.length > 0);
  if (client()?.versionsEdits !== true) return { changes: Object.fromEntries(changed.map(({ uri, edits }) => [uri, edits])) };
  return { documentChanges: changed.map(({ uri, version, edits }) => ({ textDocument: { uri, version: isOpen(uri) ? version : null }, edits })) };
}

/** Edits by file, in the order of the files. */
export function byFile(edits: readonly (Edit & { readonly snapshot: Snapshot })[]): readonly FileEdits[] {
  return [...groupedBy(edits, ({ snapshot }) => snapshot)].map(([snapshot, own]) => ({ snapshot, edits: own }));
}

function textEditOf({ document }: Snapshot, { place, text }: Edit): TextEdit[] {
  const range = rangeOf(document, place);
  return range ? [{ range, newText: text }] : [];
}
