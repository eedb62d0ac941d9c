/**
 * What the booklet says, as one catalogue a language: every sentence is a text or a function of the numbers in it, so that plurals come
 * out right. Numbers come in as printed, counts as numbers. A language has every key, or it does not compile.
 */
import type { CountedCloth, CutMethod, PieceShape } from '../../cutting/plan.ts';
import type { Voice } from '../words.ts';

export type Language = 'en' | 'de';

export interface Words {
  /** A BCP 47 tag. */
  readonly tag: Language;
  readonly voice: Voice;
  readonly untitled: string;
  readonly page: (number: number, of: number) => string;
  readonly contents: string;
  readonly listed: (items: readonly string[]) => string;
  /** What is bought by the piece; `size` of a strip is its width. */
  readonly cloth: (kind: CountedCloth['kind'], count: number, size: string) => string;

  readonly cover: {
    readonly by: (name: string) => string;
    /** `name` is null where the pattern names no sizes. */
    readonly size: (name: string | null, measures: string) => string;
    readonly also: (sizes: string) => string;
    readonly level: (level: string) => string;
    readonly quilt: (title: string) => string;
  };

  readonly need: {
    readonly title: string;
    readonly intro: (width: string, spare: string) => string;
    readonly table: string;
    readonly item: string;
    readonly amount: string;
    readonly finished: string;
    readonly blocks: string;
    readonly backing: (fabric: string | undefined) => string;
    readonly batting: string;
    readonly binding: (fabric: string) => string;
    readonly bindingNote: string;
    readonly assorted: (name: string, prints: number) => string;
    readonly usable: (width: string) => string;
    readonly package: (name: string) => string;
    readonly drop: (bed: string, mattress: string) => string;
    readonly hangs: (length: string, where: 'sides' | 'foot') => string;
    readonly shows: (length: string, where: 'sides' | 'foot') => string;
    readonly tools: string;
    readonly toolList: (seam: string, templates: boolean) => readonly string[];
  };

  readonly start: {
    readonly title: string;
    readonly fabric: string;
    readonly fabricLines: readonly string[];
    readonly cautions: string;
    readonly cautionLines: readonly string[];
    readonly test: string;
    readonly testLines: (square: string, seam: string, pair: string) => readonly string[];
    readonly short: string;
    readonly shortHead: readonly [string, string];
    readonly shortRows: (seam: string, roundUp: string) => readonly (readonly [string, string])[];
    readonly sizes: (seam: string, roundUp: string) => string;
  };

  readonly cutting: {
    readonly title: string;
    readonly intro: string;
    readonly buy: (amount: string) => string;
    readonly widthAndLength: (width: string, length: string) => string;
    readonly layout: (fabric: string) => string;
    readonly layoutTimes: (count: number) => string;
    readonly strips: string;
    readonly stripHead: readonly [string, string, string];
    readonly strip: (count: number) => string;
    /** From selvage to selvage. */
    readonly stripAcross: (width: string) => string;
    readonly stripAlong: (width: string, length: string) => string;
    /** Of cloth that is bought by the piece. */
    readonly each: (size: string) => string;
    readonly subcut: (count: number, letter: string, stacked: number) => string;
    readonly pieces: string;
    readonly pieceHead: readonly [string, string, string, string, string, string];
    readonly cut: (count: number, noun: 'square' | 'rectangle' | 'strip') => string;
    readonly then: (method: CutMethod, count: number) => string;
    readonly segment: (length: string) => string;
    readonly joined: (lengths: string) => string;
    readonly joinedPart: (count: number, length: string) => string;
    readonly have: (count: number, shape: PieceShape) => string;
    readonly for: (use: string) => string;
    readonly tooWide: (use: string, needs: string, fabric: string, width: string) => string;
    readonly dealt: (pieces: number, prints: string) => string;
    readonly print: (count: number, name: string) => string;
    readonly borders: string;
    readonly borderHead: readonly [string, string, string, string, string];
    readonly corners: Readonly<Record<'butted' | 'mitred' | 'squares' | 'pieced', string>>;
    readonly lengthwise: string;
    readonly borderStrip: (count: number, size: string) => string;
    readonly backing: string;
    readonly panels: (count: number, length: string) => string;
    readonly panelSeams: (count: number, way: 'vertical' | 'horizontal') => string;
    readonly size: (measures: string) => string;
    readonly batting: string;
    readonly package: (name: string) => string;
    readonly binding: string;
    readonly bindingStrips: (count: number, width: string, fabric: string) => string;
    readonly bindingBias: (count: number, square: string, width: string, fabric: string) => string;
    readonly bindingLength: (length: string) => string;
    readonly bindingBuy: (amount: string) => string;
    readonly double: string;
    readonly single: string;
    readonly sleeve: string;
    readonly sleeveCut: (size: string, fabric: string, strips: number) => string;
  };

  readonly making: {
    readonly units: string;
    readonly intro: readonly string[];
    /** The block in its fabrics. */
    readonly block: (name: string, measures: string, raw: string) => string;
    readonly blockAlt: (name: string) => string;
    readonly stepAlt: (title: string) => string;
    readonly arrows: string;
    readonly setting: string;
    readonly settingAlt: (rows: number) => string;
    readonly rows: string;
    readonly rowsAlt: string;
    readonly pressing: string;
    readonly pressingHead: readonly [where: string, seam: string, press: string, why: string, seams: string];
    readonly finishing: string;
    readonly steps: string;
  };

  readonly pictures: {
    readonly colouring: string;
    readonly colouringNote: string;
    readonly colouringAlt: string;
    readonly colours: string;
    readonly colourway: (name: string) => string;
    readonly colourwayAlt: (name: string) => string;
    readonly valueTitle: string;
    readonly values: string;
    readonly valuesAlt: string;
    readonly back: string;
    readonly made: string;
    readonly sizes: string;
    readonly fabrics: string;
  };
}
