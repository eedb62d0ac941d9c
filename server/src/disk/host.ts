/** What the model sees of the disk: the tool's own library, and the files that a pattern imports. */
import { dirname, resolve } from 'node:path';
import library from '../../library/always.quilt';
import type { ModelHost } from '../model/build.ts';
import { parse } from '../syntax/parse.ts';
import type { Tree } from '../syntax/tree.ts';
import { documentOf } from '../text/document.ts';
import { SHELF } from './shelf.ts';
import { readPattern, resolveImport } from './sources.ts';

export interface DiskHost extends ModelHost {
  /** Every file that has been asked for, found or not: what a watcher must look at. Absolute paths. */
  readonly asked: ReadonlySet<string>;
}

/** Documents are named by absolute paths. Each file is read once in the host's life. */
export function diskHost(folders: readonly string[]): DiskHost {
  const asked = new Set<string>();
  const known = new Map<string, Tree | 'unreadable'>();
  return {
    library: [ALWAYS],
    shelf: SHELF,
    asked,
    import(path, from) {
      const found = resolveImport(from, path, folders);
      asked.add(typeof found === 'string' ? resolve(dirname(from), path) : found.path);
      if (typeof found === 'string') return found;
      const tree = known.get(found.path) ?? read(found.path);
      known.set(found.path, tree);
      return tree;
    },
  };
}

const ALWAYS = parse(documentOf('library:always.quilt', library));

function read(path: string): Tree | 'unreadable' {
  const reading = readPattern(path);
  return reading.kind === 'read' ? parse(documentOf(path, reading.text)) : 'unreadable';
}
