/** The documents that a pattern is made of: its own, and those it brings in. */
import type { Snapshot } from '../snapshot.ts';
import type { Document } from '../text/document.ts';

/** By source, files that are brought in by files that are brought in as well. */
export function documentsOf({ document, pattern }: Snapshot): ReadonlyMap<string, Document> {
  const brought = [...pattern.workings.files].map(([source, file]): [string, Document] => [source, file.tree.document]);
  const imported = pattern.imports.flatMap(({ tree }): [string, Document][] => (tree ? [[tree.document.source, tree.document]] : []));
  return new Map([...brought, ...imported, [document.source, document]]);
}
