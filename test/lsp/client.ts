/**
 * An editor made of the protocol alone: starts the bundled server, speaks JSON-RPC in its own framing, and finds fault with
 * every message that is not as the protocol says.
 */
import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { join } from 'node:path';
import type { ClientCapabilities, Diagnostic, DocumentDiagnosticReport, InitializeParams, Position, PublishDiagnosticsParams } from 'vscode-languageserver-protocol';
import { shipped } from '../harness/shipped.ts';
import type { Failure, Results, Told } from './messages.ts';
import { validator } from './valid.ts';

export interface Session {
  readonly request: <M extends keyof Results>(method: M, params: unknown) => Promise<Results[M]>;
  /** The whole response, whether it is a result or an error; for any method. */
  readonly respond: (method: string, params: unknown) => Sent;
  readonly notify: (method: string, params: unknown) => void;
  readonly open: (uri: string, text: string) => void;
  /** One edit after another, each in the text that the one before left. */
  readonly edit: (uri: string, ...changes: readonly { readonly start: Position; readonly end: Position; readonly text: string }[]) => void;
  readonly close: (uri: string) => void;
  /** All of them, pulled when the server has no more to say. */
  readonly diagnostics: (uri: string) => Promise<readonly Diagnostic[]>;
  /** What the server said by itself, in order. */
  readonly told: readonly { readonly method: string; readonly params: unknown }[];
  readonly asked: readonly { readonly method: string; readonly params: unknown }[];
  /** The first notification from now on that fits, or one of those already here. */
  readonly hear: <M extends keyof Told>(method: M, fits?: (params: Told[M]) => boolean) => Promise<Told[M]>;
  /** Everything that was wrong with the server's messages so far. */
  readonly faults: readonly string[];
  /** What is said meanwhile arrives at once. */
  readonly together: <T>(say: () => T) => T;
  /** `shutdown` and `exit`; the exit code. */
  readonly stop: () => Promise<number | null>;
  readonly ended: Promise<number | null>;
  readonly kill: () => void;
  readonly pid: number;
  /** What the server wrote on its error output so far. */
  readonly stderr: () => string;
}

export interface Sent {
  readonly id: number;
  readonly response: Promise<{ readonly result?: unknown; readonly error?: Failure }>;
}

export interface SessionOptions {
  readonly capabilities?: ClientCapabilities;
  readonly folders?: readonly string[];
  readonly initializationOptions?: unknown;
  /** What `workspace/configuration` answers for `scant`. */
  readonly settings?: unknown;
  /** `none`: the test says `initialize` itself. */
  readonly greeting?: 'none';
  /** For the server's Node. */
  readonly execArgv?: readonly string[];
  /** Run instead of Node and the bundle: a whole command. */
  readonly command?: readonly string[];
}

export const PULLS: ClientCapabilities = {
  general: { positionEncodings: ['utf-16'] },
  workspace: { configuration: true, workspaceFolders: true, didChangeWatchedFiles: { dynamicRegistration: true }, diagnostics: { refreshSupport: true }, workspaceEdit: { documentChanges: true } },
  textDocument: {
    diagnostic: { dynamicRegistration: true, relatedDocumentSupport: false },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    publishDiagnostics: { relatedInformation: true },
  },
};

/** An editor that waits for what it is sent. */
export const PUSHED: ClientCapabilities = { textDocument: { publishDiagnostics: { relatedInformation: true } } };

/** The server as it is shipped: the command line, which speaks on its standard streams. */
export function serverCommand(): readonly string[] {
  return [join(shipped(), 'scant.cjs'), 'lsp', '--stdio'];
}

export async function startSession(options: SessionOptions = {}): Promise<Session> {
  const [program = '', ...args] = options.command ?? [process.execPath, '--enable-source-maps', ...(options.execArgv ?? []), ...serverCommand()];
  const child = spawn(program, args, { stdio: 'pipe' });
  const session = converse(child, options);
  if (options.greeting !== 'none') {
    await session.request('initialize', greeting(options));
    session.notify('initialized', {});
  }
  return session;
}

export function greeting({ capabilities = PULLS, folders, initializationOptions }: SessionOptions): InitializeParams {
  return {
    processId: process.pid,
    // eslint-disable-next-line @typescript-eslint/no-deprecated -- the protocol still asks for it
    rootUri: folders?.[0] ?? null,
    workspaceFolders: folders?.map((uri) => ({ uri, name: uri })) ?? null,
    capabilities,
    initializationOptions: initializationOptions ?? { rulePages: 'scant-rule:/' },
  };
}

interface Message {
  readonly id?: number | string | null;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: Failure;
}

interface Waiting {
  readonly method: string;
  readonly settle: (message: Message) => void;
}

