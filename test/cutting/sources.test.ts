/**
 * Fat quarters, precuts and pieces at hand: how many it takes, judged by the verifier, by printed tables and by what a hand can count.
 * Usable sizes are those of language.md, section 2.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fraction, toNumber, type Exact } from '../../server/src/exact/number.ts';
import { planCutting } from '../../server/src/cutting/build.ts';
import type { Effort } from '../../server/src/cutting/search.ts';
import type { CuttingPlan, FabricPlan } from '../../server/src/cutting/plan.ts';
import { faultsOf } from '../../server/src/cutting/verify.ts';
import type { Fabric, FabricSource } from '../../server/src/model/pattern.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { RULES, block, border, box, fabric, n, pattern, place, quilt } from './layouts.ts';
import { FAT_QUARTER } from './yard-tables.ts';

type Wanted = readonly [width: string, height: string, count: number];

/** Cut sizes. */
function planOf(of: Fabric, wanted: readonly Wanted[], effort: Effort = 'best'): CuttingPlan {
  const less = (size: string): Exact => n(toNumber(n(size)) - 0.5);
  const blocks = wanted.map(([width, height, count], i) => [block(`B${i}`, n(10), [box(of, less(width), less(height))]), count] as const);
  const plan = planCutting(quilt({ blocks }), pattern([of]), { effort });
  expect(faultsOf(plan, RULES)).toEqual([]);
  return plan;
}

function only(plan: CuttingPlan): FabricPlan {
  const [found] = plan.fabrics;
  if (!found) throw new Error('no fabric');
  return found;
}

const from = (source: FabricSource, more: Partial<Fabric> = {}): Fabric => fabric('a', { source, ...more });
const FAT: FabricSource = { kind: 'fat_quarters', width: n('17 1/2'), height: n(20) };
const PIECE: FabricSource = { kind: 'piece', width: n(12), height: n(30) };

describe('fat quarters', () => {
  test.each(FAT_QUARTER)('18 by 22 gives squares of %s: %i, and one more takes a second', (size, count) => {
    const whole = from({ kind: 'fat_quarters', width: n(18), height: n(22) });
    expect(only(planOf(whole, [[size, size, count]])).counted).toMatchObject({ kind: 'fat quarter', count: 1, least: 1 });
    expect(only(planOf(whole, [[size, size, count + 1]])).counted?.count).toBe(2);
  });

  test('strips run whichever way holds more, and a print with an up is not turned', () => {
    // 17 1/2" by 20": four pieces 17 1/2" long and 5" wide lie along the selvage side by side.
    const wanted: readonly Wanted[] = [['5', '17 1/2', 4]];
    expect(only(planOf(from(FAT), wanted)).counted?.count).toBe(1);
    expect(only(planOf(from(FAT, { directional: true }), wanted)).counted?.count).toBe(1);
    expect(only(planOf(from(FAT, { directional: true }), [['17 1/2', '5', 4]])).counted?.count).toBe(2);
  });

  test('strips to be joined are as long as the longer side', () => {
    const of = from(FAT);
    const layout = quilt({ width: n(30), height: n(30), spec: { binding: { fabric: of, cutWidth: n('2 1/2'), double: true, bias: false, place: place(1) } } });
    const plan = planCutting(layout, pattern([of]), { effort: 'best' });
    expect(faultsOf(plan, RULES)).toEqual([]);
    // 120" and 10" in strips of 20": seven, all from one of 17 1/2".
    expect([plan.binding?.strips, only(plan).counted?.count]).toEqual([7, 1]);
  });

  test('a border longer than the quarter is joined from strips of its longer side', () => {
    const of = from(FAT);
    const strips = (['top', 'right', 'bottom', 'left'] as const).map((side) => ({ side, width: n(3), length: n(39) }));
    const plan = planCutting(quilt({ borders: [border(1, of, { width: n(3), strips })] }), pattern([of]), { effort: 'best' });
    expect(faultsOf(plan, RULES)).toEqual([]);
    // Four of 39 1/2" are 158": nine strips of 20" less a join each (19 1/2") and 1/2"; five of 3 1/2" in one quarter.
    expect([plan.pieces[0]?.cutCount, only(plan).counted?.count]).toEqual([9, 2]);
  });
});

