/**
 * What the model and the geometry find wrong, as data: the rule it belongs to, the place and the facts. The wording, the
 * severity and the mend are the rule's own (`checks/`, one file a rule).
 */
import type { Exact } from '../exact/number.ts';
import type { Place } from '../text/place.ts';

export type Finding =
  /** `library`: the tool's own one that has a block of this name. */
  | { readonly rule: 'unknown-name'; readonly place: Place; readonly name: string; readonly wanted: Wanted; readonly known: readonly string[]; readonly library?: string }
  /** `whole`: the statement that does not count, where it is one. */
  | { readonly rule: 'duplicate-name'; readonly place: Place; readonly name: string; readonly what: string; readonly first: Place; readonly whole?: Place }
  | { readonly rule: 'unused-fabric'; readonly place: Place; readonly name: string; readonly line: Place }
  | { readonly rule: 'unused-block'; readonly place: Place; readonly name: string; readonly line: Place }
  /** `problem` is a whole sentence, its first letter small, without a full stop: a count, a kind or a value that cannot be. */
  | { readonly rule: 'wrong-argument'; readonly place: Place; readonly problem: string; readonly related?: Place }
  /** `shelf`: the path is no file but a name of the tool's own library, whose names these are. */
  | { readonly rule: 'import-missing'; readonly place: Place; readonly path: string; readonly why: 'missing' | 'outside' | 'unreadable'; readonly shelf?: readonly string[] }
  | { readonly rule: 'import-cycle'; readonly place: Place; readonly chain: readonly string[] }
  | { readonly rule: 'row-length'; readonly place: Place; readonly found: number; readonly expected: number; readonly of: 'cells' | 'rows'; readonly related?: Place; readonly relatedMessage?: string }
  | { readonly rule: 'grid-sum'; readonly place: Place; readonly found: Exact; readonly expected: Exact; readonly what: string; /** A `rest` or a proportion is left nothing. */ readonly shared?: true; readonly last?: { readonly place: Place; readonly value: Exact; readonly isLength: boolean }; readonly related?: Place }
  /** `isLength`: in inches and square inches; else in the units of the block's box, which has no size. Likewise below. */
  | { readonly rule: 'gap'; readonly place: Place; readonly area: Exact; readonly corners: readonly { readonly x: Exact; readonly y: Exact }[]; readonly regions: number; readonly isLength: boolean }
  | { readonly rule: 'overlap'; readonly place: Place; readonly other: Place; readonly area: Exact; readonly at: { readonly x: Exact; readonly y: Exact }; readonly isLength: boolean }
  | { readonly rule: 'outside'; readonly place: Place; readonly area: Exact; readonly at: { readonly x: Exact; readonly y: Exact }; readonly width: Exact; readonly height: Exact; readonly isLength: boolean }
  | { readonly rule: 'empty-patch'; readonly place: Place; readonly why: string }
  | { readonly rule: 'does-not-fit'; readonly place: Place; readonly name: string; readonly found: { readonly width: Exact; readonly height: Exact }; readonly room: { readonly width: Exact; readonly height: Exact }; readonly isLength: boolean; readonly related?: Place }
  | { readonly rule: 'sizes-differ'; readonly place: Place; readonly other: Place; readonly found: Exact; readonly expected: Exact; readonly what: string }
  /** `spacers`: of a border, what it needs before it, at top and bottom and at the sides; `spacer`: of a row, what each end needs. */
  | { readonly rule: 'border-does-not-fit'; readonly place: Place; readonly side: Exact; readonly unit: Exact; readonly what: string; readonly spacer?: Exact; readonly spacers?: { readonly top: Exact; readonly sides: Exact } }
  /** A piece that is set in: `corners` of it, `at` the first; `count` such pieces come from this place. `block` is undefined in the setting. */
  | { readonly rule: 'set-in-seam'; readonly place: Place; readonly block: string | undefined; readonly at: { readonly x: Exact; readonly y: Exact }; readonly corners: number; readonly count: number }
  /** A seam that is sewn from `from` or `to` as far as `stop`, and finished later; `other` is what it is sewn to. */
  | { readonly rule: 'partial-seam'; readonly place: Place; readonly other?: Place; readonly block: string | undefined; readonly from: { readonly x: Exact; readonly y: Exact }; readonly to: { readonly x: Exact; readonly y: Exact }; readonly stop: { readonly x: Exact; readonly y: Exact }; readonly count: number }
  | { readonly rule: 'bulky-point'; readonly place: Place; readonly block: string | undefined; readonly at: { readonly x: Exact; readonly y: Exact }; readonly ends: number; readonly count: number }
  | { readonly rule: 'too-large'; readonly place: Place; readonly found: string; readonly limit: string }
  | { readonly rule: 'not-yet'; readonly place: Place; readonly what: string };

export type Wanted = 'fabric' | 'block' | 'fabric or block' | 'number' | 'size' | 'parameter' | 'quantity' | 'bed';
