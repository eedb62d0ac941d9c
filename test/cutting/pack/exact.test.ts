/** Against a solver that is not ours, on cases small enough to list every cutting pattern. */
import { describe, expect, test } from 'vitest';
import { packStrips } from '../../../server/src/cutting/pack/pack.ts';
import { priceAll } from '../../../server/src/cutting/pack/price.ts';
import { problemOf } from '../../../server/src/cutting/pack/problem.ts';
import { ceilOf } from '../../../server/src/cutting/pack/question.ts';
import type { Cloth, Demand } from '../../../server/src/cutting/pack/types.ts';
import { leastLength, leastSheets } from './oracle.ts';
import { randomOf, sheetCase, smallCase } from './random.ts';
import { faultsOf } from './replay.ts';

const seeds = (from: number, count: number): readonly number[] => Array.from({ length: count }, (_, i) => from + i);

interface Verdict {
  readonly seed: number;
  readonly total: number;
  readonly bound: number;
  readonly least: number;
  readonly faults: readonly string[];
}

function judge(seed: number, demand: readonly Demand[], cloth: Cloth): Verdict & { readonly linear: number; readonly relaxation: number } {
  const plan = packStrips(demand, cloth);
  const cut = demand.map((each, i) => ({ ...each, count: plan.tooLarge.includes(i) ? 0 : each.count })).filter(({ count }) => count > 0);
  const exact = cut.length === 0 ? { whole: 0, linear: 0 } : cloth.kind === 'sheets' ? { whole: leastSheets(cut, cloth, plan.total), linear: plan.relaxation } : leastLength(cut, cloth);
  return { seed, total: plan.total, bound: plan.lowerBound, least: exact.whole, faults: faultsOf(plan, demand, cloth), linear: exact.linear, relaxation: plan.relaxation };
}

function expectHonest(verdicts: readonly Verdict[]): void {
  expect(verdicts.filter(({ faults }) => faults.length > 0)).toEqual([]);
  expect(verdicts.filter(({ total, least }) => total < least)).toEqual([]);
  expect(verdicts.filter(({ bound, least }) => bound > least)).toEqual([]);
  expect(verdicts.filter(({ total, least }) => total === least).length).toBeGreaterThanOrEqual(Math.ceil(verdicts.length * 0.95));
}

describe('never below the least, at it in 95 of 100 and more', () => {
  const lengths = seeds(1, 100).map((seed) => {
    const { demand, width } = smallCase(randomOf(seed));
    return judge(seed, demand, { kind: 'length', width });
  });

  test('a length of cloth', () => expectHonest(lengths));

  test('the relaxation is the least that patterns in parts can do', () => {
    expect(lengths.filter(({ linear, relaxation }) => Math.abs(linear - relaxation) > 1e-6)).toEqual([]);
    expect(lengths.filter(({ linear, relaxation }) => relaxation > linear + 1e-9)).toEqual([]);
  });

  test('duals that are nonsense still give a bound', () => {
    lengths.forEach(({ seed, least }, i) => {
      const random = randomOf(i + 1);
      const { demand, width } = smallCase(randomOf(seed));
      const problem = problemOf(demand, { kind: 'length', width });
      for (let turn = 0; turn < 20; turn += 1) {
        const duals = problem.items.map(() => (random(1 + random(1_000_000_000)) / 1e8) * (random(4) === 0 ? 0 : 1));
        const { bound } = priceAll({ problem, wanted: problem.counts, limits: [], columns: [], ceiling: least }, duals, { spent: 0, limit: 0 });
        expect(ceilOf(bound)).toBeLessThanOrEqual(least);
      }
    });
  });

  test('ready-cut strips', () => {
    const verdicts = seeds(1, 60).map((seed) => {
      const random = randomOf(seed);
      const { demand, width } = smallCase(random);
      return judge(seed, demand, { kind: 'strips', width, heights: [5 + random(4), ...(random(2) ? [9] : [])] });
    });
    expectHonest(verdicts);
    expect(verdicts.filter(({ linear, relaxation }) => Math.abs(linear - relaxation) > 1e-6)).toEqual([]);
  });

  test('sheets', () => {
    expectHonest(
      seeds(1, 60).map((seed) => {
        const { demand, cloth } = sheetCase(randomOf(seed));
        return judge(seed, demand, cloth);
      }),
    );
  });
});
