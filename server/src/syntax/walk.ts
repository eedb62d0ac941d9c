/** Going through the parts of a node without knowing its kind: every field that stands somewhere in the line is a part. */
import type { Columns } from '../text/place.ts';
import type { StatementNode } from './tree.ts';

/** A part of a node: anything with columns; named parts have a `kind`. */
export type Part = Columns & { readonly kind?: string };

/** The parts right under a node, in no particular order. */
export function partsOf(node: Part): Part[] {
  const parts: Part[] = [];
  for (const field of Object.values(node) as unknown[]) {
    if (isPart(field)) parts.push(field);
    else if (Array.isArray(field)) for (const each of field) if (isPart(each)) parts.push(each);
  }
  return parts;
}

/** Calls `visit` for a node and every part under it, outer before inner. */
export function visitParts(node: Part, visit: (part: Part) => void): void {
  visit(node);
  for (const field of Object.values(node) as unknown[]) {
    if (isPart(field)) visitParts(field, visit);
    else if (Array.isArray(field)) for (const each of field) if (isPart(each)) visitParts(each, visit);
  }
}

/** The node with each part replaced by what `change` makes of it (undefined: gone through, and kept otherwise). */
export function rewritten<N extends Part>(node: N, change: (part: Part) => Part | undefined): N {
  return rewrite(node, change) as N;
}

/** The node `by` columns further right, from column `start` on. */
export function shifted<N extends StatementNode>(node: N, by: number, start = 0): N {
  if (by === 0) return node;
  const move = (column: number): number => (column >= start ? column + by : column);
  const change = (part: Part): Part => ({ ...rewriteFields(part, change), from: move(part.from), to: move(part.to) });
  return change(node) as N;
}

function rewrite(part: Part, change: (part: Part) => Part | undefined): Part {
  return change(part) ?? rewriteFields(part, (each) => rewrite(each, change));
}

function rewriteFields(part: Part, change: (part: Part) => Part): Part {
  const each = (field: unknown): unknown => (isPart(field) ? change(field) : field);
  return Object.fromEntries(Object.entries(part).map(([name, field]: [string, unknown]) => [name, Array.isArray(field) ? field.map(each) : each(field)])) as unknown as Part;
}

/** A place (it has a line) is no part of its node, and an exact number has no columns. */
export function isPart(field: unknown): field is Part {
  return typeof field === 'object' && field !== null && 'from' in field && !('line' in field);
}
