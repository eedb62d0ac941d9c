/**
 * What the server needs from the machine it runs on. Everything is by URI, and nothing here throws: a machine without a
 * disk (a browser's) answers that there is nothing.
 */
import type { Task } from '../cutting/demand.ts';
import type { Packing } from '../cutting/pack/types.ts';
import type { Snapshot } from '../snapshot.ts';
import type { BuildAnswer, BuildParams } from './requests.ts';

export interface Services {
  /** Equal for addresses of the same file, however they are written. */
  readonly keyOf: (uri: string) => string;
  /** The text of a file that no editor has open, and a mark that changes when the file does. */
  readonly read: (uri: string) => { readonly text: string; readonly stamp: string } | undefined;
  readonly stamp: (uri: string) => string | undefined;
  /** The file that `import "path"` means in a file. `folders` are the workspace's; none are known when it is empty. */
  readonly resolve: (importer: string, path: string, folders: readonly string[]) => Resolved;
  /** Every pattern file in some folders, in an order of its own. */
  readonly list: (folders: readonly string[]) => readonly string[];
  /** Looks for the best plan of a fabric while others go on; `found` is not called any more once it is cancelled. */
  readonly search: (task: Task, told: SearchTold) => Searching;
  readonly build: (snapshot: Snapshot, uri: string, what: BuildParams['what']) => BuildAnswer;
}

export interface SearchTold {
  /** How much of the work is done, 0 to 1. */
  readonly progress: (done: number) => void;
  readonly found: (packing: Packing) => void;
}

export interface Searching {
  readonly cancel: () => void;
}

/** A missing file has an address all the same: an editor may have it open unsaved. */
export type Resolved = { readonly uri: string; readonly state: 'there' | 'missing' } | Failure;

export type Failure = 'missing' | 'outside' | 'unreadable';
