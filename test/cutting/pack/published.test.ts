/** Published instances through the same core: proven answers are found, and nowhere is a plan or a bound worse than the best recorded. */
import { describe, expect, test } from 'vitest';
import { packStrips } from '../../../server/src/cutting/pack/pack.ts';
import type { Cloth, Demand, Packing } from '../../../server/src/cutting/pack/types.ts';
import { LENGTHS, PLATES, RECTANGLES } from './instances.ts';
import { RECORDED } from './recorded.ts';
import { faultsOf } from './replay.ts';

/** More than while typing: it is the core that is on trial. */
const EFFORT = 600_000_000;

function plan(demand: readonly Demand[], cloth: Cloth): Packing {
  const found = packStrips(demand, cloth, { effort: EFFORT });
  expect(faultsOf(found, demand, cloth)).toEqual([]);
  return found;
}

test.each(LENGTHS)('$id in one dimension: $least, proven', ({ capacity, least, items }) => {
  const demand = items.map(([width, count]) => ({ width, height: 1, count, mayTurn: false }));
  const { total, lowerBound } = plan(demand, { kind: 'length', width: capacity });
  expect([total, lowerBound]).toEqual([least, least]);
});

describe('strips of rectangles', () => {
  /** The last three, of 160 kinds and more, are in the bench. */
  const smaller = RECTANGLES.filter(({ id }) => id < 'C7');
  test.each(smaller.flatMap((each) => [{ ...each, mayTurn: false, way: 'as they lie' }, { ...each, mayTurn: true, way: 'turned at will' }]))('$id, $way', ({ id, way, width, height, items, mayTurn }) => {
    const demand = items.map(([w, h, count]) => ({ width: w, height: h, count, mayTurn }));
    const { total, lowerBound } = plan(demand, { kind: 'length', width });
    const [recorded, bound] = RECORDED[`${id}, ${way}`] ?? [Number.MAX_SAFE_INTEGER, 0];
    if (total < recorded || lowerBound > bound) console.log(`better: '${id}, ${way}': [${total}, ${lowerBound}], was [${recorded}, ${bound}]`);
    expect(total).toBeLessThanOrEqual(recorded);
    expect(lowerBound).toBeGreaterThanOrEqual(bound);
    expect(lowerBound).toBeGreaterThanOrEqual(height);
  });
});

describe('plates', () => {
  test.each(PLATES.filter(({ stages, id }) => stages < 3 || id.startsWith('bin')))('$id: $plates', ({ width, height, plates, items }) => {
    const { total, lowerBound } = plan(platesDemand(items), { kind: 'sheets', width, height });
    expect([total, lowerBound]).toEqual([plates, plates]);
  });

  /** Different pieces in a segment take one plate; ours, one kind a segment, take two, and cannot take one. */
  test.each(PLATES.filter(({ stages, id }) => stages === 3 && !id.startsWith('bin')))('$id takes more in two stages', ({ width, height, items }) => {
    expect(plan(platesDemand(items), { kind: 'sheets', width, height }).total).toBe(2);
  });
});

function platesDemand(items: (typeof PLATES)[number]['items']): readonly Demand[] {
  return items.map(([width, height, count, turns]) => ({ width, height, count, mayTurn: turns === 1 }));
}
