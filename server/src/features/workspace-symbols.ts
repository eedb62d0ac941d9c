/** What is declared in all files of the workspace, found by some of its letters. */
import type { Snapshot } from '../snapshot.ts';
import { symbolsOf, type DocumentSymbol } from './symbols.ts';

export interface WorkspaceSymbol {
  readonly symbol: DocumentSymbol;
  readonly snapshot: Snapshot;
}

/** The most that are answered: nobody reads further. */
const MOST = 500;

const KINDS: readonly DocumentSymbol['kind'][] = ['pattern', 'number', 'fabric', 'block', 'size', 'colorway'];

/** Those whose name holds the letters of `query` in their order, whatever their case. */
export function workspaceSymbols(files: readonly Snapshot[], query: string): readonly WorkspaceSymbol[] {
  const found: WorkspaceSymbol[] = [];
  for (const snapshot of files) {
    for (const symbol of symbolsOf(snapshot)) {
      if (KINDS.includes(symbol.kind) && fits(symbol.name, query)) found.push({ symbol, snapshot });
      if (found.length >= MOST) return found;
    }
  }
  return found;
}

function fits(name: string, query: string): boolean {
  const letters = name.toLowerCase();
  let at = -1;
  return Array.from(query.toLowerCase().replace(/\s/g, '')).every((letter) => (at = letters.indexOf(letter, at + 1)) >= 0);
}
