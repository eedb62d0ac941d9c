/** The language server as a program: the extension forks `scant lsp --node-ipc`, other editors run `scant lsp --stdio`. */
import { ProposedFeatures, createConnection, type Connection } from 'vscode-languageserver/node';
import { givenFiles } from './given.ts';
import { machine } from './machine.ts';
import { serve } from './server.ts';

/** Answers on the channel that the arguments name (`--stdio`, `--node-ipc`) until it ends. */
export function startServer(): void {
  const connection: Connection = createConnection(ProposedFeatures.all);
  const log = (what: string) => (error: unknown) => connection.console.error(`${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  process.on('uncaughtException', log('uncaught'));
  process.on('unhandledRejection', log('unhandled'));
  serve(connection, givenFiles(machine(), (uri) => uri.startsWith('file:')));
}
