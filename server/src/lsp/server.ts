/**
 * The language server: one connection, the texts that are open, and who is told what when. The only state is here and in
 * `patterns.ts`; what an answer says is worked out in `features`.
 */
import {
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  DocumentDiagnosticReportKind,
  ErrorCodes,
  FileChangeType,
  ResponseError,
  TextDocumentSyncKind,
  type Connection,
  type DocumentDiagnosticReport,
  type InitializeResult,
} from 'vscode-languageserver';
import type { Snapshot } from '../snapshot.ts';
import { answer } from './answers.ts';
import { clientOf, DEFAULT_SETTINGS, settingsOf, type Client } from './client.ts';
import type { AnswerContext } from './context.ts';
import { diagnosticsOf } from './diagnostics.ts';
import { openTextsOf } from './documents.ts';
import { guardWith } from './guard.ts';
import { patternsOf } from './patterns.ts';
import { answerPictures } from './pictures.ts';
import type { Services } from './services.ts';

/** Answers on a connection until it ends. */
export function serve(connection: Connection, services: Services): void {
  const log = (message: string): void => connection.console.error(message);
  const guard = guardWith({ log, state: () => state, versionOf: (params) => open.get(uriOf(params))?.version });
  const serials = new WeakMap<Snapshot, number>();
  const stale = new Set<string>();
  let state: 'starting' | 'running' | 'down' = 'starting';
  let client: Client | undefined;
  let folders: readonly string[] = [];
  let settings = DEFAULT_SETTINGS;
  let made = 0;
  const open = openTextsOf(connection, {
    guard,
    keyOf: services.keyOf,
    onChange: ({ uri }) => textMoved(uri),
    onClose: ({ uri }) => {
      patterns.forget(uri);
      textMoved(uri);
    },
  });
  const patterns = patternsOf({ open, services, folders: () => folders });

  connection.onInitialize((params) => {
    if (state !== 'starting') return new ResponseError(ErrorCodes.InvalidRequest, 'The server is initialized already.', { retry: false });
    state = 'running';
    client = clientOf(params);
    folders = client.folders;
    return { capabilities: capabilitiesFor(client), serverInfo: { name: 'scant' } };
  });
  connection.onInitialized(guard.event('initialized', () => {
    if (client?.watchesFiles) void register(DidChangeWatchedFilesNotification.method, { watchers: [{ globPattern: '**/*.quilt' }] });
    if (client?.asksSettings) void register(DidChangeConfigurationNotification.method, { section: 'scant' });
    if (client?.tellsFolders) connection.workspace.onDidChangeWorkspaceFolders(guard.event('folders', ({ added, removed }) => {
      folders = [...folders.filter((folder) => !removed.some(({ uri }) => uri === folder)), ...added.map(({ uri }) => uri)];
      everythingMoved();
    }));
    void pullSettings();
  }));
  connection.onRequest((method) => guard.refusal() ?? new ResponseError(ErrorCodes.MethodNotFound, `Unhandled method ${method}`));
  connection.onShutdown(() => {
    state = 'down';
  });

  connection.onDidChangeWatchedFiles(guard.event('files', ({ changes }) => {
    for (const { uri, type } of changes) if (type === FileChangeType.Deleted || !open.get(uri)) textMoved(uri);
  }));
  connection.onDidChangeConfiguration(guard.event('settings', ({ settings: given }) => {
    if (client?.asksSettings) return void pullSettings();
    settings = settingsOf((given as { scant?: unknown } | null)?.scant);
    everythingMoved();
  }));

  connection.languages.diagnostics.on(guard.request('diagnostic', NOTHING_WRONG, ({ textDocument, previousResultId }): DocumentDiagnosticReport => {
    const snapshot = open.get(textDocument.uri) && patterns.of(textDocument.uri);
    if (!snapshot) return NOTHING_WRONG;
    const resultId = idOf(snapshot);
    if (resultId === previousResultId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId };
    return { kind: DocumentDiagnosticReportKind.Full, resultId, items: diagnosticsIn(snapshot) };
  }));
  const context: AnswerContext = { guard, services, snapshotOf: patterns.of, client: () => client };
  answer(connection, context);
  answerPictures(connection, context);
  connection.listen();

  /** A text is another: it and its importers are looked at again, by whoever shows them. */
  function textMoved(uri: string): void {
    patterns.moved();
    const importers = patterns.importersOf(uri);
    const shown = importers.filter((importer) => open.get(importer));
    if (client?.pullsDiagnostics !== true) [uri, ...shown].forEach(publishSoon);
    else if (shown.length > 0) refresh();
    changed([uri, ...importers]);
  }

  function everythingMoved(): void {
    patterns.moved();
    if (client?.pullsDiagnostics === true) refresh();
    else open.uris().forEach(publishSoon);
    changed(open.uris());
  }

  function changed(uris: readonly string[]): void {
    if (client?.isOurs === true) void connection.sendNotification('scant/changed', { uris: [...uris] });
  }

  function refresh(): void {
    if (client?.refreshesDiagnostics === true) connection.languages.diagnostics.refresh().catch(ignore);
  }

  /** For editors that do not ask: the newest text's problems, once the messages that are waiting have been read. */
  function publishSoon(uri: string): void {
    if (stale.size === 0) setImmediate(guard.event('publish', () => {
      const uris = [...stale];
      stale.clear();
      uris.forEach(publish);
    }));
    stale.add(uri);
  }

  function publish(uri: string): void {
    const text = open.get(uri);
    const snapshot = text && patterns.of(uri);
    const diagnostics = snapshot ? diagnosticsIn(snapshot) : [];
    void connection.sendDiagnostics({ uri: text?.uri ?? uri, ...(text && { version: text.version }), diagnostics }).catch(ignore);
  }

  function diagnosticsIn(snapshot: Snapshot): ReturnType<typeof diagnosticsOf> {
    return diagnosticsOf(snapshot, { ...settings, explanationLink: client?.explanationLink ?? (() => undefined) });
  }

  function idOf(snapshot: Snapshot): string {
    const serial = serials.get(snapshot) ?? (made += 1);
    serials.set(snapshot, serial);
    return `${serial} ${settings.hints}`;
  }

  async function pullSettings(): Promise<void> {
    if (client?.asksSettings !== true) return;
    const before = settings;
    settings = settingsOf(await connection.workspace.getConfiguration('scant').catch(ignore));
    if (before.hints !== settings.hints) everythingMoved();
  }

  function register(method: string, registerOptions: unknown): Promise<void> {
    const registration = { id: method, method, registerOptions };
    return connection.sendRequest<null>('client/registerCapability', { registrations: [registration] }).then(ignore, ignore);
  }
}

const NOTHING_WRONG: DocumentDiagnosticReport = { kind: DocumentDiagnosticReportKind.Full, items: [] };

function capabilitiesFor(client: Client): InitializeResult['capabilities'] {
  return {
    positionEncoding: 'utf-16',
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    hoverProvider: true,
    documentSymbolProvider: true,
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    codeActionProvider: { codeActionKinds: ['quickfix'] },
    completionProvider: { triggerCharacters: ['#', '@'] },
    workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
    ...(client.pullsDiagnostics && { diagnosticProvider: { identifier: 'scant', interFileDependencies: true, workspaceDiagnostics: false } }),
  };
}

function uriOf(params: unknown): string {
  const { textDocument, uri } = (params ?? {}) as { textDocument?: { uri?: unknown }; uri?: unknown };
  const found = textDocument?.uri ?? uri;
  return typeof found === 'string' ? found : '';
}

function ignore(): undefined {
  return undefined;
}
