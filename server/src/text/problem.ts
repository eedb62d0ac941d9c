/** What is wrong, where, and how to mend it. The rule's severity and explanation are in `checks`. */
import type { Place } from './place.ts';

/** The stable ids of the rules (language.md, section 6), plus `uneven-drop` for quilts on beds and `not-yet` for what the language has and the tool has not. */
export const RULE_IDS = [
  'syntax', 'unclear-number', 'unknown-name', 'duplicate-name', 'unused-fabric', 'unused-block', 'wrong-argument',
  'import-cycle', 'import-missing', 'row-length', 'grid-sum', 'gap', 'overlap', 'outside', 'empty-patch', 'does-not-fit',
  'sizes-differ', 'border-does-not-fit', 'set-in-seam', 'partial-seam', 'cut-off-ruler', 'patch-too-small',
  'strip-too-wide', 'bias-outside', 'bulky-point', 'low-contrast', 'directional-turned', 'expect-failed', 'too-large',
  'unknown-placeholder', 'cannot-nest', 'point-at-edge', 'uneven-drop', 'fabric-short', 'saves-fabric', 'no-foundation', 'not-yet',
] as const;

export type RuleId = (typeof RULE_IDS)[number];

export interface Problem {
  readonly rule: RuleId;
  readonly place: Place;
  /** One sentence for the maker, both numbers in it where two are compared. No full stop at the end. */
  readonly message: string;
  readonly related?: readonly Related[];
  /** Only where the mend is certain. */
  readonly fix?: Fix;
}

export interface Related {
  readonly place: Place;
  readonly message: string;
}

export interface Fix {
  /** What the fix does, as a command to the tool: "Write `backing`". */
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

/** Replaces the text at a place (an empty place inserts). */
export interface TextEdit {
  readonly place: Place;
  readonly text: string;
}
