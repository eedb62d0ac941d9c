/** Blocks on paper: sewn patch after patch by a verifier apart from the search; the fewest sections by trying all. */
import { describe, expect, test } from 'vitest';
import { boundingBox } from '../../server/src/exact/polygon.ts';
import type { BlockLayout } from '../../server/src/geometry/layout.ts';
import { foundationOf, type FoundationPlan } from '../../server/src/piecing/foundation.ts';
import { guillotine, pinwheels, random, scrambled, triangles, type Partition } from '../geometry/partitions.ts';
import { EVERY_BLOCK, cellOf, laidOut, read } from '../library/blocks.ts';
import { faultsOnPaper, fewestSections } from './sew-on-paper.ts';

const CELLS = EVERY_BLOCK.map(cellOf);
const LIBRARY = laidOut(CELLS);

describe('every block of the library', () => {
  test.each(CELLS)('%s is sewn on paper, or it is said why not', (cell) => {
    const layout = LIBRARY.get(cell)?.layout;
    if (!layout) throw new Error(cell);
    const plan = foundationOf(layout);
    if (plan.kind === 'none') {
      expect(plan.why).not.toBe('unsound');
      if (plan.why !== 'unsound') expect(plan.patches.length).toBeGreaterThan(0);
    } else expect(faultsOnPaper(layout, plan.foundation)).toEqual([]);
  });

  test('nearly all with straight edges can', () => {
    const plans = CELLS.map((cell) => foundationOf(LIBRARY.get(cell)?.layout as BlockLayout));
    expect(plans.filter(({ kind }) => kind === 'foundation').length).toBeGreaterThan(60);
  });
});

describe('blocks whose sections are known', () => {
  // Common practice, no source: rows of one sheet, a sheet a row where squares meet at a point, log cabins and geese on one.
  test.each([
    ['four_patch(ink, sand)', 2],
    ['nine_patch(ink, sand)', 3],
    ['rail(ink, sand, ink)', 1],
    ['goose(ink, sand)', 1],
    ['square_in_square(ink, sand)', 1],
    ['snowball(ink, sand)', 1],
    ['half_square(ink, sand)', 1],
    ['hourglass(ink, sand)', 2],
  ])('%s has %i', (cell, count) => {
    expect(sectionsOf(plan(`  ${cell}`, cell.startsWith('goose') ? '4" by 2"' : '6"'))).toBe(count);
  });

  test('a log cabin is one sheet, sewn from the centre out', () => {
    const text = '  centre ink 2"\n  round 1" sand sand ink ink\n  round 1" sand sand ink ink';
    const found = plan(text, '6"');
    expect(sectionsOf(found)).toBe(1);
    if (found.kind === 'foundation') expect(found.foundation.sections[0]?.steps.map(({ patch }) => patch)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
  });

  test('a corner that is flipped is a patch of its own, and the base is what is left', () => {
    const layout = block('  ink\n  corner sand 2" top_left bottom_right', '6"');
    const found = foundationOf(layout);
    expect(sectionsOf(found)).toBe(1);
    if (found.kind === 'foundation') expect(faultsOnPaper(layout, found.foundation)).toEqual([]);
  });
});

describe('blocks that cannot be sewn on paper', () => {
  test.each([
    ['a curve', '  drunkards_path(ink, sand)', 'curve', 2],
    ['a piece that is set in', '  patch ink  0,0 2,0 2,2 0,2\n  patch sand 2,0 6,0 6,6 2,2\n  patch ink  0,2 2,2 6,6 0,6', 'no line', 3],
    ['a partial seam', '  patch ink 0,0 4,0 4,2 0,2\n  patch sand 4,0 6,0 6,4 4,4\n  patch ink 2,4 6,4 6,6 2,6\n  patch sand 0,2 2,2 2,6 0,6\n  patch ink 2,2 4,2 4,4 2,4', 'no line', 5],
  ] as const)('%s', (_, body, why, patches) => {
    const found = plan(body, '6"');
    expect(found).toMatchObject({ kind: 'none', why });
    if (found.kind === 'none' && found.why !== 'unsound') expect(found.patches).toHaveLength(patches);
  });
});

describe('random blocks', () => {
  test('cut by straight cuts: each comes out on paper', () => {
    for (let seed = 1; seed <= 2000; seed += 1) {
      const layout = layoutOf(guillotine(random(seed)), seed);
      const found = foundationOf(layout);
      if (found.kind === 'none') throw new Error(`seed ${seed}: ${found.why}`);
      expect(faultsOnPaper(layout, found.foundation), `seed ${seed}`).toEqual([]);
    }
  });

  test.each([['guillotine', guillotine], ['triangles', triangles], ['pinwheels', pinwheels]] as const)('%s: no fewer sections by trying all', (_, kind) => {
    let compared = 0;
    for (let seed = 1; compared < 150 && seed < 4000; seed += 1) {
      const layout = layoutOf(kind(random(seed)), seed);
      if (layout.patches.length > 8) continue;
      compared += 1;
      expect(sectionsOf(foundationOf(layout)), `seed ${seed}`).toBe(fewestSections(layout.patches.map(({ outline }) => outline)));
    }
    expect(compared).toBeGreaterThan(30);
  });

  test('the order of the patches, the winding and the first corners change nothing', () => {
    for (let seed = 1; seed <= 200; seed += 1) {
      const partition = guillotine(random(seed));
      const count = sectionsOf(foundationOf(layoutOf(partition, seed)));
      const other = layoutOf({ ...partition, patches: [...partition.patches].reverse() }, seed + 1);
      expect(sectionsOf(foundationOf(other)), `seed ${seed}`).toBe(count);
    }
  });
});

function sectionsOf(found: FoundationPlan): number {
  return found.kind === 'foundation' ? found.foundation.sections.length : Infinity;
}

function plan(body: string, size: string): FoundationPlan {
  return foundationOf(block(body, size));
}

function block(body: string, size: string): BlockLayout {
  const { blocks } = read(`fabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\nblock Buoy ${size} {\n${body}\n}\n`);
  const layout = blocks.find(({ definition }) => definition.name === 'Buoy')?.layout;
  if (!layout) throw new Error(body);
  return layout;
}

/** A layout of random patches: the fabric and the place are those of some block. */
function layoutOf({ target, patches }: Partition, seed: number): BlockLayout {
  const base = block('  ink', '6"');
  const [first] = base.patches;
  const { right, bottom } = boundingBox(target);
  if (!first) throw new Error('no patch');
  return { ...base, width: right, height: bottom, patches: scrambled(patches, random(seed)).map((outline) => ({ ...first, outline, arcs: outline.map(() => undefined) })), key: `random ${seed}` };
}
