/** Grammar nodes to tree nodes: one builder a rule, found by the rule's name; a rule without one passes its only part on. */
import type { Node } from 'ohm-js';
import type { Columns } from '../text/place.ts';

/** Builds what a grammar node stands for; `read` builds its parts. */
export type Builder = (node: Node, read: Read) => unknown;

/** What a part stands for: an optional part that is not there is undefined, a repeated one a list without gaps. */
// eslint-disable-next-line @typescript-eslint/no-unnecessary-type-parameters -- the builder knows what the rule of the part gives
export type Read = <T>(node: Node | undefined) => T;

export type Builders = Readonly<Record<string, Builder>>;

/** A reader with the builders of a grammar. */
export function readerOf(builders: Builders): Read {
  const read = (node: Node | undefined): unknown => {
    if (!node) return undefined;
    const build = builders[node.ctorName];
    if (build) return build(node, read as Read);
    if (node.isIteration()) return node.isOptional() ? read(part(node, 0)) : readAll(node, read);
    return node.numChildren === 1 ? read(part(node, 0)) : undefined;
  };
  return read as Read;
}

/** The part at an index, or undefined. */
export function part(node: Node | undefined, index: number): Node | undefined {
  return node && index < node.numChildren ? node.child(index) : undefined;
}

/** Where a grammar node stands. */
export function columnsOf(node: Node): Columns {
  return { from: node.source.startIdx, to: node.source.endIdx };
}

/** A builder for a word of the language: what is written, or the one spelling it stands for. */
export function word(spellings: Readonly<Record<string, string>> = {}): Builder {
  return (node) => ({ kind: 'word', word: spellings[node.sourceString] ?? node.sourceString, ...columnsOf(node) });
}

/** Everything under a node, itself first, as far as `goOn` lets it; no recursion deeper than the grammar's. */
export function visit(node: Node, goOn: (node: Node) => boolean): void {
  if (!goOn(node)) return;
  for (const child of node.children) visit(child, goOn);
}

function readAll(node: Node, read: (node: Node | undefined) => unknown): unknown[] {
  return node.children.map(read).filter((each) => each !== undefined);
}
