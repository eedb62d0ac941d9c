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
  type Connection,
  type DocumentDiagnosticReport,
} from 'vscode-languageserver';
import type { Snapshot } from '../snapshot.ts';
import { answer } from './answers.ts';
import { capabilitiesFor } from './capabilities.ts';
import { clientOf, DEFAULT_SETTINGS, settingsOf, type Client } from './client.ts';
import type { AnswerContext } from './context.ts';
import { diagnosticsOf } from './diagnostics.ts';
import { openTextsOf } from './documents.ts';
import { recoderFor } from './encoding.ts';
import { guardWith } from './guard.ts';
import { patternsOf } from './patterns.ts';
import { answerPictures } from './pictures.ts';
import type { Services } from './services.ts';

/** Answers on a connection until it ends. */
export function serve(connection: Connection, services: Services): void {
  const log = (message: string): void => connection.console.error(message);
  const guard = guardWith({
    log,
    state: () => state,
    versionOf: (params) => open.get(uriOf(params))?.version,
    decode: (params) => recoder.decode(params, uriOf(params), lineOf),
    encode: (result, params) => recoder.encode(result, uriOf(params), lineOf),
  });
  const serials = new WeakMap<Snapshot, number>();
  const stale = new Set<string>();
  let state: 'starting' | 'running' | 'down' = 'starting';
  let client: Client | undefined;
  let folders: readonly string[] = [];
  let settings = DEFAULT_SETTINGS;
  let made = 0;
  let recoder = recoderFor('utf-16');
  const open = openTextsOf(connection, {
    guard,
    keyOf: services.keyOf,
    recoder: () => recoder,
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
    recoder = recoderFor(client.encoding);
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
  const context: AnswerContext = {
    guard,
    services,
    snapshotOf: patterns.of,
    filesOf: () => [...new Map([...services.list(folders), ...open.uris()].map((uri) => [services.keyOf(uri), uri])).values()],
    folders: () => folders,
    isOpen: (uri) => open.get(uri) !== undefined,
    client: () => client,
    settings: () => settings,
    recoder: () => recoder,
  };
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
    if (shown.length > 0) askAnew();
    changed([uri, ...importers]);
  }

  function everythingMoved(): void {
    patterns.moved();
    if (client?.pullsDiagnostics === true) refresh();
    else open.uris().forEach(publishSoon);
    askAnew();
    changed(open.uris());
  }

  function changed(uris: readonly string[]): void {
    if (client?.isOurs === true) void connection.sendNotification('scant/changed', { uris: [...uris] });
  }

  function refresh(): void {
    if (client?.refreshesDiagnostics === true) connection.languages.diagnostics.refresh().catch(ignore);
  }

  /** What is shown beside the texts may be another, though they are not. */
  function askAnew(): void {
    for (const what of client?.refreshes ?? []) connection.sendRequest(`workspace/${what}/refresh`).catch(ignore);
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
    const message = { uri: text?.uri ?? uri, ...(text && { version: text.version }), diagnostics };
    void connection.sendDiagnostics(recoder.encode(message, uri, lineOf)).catch(ignore);
  }

  function diagnosticsIn(snapshot: Snapshot): ReturnType<typeof diagnosticsOf> {
    return diagnosticsOf(snapshot, { hints: settings.hints, explanationLink: client?.explanationLink ?? (() => undefined) });
  }

  /** A line of an open text, or of a file that was read for one. */
  function lineOf(uri: string, line: number): string | undefined {
    return (open.get(uri)?.document ?? patterns.of(uri)?.document)?.lines[line]?.text;
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
    else if (before.annotations !== settings.annotations) askAnew();
  }

  function register(method: string, registerOptions: unknown): Promise<void> {
    const registration = { id: method, method, registerOptions };
    return connection.sendRequest<null>('client/registerCapability', { registrations: [registration] }).then(ignore, ignore);
  }
}

const NOTHING_WRONG: DocumentDiagnosticReport = { kind: DocumentDiagnosticReportKind.Full, items: [] };

/** The file that a message is about; an item of a list names it in its `data`. */
function uriOf(params: unknown): string {
  const { textDocument, uri, data } = (params ?? {}) as { textDocument?: { uri?: unknown }; uri?: unknown; data?: { uri?: unknown } | null };
  const found = textDocument?.uri ?? uri ?? data?.uri;
  return typeof found === 'string' ? found : '';
}

function ignore(): undefined {
  return undefined;
}
