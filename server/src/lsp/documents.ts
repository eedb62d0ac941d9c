/** The texts that editors have open, as our own lines: an edit replaces the lines it touches and no others. */
import { TextDocuments, type Connection, type TextDocumentContentChangeEvent, type TextDocumentsConfiguration } from 'vscode-languageserver';
import { documentOf, replaceRange, type Document, type Position } from '../text/document.ts';
import type { Recoder } from './encoding.ts';
import type { Guard } from './guard.ts';

/** One version of an open text; the next version is another object. */
export interface OpenDocument {
  readonly uri: string;
  readonly version: number;
  readonly document: Document;
}

/** What is open now, by any spelling of its address. */
export interface OpenTexts {
  readonly get: (uri: string) => OpenDocument | undefined;
  /** The addresses as the editor writes them. */
  readonly uris: () => readonly string[];
}

export interface OpenTextsOptions {
  readonly guard: Guard;
  /** Equal for addresses of the same file. */
  readonly keyOf: (uri: string) => string;
  readonly recoder: () => Recoder;
  /** A text was opened or edited, or closed. */
  readonly onChange: (document: OpenDocument) => void;
  readonly onClose: (document: OpenDocument) => void;
}

/** Follows the texts of a connection; must be called before the connection listens. */
export function openTextsOf(connection: Connection, { guard, keyOf, recoder, onChange, onClose }: OpenTextsOptions): OpenTexts {
  const documents = new TextDocuments(configuration(recoder));
  const spellings = new Map<string, string>();
  documents.onDidOpen(({ document: { uri } }) => spellings.set(keyOf(uri), uri));
  documents.onDidChangeContent(guard.event('change', ({ document }) => onChange(document)));
  documents.onDidClose(guard.event('close', ({ document }) => {
    spellings.delete(keyOf(document.uri));
    onClose(document);
  }));
  documents.listen({
    onDidOpenTextDocument: (handler) => connection.onDidOpenTextDocument(guard.event('didOpen', handler)),
    onDidChangeTextDocument: (handler) => connection.onDidChangeTextDocument(guard.event('didChange', handler)),
    onDidCloseTextDocument: (handler) => connection.onDidCloseTextDocument(guard.event('didClose', handler)),
    onWillSaveTextDocument: (handler) => connection.onWillSaveTextDocument(guard.event('willSave', handler)),
    onWillSaveTextDocumentWaitUntil: (handler) => connection.onWillSaveTextDocumentWaitUntil(handler),
    onDidSaveTextDocument: (handler) => connection.onDidSaveTextDocument(guard.event('didSave', handler)),
  });
  return { get: (uri) => documents.get(spellings.get(keyOf(uri)) ?? uri), uris: () => documents.keys() };
}

function configuration(recoder: () => Recoder): TextDocumentsConfiguration<OpenDocument> {
  return {
    create: (uri, _language, version, text) => ({ uri, version, document: documentOf(uri, text) }),
    update: ({ uri, document }, changes, version) => ({ uri, version, document: changes.reduce<Document>((text, change) => changed(text, change, recoder()), document) }),
  };
}

function changed(document: Document, change: TextDocumentContentChangeEvent, { ours }: Recoder): Document {
  if (!('range' in change)) return documentOf(document.source, change.text);
  const here = ({ line, character }: Position): Position => ({ line, character: ours(document.lines[line]?.text ?? '', character) });
  return replaceRange(document, here(change.range.start), here(change.range.end), change.text);
}
