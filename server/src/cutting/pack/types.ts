/**
 * What is asked of the optimiser and what it answers. Lengths are whole numbers of one step of the ruler (1/8", 1 mm): whoever
 * asks scales them, so nothing here is rounded. A plan is cut in two stages: strips across the cloth, each as high as one of the
 * pieces, and each strip into segments. A segment holds pieces of one kind, one above the other where the strip has room for it.
 */

/** Pieces that are all alike. Unturned, `width` lies across the cloth, along the strip. */
export interface Demand {
  readonly width: number;
  readonly height: number;
  readonly count: number;
  readonly mayTurn: boolean;
}

/**
 * `length`: as much as it takes of a width; the least length is sought. `strips`: ready-cut strips of the heights; the least sum
 * of heights. `sheets`: as many as it takes of one size; the least number. Strips run along `width`, with `eitherWay` along
 * `height` as well, one way in each sheet.
 */
export type Cloth =
  | { readonly kind: 'length'; readonly width: number }
  | { readonly kind: 'strips'; readonly width: number; readonly heights: readonly number[] }
  | { readonly kind: 'sheets'; readonly width: number; readonly height: number; readonly eitherWay?: true };

export interface PackOptions {
  /** Another seed looks elsewhere once the usual ways are tried; the same seed gives the same plan. */
  readonly seed?: number;
  /** How long to look, in steps of work: about 700 million a second. */
  readonly effort?: number;
  /** Whether a plan is as good as the best for whoever asks, by its total and how low any plan can be; then only its cuts are still looked at. */
  readonly enough?: (total: number, lowerBound: number) => boolean;
}

/** Some pieces of one kind, cut from a strip side by side. */
export interface Subcut {
  /** An index into the demand. */
  readonly piece: number;
  /** Pieces from one strip. */
  readonly count: number;
  /** The piece's height lies along the strip. */
  readonly turned?: true;
  /** Pieces one above the other in a segment; the last segment may hold fewer. 1 when absent. */
  readonly stacked?: number;
}

export interface Strip {
  readonly height: number;
  readonly count: number;
  /** For one strip, in order from one end. */
  readonly subcuts: readonly Subcut[];
}

/** Sheets cut alike. `turned`: strips run along the sheet's height. */
export interface Sheet {
  readonly count: number;
  readonly turned?: true;
  readonly strips: readonly Strip[];
}

/** What is weighed, in this order, between plans that take the same cloth. */
export interface Counters {
  /** Different strip heights. */
  readonly widths: number;
  /** Cuts through one layer: strips, segments, trims. */
  readonly cuts: number;
  /** How often the ruler is set to another measure, strips cut in the order given, like strips together. */
  readonly rulerChanges: number;
}

export interface Packing {
  /** The highest first. For sheets: all strips of all sheets. */
  readonly strips: readonly Strip[];
  /** For sheets alone; else empty. */
  readonly sheets: readonly Sheet[];
  /** Along the selvage, or the sum of the heights of ready-cut strips, or the number of sheets. */
  readonly total: number;
  /** No plan cut in two stages takes less: proven, in whole numbers. */
  readonly lowerBound: number;
  /** The bound of the linear relaxation over cutting patterns, before it is rounded up to what strips can add up to. */
  readonly relaxation: number;
  readonly provenOptimal: boolean;
  readonly counters: Counters;
  /** Indices of demands that fit neither way; they are in no strip. */
  readonly tooLarge: readonly number[];
}
