/** The planner against slow answers: as few seams sewn partway and as few corners set in as there can be. */
import { describe, expect, test } from 'vitest';
import { assemble } from '../../server/src/piecing/assembly.ts';
import type { SewingPlan } from '../../server/src/piecing/plan.ts';
import { verifyPlan } from '../../server/src/piecing/verify.ts';
import type { Patch } from '../../server/src/geometry/layout.ts';
import { fraction } from '../../server/src/exact/number.ts';
import { KINDS, random } from '../geometry/partitions.ts';
import { SQUARED_RECTANGLES } from '../geometry/squared-rectangles.ts';
import { fewestCuts, fewestSetIn } from './brute.ts';
import type { Box } from './brute.ts';
import { gridBoxes } from './grid-boxes.ts';
import { box, patchOf, rectangle } from './layouts.ts';

describe('seams sewn partway', () => {
  test('as few as any choice of seams allows, on small grids', () => {
    const counts: Record<number, number> = {};
    for (let seed = 1; seed <= 1000; seed += 1) {
      const { boxes, width, height } = gridBoxes(random(seed));
      const plan = planOf(boxes.map((each) => box(...each)), rectangle(width, height));
      expect([seed, plan.partial, plan.proven]).toEqual([seed, fewestCuts(boxes, 3), true]);
      expect([seed, plan.setIn]).toEqual([seed, 0]);
      counts[plan.partial] = (counts[plan.partial] ?? 0) + 1;
    }
    expect(counts[1]).toBeGreaterThan(100);
    expect(counts[2]).toBeGreaterThan(10);
  });

  test('a ring around a centre needs one, and nothing set in', () => {
    const boxes: Box[] = [[0, 0, 2, 1], [2, 0, 1, 2], [1, 2, 2, 1], [0, 1, 1, 2], [1, 1, 1, 1]];
    const plan = planOf(boxes.map((each) => box(...each)), rectangle(3, 3));
    expect([plan.partial, plan.setIn]).toEqual([1, 0]);
    expect(plan.seams.map((seam) => seam.kind)).toEqual(['partial', 'straight', 'straight', 'straight', 'finish']);
  });

  test('rings within rings need one each', () => {
    for (let rings = 1; rings <= 6; rings += 1) {
      const boxes = nested(rings);
      expect(planOf(boxes.map((each) => box(...each)), rectangle(4 * rings + 1, 4 * rings + 1)).partial).toBe(rings);
    }
  });
});

describe('squared rectangles', () => {
  test.each(SQUARED_RECTANGLES)('$name has no straight order, and needs nothing set in', ({ width, height, squares }) => {
    const boxes = decode(width, squares);
    const plan = planOf(boxes.map((each) => box(...each)), rectangle(width, height));
    expect(plan.setIn).toBe(0);
    expect(plan.partial).toBeGreaterThan(0);
    if (boxes.length <= 11) expect(plan.partial).toBe(fewestCuts(boxes, 3));
  });

  test('without seams sewn partway, corners must be set in', () => {
    for (const { width, squares } of SQUARED_RECTANGLES.filter((each) => each.squares.length <= 10)) {
      expect(fewestSetIn(decode(width, squares).map((each) => box(...each).outline))).toBeGreaterThan(0);
    }
  });
});

describe('corners set in', () => {
  test.each(['triangles', 'octagons', 'triangleRows', 'guillotine'] as const)('as few as any order allows: %s', (kind) => {
    let compared = 0;
    for (let seed = 1; seed <= 900 && compared < 60; seed += 1) {
      const { target, patches } = KINDS[kind](random(seed));
      if (patches.length > 9) continue;
      const plan = planOf(patches.map((outline) => patchOf(outline)), target);
      if (plan.partial > 0) continue;
      expect([seed, plan.setIn]).toEqual([seed, fewestSetIn(patches)]);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(20);
  });

  test('rectangles on small grids: none exactly where there is a straight order', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const { boxes, width, height } = gridBoxes(random(seed));
      const patches = boxes.map((each) => box(...each));
      const plan = planOf(patches, rectangle(width, height));
      expect([seed, plan.partial === 0]).toEqual([seed, fewestSetIn(patches.map((patch) => patch.outline)) === 0]);
    }
  });
});

function planOf(patches: readonly Patch[], outline: Patch['outline']): SewingPlan {
  const plan = assemble(patches)?.plan;
  if (!plan) throw new Error('no plan');
  expect(verifyPlan({ patches, outline: rightWay(outline), seam: fraction(1, 4) }, plan)).toEqual([]);
  return plan;
}

function rightWay(outline: Patch['outline']): Patch['outline'] {
  return patchOf(outline).outline;
}

function nested(rings: number): Box[] {
  const boxes: Box[] = [[2 * rings, 2 * rings, 1, 1]];
  for (let ring = 1; ring <= rings; ring += 1) {
    const [from, size] = [2 * (rings - ring), 4 * ring + 1];
    boxes.push([from, from, size - 2, 2], [from + size - 2, from, 2, size - 2], [from + 2, from + size - 2, size - 2, 2], [from, from + 2, 2, size - 2]);
  }
  return boxes;
}

/** Each next square goes into the highest free place, the leftmost of those. */
function decode(width: number, squares: readonly number[]): Box[] {
  const tops = new Array<number>(width).fill(0);
  return squares.map((size): Box => {
    const y = Math.min(...tops);
    const x = tops.indexOf(y);
    tops.fill(y + size, x, x + size);
    return [x, y, size, size];
  });
}
