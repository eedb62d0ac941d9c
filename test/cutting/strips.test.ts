/** Strips and segments of one fabric: printed counts, then anything at all, judged by the verifier and the bounds. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ZERO, atMost, compare, fraction, toNumber, type Exact } from '../../server/src/exact/number.ts';
import { planCutting } from '../../server/src/cutting/build.ts';
import type { CuttingPlan, FabricPlan } from '../../server/src/cutting/plan.ts';
import type { Effort } from '../../server/src/cutting/search.ts';
import { faultsOf } from '../../server/src/cutting/verify.ts';
import type { Fabric } from '../../server/src/model/pattern.ts';
import { RULES, block, box, fabric, inches, n, pattern, quilt } from './layouts.ts';
import { FAT_QUARTER, HALF_YARD_OF_42, STRIPS_OF_SQUARES } from './yard-tables.ts';

interface Wanted {
  /** Cut sizes. */
  readonly width: Exact;
  readonly height: Exact;
  readonly count: number;
}

function finished({ width, height }: Wanted): readonly [Exact, Exact] {
  const less = (size: Exact): Exact => n(toNumber(size) - 0.5);
  return [less(width), less(height)];
}

function planOf(of: Fabric, wanted: readonly Wanted[], effort: Effort = 'best'): CuttingPlan {
  const blocks = wanted.map((each, i) => [block(`B${i}`, n(10), [box(of, ...finished(each))]), each.count] as const);
  return planCutting(quilt({ blocks }), pattern([of]), { effort });
}

function fabricPlan(plan: CuttingPlan): FabricPlan {
  const [found] = plan.fabrics;
  if (!found) throw new Error('no fabric');
  return found;
}

describe('squares from a length of cloth, as others count them', () => {
  test.each(STRIPS_OF_SQUARES)('%s" cloth, squares of %s: %i', (width, size, count, perStrip, strips, length) => {
    const plan = fabricPlan(planOf(fabric('a', { width: n(width) }), [{ width: n(size), height: n(size), count }]));
    expect(plan.strips[0]?.subcuts[0]?.count).toBe(perStrip);
    expect(plan.strips.reduce((total, strip) => total + strip.count, 0)).toBe(strips);
    expect([inches(plan.length), inches(plan.lowerBound)]).toEqual([length, length]);
  });

  test.each(HALF_YARD_OF_42)('half a yard of 42" gives squares of %s: %i and not one more', (size, count) => {
    const length = (many: number): Exact => fabricPlan(planOf(fabric('a', { width: n(42) }), [{ width: n(size), height: n(size), count: many }])).length;
    expect([atMost(length(count), n(18)), atMost(length(count + 1), n(18))]).toEqual([true, false]);
  });

  test.each(FAT_QUARTER)('18 by 22 gives squares of %s: %i and not one more', (size, count) => {
    const best = (many: number): number => {
      const lengths = [18, 22].map((width) => toNumber(fabricPlan(planOf(fabric('a', { width: n(width) }), [{ width: n(size), height: n(size), count: many }])).length) <= 40 - width);
      return lengths.filter(Boolean).length;
    };
    expect([best(count) > 0, best(count + 1) > 0]).toEqual([true, false]);
  });
});

