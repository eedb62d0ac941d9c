/** What is asked about names: where they are declared and used, what else they could be called, which files they are in. */
import { DocumentHighlightKind, LSPErrorCodes, ResponseError, type Connection, type DocumentHighlight, type Location, type WorkspaceEdit } from 'vscode-languageserver';
import { importEdits, type Move } from '../features/moved.ts';
import { occurrenceAt } from '../features/names.ts';
import { definitionAt, foundIn, highlightsAt, isShared } from '../features/references.ts';
import { renamable, renaming } from '../features/rename.ts';
import { workspaceSymbols } from '../features/workspace-symbols.ts';
import { rangeOf } from '../text/place.ts';
import type { AnswerContext } from './context.ts';
import { locationOf, START } from './convert.ts';
import { byFile, workspaceEditOf } from './edits.ts';
import { everyPattern } from './files.ts';
import { SYMBOL_KINDS } from './symbol-kinds.ts';

export function answerNames(connection: Connection, context: AnswerContext): void {
  const { guard, snapshotOf } = context;
  connection.onDefinition(guard.placed('definition', null, ({ textDocument, position }): Location | null => {
    const snapshot = snapshotOf(textDocument.uri);
    const place = snapshot && definitionAt(snapshot, position);
    return (snapshot && place && locationOf(snapshot, place)) ?? null;
  }));
  connection.onReferences(guard.placed('references', null, async ({ textDocument, position, context: { includeDeclaration } }, token, progress) => {
    const snapshot = snapshotOf(textDocument.uri);
    const target = snapshot && occurrenceAt(snapshot, position)?.target;
    if (!snapshot || !target) return null;
    const files = isShared(target) ? await everyPattern(context, { token, progress, title: 'Looking for uses' }) : [snapshot];
    const found = foundIn(files, target).filter(({ occurrence }) => includeDeclaration || occurrence.as === 'use');
    return found.flatMap(({ snapshot: file, occurrence: { place } }) => locationOf(file, place) ?? []);
  }));
  connection.onDocumentHighlight(guard.placed('documentHighlight', null, ({ textDocument, position }): DocumentHighlight[] | null => {
    const snapshot = snapshotOf(textDocument.uri);
    if (!snapshot) return null;
    return highlightsAt(snapshot, position).map(({ place, as }) => ({ range: rangeOf(snapshot.document, place) ?? START, kind: as === 'declaration' ? DocumentHighlightKind.Write : DocumentHighlightKind.Read }));
  }));
  connection.onPrepareRename(guard.placed('prepareRename', null, ({ textDocument, position }) => {
    const snapshot = snapshotOf(textDocument.uri);
    const found = snapshot && renamable(snapshot, position);
    if (!snapshot || !found) return null;
    if ('refused' in found) throw refusal(found.refused);
    const { place } = found;
    return { range: rangeOf(snapshot.document, place) ?? START, placeholder: place.line.text.slice(place.from, place.to) };
  }));
  connection.onRenameRequest(guard.placed('rename', null, async ({ textDocument, position, newName }, token, progress): Promise<WorkspaceEdit | null> => {
    const snapshot = snapshotOf(textDocument.uri);
    const found = snapshot && renamable(snapshot, position);
    if (!snapshot || !found) return null;
    if ('refused' in found) throw refusal(found.refused);
    const files = isShared(found.target) ? await everyPattern(context, { token, progress, title: 'Renaming' }) : [snapshot];
    const result = renaming(files, found.target, newName);
    if ('refused' in result) throw refusal(result.refused);
    return workspaceEditOf(context, byFile(result.edits));
  }));
  connection.onWorkspaceSymbol(guard.request('workspaceSymbol', null, async ({ query }, token, progress) => {
    const files = await everyPattern(context, { token, progress, title: 'Looking for names' });
    return workspaceSymbols(files, query).flatMap(({ symbol: { name, kind, selection }, snapshot }) => {
      const location = locationOf(snapshot, selection);
      return location ? [{ name, kind: SYMBOL_KINDS[kind], location, containerName: fileName(snapshot.document.source) }] : [];
    });
  }));
  connection.workspace.onWillRenameFiles(guard.request('willRenameFiles', null, async ({ files: moved }, token): Promise<WorkspaceEdit | null> => {
    const { services, folders } = context;
    const moves = moved.map(({ oldUri, newUri }): Move => ({ from: oldUri, to: newUri }));
    const all = await everyPattern(context, { token, progress: undefined, title: 'Following moved files' });
    return workspaceEditOf(context, all.map((snapshot) => {
      const resolve = (path: string): string | undefined => {
        const found = services.resolve(snapshot.document.source, path, folders());
        return typeof found === 'string' || found.state === 'missing' ? undefined : found.uri;
      };
      return { snapshot, edits: importEdits(snapshot, moves, resolve) };
    }));
  }));
}

function refusal(message: string): ResponseError<never> {
  return new ResponseError(LSPErrorCodes.RequestFailed, `${message.charAt(0).toUpperCase()}${message.slice(1)}.`);
}

function fileName(uri: string): string {
  return decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));
}
