/** Quilts and blocks from text, through the parser and the model, with the library that is always there. */
import library from '../../server/library/always.quilt';
import { layoutBlock } from '../../server/src/geometry/block.ts';
import type { BlockLayout, QuiltLayout } from '../../server/src/geometry/layout.ts';
import { layoutQuilt } from '../../server/src/geometry/quilt.ts';
import { buildPattern } from '../../server/src/model/build.ts';
import type { ModelHost } from '../../server/src/model/build.ts';
import { defaultInstance } from '../../server/src/model/instantiate.ts';
import type { Pattern } from '../../server/src/model/pattern.ts';
import { specifyQuilt } from '../../server/src/model/quilt.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { documentOf } from '../../server/src/text/document.ts';

const HOST: ModelHost = { library: [parse(documentOf('library', library))], import: () => 'missing' };

export function patternOf(text: string): Pattern {
  return buildPattern(parse(documentOf('test.quilt', text)), HOST);
}

/** The quilt in its own count, or in a size. */
export function quiltOf(text: string, size?: string): QuiltLayout {
  const pattern = patternOf(text);
  const found = pattern.sizes.find((each) => each.name === size);
  return layoutQuilt(specifyQuilt(pattern, found), pattern.rules);
}

export function blockOf(text: string, name: string): BlockLayout {
  const pattern = patternOf(text);
  const definition = pattern.blocks.get(name);
  const instance = definition && defaultInstance(pattern, definition);
  if (!instance) throw new Error(`No block ${name}.`);
  return layoutBlock(instance);
}

/** `rule line:columns`, lines from 1, of everything wrong in the plane. */
export function faults(layout: QuiltLayout | BlockLayout, text: string): string[] {
  const lines = text.split('\n');
  return layout.findings.map(({ rule, place }) => `${rule} ${lines.indexOf(place.line.text) + 1}: ${place.line.text.slice(place.from, place.to)}`);
}
