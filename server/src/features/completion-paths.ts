/** What may stand between the quotes of `import "…"`: the libraries of the tool, and the pattern files of the workspace from here. */
import type { Snapshot } from '../snapshot.ts';
import type { Completion } from './completion-item.ts';
import { wayTo } from './moved.ts';

export interface Paths {
  /** Every pattern file that an import may reach, by URI; asked for only where a path is written. */
  readonly files: () => readonly string[];
  /** The libraries that come with the tool, by name. */
  readonly shelf: readonly string[];
}

export const NO_PATHS: Paths = { files: () => [], shelf: [] };

/** What is written of the path in front of the cursor; undefined where no path is written. */
export function pathBefore(before: string): string | undefined {
  return /^\s*import\s+"([^"]*)$/.exec(before)?.[1];
}

/** Libraries first, then files: those of this folder before those of others, by their paths. This file is not among them. */
export function pathsFor({ document }: Snapshot, { files, shelf }: Paths): readonly Completion[] {
  const ways = files().flatMap((uri) => (uri === document.source ? [] : wayTo(document.source, uri) ?? []));
  const depth = (way: string): number => way.split('/').length;
  const sorted = [...new Set(ways)].sort((a, b) => depth(a) - depth(b) || (a < b ? -1 : 1));
  return [
    ...shelf.map((text): Completion => ({ text, kind: 'import', detail: 'blocks that come with the tool' })),
    ...sorted.map((text): Completion => ({ text, kind: 'import', detail: 'a file of this workspace' })),
  ];
}
