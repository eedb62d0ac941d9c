/** What the server tells the editor it can do. */
import { TextDocumentSyncKind, type InitializeResult } from 'vscode-languageserver';
import { TOKEN_MODIFIERS, TOKEN_TYPES } from '../features/tokens.ts';
import type { Client } from './client.ts';

export const ACTION_KINDS = { fix: 'quickfix', fixAll: 'source.fixAll.scant', extract: 'refactor.extract', inline: 'refactor.inline', rewrite: 'refactor.rewrite' } as const;

/** Files and folders whose moves change imports. */
const MOVED = { filters: [{ scheme: 'file', pattern: { glob: '**/*.quilt', matches: 'file' as const } }, { scheme: 'file', pattern: { glob: '**', matches: 'folder' as const } }] };

export function capabilitiesFor(client: Client): InitializeResult['capabilities'] {
  return {
    positionEncoding: client.encoding,
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    hoverProvider: true,
    completionProvider: { triggerCharacters: ['#', '@', '.', '(', '{', '"', '/'], resolveProvider: true },
    signatureHelpProvider: { triggerCharacters: ['(', ','], retriggerCharacters: [':', '='] },
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: { prepareProvider: true },
    documentSymbolProvider: true,
    workspaceSymbolProvider: true,
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    semanticTokensProvider: { legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] }, range: true, full: { delta: true } },
    colorProvider: true,
    documentLinkProvider: { resolveProvider: false },
    inlayHintProvider: { resolveProvider: false },
    codeLensProvider: { resolveProvider: false },
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n', moreTriggerCharacter: ['}'] },
    codeActionProvider: { codeActionKinds: Object.values(ACTION_KINDS) },
    workspace: { workspaceFolders: { supported: true, changeNotifications: true }, fileOperations: { willRename: MOVED } },
    ...(client.pullsDiagnostics && { diagnosticProvider: { identifier: 'scant', interFileDependencies: true, workspaceDiagnostics: true } }),
  };
}
