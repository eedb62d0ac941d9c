/** Larger cases against HiGHS: pressing of random problems and of whole quilts, and seams sewn partway. */
import { describe, expect, test } from 'vitest';
import { fraction } from '../../server/src/exact/number.ts';
import { assemble } from '../../server/src/piecing/assembly.ts';
import { solvePressing, type PressProblem } from '../../server/src/piecing/press-solve.ts';
import { sewingOf } from '../../server/src/piecing/sewing.ts';
import { verifyPlan } from '../../server/src/piecing/verify.ts';
import { KINDS, random, type Random } from '../geometry/partitions.ts';
import { drawn } from './drawn.ts';
import { gridBoxes } from './grid-boxes.ts';
import { leastConflicts, leastCuts, leastSetIn } from './highs.ts';
import { box, patchOf, rectangle } from './layouts.ts';
import { randomQuilt } from './random-quilts.ts';

describe('pressing', () => {
  test('random problems of 30 to 70 seams', () => {
    let proven = 0;
    for (let seed = 1; seed <= 30; seed += 1) {
      const problem = randomProblem(random(seed));
      const answer = solvePressing(problem);
      const conflicts = problem.pairs.filter(({ a, b, differ }) => (answer.sides[a] !== answer.sides[b]) !== differ).reduce((sum, { weight }) => sum + weight, 0);
      const least = leastConflicts(problem);
      expect([seed, conflicts >= least, answer.proven ? conflicts : least]).toEqual([seed, true, least]);
      proven += answer.proven ? 1 : 0;
    }
    expect(proven).toBe(30);
  });

  test('quilts of up to six distinct blocks of nine to sixteen cells, turned and mirrored', () => {
    let conflicts = 0;
    for (let seed = 1; seed <= 25; seed += 1) {
      const r = random(seed);
      const layout = randomQuilt(r, { blocks: 2 + r.below(5), across: 3 + r.below(3), down: 3 + r.below(3), cells: 3 + r.below(2) });
      const sewing = sewingOf(layout, { methods: {} });
      const { seams, meetings } = drawn(layout, sewing);
      const free = meetings.filter(({ a, b }) => !seams[a]?.open && !seams[b]?.open);
      const pairs = free.map(({ a, b, bothRight }) => ({ a, b, differ: !bothRight, weight: 1 }));
      const least = leastConflicts({ settled: seams.map(() => undefined), pairs });
      expect([seed, sewing.pressing.proven, sewing.pressing.conflicts]).toEqual([seed, true, least]);
      conflicts += least;
    }
    expect(conflicts).toBeGreaterThan(20);
  });
});

test('seams sewn partway: as few as there can be in 12 to 22 rectangles', () => {
  const counts = new Map<number, number>();
  for (let seed = 1; seed <= 60; seed += 1) {
    const { boxes, width, height } = gridBoxes(random(seed), { least: 12, most: 22, side: 12 });
    const patches = boxes.map((each) => box(...each));
    const plan = assemble(patches)?.plan;
    if (!plan) throw new Error('no plan');
    expect(verifyPlan({ patches, outline: rectangle(width, height), seam: fraction(1, 4) }, plan)).toEqual([]);
    const least = leastCuts(boxes);
    expect([seed, plan.partial, plan.setIn, plan.proven]).toEqual([seed, least, 0, true]);
    counts.set(least, (counts.get(least) ?? 0) + 1);
  }
  expect([...counts].filter(([least]) => least > 1).reduce((sum, [, count]) => sum + count, 0)).toBeGreaterThan(10);
});

describe('corners set in: as few as any order needs', () => {
  test.each(['triangles', 'octagons', 'triangleRows', 'guillotine'] as const)('10 to 40 patches: %s', (kind) => {
    let compared = 0;
    for (let seed = 1; seed <= 600 && compared < 40; seed += 1) {
      const { target, patches: outlines } = KINDS[kind](random(seed));
      if (outlines.length < 10 || outlines.length > 40) continue;
      const patches = outlines.map((outline) => patchOf(outline));
      const plan = assemble(patches)?.plan;
      if (!plan) throw new Error('no plan');
      if (plan.partial > 0) continue;
      expect(verifyPlan({ patches, outline: patchOf(target).outline, seam: fraction(1, 4) }, plan)).toEqual([]);
      expect([seed, plan.setIn]).toEqual([seed, leastSetIn(outlines)]);
      compared += 1;
    }
    expect(compared).toBe(40);
  });

  test('12 to 22 rectangles: none exactly where no seam is sewn partway', () => {
    const found = new Set<boolean>();
    for (let seed = 1; seed <= 40; seed += 1) {
      const { boxes } = gridBoxes(random(seed), { least: 12, most: 22, side: 12 });
      const patches = boxes.map((each) => box(...each));
      const isNone = leastSetIn(patches.map(({ outline }) => outline)) === 0;
      expect([seed, assemble(patches)?.plan.partial === 0]).toEqual([seed, isNone]);
      found.add(isNone);
    }
    expect(found.size).toBe(2);
  });
});

/** A strip of neighbours with some longer ties: sparse enough to be solved exactly. */
function randomProblem(r: Random): PressProblem {
  const count = 30 + r.below(41);
  const seams = Array.from({ length: count }, (_, i) => i);
  const near = seams.flatMap((a) => [1, 2, 7].filter((step) => a + step < count && r.below(5) < 3).map((step) => ({ a, b: a + step, differ: r.below(2) === 0, weight: 1 + r.below(6) })));
  return { settled: seams.map(() => (r.below(12) === 0 ? (r.below(2) as 0 | 1) : undefined)), wish: seams.map(() => r.below(7) - 3), pairs: near };
}
