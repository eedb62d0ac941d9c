/** Files are moved or renamed: the paths of imports follow them. Addresses are URIs, folders included. */
import type { Snapshot } from '../snapshot.ts';
import { placeIn } from '../text/place.ts';
import type { TextEdit } from '../text/problem.ts';

export interface Move {
  readonly from: string;
  readonly to: string;
}

/** The edits of one file. `resolve` gives the address that a written path means in it, before the move. */
export function importEdits(snapshot: Snapshot, moves: readonly Move[], resolve: (path: string) => string | undefined): readonly TextEdit[] {
  const here = movedTo(snapshot.document.source, moves);
  return snapshot.tree.statements.flatMap(({ node, line }): TextEdit[] => {
    if (node.kind !== 'import' || !node.path) return [];
    const before = resolve(node.path.value);
    if (before === undefined) return [];
    const after = movedTo(before, moves);
    if (after === before && here === snapshot.document.source) return [];
    const path = wayTo(here, after);
    return path === undefined || path === normal(node.path.value) ? [] : [{ place: placeIn(line, node.path), text: `"${path.replace(/["\\]/g, '\\$&')}"` }];
  });
}

/** Where a file is after the moves; a moved folder takes what is in it along. */
export function movedTo(uri: string, moves: readonly Move[]): string {
  const move = moves.find(({ from }) => uri === from || uri.startsWith(`${from}/`));
  return move ? move.to + uri.slice(move.from.length) : uri;
}

/** The relative path from a file to another; undefined where they have no folder in common (another machine or scheme). */
export function wayTo(from: string, to: string): string | undefined {
  const [a, b] = [from.split('/'), to.split('/')];
  let common = 0;
  while (common < Math.min(a.length, b.length) - 1 && a[common] === b[common]) common += 1;
  if (common < 3) return undefined;
  const up = a.length - 1 - common;
  return decoded([...Array.from({ length: up }, () => '..'), ...b.slice(common)].join('/'));
}

function decoded(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}

/** `./a.quilt` means `a.quilt`. */
function normal(path: string): string {
  return path.replace(/^(?:\.\/)+/, '');
}
