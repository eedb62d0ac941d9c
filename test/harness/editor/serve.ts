// Serves the editor that install.mjs installed, on localhost, with fresh settings that are gone when it stops.
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { atEnd, temporaryFolder } from './cleanup.ts';

export const project = join(import.meta.dirname, '../../..');
export const editorHome = join(project, '.cache/editor');

export interface Editor {
  /** host:port, also the name the editor knows its files by. */
  readonly authority: string;
  /** Settles when the server ends by itself. */
  readonly ended: Promise<unknown>;
}

export interface ServeOptions {
  /** Folders of extensions to have installed from the start. */
  readonly extensions?: readonly string[];
  /** Seen by extensions as process.env. */
  readonly environment?: Readonly<Record<string, string>>;
}

/** Starts the editor on a free port; it stops when the program ends. */
export async function serveEditor(options: ServeOptions = {}): Promise<Editor> {
  const home = temporaryFolder('scant-editor-');
  prepare(home, options.extensions ?? []);
  const server = spawn(process.execPath, serverArguments(home), {
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, TMPDIR: home, XDG_RUNTIME_DIR: home, EXTENSIONS_GALLERY: '{}', ...options.environment },
  });
  atEnd(() => stop(server));
  return { authority: `127.0.0.1:${String(await portOf(server))}`, ended: once(server, 'exit') };
}

/** The address of the editor with a folder open; `payload` as in VS Code's own web tests, such as [['openFile', 'vscode-remote://…']]. */
export function addressOf(editor: Editor, folder: string, payload: readonly (readonly [string, string])[] = []): string {
  const query = new URLSearchParams({ folder });
  if (payload.length > 0) query.set('payload', JSON.stringify(payload));
  return `http://${editor.authority}/?${query.toString()}`;
}

/** The editor's name for a file on this machine. */
export function remote(editor: Editor, path: string): string {
  return `vscode-remote://${editor.authority}${path}`;
}

/** A copy of the samples to play in, gone when the program ends. */
export function copyOfSamples(): string {
  const copy = join(temporaryFolder('scant-samples-'), 'samples');
  cpSync(join(project, 'samples'), copy, { recursive: true });
  return copy;
}

/** Nothing that asks, greets, suggests, updates or reports. */
const settings = {
  'chat.disableAIFeatures': true,
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'remote.autoForwardPorts': false,
  'security.workspace.trust.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'window.commandCenter': false,
  'workbench.enableExperiments': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'editor.minimap.enabled': false,
  'git.enabled': false,
  'npm.autoDetect': 'off',
};

function prepare(home: string, extensions: readonly string[]): void {
  mkdirSync(join(home, 'data/Machine'), { recursive: true });
  writeFileSync(join(home, 'data/Machine/settings.json'), JSON.stringify(settings));
  mkdirSync(join(home, 'extensions'));
  for (const folder of extensions) symlinkSync(folder, join(home, 'extensions', basename(folder)));
}

function serverArguments(home: string): string[] {
  return [
    '--import',
    join(import.meta.dirname, 'leash.mjs'),
    join(editorHome, 'node_modules/code-server/lib/vscode/out/server-main.js'),
    ...['--host', '127.0.0.1', '--port', '0', '--without-connection-token', '--accept-server-license-terms'],
    ...['--server-data-dir', home, '--extensions-dir', join(home, 'extensions')],
    ...['--enable-smoke-test-driver', '--disable-workspace-trust', '--disable-telemetry', '--disable-experiments'],
    ...['--disable-getting-started-override', '--force-disable-user-env'],
  ];
}

/** The port is in what the server prints; if it ends before that, all it printed is the error. */
function portOf(server: ChildProcess): Promise<number> {
  return new Promise((resolve, reject) => {
    let printed = '';
    const read = (chunk: Buffer): void => {
      printed += chunk.toString();
      const port = /agent listening on (\d+)/.exec(printed)?.[1];
      if (port !== undefined) resolve(Number(port));
    };
    server.stdout?.on('data', read);
    server.stderr?.on('data', read);
    server.once('error', reject);
    server.once('exit', () => reject(new Error(`The editor's server did not start.\n${printed}`)));
  });
}

/** Asks the server and all its children to end, then makes them. */
async function stop(server: ChildProcess): Promise<void> {
  signal(server, 'SIGTERM');
  if (server.exitCode === null && server.signalCode === null) {
    await Promise.race([once(server, 'exit'), setTimeout(2000)]);
  }
  signal(server, 'SIGKILL');
}

function signal(server: ChildProcess, name: NodeJS.Signals): void {
  try {
    if (server.pid !== undefined) process.kill(-server.pid, name);
  } catch {
    // The whole group is gone already.
  }
}
