/** The requests of the protocol, each answered by one feature. */
import {
  CompletionItemKind,
  SymbolKind,
  type CodeAction,
  type CompletionItem,
  type Connection,
  type Diagnostic,
  type DocumentSymbol as ProtocolSymbol,
  type Hover,
  type Range,
  type SymbolInformation,
  type TextDocumentIdentifier,
  type TextEdit,
} from 'vscode-languageserver';
import { completionsAt, type Completion } from '../features/completion.ts';
import { mendsIn, type Mend } from '../features/fixes.ts';
import { formattingOf } from '../features/formatting.ts';
import { markdownOf, plainOf } from '../features/hover-text.ts';
import { hoverAt } from '../features/hover.ts';
import { symbolsOf, type DocumentSymbol } from '../features/symbols.ts';
import type { Snapshot } from '../snapshot.ts';
import { rangeOf } from '../text/place.ts';
import type { Client } from './client.ts';
import type { AnswerContext } from './context.ts';
import { START } from './convert.ts';

export function answer(connection: Connection, { guard, snapshotOf, client }: AnswerContext): void {
  const of = ({ textDocument }: { readonly textDocument: TextDocumentIdentifier }): Snapshot | undefined => snapshotOf(textDocument.uri);
  connection.onHover(guard.placed('hover', null, (params) => {
    const snapshot = of(params);
    return snapshot ? hover(snapshot, params.position, client()?.readsMarkdown === true ? 'markdown' : 'plaintext') : null;
  }));
  connection.onDocumentSymbol(guard.request('documentSymbol', null, (params) => {
    const snapshot = of(params);
    if (!snapshot) return null;
    const symbols = symbolsOf(snapshot);
    return client()?.nestsSymbols === true ? symbols.map((each) => nested(snapshot, each)) : symbols.flatMap((each) => flat(snapshot, each, params.textDocument.uri));
  }));
  connection.onDocumentFormatting(guard.placed('formatting', null, (params) => edits(of(params))));
  connection.onDocumentRangeFormatting(guard.placed('rangeFormatting', null, (params) => edits(of(params), params.range)));
  connection.onCodeAction(guard.placed('codeAction', null, (params) => {
    const snapshot = of(params);
    if (!snapshot || !wants(params.context.only, 'quickfix')) return null;
    return mendsIn(snapshot, params.range).map((mend) => action(snapshot, mend, params.context.diagnostics, client()));
  }));
  connection.onCompletion(guard.placed('completion', null, (params) => {
    const snapshot = of(params);
    return snapshot ? completions(snapshot, params.position) : null;
  }));
}

function hover(snapshot: Snapshot, position: Range['start'], kind: 'markdown' | 'plaintext'): Hover | null {
  const found = hoverAt(snapshot, position);
  if (!found) return null;
  const range = rangeOf(snapshot.document, found.place);
  return { contents: { kind, value: kind === 'markdown' ? markdownOf(found) : plainOf(found) }, ...(range && { range }) };
}

const SYMBOL_KINDS: Readonly<Record<DocumentSymbol['kind'], SymbolKind>> = {
  pattern: SymbolKind.File,
  import: SymbolKind.Module,
  number: SymbolKind.Constant,
  fabric: SymbolKind.Variable,
  block: SymbolKind.Class,
  quilt: SymbolKind.Object,
  part: SymbolKind.Property,
  size: SymbolKind.EnumMember,
  colorway: SymbolKind.Enum,
  expectation: SymbolKind.Boolean,
  steps: SymbolKind.String,
};

function nested(snapshot: Snapshot, symbol: DocumentSymbol): ProtocolSymbol {
  const { name, kind, detail, children } = symbol;
  const range = rangeOf(snapshot.document, symbol.place) ?? START;
  const selectionRange = rangeOf(snapshot.document, symbol.selection) ?? range;
  return { name, kind: SYMBOL_KINDS[kind], detail, range, selectionRange, children: children.map((each) => nested(snapshot, each)) };
}

function flat(snapshot: Snapshot, { name, kind, place }: DocumentSymbol, uri: string): SymbolInformation[] {
  return [{ name, kind: SYMBOL_KINDS[kind], location: { uri, range: rangeOf(snapshot.document, place) ?? START } }];
}

function edits(snapshot: Snapshot | undefined, within?: Range): TextEdit[] | null {
  if (!snapshot) return null;
  return formattingOf(snapshot, within).map(({ range, text }) => ({ range, newText: text }));
}

/** A kind asked for stands for the kinds below it, too. */
function wants(only: readonly string[] | undefined, kind: string): boolean {
  return only === undefined || only.some((each) => each === '' || kind === each || kind.startsWith(`${each}.`));
}

function action(snapshot: Snapshot, mend: Mend, diagnostics: readonly Diagnostic[], client: Client | undefined): CodeAction {
  const { uri, version } = { uri: snapshot.document.source, version: snapshot.version };
  const textEdits = mend.edits.flatMap(({ place, text }) => {
    const range = rangeOf(snapshot.document, place);
    return range ? [{ range, newText: text }] : [];
  });
  const edit = client?.versionsEdits === true ? { documentChanges: [{ textDocument: { uri, version }, edits: textEdits }] } : { changes: { [uri]: textEdits } };
  const mended = diagnostics.filter(({ code, message }) => code === mend.problem.rule && message === mend.problem.message);
  return { title: mend.title, kind: 'quickfix', edit, ...(mended.length > 0 && { diagnostics: mended }), ...(mend.certain && { isPreferred: true }) };
}

const COMPLETION_KINDS: Readonly<Record<Completion['kind'], CompletionItemKind>> = {
  statement: CompletionItemKind.Keyword,
  option: CompletionItemKind.Property,
  fabric: CompletionItemKind.Variable,
  block: CompletionItemKind.Class,
  number: CompletionItemKind.Constant,
  parameter: CompletionItemKind.TypeParameter,
};

function completions(snapshot: Snapshot, position: Range['start']): CompletionItem[] {
  const { columns, items } = completionsAt(snapshot, position);
  const range = { start: { line: position.line, character: columns.from }, end: { line: position.line, character: columns.to } };
  return items.map(({ text, kind, detail }) => ({ label: text, kind: COMPLETION_KINDS[kind], detail, textEdit: { range, newText: text } }));
}
