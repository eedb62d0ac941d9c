/** The optimiser's plans: what they look like, what must hold of all of them, and what changes nothing. */
import { describe, expect, test } from 'vitest';
import { better, firstPlan, packStrips, type Step } from '../../../server/src/cutting/pack/pack.ts';
import type { Cloth, Demand, Packing } from '../../../server/src/cutting/pack/types.ts';
import { quiltCase, randomOf, sheetCase, smallCase } from './random.ts';
import { faultsOf } from './replay.ts';

const LENGTH: Cloth = { kind: 'length', width: 320 };
const seeds = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i + 1);

/** In eighths of an inch. */
function square(inches: number, count: number): Demand {
  return { width: inches * 8, height: inches * 8, count, mayTurn: true };
}

function steps(demand: readonly Demand[], cloth: Cloth): readonly Step[] {
  return [...better(demand, cloth)];
}

function least({ total, lowerBound, provenOptimal }: Packing): number {
  expect([provenOptimal, lowerBound]).toEqual([true, total]);
  return total;
}

describe('strips', () => {
  test('pieces of one height share strips', () => {
    const plan = packStrips([{ width: 20, height: 20, count: 8, mayTurn: true }, { width: 36, height: 20, count: 4, mayTurn: false }], LENGTH);
    expect(plan).toMatchObject({ total: 20, provenOptimal: true, counters: { widths: 1, cuts: 13, rulerChanges: 3 } });
    expect(plan.strips).toEqual([{ height: 20, count: 1, subcuts: [{ piece: 1, count: 4 }, { piece: 0, count: 8 }] }]);
  });

  test('what is left of a high strip serves small pieces, one above the other', () => {
    const plan = packStrips([square(10.5, 3), square(2.5, 12)], LENGTH);
    expect(plan.strips).toEqual([{ height: 84, count: 1, subcuts: [{ piece: 0, count: 3 }, { piece: 1, count: 12, stacked: 4 }] }]);
    expect(plan.counters.cuts).toBe(1 + 3 + 3 + 12);
  });

  test('rectangles lie the way that takes less, unless they must not turn', () => {
    const demand = { width: 20, height: 36, count: 16, mayTurn: true };
    expect(least(packStrips([demand], LENGTH))).toBe(36);
    const long = { width: 20, height: 160, count: 4 };
    expect(packStrips([{ ...long, mayTurn: true }], LENGTH).strips).toEqual([{ height: 20, count: 2, subcuts: [{ piece: 0, count: 2, turned: true }] }]);
    expect(least(packStrips([{ ...long, mayTurn: false }], LENGTH))).toBe(160);
  });

  test('strips that are ready cut keep their height', () => {
    const plan = packStrips([square(2.5, 20), { width: 12, height: 20, count: 4, mayTurn: true }], { kind: 'strips', width: 320, heights: [20] });
    expect(plan).toMatchObject({ total: 40, provenOptimal: true, strips: [{ height: 20 }, { height: 20 }] });
  });

  test('fat quarters: 12 squares of 5" from one, 13 from two', () => {
    const cloth: Cloth = { kind: 'sheets', width: 22 * 8, height: 18 * 8 };
    expect(packStrips([square(5, 12)], cloth)).toMatchObject({ total: 1, sheets: [{ count: 1, strips: [{ height: 40, count: 3 }] }] });
    expect(least(packStrips([square(5, 13)], cloth))).toBe(2);
  });

  test('a sheet may be cut the other way', () => {
    const demand: readonly Demand[] = [{ width: 10, height: 40, count: 3, mayTurn: false }, { width: 10, height: 10, count: 4, mayTurn: false }];
    const cloth = { kind: 'sheets', width: 40, height: 40 } as const;
    expect(packStrips(demand, cloth).total).toBe(1);
    const across = demand.map((each) => ({ ...each, width: each.height, height: each.width }));
    expect(packStrips(across, cloth).total).toBe(1);
    const mixed: readonly Demand[] = [{ width: 30, height: 12, count: 1, mayTurn: false }, { width: 6, height: 4, count: 1, mayTurn: false }];
    expect(packStrips(mixed, { kind: 'sheets', width: 30, height: 15 }).total).toBe(2);
    expect(packStrips(mixed, { kind: 'sheets', width: 36, height: 12, eitherWay: true })).toMatchObject({ total: 1 });
  });
});

