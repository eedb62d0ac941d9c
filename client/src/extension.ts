/** Where an editor on a machine comes in: the server is a program of its own, and there is a disk to write to. */
import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { start, stop, type Offer } from './start.ts';
import { offerTasks } from './tasks.ts';

export function activate(context: ExtensionContext): Promise<Offer> {
  const run = { module: context.asAbsolutePath('dist/scant.cjs'), args: ['lsp'], transport: TransportKind.ipc };
  const debug = { ...run, options: { execArgv: ['--nolazy', '--inspect=6009'] } };
  return start(
    context,
    {
      makeClient: (options) => new LanguageClient('scant', 'Scant', { run, debug }, options),
      isGiven: ({ scheme }) => scheme !== 'file',
    },
    { writes: true, offers: [offerTasks(context.asAbsolutePath('dist/scant.cjs'))] },
  );
}

export const deactivate = stop;
