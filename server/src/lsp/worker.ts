/**
 * The language server as a web worker, for an editor that runs in a browser. There is no disk: the editor reads the files and gives
 * them to the server, and nothing is written.
 */
import './immediate.ts';
import { BrowserMessageReader, BrowserMessageWriter, createConnection, ProposedFeatures } from 'vscode-languageserver/browser';
import { givenFiles } from './given.ts';
import { serve } from './server.ts';
import type { Services } from './services.ts';
import { inSlices } from './slices.ts';

const NO_DISK: Services = {
  keyOf: (uri) => uri,
  read: () => undefined,
  stamp: () => undefined,
  resolve: () => 'missing',
  list: () => [],
  search: inSlices,
  build: () => ({ folder: null, written: [], unchanged: 0, refused: { why: 'unsaved', message: 'In a browser nothing is written: open the folder in an editor on your machine, or use the command line.' } }),
};

const worker = globalThis as never;
serve(createConnection(ProposedFeatures.all, new BrowserMessageReader(worker), new BrowserMessageWriter(worker)), givenFiles(NO_DISK, () => false));
