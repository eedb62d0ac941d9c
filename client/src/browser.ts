/** Where an editor in a browser comes in: the server is a web worker, and the editor reads every file for it. */
import { Uri, type ExtensionContext } from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient, type MessageTransports } from 'vscode-languageclient/browser';
import { start, stop, type Offer } from './start.ts';

/** As much of a web worker as is used; the extension host's own is another than a page's. */
declare class Worker {
  constructor(program: string);
  terminate(): void;
}

export function activate(context: ExtensionContext): Promise<Offer> {
  const program = Uri.joinPath(context.extensionUri, 'dist/server-worker.js').toString(true);
  return start(
    context,
    {
      makeClient: (options) => new LanguageClient('scant', 'Scant', startWorker(program), options),
      isGiven: () => true,
    },
    { writes: false, offers: [] },
  );
}

export const deactivate = stop;

/** Each start ends the worker of the one before. */
function startWorker(program: string): () => Promise<MessageTransports> {
  let worker: Worker | undefined;
  return () => {
    worker?.terminate();
    worker = new Worker(program);
    return Promise.resolve({ reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) });
  };
}
