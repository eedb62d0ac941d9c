/** The language server as the rest of the extension sees it: questions, answers, and word of what changed. */
import { CancellationTokenSource, EventEmitter, Uri, type CancellationToken, type Event, type LogOutputChannel } from 'vscode';
import { State, type BaseLanguageClient, type LanguageClientOptions } from 'vscode-languageclient';
import { giveFiles } from './files.ts';
import type { Notifications, Requests } from '../../server/src/lsp/requests.ts';
import { RULE_PAGES } from './pages.ts';

export interface Server {
  /** Settles when the server answers, or has failed to start (which is in the output). */
  readonly ready: () => Promise<void>;
  /** The answer; undefined when the server is down or could not give one. */
  readonly ask: <M extends keyof Requests>(method: M, params: Requests[M]['params'], token?: CancellationToken) => Promise<Requests[M]['result'] | undefined>;
  /** Files whose picture may have changed; undefined means all of them. */
  readonly onChanged: Event<readonly string[] | undefined>;
  readonly restart: () => Promise<void>;
  readonly stop: () => Promise<void>;
  readonly dispose: () => void;
}

/** What the place that the extension runs in gives: Node or a browser. */
export interface Place {
  readonly makeClient: (options: LanguageClientOptions) => BaseLanguageClient;
  /** Whether a folder is one that the server cannot read. */
  readonly isGiven: (folder: Uri) => boolean;
}

export function startServer({ makeClient, isGiven }: Place, output: LogOutputChannel): Server {
  const changed = new EventEmitter<readonly string[] | undefined>();
  const client = makeClient(options(output));
  client.onNotification('scant/changed', ({ uris }: Notifications['scant/changed']) => changed.fire(uris));
  client.onDidChangeState(({ newState }) => {
    if (newState === State.Running) changed.fire(undefined);
  });
  const files = giveFiles(client, isGiven);
  const started = client.start().catch((error: unknown) => output.error('The language server did not start.', error instanceof Error ? error : String(error)));
  return {
    ready: () => started,
    ask: async (method, params, token = new CancellationTokenSource().token) => {
      await started;
      if (!client.isRunning()) return undefined;
      return client.sendRequest<Requests[typeof method]['result']>(method, params, token).catch((error: unknown) => {
        if (!token.isCancellationRequested) output.error(`${method}: ${String(error)}`);
        return undefined;
      });
    },
    onChanged: changed.event,
    restart: async () => {
      await client.stop();
      await client.start();
    },
    stop: async () => {
      await client.dispose().catch(() => undefined);
    },
    dispose: () => [changed, files].forEach((each) => void each.dispose()),
  };
}

/** Files on a disk, unsaved ones, and those of a virtual folder; not the old sides of comparisons. */
const SCHEMES = ['file', 'untitled', 'vscode-vfs', 'vscode-remote', 'vscode-test-web'];

function options(output: LogOutputChannel): LanguageClientOptions {
  return {
    documentSelector: SCHEMES.map((scheme) => ({ scheme, language: 'quilt' })),
    outputChannel: output,
    initializationOptions: { rulePages: Uri.from({ scheme: RULE_PAGES, path: '/' }).toString() },
    diagnosticPullOptions: { onChange: true, onFocus: true },
    markdown: { isTrusted: false, supportHtml: false },
  };
}
