/** The requests of the protocol, each answered by one feature: what is under the cursor, what is in the file, and the rest by group. */
import type { Connection, DocumentSymbol as ProtocolSymbol, Hover, Range, SymbolInformation, TextDocumentIdentifier } from 'vscode-languageserver';
import { markdownOf, plainOf } from '../features/hover-text.ts';
import { hoverAt } from '../features/hover.ts';
import { symbolsOf, type DocumentSymbol } from '../features/symbols.ts';
import type { Snapshot } from '../snapshot.ts';
import { rangeOf } from '../text/place.ts';
import { answerLooks } from './answers-looks.ts';
import { answerNames } from './answers-names.ts';
import { answerWriting } from './answers-writing.ts';
import type { AnswerContext } from './context.ts';
import { START } from './convert.ts';
import { SYMBOL_KINDS } from './symbol-kinds.ts';

export function answer(connection: Connection, context: AnswerContext): void {
  const { guard, snapshotOf, client } = context;
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
  answerNames(connection, context);
  answerLooks(connection, context);
  answerWriting(connection, context);
}

function hover(snapshot: Snapshot, position: Range['start'], kind: 'markdown' | 'plaintext'): Hover | null {
  const found = hoverAt(snapshot, position);
  if (!found) return null;
  const range = rangeOf(snapshot.document, found.place);
  return { contents: { kind, value: kind === 'markdown' ? markdownOf(found) : plainOf(found) }, ...(range && { range }) };
}

function nested(snapshot: Snapshot, symbol: DocumentSymbol): ProtocolSymbol {
  const { name, kind, detail, children } = symbol;
  const range = rangeOf(snapshot.document, symbol.place) ?? START;
  const selectionRange = rangeOf(snapshot.document, symbol.selection) ?? range;
  return { name, kind: SYMBOL_KINDS[kind], detail, range, selectionRange, children: children.map((each) => nested(snapshot, each)) };
}

function flat(snapshot: Snapshot, { name, kind, place }: DocumentSymbol, uri: string): SymbolInformation[] {
  return [{ name, kind: SYMBOL_KINDS[kind], location: { uri, range: rangeOf(snapshot.document, place) ?? START } }];
}
