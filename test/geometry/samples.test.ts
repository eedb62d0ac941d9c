/** Every sample lies right in the plane, in every size. */
import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { layoutQuilt } from '../../server/src/geometry/quilt.ts';
import { specifyQuilt } from '../../server/src/model/quilt.ts';
import { expectTiles, flattened } from './oracle.ts';
import { faults, patternOf } from './text.ts';

const FOLDER = new URL('../../samples/', import.meta.url);
const samples = readdirSync(FOLDER).filter((name) => name.endsWith('.quilt'));

test.each(samples)('%s', (name) => {
  const text = readFileSync(new URL(name, FOLDER), 'utf8');
  if (text.includes('import "')) return;
  const pattern = patternOf(text);
  if (!pattern.quilt) return;
  for (const size of [undefined, ...pattern.sizes]) {
    const layout = layoutQuilt(specifyQuilt(pattern, size), pattern.rules);
    expect(faults(layout, text)).toEqual([]);
    for (const { layout: block } of layout.blocks) expect(faults(block, text)).toEqual([]);
    if (![...layout.blocks].some(({ layout: block }) => block.patches.some((patch) => patch.arcs))) expectTiles(layout, flattened(layout));
  }
});
