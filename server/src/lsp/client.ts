/** What the editor at the other end can do and wants: read once from its first message, settings whenever they change. */
import type { InitializeParams } from 'vscode-languageserver';
import type { RuleId } from '../text/problem.ts';
import { agreedEncoding, type Encoding } from './encoding.ts';

export interface Client {
  readonly encoding: Encoding;
  readonly pullsDiagnostics: boolean;
  readonly refreshesDiagnostics: boolean;
  /** What it can be asked to ask for anew, by the protocol's names. */
  readonly refreshes: readonly ('inlayHint' | 'codeLens' | 'semanticTokens')[];
  readonly asksSettings: boolean;
  readonly watchesFiles: boolean;
  readonly tellsFolders: boolean;
  readonly versionsEdits: boolean;
  readonly nestsSymbols: boolean;
  readonly readsMarkdown: boolean;
  readonly insertsSnippets: boolean;
  /** Understands `scant/changed`. */
  readonly isOurs: boolean;
  /** The workspace's folders, as URIs. */
  readonly folders: readonly string[];
  readonly explanationLink: (rule: RuleId) => string | undefined;
}

export function clientOf({ capabilities, initializationOptions, ...params }: InitializeParams): Client {
  const { workspace, textDocument, general } = capabilities;
  const { rulePages } = (initializationOptions ?? {}) as { rulePages?: unknown };
  const pages = typeof rulePages === 'string' ? rulePages : undefined;
  return {
    encoding: agreedEncoding(general?.positionEncodings),
    pullsDiagnostics: textDocument?.diagnostic !== undefined,
    refreshesDiagnostics: workspace?.diagnostics?.refreshSupport === true,
    refreshes: REFRESHED.filter((each) => workspace?.[each]?.refreshSupport === true),
    asksSettings: workspace?.configuration === true,
    watchesFiles: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    tellsFolders: workspace?.workspaceFolders === true,
    versionsEdits: workspace?.workspaceEdit?.documentChanges === true,
    nestsSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    readsMarkdown: textDocument?.hover?.contentFormat?.includes('markdown') === true,
    insertsSnippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    isOurs: pages !== undefined,
    folders: foldersOf(params),
    explanationLink: (rule) => (pages === undefined ? undefined : `${pages}${rule}.md`),
  };
}

const REFRESHED = ['inlayHint', 'codeLens', 'semanticTokens'] as const;

export interface Settings {
  readonly hints: 'show' | 'hide';
  /** Figures beside and above the text. */
  readonly annotations: 'show' | 'hide';
}

export const DEFAULT_SETTINGS: Settings = { hints: 'show', annotations: 'hide' };

/** The settings under `scant`, whatever the editor gave. */
export function settingsOf(given: unknown): Settings {
  const { hints, annotations } = (typeof given === 'object' && given !== null ? given : {}) as { hints?: unknown; annotations?: unknown };
  return { hints: hints === 'hide' || hints === false ? 'hide' : 'show', annotations: annotations === 'show' || annotations === true ? 'show' : 'hide' };
}

/** Editors that know no workspace folders still send the one root. */
// eslint-disable-next-line @typescript-eslint/no-deprecated -- it is what they send
function foldersOf({ workspaceFolders, rootUri }: Pick<InitializeParams, 'workspaceFolders' | 'rootUri'>): readonly string[] {
  if (workspaceFolders) return workspaceFolders.map(({ uri }) => uri);
  return typeof rootUri === 'string' ? [rootUri] : [];
}
