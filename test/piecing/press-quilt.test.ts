/** Pressing of whole quilts against the drawing: every seam is put where it lies, pressed, and the crossings are counted. */
import { describe, expect, test } from 'vitest';
import type { QuiltLayout } from '../../server/src/geometry/layout.ts';
import { sewingOf } from '../../server/src/piecing/sewing.ts';
import { random } from '../geometry/partitions.ts';
import { drawn, type Meeting } from './drawn.ts';
import { randomQuilt } from './random-quilts.ts';

describe('quilts of small random blocks, turned and mirrored', () => {
  test('as many crossings nest, and fail to, as the drawing shows; no way of pressing leaves fewer', () => {
    let [compared, withConflicts] = [0, 0];
    for (let seed = 1; seed <= 160; seed += 1) {
      const layout = smallQuilt(seed);
      const sewing = sewingOf(layout, { methods: {} });
      const { seams, meetings } = drawn(layout, sewing);
      const free = meetings.filter(({ a, b }) => !seams[a]?.open && !seams[b]?.open);
      const nested = free.filter(({ a, b, bothRight }) => ((seams[a]?.side === seams[b]?.side) === bothRight));
      expect([seed, sewing.pressing.nested, sewing.pressing.conflicts]).toEqual([seed, nested.length, free.length - nested.length]);
      if (seams.length > 15) continue;
      expect([seed, sewing.pressing.conflicts]).toEqual([seed, fewest(free, seams.length)]);
      compared += 1;
      withConflicts += sewing.pressing.conflicts > 0 ? 1 : 0;
    }
    expect(compared).toBeGreaterThan(40);
    expect(withConflicts).toBeGreaterThan(5);
  });
});

/** One or two blocks of two by two cells, set two or three across in one to three rows. */
function smallQuilt(seed: number): QuiltLayout {
  const r = random(seed);
  return randomQuilt(r, { blocks: 1 + r.below(2), across: 2 + r.below(2), down: 1 + r.below(3), cells: 2 });
}

function fewest(meetings: readonly Meeting[], seams: number): number {
  let best = meetings.length;
  for (let sides = 0; sides < 1 << seams; sides += 1) {
    const conflicts = meetings.filter(({ a, b, bothRight }) => (((sides >> a) ^ (sides >> b)) & 1) === (bothRight ? 1 : 0)).length;
    if (conflicts < best) best = conflicts;
  }
  return best;
}
