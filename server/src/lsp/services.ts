/**
 * What the server needs from the machine it runs on. Everything is by URI, and nothing here throws: a machine without a
 * disk (a browser's) answers that there is nothing.
 */
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
  readonly build: (snapshot: Snapshot, uri: string, what: BuildParams['what']) => BuildAnswer;
}

/** A missing file has an address all the same: an editor may have it open unsaved. */
export type Resolved = { readonly uri: string; readonly state: 'there' | 'missing' } | Failure;

export type Failure = 'missing' | 'outside' | 'unreadable';
