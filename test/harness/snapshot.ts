/** Snapshots of texts, for tests: the whole pipeline without a disk. */
import { documentOf } from '../../server/src/text/document.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { snapshotOf, type Snapshot } from '../../server/src/snapshot.ts';
import type { Tree } from '../../server/src/syntax/tree.ts';
import type { ModelHost } from '../../server/src/model/build.ts';
import { SHELF } from '../../server/src/disk/shelf.ts';
import always from '../../server/library/always.quilt';

/** The tool's own library, and the files given by their paths. */
export function hostOf(files: Readonly<Record<string, string>> = {}): ModelHost {
  const trees = new Map<string, Tree>();
  return {
    library: [parse(documentOf('library:always.quilt', always))],
    shelf: SHELF,
    import(path) {
      const text = files[path];
      if (text === undefined) return path.startsWith('..') ? 'outside' : 'missing';
      const known = trees.get(path) ?? parse(documentOf(path, text));
      trees.set(path, known);
      return known;
    },
  };
}

export function snapshotOfText(text: string, files: Readonly<Record<string, string>> = {}): Snapshot {
  return snapshotOf(documentOf('pattern.quilt', text), 1, hostOf({ 'itself.quilt': 'import "itself.quilt"\n', ...files }));
}
