/**
 * The language server as a program: the editor forks it (`server.cjs --node-ipc`), and `scant lsp --stdio` starts it in its
 * own process. Which channel it speaks on is in the arguments.
 */
import { ProposedFeatures, createConnection, type Connection } from 'vscode-languageserver/node';
import { machine } from './machine.ts';
import { serve } from './server.ts';

/** Answers on the channel that the arguments name (`--stdio`, `--node-ipc`, `--socket=N`, `--pipe=NAME`) until it ends. */
export function startServer(): void {
  const connection: Connection = createConnection(ProposedFeatures.all);
  const log = (what: string) => (error: unknown) => connection.console.error(`${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  process.on('uncaughtException', log('uncaught'));
  process.on('unhandledRejection', log('unhandled'));
  serve(connection, machine());
}

if (process.argv.includes('--node-ipc')) startServer();
