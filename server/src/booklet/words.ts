/** The trade's words for pieces, counts and lengths, the same in every output. */
import { formatLength, formatMetres, formatNumber, formatYards, type Manner, type UnitSystem } from '../exact/length.ts';
import { equals, type Exact } from '../exact/number.ts';
import type { Measure, Piece } from '../cutting/plan.ts';

/** Prints in the units of one pattern. */
export interface Printer {
  readonly length: (length: Exact) => string;
  /** A length of cloth to buy. */
  readonly cloth: (length: Exact) => string;
  /** `2 1/2"`, or `2 1/2" by 4 1/2"` where the sides differ. */
  readonly size: (measure: Measure) => string;
  /** `40" by 50"` */
  readonly widthByHeight: (measure: Measure) => string;
  readonly number: (value: Exact) => string;
}

/** How a language writes measures. */
export interface Voice extends Manner {
  /** Between width and height. */
  readonly by: string;
}

export const ENGLISH: Voice = { point: '.', about: 'about', lessThan: 'less than', by: 'by' };

export function printerFor(units: UnitSystem, voice: Voice = ENGLISH): Printer {
  const length = (value: Exact): string => formatLength(value, { units, manner: voice });
  const widthByHeight = ({ width, height }: Measure): string => `${length(width)} ${voice.by} ${length(height)}`;
  return {
    length,
    cloth: (value) => (units === 'inches' ? formatYards(value, voice) : formatMetres(value, voice)),
    number: (value) => formatNumber(value, voice),
    size: (measure) => (equals(measure.width, measure.height) ? length(measure.width) : widthByHeight(measure)),
    widthByHeight,
  };
}

/** `1 strip`, `2 strips`; `plural` where adding an s is wrong. */
export function counted(count: number, noun: string, plural = `${noun}s`): string {
  return `${count} ${count === 1 ? noun : plural}`;
}

/** What is cut: the square or rectangle, not the patch. */
export function cutNoun(piece: Piece): 'strip' | 'square' | 'rectangle' {
  if (piece.shape === 'strip') return 'strip';
  return equals(piece.cut.width, piece.cut.height) ? 'square' : 'rectangle';
}

/** `a`, `a and b`, `a, b and c` */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}
