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
  type Diagnostic,
  type DocumentDiagnosticReport,
  type WorkDoneProgressReporter,
} from 'vscode-languageserver';
import type { Snapshot } from '../snapshot.ts';
import type { Problem } from '../text/problem.ts';
import { answer } from './answers.ts';
import { capabilitiesFor } from './capabilities.ts';
import { clientOf, DEFAULT_SETTINGS, settingsOf, type Client } from './client.ts';
import type { AnswerContext } from './context.ts';
import { diagnosticsOf } from './diagnostics.ts';
import { openTextsOf } from './documents.ts';
import { recoderFor } from './encoding.ts';
import { guardWith } from './guard.ts';
import { laterOf } from './later.ts';
import { patternsOf } from './patterns.ts';
import { answerPictures } from './pictures.ts';
import type { Notifications } from './requests.ts';
import { searchesOf, type Progress } from './searches.ts';
import type { GivenFiles } from './given.ts';
import { answerWorkspaceDiagnostics } from './workspace-diagnostics.ts';

/** Answers on a connection until it ends. */
export function serve(connection: Connection, services: GivenFiles): void {
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
  // However many files change at once, the editor is asked once.
  let refreshing: NodeJS.Immediate | undefined;
  let askingAnew: NodeJS.Immediate | undefined;
  let recoder = recoderFor('utf-16');
  const open = openTextsOf(connection, {
    guard,
    keyOf: services.keyOf,
    recoder: () => recoder,
    onChange: ({ uri }) => textMoved(uri),
    onClose: ({ uri }) => {
      patterns.forget(uri);
      searches.forget(uri);
      later.forget(uri);
      told.delete(uri);
      textMoved(uri);
    },
  });
  const patterns = patternsOf({ open, services, folders: () => folders });
  const searches = searchesOf({ search: services.search, onFound: foundBetter, onProgress: showProgress });
  const later = laterOf({
    snapshotOf: (uri) => (open.get(uri) ? patterns.of(uri) : undefined),
    onDone: allFound,
    onError: (error) => log(`later: ${String(error)}`),
  });
  /** What an editor was told of a text before all was known. */
  const told = new Map<string, { readonly snapshot: Snapshot; readonly items: string }>();
  const listening = new Set<() => void>();
  let idle: ReturnType<typeof setTimeout> | undefined;

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
    for (const { uri } of changes) patterns.reread(uri);
    for (const { uri, type } of changes) if (type === FileChangeType.Deleted || !open.get(uri)) textMoved(uri);
  }));
  connection.onNotification('scant/files', guard.event('files', ({ files }: Notifications['scant/files']) => {
    services.take(files);
    for (const { uri, text } of files) if (text === null || !open.get(uri)) textMoved(uri);
  }));
  connection.onDidChangeConfiguration(guard.event('settings', ({ settings: given }) => {
    if (client?.asksSettings) return void pullSettings();
    settings = settingsOf((given as { scant?: unknown } | null)?.scant);
    everythingMoved();
  }));

  connection.languages.diagnostics.on(guard.request('diagnostic', NOTHING_WRONG, ({ textDocument, previousResultId }): DocumentDiagnosticReport => {
    const snapshot = open.get(textDocument.uri) && patterns.of(textDocument.uri);
    if (!snapshot) return NOTHING_WRONG;
    // Who cannot be told to ask again waits for all of it.
    const items = client?.refreshesDiagnostics === true ? early(textDocument.uri, snapshot) : diagnosticsIn(snapshot, snapshot.problems);
    const resultId = idOf(snapshot);
    if (resultId === previousResultId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId };
    return { kind: DocumentDiagnosticReportKind.Full, resultId, items };
  }));
  answerWorkspaceDiagnostics(connection, {
    guard,
    files: () => context.filesOf().filter((uri) => !open.get(uri)),
    snapshotOf: patterns.of,
    items: (snapshot) => diagnosticsIn(snapshot, snapshot.problems),
    idOf,
    encode: (report) => recoder.encode(report, report.uri, lineOf),
    onceMoved: (listen) => void listening.add(listen),
  });
  connection.onRequest('scant/settled', guard.request('scant/settled', null, async () => {
    await later.settled();
    return null;
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
    [...listening].forEach((listen) => listen());
    listening.clear();
    if (open.get(uri)) later.follow(uri);
    searchSoon(uri);
    const importers = patterns.importersOf(uri);
    const shown = importers.filter((importer) => open.get(importer));
    shown.forEach(later.follow);
    if (client?.pullsDiagnostics !== true) [uri, ...shown].forEach(publishSoon);
    else if (shown.length > 0) refresh();
    if (shown.length > 0) askAnew();
    changed([uri, ...importers]);
  }

  /** Once typing rests. */
  function searchSoon(uri: string): void {
    clearTimeout(idle);
    idle = setTimeout(guard.event('search', async () => {
      await later.settled();
      const snapshot = open.get(uri) && patterns.of(uri);
      if (snapshot) searches.follow(uri, snapshot);
    }), REST);
    // A browser's timers are numbers, and keep nothing alive.
    if (typeof idle === 'object') idle.unref();
  }

  /** Tells the problems known so far. */
  function early(uri: string, snapshot: Snapshot): Diagnostic[] {
    const items = diagnosticsIn(snapshot, snapshot.early);
    if (snapshot.isWorkedOut) told.delete(uri);
    else told.set(uri, { snapshot, items: JSON.stringify(items) });
    return items;
  }

  /** All problems are known: they are told where they are others than those told early. */
  function allFound(uri: string, snapshot: Snapshot): void {
    const before = told.get(uri);
    if (before?.snapshot !== snapshot) return;
    told.delete(uri);
    if (before.items === JSON.stringify(diagnosticsIn(snapshot, snapshot.problems))) return;
    if (client?.pullsDiagnostics === true) refresh();
    else publishSoon(uri);
  }

  /** The plans shown are better ones now. */
  function foundBetter(uri: string): void {
    if (!open.get(uri)) return;
    patterns.renew(uri);
    later.follow(uri);
    if (client?.pullsDiagnostics === true) refresh();
    else publishSoon(uri);
    askAnew();
    changed([uri]);
  }

  function showProgress(): Progress {
    const reporter = connection.window.createWorkDoneProgress().then((shown) => {
      shown.begin('Cutting plan', 0);
      return shown;
    });
    const tell = (say: (shown: WorkDoneProgressReporter) => void): void => void reporter.then(say).catch(ignore);
    return { report: (done) => tell((shown) => shown.report(Math.floor(done * 100))), end: () => tell((shown) => shown.done()) };
  }

  function everythingMoved(): void {
    patterns.moved();
    [...listening].forEach((listen) => listen());
    listening.clear();
    open.uris().forEach(later.follow);
    if (client?.pullsDiagnostics === true) refresh();
    else open.uris().forEach(publishSoon);
    askAnew();
    changed(open.uris());
  }

  function changed(uris: readonly string[]): void {
    if (client?.isOurs === true) void connection.sendNotification('scant/changed', { uris: [...uris] });
  }

  function refresh(): void {
    refreshing ??= setImmediate(() => {
      refreshing = undefined;
      if (client?.refreshesDiagnostics === true) connection.languages.diagnostics.refresh().catch(ignore);
    });
  }

  /** What is shown beside the texts may be another, though they are not. */
  function askAnew(): void {
    askingAnew ??= setImmediate(() => {
      askingAnew = undefined;
      for (const what of client?.refreshes ?? []) connection.sendRequest(`workspace/${what}/refresh`).catch(ignore);
    });
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
    const diagnostics = snapshot ? early(uri, snapshot) : [];
    const message = { uri: text?.uri ?? uri, ...(text && { version: text.version }), diagnostics };
    void connection.sendDiagnostics(recoder.encode(message, uri, lineOf)).catch(ignore);
  }

  function diagnosticsIn(snapshot: Snapshot, problems: readonly Problem[]): Diagnostic[] {
    return diagnosticsOf(snapshot, problems, { hints: settings.hints, explanationLink: client?.explanationLink ?? (() => undefined) });
  }

  /** A line of an open text, or of a file that was read for one. */
  function lineOf(uri: string, line: number): string | undefined {
    return (open.get(uri)?.document ?? patterns.of(uri)?.document)?.lines[line]?.text;
  }

  function idOf(snapshot: Snapshot): string {
    const serial = serials.get(snapshot) ?? (made += 1);
    serials.set(snapshot, serial);
    return `${serial} ${settings.hints} ${snapshot.isWorkedOut ? 'all' : 'early'}`;
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

/** How long nothing is typed before better plans are looked for, in milliseconds. */
const REST = 300;

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
