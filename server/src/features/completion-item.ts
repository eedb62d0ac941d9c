/** A completion as data, and where one writes. */
import type { Snapshot } from '../snapshot.ts';
import type { Context } from '../syntax/words.ts';
import type { Position } from '../text/document.ts';

export interface Completion {
  readonly text: string;
  readonly kind: 'statement' | 'option' | 'fabric' | 'block' | 'number' | 'parameter' | 'unit' | 'size' | 'import' | 'rule' | 'value';
  readonly detail: string;
  /** Put in instead, in the protocol's snippet syntax, by editors that can. */
  readonly snippet?: string;
  /** `#rrggbb`, for a swatch. */
  readonly colour?: string;
  /** Further completions follow at once. */
  readonly goesOn?: true;
}

/** Where one writes: the line up to the word, and the braces around it. */
export interface Spot {
  readonly snapshot: Snapshot;
  readonly position: Position;
  readonly context: Context;
  /** The line up to the word under the cursor, from the last brace on. */
  readonly lead: string;
  /** The line's first word, and the grammar rule it begins. */
  readonly first: string | undefined;
  readonly rule: string | undefined;
}