describe('how strips are used', () => {
  test('rectangles of one kind lie the way that takes less', () => {
    const plan = fabricPlan(planOf(fabric('a'), [{ width: n('2 1/2'), height: n('4 1/2'), count: 16 }]));
    expect(plan.strips).toMatchObject([{ width: n('4 1/2'), count: 1, subcuts: [{ piece: 0, count: 16 }] }]);
    const across = fabricPlan(planOf(fabric('a'), [{ width: n('2 1/2'), height: n('20'), count: 4 }]));
    expect(across.strips).toMatchObject([{ width: n('2 1/2'), count: 2, subcuts: [{ piece: 0, count: 2, turned: true }] }]);
  });

  test('the rest of a tall strip takes small pieces, one above the other, where that saves a strip', () => {
    const plan = fabricPlan(planOf(fabric('a'), [{ width: n('10 1/2'), height: n('10 1/2'), count: 3 }, { width: n('2 1/2'), height: n('2 1/2'), count: 12 }]));
    expect(plan.strips).toMatchObject([{ width: n('10 1/2'), count: 1, subcuts: [{ piece: 0, count: 3 }, { piece: 1, count: 12, stacked: 4 }] }]);
    expect(inches(plan.length)).toBe('10 1/2');
  });

  test('a directional fabric is not turned', () => {
    const plan = planOf(fabric('a', { directional: true }), [{ width: n('20'), height: n('2 1/2'), count: 4 }, { width: n('2 1/2'), height: n('20'), count: 4 }]);
    expect(faultsOf(plan, RULES)).toEqual([]);
    expect(fabricPlan(plan).strips.flatMap(({ subcuts }) => subcuts).some(({ turned }) => turned)).toBe(false);
    expect(plan.pieces.map(({ lie }) => lie)).toEqual(['along', 'along']);
  });

  test('a piece that fits neither way is named, and the rest is planned', () => {
    const plan = planOf(fabric('a'), [{ width: n('45'), height: n('41'), count: 2 }, { width: n('2 1/2'), height: n('2 1/2'), count: 1 }]);
    expect(plan.tooWide).toMatchObject([{ piece: 0, for: 'B0', needs: n(41) }]);
    expect(inches(fabricPlan(plan).length)).toBe('2 1/2');
    expect(faultsOf(plan, RULES)).toEqual([]);
  });

  test('a piece longer than the fabric is wide lies along the selvage', () => {
    const plan = planOf(fabric('a'), [{ width: n('4 1/2'), height: n('60 1/2'), count: 2 }, { width: n('2 1/2'), height: n('2 1/2'), count: 40 }]);
    expect(fabricPlan(plan).strips).toMatchObject([{ width: n('60 1/2'), count: 1 }]);
    expect(faultsOf(plan, RULES)).toEqual([]);
  });

  test('one kind in thousands is planned at once', () => {
    const start = performance.now();
    const plan = planOf(fabric('a'), [{ width: n('1'), height: n('1'), count: 100_000 }]);
    expect(fabricPlan(plan).strips).toMatchObject([{ count: 2500, subcuts: [{ count: 40 }] }]);
    expect(performance.now() - start).toBeLessThan(2000);
  });
});

const wanted = fc.record({ width: fc.integer({ min: 8, max: 330 }), height: fc.integer({ min: 8, max: 330 }), count: fc.integer({ min: 1, max: 60 }) })
  .map(({ width, height, count }) => ({ width: fraction(width, 8), height: fraction(height, 8), count }));

const cloth = fc.record({ width: fc.integer({ min: 80, max: 360 }), directional: fc.boolean() }).map(({ width, directional }) => fabric('a', { width: fraction(width, 8), directional }));

describe('anything', () => {
  test.each<[Effort, number, number]>([['at once', 300, 12], ['best', 60, 5]])('every plan (%s) can be cut, reaches every piece, and is no shorter than its bound', (effort, numRuns, maxLength) => {
    fc.assert(
      fc.property(cloth, fc.array(wanted, { minLength: 1, maxLength }), (of, list) => {
        const plan = planOf(of, list, effort);
        expect(faultsOf(plan, RULES)).toEqual([]);
        for (const { length, lowerBound } of plan.fabrics) expect(compare(lowerBound, length)).toBeLessThanOrEqual(0);
      }),
      { numRuns },
    );
  }, 120_000);

  test('never longer than each kind of piece in strips of its own', () => {
    fc.assert(
      fc.property(cloth, fc.array(wanted, { minLength: 1, maxLength: 8 }), (of, list) => {
        const together = planOf(of, list, 'at once').fabrics[0]?.length ?? ZERO;
        const apart = list.reduce((total, each) => total + toNumber(planOf(of, [each], 'at once').fabrics[0]?.length ?? ZERO), 0);
        expect(toNumber(together)).toBeLessThanOrEqual(apart + 1e-9);
      }),
      { numRuns: 200 },
    );
  });

  test('what can be laid out by hand is not below the bound', () => {
    // Squares that tile the cloth exactly: the truth is known, and the bound must not exceed it.
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10 }), fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 12 }), (perStrip, rows, eighths) => {
        const size = fraction(eighths + 8, 8);
        const of = fabric('a', { width: fraction((eighths + 8) * perStrip, 8) });
        const plan = fabricPlan(planOf(of, [{ width: size, height: size, count: perStrip * rows }]));
        expect([toNumber(plan.length), toNumber(plan.lowerBound)]).toEqual([toNumber(size) * rows, toNumber(size) * rows]);
      }),
    );
  });
});