function converse(child: ChildProcessWithoutNullStreams, { settings }: SessionOptions): Session {
  const valid = validator();
  const faults: string[] = [];
  const told: { method: string; params: unknown }[] = [];
  const asked: { method: string; params: unknown }[] = [];
  const waiting = new Map<number, Waiting>();
  const listeners = new Set<() => void>();
  const versions = new Map<string, number>();
  let last = 0;
  let stderr = '';

  const fault = (what: string, found: readonly string[]): void => void faults.push(...found.map((each) => `${what}: ${each}`));
  const send = (message: object): void => {
    const body = Buffer.from(JSON.stringify({ jsonrpc: '2.0', ...message }));
    child.stdin.write(Buffer.concat([Buffer.from(`Content-Length: ${body.length}\r\n\r\n`), body]));
  };
  const answerFor = (method: string): unknown => (method === 'workspace/configuration' ? [settings ?? null] : null);
  const receive = (message: Message): void => {
    if (message.method !== undefined && message.id !== undefined) {
      asked.push({ method: message.method, params: message.params });
      fault(message.method, valid.asked(message.method, message.params ?? null));
      send({ id: message.id, result: answerFor(message.method) });
    } else if (message.method !== undefined) {
      told.push({ method: message.method, params: message.params });
      fault(message.method, valid.told(message.method, message.params));
    } else {
      const request = waiting.get(Number(message.id));
      waiting.delete(Number(message.id));
      if (!request) return void faults.push(`an answer to nothing: ${JSON.stringify(message)}`);
      if (message.error) fault(request.method, valid.failure(message.error));
      else if (message.result === undefined) faults.push(`${request.method}: neither result nor error`);
      else fault(request.method, valid.result(request.method, message.result));
      request.settle(message);
    }
    listeners.forEach((listen) => listen());
  };
  readMessages(child, receive, (text) => faults.push(text));
  child.stderr.on('data', (data: Buffer) => {
    stderr += data.toString();
  });
  const ended = new Promise<number | null>((resolve) => child.on('exit', (code) => resolve(code)));
  void ended.then(() => waiting.forEach(({ settle, method }) => settle({ error: { code: 0, message: `${method}: the server has ended. ${stderr}` } })));

  const respond = (method: string, params: unknown): Sent => {
    const id = (last += 1);
    const response = new Promise<Message>((settle) => waiting.set(id, { method, settle }));
    send({ id, method, ...(params !== undefined && { params }) });
    return { id, response };
  };
  const request: Session['request'] = async (method, params) => {
    const { result, error } = await respond(method, params).response;
    if (error) throw new Error(`${method}: ${error.code} ${error.message}`);
    return result as never;
  };
  const notify: Session['notify'] = (method, params) => send({ method, params });
  const hear: Session['hear'] = (method, fits = () => true) =>
    new Promise((resolve, reject) => {
      const timer = setTimeout(() => reject(new Error(`${method} was never heard; heard ${JSON.stringify(told).slice(0, 2000)}`)), 10_000);
      const look = (): void => {
        const found = told.find((each) => each.method === method && fits(each.params as never));
        if (!found) return;
        clearTimeout(timer);
        listeners.delete(look);
        resolve(found.params as never);
      };
      listeners.add(look);
      look();
    });
  const textDocument = (uri: string): { uri: string; version: number } => {
    const version = (versions.get(uri) ?? 0) + 1;
    versions.set(uri, version);
    return { uri, version };
  };
  return {
    request,
    respond,
    notify,
    open: (uri, text) => notify('textDocument/didOpen', { textDocument: { ...textDocument(uri), languageId: 'quilt', text } }),
    edit: (uri, ...changes) =>
      notify('textDocument/didChange', { textDocument: textDocument(uri), contentChanges: changes.map(({ start, end, text }) => ({ range: { start, end }, text })) }),
    close: (uri) => notify('textDocument/didClose', { textDocument: { uri } }),
    diagnostics: async (uri) => {
      await request('scant/settled', {});
      return itemsOf(await request('textDocument/diagnostic', { textDocument: { uri } }));
    },
    told,
    asked,
    hear,
    faults,
    together: (say) => {
      child.stdin.cork();
      const said = say();
      child.stdin.uncork();
      return said;
    },
    stop: async () => {
      await respond('shutdown', undefined).response;
      notify('exit', undefined);
      return ended;
    },
    ended,
    kill: () => child.kill('SIGKILL'),
    pid: child.pid ?? 0,
    stderr: () => stderr,
  };
}

function itemsOf(report: DocumentDiagnosticReport): readonly Diagnostic[] {
  return report.kind === 'full' ? report.items : [];
}

/** The problems that were pushed last for a file. */
export function pushed({ told }: Session, uri: string): PublishDiagnosticsParams | undefined {
  return told.filter(({ method }) => method === 'textDocument/publishDiagnostics').map(({ params }) => params as PublishDiagnosticsParams).findLast((params) => params.uri === uri);
}

/** Cuts the stream into messages by the bytes that their headers announce. */
function readMessages(child: ChildProcessWithoutNullStreams, receive: (message: Message) => void, fault: (text: string) => void): void {
  let buffer = Buffer.alloc(0);
  child.stdout.on('data', (data: Buffer) => {
    buffer = Buffer.concat([buffer, data]);
    for (;;) {
      const end = buffer.indexOf('\r\n\r\n');
      if (end < 0) return;
      const header = buffer.subarray(0, end).toString('ascii');
      const length = Number(/^Content-Length: (\d+)$/im.exec(header)?.[1] ?? NaN);
      if (!Number.isInteger(length)) return fault(`a header without a length: ${header}`);
      if (buffer.length < end + 4 + length) return;
      const body = buffer.subarray(end + 4, end + 4 + length).toString('utf8');
      buffer = buffer.subarray(end + 4 + length);
      receive(JSON.parse(body) as Message);
    }
  });
}
