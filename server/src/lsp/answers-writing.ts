/** What is asked while one writes: completions, what a block is given, layout, mends and refactorings. */
import {
  CompletionItemKind,
  InsertTextFormat,
  MarkupKind,
  type CodeAction,
  type CompletionItem,
  type Connection,
  type Diagnostic,
  type Range,
  type SignatureHelp,
  type TextEdit,
} from 'vscode-languageserver';
import { SHELF } from '../disk/shelf.ts';
import { blockCard } from '../features/block-card.ts';
import { completionsAt, type Completion } from '../features/completion.ts';
import type { Paths } from '../features/completion-paths.ts';
import { allMends, mendsIn, type Mend } from '../features/fixes.ts';
import { formattingOf, type Edit } from '../features/formatting.ts';
import { refactoringsAt, type Refactoring } from '../features/refactor/list.ts';
import { signatureAt } from '../features/signature.ts';
import { formattingAfter } from '../features/typing.ts';
import type { Snapshot } from '../snapshot.ts';
import { ACTION_KINDS } from './capabilities.ts';
import type { Client } from './client.ts';
import type { AnswerContext } from './context.ts';
import { workspaceEditOf } from './edits.ts';

export function answerWriting(connection: Connection, context: AnswerContext): void {
  const { guard, snapshotOf, filesOf, client } = context;
  const of = ({ textDocument }: { readonly textDocument: { readonly uri: string } }): Snapshot | undefined => snapshotOf(textDocument.uri);
  connection.onCompletion(guard.placed('completion', null, (params) => {
    const snapshot = of(params);
    return snapshot ? completions(snapshot, params.position, { client: client(), paths: { files: filesOf, shelf: SHELF.names } }) : null;
  }));
  connection.onCompletionResolve(guard.request('completionItem/resolve', { label: '' }, (item) => resolved(item, snapshotOf)));
  connection.onSignatureHelp(guard.placed('signatureHelp', null, (params): SignatureHelp | null => {
    const snapshot = of(params);
    return (snapshot && signature(snapshot, params.position)) ?? null;
  }));
  connection.onDocumentFormatting(guard.placed('formatting', null, (params) => edits(of(params), (snapshot) => formattingOf(snapshot))));
  connection.onDocumentRangeFormatting(guard.placed('rangeFormatting', null, (params) => edits(of(params), (snapshot) => formattingOf(snapshot, params.range))));
  connection.onDocumentOnTypeFormatting(guard.placed('onTypeFormatting', null, (params) => edits(of(params), (snapshot) => formattingAfter(snapshot, params.position, params.ch))));
  connection.onCodeAction(guard.placed('codeAction', null, (params) => {
    const snapshot = of(params);
    return snapshot ? actions(context, snapshot, params) : null;
  }));
}

function edits(snapshot: Snapshot | undefined, work: (snapshot: Snapshot) => readonly Edit[]): TextEdit[] | null {
  return snapshot ? work(snapshot).map(({ range, text }) => ({ range, newText: text })) : null;
}

// ---------------------------------------------------------------------------------------------- completions

const COMPLETION_KINDS: Readonly<Record<Completion['kind'], CompletionItemKind>> = {
  statement: CompletionItemKind.Keyword,
  option: CompletionItemKind.Property,
  fabric: CompletionItemKind.Color,
  block: CompletionItemKind.Class,
  number: CompletionItemKind.Constant,
  parameter: CompletionItemKind.TypeParameter,
  unit: CompletionItemKind.Unit,
  size: CompletionItemKind.EnumMember,
  import: CompletionItemKind.Module,
  rule: CompletionItemKind.EnumMember,
  value: CompletionItemKind.Value,
};

function completions(snapshot: Snapshot, position: Range['start'], { client, paths }: { readonly client: Client | undefined; readonly paths: Paths }): CompletionItem[] {
  const { columns, items } = completionsAt(snapshot, position, paths);
  const range = { start: { line: position.line, character: columns.from }, end: { line: position.line, character: columns.to } };
  return items.map((item, index) => itemOf(snapshot, item, range, { index, client }));
}

