/** Computed values within the author's wording: `{Capstan.count}`. The paths are those of `quantities.ts`, a size's name before them or not. */
import type { Rules } from '../model/pattern.ts';
import { quantityAt, type Measured, type Quantity } from './quantities.ts';

export interface SizedQuilt extends Measured {
  readonly name: string | null;
}

/** What stands for a value in a text, from the brace to behind the brace. */
export interface Placeholder {
  readonly path: string;
  readonly from: number;
  readonly to: number;
}

export function placeholdersIn(text: string): readonly Placeholder[] {
  return [...text.matchAll(/\{([^{}]*)\}/g)].map(({ 0: whole, 1: path = '', index }) => ({ path: path.trim(), from: index, to: index + whole.length }));
}

/** The quantity at a path in one size of a quilt; a path that begins with a size means that one. */
export function valueAt(path: string, quilt: SizedQuilt, quilts: readonly SizedQuilt[], rules: Rules): Quantity | undefined {
  const [first, ...rest] = path.split('.');
  const named = quilts.find(({ name }) => name !== null && name === first);
  return named ? quantityAt(named, rest, rules) : quantityAt(quilt, path.split('.'), rules);
}