describe('precuts', () => {
  test('strips 2 1/2" wide: sixteen squares in each of 40"', () => {
    const roll = from({ kind: 'strips', size: n('2 1/2') });
    expect(only(planOf(roll, [['2 1/2', '2 1/2', 33]])).counted).toMatchObject({ kind: 'strip', count: 3, least: 3 });
    expect(only(planOf(roll, [['2 1/2', '10', 8]])).counted?.count).toBe(2);
  });

  test('squares 5" and 10": what is cut from each', () => {
    expect(only(planOf(from({ kind: 'squares', size: n(5) }), [['2 1/2', '2 1/2', 9]])).counted).toMatchObject({ kind: 'square', count: 3, least: 3 });
    expect(only(planOf(from({ kind: 'squares', size: n(10) }), [['5', '5', 4], ['2 1/2', '10', 5]])).counted?.count).toBe(3);
  });

  test('what is larger than the precut is named with both sizes, and the rest is planned', () => {
    const plan = planOf(from({ kind: 'squares', size: n(5) }), [['6 1/2', '2', 3], ['2 1/2', '2 1/2', 4]]);
    expect(plan.tooWide).toMatchObject([{ for: 'B0', cloth: { kind: 'square', has: { width: n(5), height: n(5) } } }]);
    expect(only(plan).counted?.count).toBe(1);
  });
});

describe('pieces at hand', () => {
  test('so many are needed, and how many there are is remembered', () => {
    const plan = only(planOf(from({ ...PIECE, count: 2 }), [['6', '10', 13]]));
    expect(plan.counted).toMatchObject({ kind: 'piece', count: 3, least: 3, atHand: 2 });
    expect(only(planOf(from(PIECE), [['6', '10', 6]])).counted).toMatchObject({ count: 1, atHand: 1 });
  });
});

describe('a role of fat quarters', () => {
  test('its prints are counted each and together', () => {
    const text = `fabric red #aa2211 from fat_quarters\nfabric blue #2244aa from fat_quarters\nfabric sand #eadfc8\nassorted scraps = red blue by patch\nblock Buoy 4" {\n  scraps\n}\nquilt {\n  straight 6 by 6\n  place { Buoy }\n  backing sand\n}\nexpect scraps 4 fq\nexpect red at most 2 fq\n`;
    // 36 squares of 4 1/2", 18 of each print, twelve to a fat quarter.
    expect(snapshotOfText(text).problems).toEqual([]);
    expect(snapshotOfText(text.replace('scraps 4 fq', 'scraps 3 fq')).problems.map(({ message }) => message)).toEqual(['`scraps` is 4 fq, expected 3 fq']);
  });
});

