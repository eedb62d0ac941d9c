/** What every part of the booklet is written from. */
import type { CountedCloth, FabricPlan } from '../../cutting/plan.ts';
import type { Fabric } from '../../model/pattern.ts';
import type { BookletQuilt, BookletSource } from '../source.ts';
import type { Words } from '../words/catalogue.ts';
import type { Printer } from '../words.ts';
import type { Cell, Text } from './book.ts';

export interface BookContext {
  readonly source: BookletSource;
  readonly quilt: BookletQuilt;
  readonly words: Words;
  readonly print: Printer;
}

/** `Dry sand solid (sand)`; the name alone where it has no other label. */
export function fabricTitle({ name, label }: Pick<Fabric, 'name' | 'label'>): string {
  return label === '' || label === name ? name : `${label} (${name})`;
}

export function cell(text: Text): Cell {
  return { text };
}

/** `2 3/8 yd`, `9 fat quarters`. */
export function boughtText({ buy, counted }: Pick<FabricPlan, 'buy' | 'counted'>, { words, print }: Pick<BookContext, 'words' | 'print'>): string {
  return counted ? clothText(counted, { words, print }) : print.cloth(buy);
}

function clothText({ kind, count, ...measure }: CountedCloth, { words, print }: Pick<BookContext, 'words' | 'print'>): string {
  return words.cloth(kind, count, kind === 'strip' ? print.length(measure.height) : print.size(measure));
}
