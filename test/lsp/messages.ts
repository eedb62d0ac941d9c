/**
 * Everything that the server may say, by method, in the official types of the protocol and in our own. A schema is
 * generated from this file (`valid.ts`), so that every message on the wire is held against it.
 */
import type {
  ApplyWorkspaceEditParams,
  CodeAction,
  CodeLens,
  ColorInformation,
  ColorPresentation,
  Command,
  CompletionItem,
  CompletionList,
  ConfigurationParams,
  DocumentDiagnosticReport,
  WorkspaceDiagnosticReport,
  DocumentHighlight,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InitializeResult,
  InlayHint,
  integer,
  Location,
  LocationLink,
  LogMessageParams,
  LogTraceParams,
  LSPAny,
  ProgressToken,
  PublishDiagnosticsParams,
  Range,
  RegistrationParams,
  SelectionRange,
  SemanticTokens,
  SemanticTokensDelta,
  ShowMessageParams,
  SignatureHelp,
  SymbolInformation,
  TextEdit,
  UnregistrationParams,
  WorkDoneProgressBegin,
  WorkDoneProgressEnd,
  WorkDoneProgressReport,
  WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import type { Notifications, Requests } from '../../server/src/lsp/requests.ts';

/** What the server answers, by the method of the request. */
export interface Results {
  'initialize': InitializeResult;
  'shutdown': null;
  'textDocument/diagnostic': DocumentDiagnosticReport;
  'workspace/diagnostic': WorkspaceDiagnosticReport;
  'textDocument/hover': Hover | null;
  'textDocument/documentSymbol': DocumentSymbol[] | SymbolInformation[] | null;
  'textDocument/formatting': TextEdit[] | null;
  'textDocument/rangeFormatting': TextEdit[] | null;
  'textDocument/codeAction': (Command | CodeAction)[] | null;
  'textDocument/completion': CompletionItem[] | CompletionList | null;
  'completionItem/resolve': CompletionItem;
  'textDocument/signatureHelp': SignatureHelp | null;
  'textDocument/definition': Location | Location[] | LocationLink[] | null;
  'textDocument/references': Location[] | null;
  'textDocument/documentHighlight': DocumentHighlight[] | null;
  'textDocument/prepareRename': { range: Range; placeholder: string } | null;
  'textDocument/rename': WorkspaceEdit | null;
  'workspace/symbol': SymbolInformation[] | null;
  'workspace/willRenameFiles': WorkspaceEdit | null;
  'textDocument/foldingRange': FoldingRange[] | null;
  'textDocument/selectionRange': SelectionRange[] | null;
  'textDocument/semanticTokens/full': SemanticTokens | null;
  'textDocument/semanticTokens/full/delta': SemanticTokens | SemanticTokensDelta | null;
  'textDocument/semanticTokens/range': SemanticTokens | null;
  'textDocument/documentColor': ColorInformation[];
  'textDocument/colorPresentation': ColorPresentation[];
  'textDocument/documentLink': DocumentLink[] | null;
  'textDocument/inlayHint': InlayHint[] | null;
  'textDocument/codeLens': CodeLens[] | null;
  'textDocument/onTypeFormatting': TextEdit[] | null;
  'scant/preview': Requests['scant/preview']['result'];
  'scant/shapesAt': Requests['scant/shapesAt']['result'];
  'scant/textAt': Requests['scant/textAt']['result'];
  'scant/write': Requests['scant/write']['result'];
  'scant/export': Requests['scant/export']['result'];
  'scant/build': Requests['scant/build']['result'];
  'scant/headline': Requests['scant/headline']['result'];
  'scant/summary': Requests['scant/summary']['result'];
  'scant/draw': Requests['scant/draw']['result'];
  'scant/explain': Requests['scant/explain']['result'];
  'scant/settled': Requests['scant/settled']['result'];
}

/** What the server asks of the editor, by method. */
export interface Asked {
  'client/registerCapability': RegistrationParams;
  'client/unregisterCapability': UnregistrationParams;
  'workspace/configuration': ConfigurationParams;
  'workspace/diagnostic/refresh': null;
  'workspace/inlayHint/refresh': null;
  'workspace/codeLens/refresh': null;
  'workspace/semanticTokens/refresh': null;
  'workspace/applyEdit': ApplyWorkspaceEditParams;
}

/** What the server tells the editor, by method. */
export interface Told {
  'textDocument/publishDiagnostics': PublishDiagnosticsParams;
  'window/logMessage': LogMessageParams;
  'window/showMessage': ShowMessageParams;
  '$/logTrace': LogTraceParams;
  '$/progress': { token: ProgressToken; value: WorkDoneProgressBegin | WorkDoneProgressReport | WorkDoneProgressEnd };
  'scant/changed': Notifications['scant/changed'];
}

/** The error of a response (the protocol's own type is a class). */
export interface Failure {
  code: integer;
  message: string;
  data?: LSPAny;
}
