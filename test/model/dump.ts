/** A pattern, its blocks and its quilts as plain data, lines by their numbers: two that say the same have the same dump. */
import { Exact, key } from '../../server/src/exact/number.ts';
import { defaultInstance, sampleInstance } from '../../server/src/model/instantiate.ts';
import type { Pattern } from '../../server/src/model/pattern.ts';
import { specifyQuilt } from '../../server/src/model/quilt.ts';
import type { Document } from '../../server/src/text/document.ts';

/** Everything a reader of the model can see. */
export function dumpOf(pattern: Pattern): unknown {
  const { document } = pattern.tree;
  const blocks = [...pattern.blocks.values()].map((definition) => defaultInstance(pattern, definition) ?? sampleInstance(pattern, definition));
  const quilts = pattern.quilt
    ? [undefined, ...pattern.sizes].flatMap((size) => [undefined, ...pattern.colorways].map((colorway) => specifyQuilt(pattern, size, colorway)))
    : [];
  return plainly(document, { ...pattern, tree: undefined, imports: undefined, workings: undefined, blocks: [...pattern.blocks.values()], instances: blocks, quilts }, new Map());
}

function plainly(document: Document, value: unknown, seen: Map<object, unknown>): unknown {
  if (typeof value !== 'object' || value === null) return typeof value === 'bigint' ? `${value}` : value;
  if ('eol' in value && 'text' in value) {
    const number = document.lines.findIndex((line) => line === value);
    return number >= 0 ? `line ${number}` : `line "${String(value.text)}"`;
  }
  if (value instanceof Exact) return `exact ${key(value)}`;
  if ('node' in value && 'line' in value) return { statement: plainly(document, value.line, seen) };
  const known = seen.get(value);
  if (known !== undefined) return known;
  const entries = value instanceof Map || value instanceof Set ? [...(value as Iterable<unknown>)].entries() : Object.entries(value);
  const plain: Record<string, unknown> = {};
  seen.set(value, plain);
  for (const [name, each] of entries) if (each !== undefined) plain[name] = plainly(document, each, seen);
  return plain;
}
