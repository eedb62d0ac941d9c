/** The computed values that an author's wording holds: `{Capstan.count}` in the texts of `steps` and `about`. */
import { numberText, lengthText } from '../checks/wording.ts';
import { placeholdersIn } from '../cutting/placeholders.ts';
import { quantityAt, quantityNames } from '../cutting/quantities.ts';
import type { QuiltView, Snapshot } from '../snapshot.ts';
import type { Name, Statement } from '../syntax/tree.ts';
import type { Document, Line } from '../text/document.ts';
import { placeIn, type Columns, type Place } from '../text/place.ts';
import { clothText } from './measures.ts';

export interface Placeholder {
  readonly line: Line;
  /** From the brace to behind the brace. */
  readonly place: Place;
  /** What stands between the braces. */
  readonly path: string;
  /** The names of the path, each in its columns. */
  readonly parts: readonly Name[];
}

/** The placeholders of a text in `steps`, or of `about`. */
export function placeholdersOf(document: Document, { node, line }: Statement): readonly Placeholder[] {
  if ((node.kind !== 'wording' && node.kind !== 'about') || !node.text) return [];
  const { place } = node.text;
  if (!place?.endLine) return inColumns(line, node.text);
  const { endLine } = place;
  const lines = document.lines.slice(document.numberOf(place.line), document.numberOf(endLine) + 1);
  return lines.flatMap((each) => inColumns(each, { from: each === place.line ? place.from : 0, to: each === endLine ? place.to : each.text.length }));
}

function inColumns(line: Line, { from, to }: Columns): readonly Placeholder[] {
  return placeholdersIn(line.text.slice(from, to)).map((found) => {
    const [start, end] = [from + found.from, from + found.to];
    const inside = line.text.slice(start + 1, end - 1);
    return { line, place: placeIn(line, { from: start, to: end }), path: found.path, parts: namesIn(inside, start + 1) };
  });
}

function namesIn(path: string, start: number): readonly Name[] {
  return [...path.matchAll(/\p{L}[\p{L}\p{M}\d_]*/gu)].map(({ 0: text, index }) => ({ kind: 'name', text, from: start + index, to: start + index + text.length }));
}

/** What a path comes to in one size, as it is printed; undefined when it has no value there. */
export function valueIn(snapshot: Snapshot, quilt: QuiltView, path: readonly string[]): string | undefined {
  const { pattern } = snapshot;
  const isOfSize = pattern.sizes.some(({ name }) => name === path[0]);
  if (isOfSize && quilt.name !== path[0]) return undefined;
  const quantity = quantityAt(quilt, isOfSize ? path.slice(1) : path, pattern.rules);
  if (!quantity) return undefined;
  if (quantity.kind === 'count') return numberText(quantity.value);
  return quantity.kind === 'cloth' ? clothText(quantity.value, pattern) : lengthText(quantity.value, pattern);
}

/** Every path that has a value, with its value in what the editor shows first. */
export function pathsOf(snapshot: Snapshot): readonly { readonly path: string; readonly value: string }[] {
  const quilt = snapshot.shown ?? snapshot.quilts[0];
  if (!quilt) return [];
  return quantityNames(quilt).flatMap((path) => {
    const value = valueIn(snapshot, quilt, path.split('.'));
    return value === undefined ? [] : [{ path, value }];
  });
}
