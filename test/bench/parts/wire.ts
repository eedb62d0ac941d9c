/** The server over stdio for the benches: only what they need, and nothing that costs time besides the messages. */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'esbuild';
import { textFiles } from '../../../grammar/module.mjs';

export interface Wire {
  readonly request: (method: string, params: unknown) => Promise<unknown>;
  readonly notify: (method: string, params: unknown) => void;
  /** The next notification or request of that method from the server. */
  readonly heard: (method: string) => Promise<unknown>;
  readonly end: () => void;
}

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
}

/** A server that has been greeted. `pull`: the client asks for problems and can be told to ask again. */
export async function startWire(module: string): Promise<Wire> {
  const child = spawn(process.execPath, [module, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const answers = new Map<number, (result: unknown) => void>();
  const listeners = new Map<string, (params: unknown) => void>();
  let last = 0;
  let held: Buffer = Buffer.alloc(0);
  const send = (message: object): void => {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    child.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  };
  const receive = ({ id, method, params, result }: Message): void => {
    if (method === undefined) return answers.get(id ?? 0)?.(result);
    if (id !== undefined) send({ id, result: null });
    listeners.get(method)?.(params);
  };
  child.stdout.on('data', (data: Buffer) => {
    held = held.length === 0 ? data : Buffer.concat([held, data]);
    for (;;) {
      const head = held.indexOf('\r\n\r\n');
      const length = Number(/Content-Length: (\d+)/i.exec(held.subarray(0, Math.max(0, head)).toString('ascii'))?.[1] ?? NaN);
      if (head < 0 || held.length < head + 4 + length) return;
      const body = held.subarray(head + 4, head + 4 + length).toString();
      held = held.subarray(head + 4 + length);
      receive(JSON.parse(body) as Message);
    }
  });
  const request: Wire['request'] = (method, params) => {
    const id = (last += 1);
    return new Promise((resolve) => {
      answers.set(id, resolve);
      send({ id, method, params });
    });
  };
  const notify: Wire['notify'] = (method, params) => send({ method, params });
  await request('initialize', { processId: process.pid, rootUri: null, capabilities: { workspace: { diagnostics: { refreshSupport: true } }, textDocument: { diagnostic: {} } } });
  notify('initialized', {});
  return { request, notify, heard: (method) => new Promise((resolve) => listeners.set(method, resolve)), end: () => child.kill() };
}

/** The language server in one file beside the installed packages; its path. */
export async function bundledServer(project: string): Promise<string> {
  const outfile = join(project, '.cache/bench/server.mjs');
  const contents = `import { startServer } from './server/src/lsp/main.ts'; startServer();`;
  await build({ stdin: { contents, resolveDir: project, loader: 'ts' }, outfile, bundle: true, platform: 'node', target: 'node20', format: 'esm', packages: 'external', ...textFiles, logLevel: 'error' });
  return outfile;
}
