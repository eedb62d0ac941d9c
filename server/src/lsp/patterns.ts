/**
 * The newest snapshot of each file, and who imports whom. Open texts win over the disk. A snapshot stands as long as its
 * own lines and every import it asked for are the same objects; nothing is worked out before somebody asks.
 */
import library from '../../library/always.quilt';
import type { ModelHost } from '../model/imports.ts';
import { snapshotOf, type Snapshot } from '../snapshot.ts';
import { parse } from '../syntax/parse.ts';
import type { Tree } from '../syntax/tree.ts';
import { documentOf } from '../text/document.ts';
import type { OpenDocument, OpenTexts } from './documents.ts';
import type { Failure, Services } from './services.ts';

export interface Patterns {
  /** Undefined for a file that is neither open nor on the disk. Version 0 for one that is not open. */
  readonly of: (uri: string) => Snapshot | undefined;
  /** Something may have changed in a text, on the disk or in the workspace's folders. */
  readonly moved: () => void;
  /** Files whose last snapshot read that file or looked for it, directly or not. */
  readonly importersOf: (uri: string) => readonly string[];
  /** Something is known better than when the file's snapshot was made: the next one is another. */
  readonly renew: (uri: string) => void;
  /** Forgets a file that was closed. */
  readonly forget: (uri: string) => void;
  /** Reads a file anew that was told to have changed, whatever its clock says. */
  readonly reread: (uri: string) => void;
}

export interface PatternsOptions {
  readonly open: OpenTexts;
  readonly services: Services;
  readonly folders: () => readonly string[];
}

interface Kept {
  readonly snapshot: Snapshot;
  /** What each import gave, by importer and path. */
  readonly asked: ReadonlyMap<string, Asked>;
  /** The count of changes up to which all of this was found to stand. */
  checked: number;
}

interface Asked {
  readonly importer: string;
  readonly path: string;
  readonly key?: string;
  readonly found: Tree | Failure;
}

interface OnDisk {
  readonly stamp: string;
  readonly tree: Tree;
}

/** The blocks that are always there. */
export const LIBRARY = parse(documentOf('library:always.quilt', library));

export function patternsOf({ open, services, folders }: PatternsOptions): Patterns {
  const { keyOf } = services;
  const kept = new Map<string, Kept>();
  const trees = new Map<string, Tree>();
  const disk = new Map<string, OnDisk>();
  let changes = 0;

  /** The tree of an open text, read anew only where its lines are new. */
  const openTree = ({ uri, document }: OpenDocument): Tree => {
    const last = trees.get(keyOf(uri));
    if (last?.document === document) return last;
    const tree = parse(document, last);
    trees.set(keyOf(uri), tree);
    return tree;
  };
  const diskTree = (uri: string): Tree | undefined => {
    const known = disk.get(keyOf(uri));
    if (known && known.stamp === services.stamp(uri)) return known.tree;
    const read = services.read(uri);
    if (!read) disk.delete(keyOf(uri));
    if (!read) return undefined;
    const tree = parse(documentOf(uri, read.text));
    disk.set(keyOf(uri), { stamp: read.stamp, tree });
    return tree;
  };
  const treeOf = (uri: string): Tree | undefined => {
    const document = open.get(uri);
    return document ? openTree(document) : diskTree(uri);
  };
  const find = (importer: string, path: string): Asked => {
    const resolved = services.resolve(importer, path, folders());
    if (typeof resolved === 'string') return { importer, path, found: resolved };
    const { uri, state } = resolved;
    const tree = state === 'there' || open.get(uri) ? treeOf(uri) : undefined;
    return { importer, path, key: keyOf(uri), found: tree ?? (state === 'there' ? 'unreadable' : 'missing') };
  };
  const stands = ({ asked }: Kept): boolean => [...asked.values()].every(({ importer, path, found }) => find(importer, path).found === found);
  const make = (tree: Tree, version: number, last: Snapshot | undefined): Kept => {
    const asked = new Map<string, Asked>();
    const host: ModelHost = {
      library: [LIBRARY],
      import: (path, importer) => {
        const key = `${importer}\n${path}`;
        const known = asked.get(key) ?? find(importer, path);
        asked.set(key, known);
        return known.found;
      },
    };
    return { snapshot: snapshotOf(tree.document, version, host, last, { search: 'later', tree }), asked, checked: changes };
  };
  const of = (uri: string): Snapshot | undefined => {
    const key = keyOf(uri);
    const tree = treeOf(uri);
    if (!tree) kept.delete(key);
    if (!tree) return undefined;
    const version = open.get(uri)?.version ?? 0;
    const last = kept.get(key);
    if (last?.snapshot.document === tree.document && last.snapshot.version === version && (last.checked === changes || stands(last))) {
      last.checked = changes;
      return last.snapshot;
    }
    const next = make(tree, version, last?.snapshot);
    kept.set(key, next);
    return next.snapshot;
  };
  const reads = ({ asked }: Kept, key: string): boolean => [...asked.values()].some((each) => each.key === key);
  return {
    of,
    moved: () => {
      changes += 1;
    },
    importersOf: (uri) => {
      const importers = [...kept.values()].filter((entry) => reads(entry, keyOf(uri))).map(({ snapshot }) => snapshot.document.source);
      return importers.filter((importer) => keyOf(importer) !== keyOf(uri));
    },
    renew: (uri) => {
      const last = kept.get(keyOf(uri));
      const tree = last && treeOf(uri);
      if (tree) kept.set(keyOf(uri), make(tree, last.snapshot.version, last.snapshot));
    },
    forget: (uri) => {
      kept.delete(keyOf(uri));
      trees.delete(keyOf(uri));
    },
    reread: (uri) => void disk.delete(keyOf(uri)),
  };
}