describe('a wrong plan is refused', () => {
  const plan = planOf(fabric('a'), [{ width: n('10 1/2'), height: n('10 1/2'), count: 3 }, { width: n('2 1/2'), height: n('4 1/2'), count: 30 }]);
  const tampered = (change: (found: FabricPlan) => FabricPlan): CuttingPlan => ({ ...plan, fabrics: plan.fabrics.map(change) });
  /** In the list and on the cloth. */
  const firstStrip = (found: FabricPlan, change: (strip: FabricPlan['strips'][number]) => FabricPlan['strips'][number]): FabricPlan => {
    const changed = (strips: FabricPlan['strips']): FabricPlan['strips'] => strips.map((strip, i) => (i === 0 ? change(strip) : strip));
    return { ...found, strips: changed(found.strips), cloths: found.cloths.map((cloth) => ({ ...cloth, strips: changed(cloth.strips) })) };
  };

  test('as it was it is right', () => expect(faultsOf(plan, RULES)).toEqual([]));

  test.each<[string, CuttingPlan]>([
    ['a strip less', tampered((found) => ({ ...found, strips: found.strips.slice(1) }))],
    ['a strip narrower', tampered((found) => firstStrip(found, (strip) => ({ ...strip, width: n(10) })))],
    ['a strip more', tampered((found) => firstStrip(found, (strip) => ({ ...strip, count: strip.count + 1 })))],
    ['a piece more than there is room for', tampered((found) => firstStrip(found, (strip) => ({ ...strip, subcuts: strip.subcuts.map((cut, i) => (i === 0 ? { ...cut, count: 4 } : cut)) })))],
    ['half a piece', tampered((found) => firstStrip(found, (strip) => ({ ...strip, subcuts: strip.subcuts.map((cut) => ({ ...cut, count: cut.count / 2 })) })))],
    ['pieces stacked too high', tampered((found) => firstStrip(found, (strip) => ({ ...strip, subcuts: strip.subcuts.map((cut) => ({ ...cut, stacked: 9 })) })))],
    ['a strip that is only in the list', tampered((found) => ({ ...found, strips: found.strips.map((strip, i) => (i === 0 ? { ...strip, subcuts: [...strip.subcuts].reverse() } : strip)) }))],
    ['cloth wider than it is sold', tampered((found) => ({ ...found, cloths: found.cloths.map((cloth) => ({ ...cloth, across: n(44) })) }))],
    ['a second length of cloth', tampered((found) => ({ ...found, cloths: [...found.cloths, ...found.cloths] }))],
    ['a least plan above its bound', tampered((found) => ({ ...found, isLeast: true, lowerBound: n(1) }))],
    ['fat quarters for yardage', tampered((found) => ({ ...found, counted: { kind: 'fat quarter', count: 1, least: 1, width: n(20), height: n('17 1/2') } }))],
    ['a length too short', tampered((found) => ({ ...found, length: n(1) }))],
    ['too little bought', tampered((found) => ({ ...found, buy: n('4 1/2') }))],
    ['a bound too high', tampered((found) => ({ ...found, lowerBound: n(100) }))],
    ['a piece cut too small', { ...plan, pieces: plan.pieces.map((piece) => ({ ...piece, cut: { width: n(2), height: n(2) } })) }],
    ['a piece off the ruler', { ...plan, pieces: plan.pieces.map((piece) => ({ ...piece, cut: { width: n('10.55'), height: n('10.55') } })) }],
    ['a piece without seams', { ...plan, pieces: plan.pieces.map((piece) => ({ ...piece, finished: piece.exactCut })) }],
    ['too few cuts', { ...plan, pieces: plan.pieces.map((piece) => ({ ...piece, pieces: piece.pieces + 1 })) }],
    ['too wide, when it fits', { ...plan, tooWide: [{ fabric: fabric('a'), piece: 0, for: 'B0', needs: n(41), places: [] }] }],
    ['of another fabric', { ...plan, pieces: plan.pieces.map((piece) => ({ ...piece, fabric: fabric('b') })) }],
  ])('%s', (_, wrong) => expect(faultsOf(wrong, RULES)).not.toEqual([]));
});