describe('from the text', () => {
  const text = (source: string, rest = '', size = '4'): string => `fabric ink #22345c ${source}\nblock Buoy ${size}" {\n  ink\n}\nquilt {\n  straight 5 by 6\n  place { Buoy }\n}\n${rest}`;
  const problems = (of: string): readonly string[] => snapshotOfText(of).problems.map(({ rule, message }) => `${rule}: ${message}`);

  test('expected in fat quarters', () => {
    // Squares of 4 1/2": four across 20", three along 17 1/2": 30 of them take three.
    expect(problems(text('from fat_quarters', 'expect ink at most 3 fq\n'))).toEqual([]);
    expect(problems(text('from fat_quarters', 'expect ink at most 2 fq\n'))).toEqual(['expect-failed: `ink` is 3 fq, expected at most 2 fq']);
    expect(problems(text('', 'expect ink at most 9 fq\n'))).toEqual(['expect-failed: `ink` is not counted in fat quarters: its fabric is not `from fat_quarters`']);
    expect(problems(text('from fat_quarters', 'expect ink at most 1 yd\n'))[0]).toBe('expect-failed: `ink` is a count, 3 fat quarters, not a length');
  });

  test('of one size', () => {
    const sized = text('from fat_quarters', 'size crib 3 by 4\nsize throw 6 by 8\nexpect throw.ink at most 4 fq\nexpect crib.ink 1 fq\n');
    expect(problems(sized)).toEqual([]);
  });

  test('what does not fit is said at the fabric', () => {
    const [problem] = snapshotOfText(text('from squares 2 1/2"')).problems;
    expect([problem?.rule, problem?.message, problem?.place.line.text.slice(0, 10)]).toEqual(['strip-too-wide', 'a piece for Buoy is cut 4 1/2" by 4 1/2", and a square of `ink` is 2 1/2" by 2 1/2"', 'fabric ink']);
  });

  test('pieces at hand that are too few are said at the fabric', () => {
    const scrap = text('from piece 12" by 30" times 2', '', '5');
    expect(problems(scrap)).toEqual(['fabric-short: `ink` takes 3 pieces of 12" by 30", and 2 are at hand']);
    expect(problems(scrap.replace('times 2', 'times 3'))).toEqual([]);
    const sized = text('from piece 12" by 30" times 2', 'size lap 5 by 6\nsize wall 2 by 2\nsize bed 10 by 6\n', '5');
    expect(problems(sized)).toEqual(['fabric-short: `ink` takes 3 pieces for lap, 6 pieces for bed of 12" by 30", and 2 are at hand']);
  });
});

/** Searches take their steps, however slow the machine. */
const SEARCHING = 120_000;

describe('anything', () => {
  const eighths = (least: number, most: number): fc.Arbitrary<Exact> => fc.integer({ min: least * 8, max: most * 8 }).map((each) => fraction(each, 8));
  const source: fc.Arbitrary<FabricSource> = fc.oneof(
    fc.constant<FabricSource>({ kind: 'yardage' }),
    fc.record({ kind: fc.constant('fat_quarters' as const), width: eighths(9, 18), height: eighths(15, 22) }),
    fc.record({ kind: fc.constant('strips' as const), size: eighths(1, 4) }),
    fc.record({ kind: fc.constant('squares' as const), size: eighths(3, 10) }),
    fc.record({ kind: fc.constant('piece' as const), width: eighths(6, 30), height: eighths(6, 40), count: fc.integer({ min: 1, max: 5 }) }),
  );
  const cloth = fc.record({ source, directional: fc.boolean(), width: eighths(30, 44) }).map((more) => fabric('a', more));
  const wanted = fc.record({ width: eighths(1, 9), height: eighths(1, 9), count: fc.integer({ min: 1, max: 30 }) });

  test('every plan can be cut, at once and at its best, and the best is no worse', () => {
    fc.assert(
      fc.property(cloth, fc.array(wanted, { minLength: 1, maxLength: 4 }), fc.boolean(), (of, list, bound) => {
        const blocks = list.map(({ width, height, count }, i) => [block(`B${i}`, n(10), [box(of, width, height)]), count] as const);
        const spec = bound ? { binding: { fabric: of, cutWidth: n('2 1/4'), double: true, bias: false, place: place(1) } } : {};
        const layout = quilt({ blocks, width: n(40), height: n(50), spec });
        const [first, best] = (['at once', 'best'] as const).map((effort) => planCutting(layout, pattern([of]), { effort })) as [CuttingPlan, CuttingPlan];
        expect([faultsOf(first, RULES), faultsOf(best, RULES)]).toEqual([[], []]);
        const [a, b] = [only(first), only(best)];
        expect(b.counted ? b.counted.count : toNumber(b.length)).toBeLessThanOrEqual(a.counted ? a.counted.count : toNumber(a.length));
      }),
      { numRuns: 250 },
    );
  }, SEARCHING);
});
