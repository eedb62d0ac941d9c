/** What cutting.md says, as one catalogue a language: lengths come in as printed, counts as numbers. A language has every key, or it does not compile. */
import type { BorderCut, CountedCloth, CutMethod, PieceShape } from '../../cutting/plan.ts';
import type { Voice } from '../words.ts';

type Kind = CountedCloth['kind'];
type Noun = 'square' | 'rectangle' | 'strip';

/** How good a plan is proven to be. */
export type Proof = { readonly kind: 'least' } | { readonly kind: 'bound'; readonly bound: string; readonly buysTheSame: boolean };

export interface CuttingWords {
  readonly voice: Voice;
  readonly untitled: string;
  readonly listed: (items: readonly string[]) => string;
  readonly title: (title: string) => string;
  /** What is bought by the piece; `size` of a strip is its width. */
  readonly cloth: (kind: Kind, count: number, size: string) => string;
  /** The same amount by the other measure. */
  readonly or: (amount: string, other: string) => string;
  /** `2 of 4"` */
  readonly of: (count: number, what: string) => string;
  readonly measure: (measures: string) => string;

  readonly heads: Readonly<Record<'sizes' | 'colourways' | 'blocks' | 'before' | 'borders' | 'backing' | 'batting' | 'binding' | 'sleeve' | 'tooWide' | 'labels', string>>;
  readonly sizeColumns: (fabrics: readonly string[]) => readonly string[];
  readonly colourColumns: (colourways: readonly string[]) => readonly string[];
  readonly cautions: readonly string[];
  readonly table: (layers: number) => readonly string[];
  readonly size: (name: string | null, measures: string) => string;
  readonly seams: (seam: string, roundUp: string) => string;
  readonly drop: (bed: string, mattress: string, sides: string, foot: string) => string;
  readonly hangs: (length: string, where: 'sides' | 'foot') => string;
  readonly shows: (length: string, where: 'sides' | 'foot') => string;
  readonly block: (count: number, name: string, finished: string, raw: string) => string;
  readonly label: (letter: string, fabric: string, cut: string, use: string) => string;

  readonly take: (amount: string) => string;
  readonly buy: (amount: string) => string;
  readonly usable: (width: string) => string;
  readonly length: (length: string, proof: Proof) => string;
  readonly usableOfEach: (size: string, side: 'shorter' | 'longer' | undefined) => string;
  /** `least` is absent where the count is proven least. */
  readonly needed: (count: number, least: number | undefined) => string;
  readonly atHand: (count: number, missing: number) => string;
  readonly cuts: (strips: number, pieces: number) => string;
  readonly drawn: (file: string) => string;
  readonly assorted: (title: string) => string;
  readonly buyInAll: (amount: string, prints: number) => string;
  readonly dealt: (pieces: number, prints: string) => string;

  readonly stripAcross: (count: number, width: string) => string;
  readonly stripOfCloth: (count: number, width: string, lie: 'across' | 'along', length: string) => string;
  readonly eachCloth: (kind: Kind, count: number) => string;
  readonly cut: (count: number, noun: Noun, size: string) => string;
  /** What a piece is for; within a sentence with its article. */
  readonly use: (use: string, form: 'label' | 'sentence') => string;
  readonly from: (strips: 'one' | 'each' | 'all', cut: string, purpose: string, stacked: number | undefined) => string;
  readonly stripSets: (use: string, segment: string, pieces: number) => string;
  readonly purpose: (method: CutMethod, squares: number, have: { readonly count: number; readonly shape: PieceShape; readonly each: number }, use: string) => string;
  readonly joinBinding: (strips: number, isPart: 'whole' | 'part') => string;
  readonly joined: (strips: number, lengths: string, use: string) => string;

  readonly border: (border: { readonly number: number; readonly fabric: string; readonly width: string; readonly corners: BorderCut['corners']; readonly lengthwise: boolean; readonly strips: string }) => string;
  readonly panels: (count: number, length: string, usable: string, seams: 'none' | 'vertical' | 'horizontal') => string;
  readonly backingBuy: (amount: string, fabric: string | undefined) => string;
  readonly package: (name: string, size: string | undefined) => string;
  readonly bindingLength: (length: string, joins: string) => string;
  readonly bindingSquares: (count: number, square: string, width: string, fabric: string) => string;
  /** `length` is absent where it is the width of the fabric. */
  readonly bindingStrips: (count: number, width: string, length: string | undefined, fabric: string) => string;
  readonly double: string;
  readonly single: string;
  readonly bindingBuy: (amount: string) => string;
  readonly sleeve: (width: string, height: string, strips: number, fabric: string) => string;
  readonly sleeveSew: string;
  readonly tooWide: (use: string, needs: string, fabric: string, width: string) => string;
  readonly tooLarge: (use: string, needs: string, kind: Kind, fabric: string, has: string) => string;
}
