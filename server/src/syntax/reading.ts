/** What one piece of text was read as by itself, in columns of that text. */
import type { Fault } from './fault.ts';
import { indentOf } from './scan.ts';
import type { StatementNode } from './tree.ts';

export interface Reading {
  readonly node: StatementNode;
  readonly faults: readonly Fault[];
}

/** A line that is no statement. */
export function junkReading(text: string, faults: readonly Fault[] = []): Reading {
  const columns = { from: indentOf(text), to: text.trimEnd().length };
  return { node: { kind: 'junk', word: columns, broken: true, ...columns }, faults };
}
