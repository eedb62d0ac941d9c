/**
 * Everything that the server may say, by method, in the official types of the protocol and in our own. A schema is
 * generated from this file (`valid.ts`), so that every message on the wire is held against it.
 */
import type {
  ApplyWorkspaceEditParams,
  CodeAction,
  Command,
  CompletionItem,
  CompletionList,
  ConfigurationParams,
  DocumentDiagnosticReport,
  DocumentSymbol,
  Hover,
  InitializeResult,
  LSPAny,
  LogMessageParams,
  LogTraceParams,
  PublishDiagnosticsParams,
  RegistrationParams,
  ShowMessageParams,
  SymbolInformation,
  TextEdit,
  UnregistrationParams,
  integer,
} from 'vscode-languageserver-protocol';
import type { Notifications, Requests } from '../../server/src/lsp/requests.ts';

/** What the server answers, by the method of the request. */
export interface Results {
  'initialize': InitializeResult;
  'shutdown': null;
  'textDocument/diagnostic': DocumentDiagnosticReport;
  'textDocument/hover': Hover | null;
  'textDocument/documentSymbol': DocumentSymbol[] | SymbolInformation[] | null;
  'textDocument/formatting': TextEdit[] | null;
  'textDocument/rangeFormatting': TextEdit[] | null;
  'textDocument/codeAction': (Command | CodeAction)[] | null;
  'textDocument/completion': CompletionItem[] | CompletionList | null;
  'scant/preview': Requests['scant/preview']['result'];
  'scant/shapesAt': Requests['scant/shapesAt']['result'];
  'scant/textAt': Requests['scant/textAt']['result'];
  'scant/build': Requests['scant/build']['result'];
  'scant/explain': Requests['scant/explain']['result'];
}

/** What the server asks of the editor, by method. */
export interface Asked {
  'client/registerCapability': RegistrationParams;
  'client/unregisterCapability': UnregistrationParams;
  'workspace/configuration': ConfigurationParams;
  'workspace/diagnostic/refresh': null;
  'workspace/applyEdit': ApplyWorkspaceEditParams;
}

/** What the server tells the editor, by method. */
export interface Told {
  'textDocument/publishDiagnostics': PublishDiagnosticsParams;
  'window/logMessage': LogMessageParams;
  'window/showMessage': ShowMessageParams;
  '$/logTrace': LogTraceParams;
  'scant/changed': Notifications['scant/changed'];
}

/** The error of a response (the protocol's own type is a class). */
export interface Failure {
  code: integer;
  message: string;
  data?: LSPAny;
}