describe('whatever is asked', () => {
  test('nothing, too much, and what does not fit', () => {
    expect(packStrips([], LENGTH)).toMatchObject({ total: 0, lowerBound: 0, provenOptimal: true, strips: [], tooLarge: [] });
    const plan = packStrips([square(45, 2), square(2, 0), square(2.5, 1)], LENGTH);
    expect(plan).toMatchObject({ total: 20, tooLarge: [0], strips: [{ subcuts: [{ piece: 2, count: 1 }] }] });
    expect(packStrips([square(45, 2)], LENGTH)).toMatchObject({ total: 0, tooLarge: [0] });
  });

  test('a million pieces', () => {
    const demand = [square(2.5, 1_000_000), { width: 36, height: 52, count: 300_000, mayTurn: true }, square(1.75, 77)];
    const plan = packStrips(demand, LENGTH, { effort: 20_000_000 });
    expect(plan.total - plan.lowerBound).toBeLessThan(52);
    expect(faultsOf(plan, demand, LENGTH)).toEqual([]);
  });

  test('fractions are refused', () => {
    expect(() => packStrips([{ width: 2.5, height: 1, count: 1, mayTurn: true }], LENGTH)).toThrow(RangeError);
    expect(() => packStrips([square(1, -1)], LENGTH)).toThrow(RangeError);
    expect(() => packStrips([], { kind: 'length', width: 0 })).toThrow(RangeError);
  });
});

describe('every plan on the way', () => {
  test('a quilt: whole at every step, never worse than before, within one strip of the bound at the end', () => {
    for (const seed of seeds(6)) {
      const { demand, width } = quiltCase(randomOf(seed));
      const cloth: Cloth = { kind: 'length', width };
      const all = [firstPlan(demand, cloth), ...steps(demand, cloth).map(({ packing }) => packing), packStrips(demand, cloth)];
      const distinct = all.filter((plan, i) => plan.strips !== all[i - 1]?.strips);
      expect(distinct.flatMap((plan) => faultsOf(plan, demand, cloth))).toEqual([]);
      expect(all.filter((plan, i) => plan.total > (all[i - 1]?.total ?? plan.total) || plan.lowerBound < (all[i - 1]?.lowerBound ?? 0))).toEqual([]);
      const last = all.at(-1);
      expect((last?.total ?? 0) - (last?.lowerBound ?? 0)).toBeLessThanOrEqual(Math.min(...(last?.strips ?? []).map(({ height }) => height)));
    }
  }, 120_000);

  test('sheets', () => {
    for (const seed of seeds(100)) {
      const { demand, cloth } = sheetCase(randomOf(seed + 500));
      expect([firstPlan(demand, cloth), ...steps(demand, cloth).map(({ packing }) => packing)].flatMap((plan) => faultsOf(plan, demand, cloth))).toEqual([]);
    }
  });

  test('it may be left at any step', () => {
    const { demand, width } = quiltCase(randomOf(3));
    const search = better(demand, { kind: 'length', width });
    const { value } = search.next();
    search.return(value && 'packing' in value ? value.packing : packStrips([], LENGTH));
    expect(search.next()).toEqual({ done: true, value: undefined });
  });

  test('the same question, the same plan', () => {
    const { demand, width } = quiltCase(randomOf(8));
    const cloth: Cloth = { kind: 'length', width };
    expect(packStrips(demand, cloth)).toEqual(packStrips(demand, cloth));
    expect(packStrips(demand, cloth, { seed: 2 }).lowerBound).toBeGreaterThan(0);
  });
});

describe('what changes nothing, and what changes it one way', () => {
  const cases = seeds(60).map((seed) => {
    const { demand, width } = smallCase(randomOf(seed + 1000));
    return { demand, width, total: least(packStrips(demand, { kind: 'length', width })) };
  });

  test('the order of the demand', () => {
    for (const { demand, width, total } of cases) expect(least(packStrips([...demand].reverse(), { kind: 'length', width }))).toBe(total);
  });

  test('a finer ruler', () => {
    for (const { demand, width, total } of cases) {
      const by = 1_000_003;
      const finer = demand.map((each) => ({ ...each, width: each.width * by, height: each.height * by }));
      expect(least(packStrips(finer, { kind: 'length', width: width * by }))).toBe(total * by);
    }
  });

  test('which side of a piece that may turn is named first', () => {
    for (const { demand, width, total } of cases) {
      const turned = demand.map((each) => (each.mayTurn ? { ...each, width: each.height, height: each.width } : each));
      expect(least(packStrips(turned, { kind: 'length', width }))).toBe(total);
    }
  });

  test('one piece less, or a piece that may turn, never takes more', () => {
    for (const { demand, width, total } of cases) {
      const fewer = demand.map((each, i) => (i === 0 ? { ...each, count: each.count - 1 } : each));
      expect(least(packStrips(fewer, { kind: 'length', width }))).toBeLessThanOrEqual(total);
      const fitting = demand.filter((each) => each.width <= width);
      const free = fitting.map((each) => ({ ...each, mayTurn: true }));
      expect(least(packStrips(free, { kind: 'length', width }))).toBeLessThanOrEqual(least(packStrips(fitting, { kind: 'length', width })));
    }
  });
});