/** An editor that shows swatches finds the colour at the end of the documentation. */
function itemOf(snapshot: Snapshot, { text, kind, detail, snippet, colour, goesOn }: Completion, range: Range, { index, client }: { readonly index: number; readonly client: Client | undefined }): CompletionItem {
  const isSnippet = snippet !== undefined && client?.insertsSnippets === true;
  return {
    label: text,
    kind: COMPLETION_KINDS[kind],
    sortText: `${index}`.padStart(5, '0'),
    ...(detail !== '' && { detail }),
    ...(colour !== undefined && { documentation: colour }),
    ...(isSnippet && { insertTextFormat: InsertTextFormat.Snippet }),
    textEdit: { range, newText: isSnippet ? snippet : text },
    ...(kind === 'block' && { data: { uri: snapshot.document.source, block: text } }),
    ...(goesOn && client?.isOurs === true && isSnippet && { command: { title: 'Go on', command: 'editor.action.triggerSuggest' } }),
  };
}

/** A block's drawing is made when it is looked at. */
function resolved(item: CompletionItem, snapshotOf: AnswerContext['snapshotOf']): CompletionItem {
  const { uri, block } = (item.data ?? {}) as { uri?: unknown; block?: unknown };
  const snapshot = typeof uri === 'string' ? snapshotOf(uri) : undefined;
  const value = snapshot && typeof block === 'string' ? blockCard(snapshot, block) : undefined;
  return value === undefined ? item : { ...item, documentation: { kind: MarkupKind.Markdown, value } };
}

function signature(snapshot: Snapshot, position: Range['start']): SignatureHelp | undefined {
  const found = signatureAt(snapshot, position);
  if (!found) return undefined;
  const parameters = found.parameters.map(({ from, to, says }) => ({ label: [from, to] as [number, number], documentation: says }));
  return { signatures: [{ label: found.label, parameters }], activeSignature: 0, activeParameter: found.active };
}

// ---------------------------------------------------------------------------------------------- actions

interface Asked {
  readonly range: Range;
  readonly context: { readonly diagnostics: readonly Diagnostic[]; readonly only?: readonly string[] };
}

function actions(context: AnswerContext, snapshot: Snapshot, { range, context: { diagnostics, only } }: Asked): CodeAction[] {
  const mends = wants(only, ACTION_KINDS.fix) ? mendsIn(snapshot, range).map((mend) => mended(context, snapshot, mend, diagnostics)) : [];
  const rewritten = only === undefined || only.some((each) => each === '' || each.startsWith('refactor')) ? refactoringsAt(snapshot, range).filter(({ kind }) => wants(only, ACTION_KINDS[kind])).map((each) => refactored(context, snapshot, each)) : [];
  return [...mends, ...rewritten, ...everything(context, snapshot, only)];
}

/** Only when it is asked for by name: on save, or from the palette. */
function everything(context: AnswerContext, snapshot: Snapshot, only: readonly string[] | undefined): CodeAction[] {
  if (only === undefined || !wants(only, ACTION_KINDS.fixAll)) return [];
  const all = allMends(snapshot);
  return all.length === 0 ? [] : [{ title: 'Take every certain fix', kind: ACTION_KINDS.fixAll, edit: workspaceEditOf(context, [{ snapshot, edits: all }]) }];
}

/** A kind asked for stands for the kinds below it, too. */
function wants(only: readonly string[] | undefined, kind: string): boolean {
  return only === undefined || only.some((each) => each === '' || kind === each || kind.startsWith(`${each}.`));
}

function mended(context: AnswerContext, snapshot: Snapshot, mend: Mend, diagnostics: readonly Diagnostic[]): CodeAction {
  const own = diagnostics.filter(({ code, message }) => code === mend.problem.rule && message === mend.problem.message);
  const edit = workspaceEditOf(context, [{ snapshot, edits: mend.edits }]);
  return { title: mend.title, kind: ACTION_KINDS.fix, edit, ...(own.length > 0 && { diagnostics: own }), ...(mend.certain && { isPreferred: true }) };
}

function refactored(context: AnswerContext, snapshot: Snapshot, { title, kind, edits: changes }: Refactoring): CodeAction {
  return { title, kind: ACTION_KINDS[kind], edit: workspaceEditOf(context, [{ snapshot, edits: changes }]) };
}
