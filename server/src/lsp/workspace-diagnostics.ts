/**
 * The problems of every pattern of the workspace that is not open, asked for by the editor. The answer is held back until there is
 * news: nothing is asked twice for nothing. Work goes on between other messages, one file after another.
 */
import {
  DocumentDiagnosticReportKind,
  LSPErrorCodes,
  ResponseError,
  type CancellationToken,
  type Connection,
  type Diagnostic,
  type WorkspaceDocumentDiagnosticReport as Report,
} from 'vscode-languageserver';
import type { Snapshot } from '../snapshot.ts';
import { turn, type Guard } from './guard.ts';

export interface WorkspaceDiagnosticsOptions {
  readonly guard: Guard;
  /** Every pattern that is not open. */
  readonly files: () => readonly string[];
  readonly snapshotOf: (uri: string) => Snapshot | undefined;
  readonly items: (snapshot: Snapshot) => Diagnostic[];
  readonly idOf: (snapshot: Snapshot) => string;
  readonly encode: (report: Report) => Report;
  /** Calls once when something has moved. */
  readonly onceMoved: (listen: () => void) => void;
}

export function answerWorkspaceDiagnostics(connection: Connection, options: WorkspaceDiagnosticsOptions): void {
  connection.languages.diagnostics.onWorkspace(options.guard.request('workspace/diagnostic', { items: [] }, async ({ previousResultIds }, token) => {
    const known = new Map(previousResultIds.map(({ uri, value }) => [uri, value]));
    for (;;) {
      const moved = new Promise<void>((resolve) => {
        options.onceMoved(resolve);
        token.onCancellationRequested(() => resolve());
      });
      const items = [...(await reports(known, token, options)), ...goneOf(known, options)];
      if (items.some(({ kind }) => kind === DocumentDiagnosticReportKind.Full)) return { items };
      await moved;
      stopIfCancelled(token);
      await new Promise((resolve) => setTimeout(resolve, PAUSE));
    }
  }));
}

async function reports(known: ReadonlyMap<string, string>, token: CancellationToken, { files, snapshotOf, items, idOf, encode }: WorkspaceDiagnosticsOptions): Promise<Report[]> {
  const found: Report[] = [];
  for (const uri of files()) {
    const snapshot = snapshotOf(uri);
    if (!snapshot) continue;
    await workOut(snapshot, token);
    const resultId = idOf(snapshot);
    if (known.get(uri) === resultId) found.push({ kind: DocumentDiagnosticReportKind.Unchanged, uri, version: null, resultId });
    else found.push(encode({ kind: DocumentDiagnosticReportKind.Full, uri, version: null, resultId, items: items(snapshot) }));
  }
  return found;
}

async function workOut(snapshot: Snapshot, token: CancellationToken): Promise<void> {
  if (snapshot.isWorkedOut) return;
  const steps = snapshot.workOut();
  for (let since = performance.now(); steps.next().done !== true; ) {
    if (performance.now() - since < SLICE) continue;
    await turn();
    stopIfCancelled(token);
    since = performance.now();
  }
}

/** Work goes on for so long before messages that have come in are looked at, in milliseconds. */
const SLICE = 8;

/** Files that are not open seldom change; who types in one that is moves something with every key. In milliseconds. */
const PAUSE = 500;

/** Files that were told of and are gone, or open now. */
function goneOf(known: ReadonlyMap<string, string>, { files, snapshotOf }: WorkspaceDiagnosticsOptions): Report[] {
  const all = new Set(files());
  return [...known.keys()]
    .filter((uri) => !all.has(uri) && !snapshotOf(uri))
    .map((uri) => ({ kind: DocumentDiagnosticReportKind.Full, uri, version: null, items: [] }));
}

function stopIfCancelled(token: CancellationToken): void {
  if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, 'Cancelled.');
}
