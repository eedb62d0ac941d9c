/**
 * The optimiser against a person with a ruler, in one run: `node test/bench/cutting.ts` (Node 24 or later). 200 fabrics of quilts at
 * random; ratios and medians, below 1 is better than by hand. By hand: the highest pieces first, each into the first strip that has
 * room beside what is there, each kind lying the way that takes less by itself. With nesting: also one above the other in what is left of high strips.
 * As planned: the search as a pattern's plan asks for it, which ends when nothing less can be bought (5 % spare, steps of 1/8 yd).
 * Then the time against the linear relaxation alone, and the instances that are too large for the tests.
 */
import { plainColumns } from '../../server/src/cutting/pack/column.ts';
import { better, firstPlan, packStrips } from '../../server/src/cutting/pack/pack.ts';
import { problemOf } from '../../server/src/cutting/pack/problem.ts';
import { relax } from '../../server/src/cutting/pack/relax.ts';
import type { Cloth, Demand, Packing } from '../../server/src/cutting/pack/types.ts';
import { searchSteps } from '../../server/src/cutting/search.ts';
import { RECTANGLES } from '../cutting/pack/instances.ts';
import { quiltCase, randomOf } from '../cutting/pack/random.ts';
import { faultsOf } from '../cutting/pack/replay.ts';

const QUILTS = 200;

interface Row {
  readonly hand: Measured;
  readonly nested: Measured;
  readonly ours: Measured;
  readonly planned: Measured;
  readonly relaxed: number;
  /** Until a plan was within its lowest strip of the bound known then. */
  readonly near: number;
  readonly plan: Packing;
}

interface Measured {
  readonly length: number;
  readonly cuts: number;
  readonly widths: number;
  readonly ms: number;
}

for (let seed = 1; seed <= 10; seed += 1) measure(seed);
const rows = Array.from({ length: QUILTS }, (_, i) => measure(i + 1));

const ratio = (of: (row: Row) => Measured, to: (row: Row) => Measured): string => {
  const each = (what: 'length' | 'cuts' | 'widths'): string => median(rows.map((row) => of(row)[what] / to(row)[what])).toFixed(3);
  return `${each('length')}        ${each('cuts')}       ${each('widths')}`;
};
const plans = rows.map(({ plan }) => plan);
console.log('                       length       cuts        widths');
console.log(`ours / by hand         ${ratio(({ ours }) => ours, ({ hand }) => hand)}`);
console.log(`planned / by hand      ${ratio(({ planned }) => planned, ({ hand }) => hand)}`);
console.log(`ours / with nesting    ${ratio(({ ours }) => ours, ({ nested }) => nested)}`);
console.log(`above the bound: median ${((100 * median(plans.map((plan) => gap(plan) / plan.total)))).toFixed(3)} %, proven ${plans.filter(({ provenOptimal }) => provenOptimal).length}, within the lowest strip ${plans.filter((plan) => gap(plan) <= lowest(plan)).length} of ${QUILTS}`);
console.log(`by hand above the bound: median ${(100 * median(rows.map(({ hand, plan }) => (hand.length - plan.lowerBound) / hand.length))).toFixed(3)} %`);
const ms = (of: (row: Row) => number): string => median(rows.map(of)).toFixed(1);
console.log(`ms: at once ${ms(({ nested }) => nested.ms)}, relaxation ${ms(({ relaxed }) => relaxed)}, within a strip of the bound ${ms(({ near }) => near)}, as planned ${ms(({ planned }) => planned.ms)} (most ${Math.max(...rows.map(({ planned }) => planned.ms)).toFixed(0)}), the whole search ${ms(({ ours }) => ours.ms)} (most ${Math.max(...rows.map(({ ours }) => ours.ms)).toFixed(0)})`);
console.log(`within a strip / relaxation ${median(rows.map(({ near, relaxed }) => near / relaxed)).toFixed(1)}x, as planned / relaxation ${median(rows.map(({ planned, relaxed }) => planned.ms / relaxed)).toFixed(0)}x, the whole search / relaxation ${median(rows.map(({ ours, relaxed }) => ours.ms / relaxed)).toFixed(0)}x`);
for (const { id, width, height, items } of RECTANGLES.filter((each) => each.id >= 'C7')) {
  const { total, lowerBound } = packStrips(items.map(([w, h, count]) => ({ width: w, height: h, count, mayTurn: true })), { kind: 'length', width });
  console.log(`${id}, turned at will: ${total}, two-stage bound ${lowerBound}, without waste ${height}`);
}

function measure(seed: number): Row {
  const { demand, width } = quiltCase(randomOf(seed));
  const cloth: Cloth = { kind: 'length', width };
  const hand = byHand(demand, width);
  const nested = timed(() => firstPlan(demand, cloth));
  const relaxed = timed(() => relaxationAlone(demand, cloth));
  const near = timed(() => untilNear(demand, cloth));
  const ours = timed(() => packStrips(demand, cloth));
  const planned = timed(() => asPlanned(demand, cloth));
  const faults = [ours, planned].flatMap(({ value }) => faultsOf(value, demand, cloth));
  if (faults.length > 0) throw new Error(`quilt ${seed}: ${faults.join(', ')}`);
  return { hand, nested: measured(nested.value, nested.ms), ours: measured(ours.value, ours.ms), planned: measured(planned.value, planned.ms), relaxed: relaxed.ms, near: near.ms, plan: ours.value };
}

/** Widths are in eighths of an inch: 1/8 yd is 36 of them, and 5 % are spare. */
function asPlanned(demand: readonly Demand[], cloth: Cloth): Packing {
  const steps = searchSteps({ demand, cloth, bought: { over: 105n, under: 3600n } });
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function measured({ total, counters }: Packing, ms: number): Measured {
  return { length: total, cuts: counters.cuts, widths: counters.widths, ms };
}

function untilNear(demand: readonly Demand[], cloth: Cloth): void {
  for (const { packing } of better(demand, cloth)) if (gap(packing) <= lowest(packing)) return;
}

function relaxationAlone(demand: readonly Demand[], cloth: Cloth): void {
  const problem = problemOf(demand, cloth);
  const ceiling = demand.reduce((total, { width, height, count }) => total + count * Math.max(width, height), 0);
  const rounds = relax({ problem, wanted: problem.counts, limits: [], columns: plainColumns(problem, problem.counts), ceiling }, { spent: 0, limit: Number.MAX_SAFE_INTEGER });
  while (!rounds.next().done);
}

/** First fit, decreasing height, one piece in the height of a strip. */
function byHand(demand: readonly Demand[], width: number): Measured {
  const start = performance.now();
  const laid = demand.map((each) => layAlone(each, width)).sort((a, b) => b.down - a.down || b.across - a.across);
  const strips: { readonly height: number; left: number }[] = [];
  let cuts = 0;
  for (const { across, down, count } of laid) {
    for (let i = 0; i < count; i += 1) {
      const found = strips.find((strip) => strip.left >= across);
      const strip = found ?? { height: down, left: width };
      if (!found) strips.push(strip);
      strip.left -= across;
      cuts += 1 + (found ? 0 : 1) + (down < strip.height ? 1 : 0);
    }
  }
  return { length: strips.reduce((total, { height }) => total + height, 0), cuts, widths: new Set(strips.map(({ height }) => height)).size, ms: performance.now() - start };
}

function layAlone({ width: w, height: h, count, mayTurn }: Demand, width: number): { readonly across: number; readonly down: number; readonly count: number } {
  const ways = [{ across: w, down: h, count }, ...(mayTurn ? [{ across: h, down: w, count }] : [])].filter(({ across }) => across <= width);
  const alone = ({ across, down }: { readonly across: number; readonly down: number }): number => down * Math.ceil(count / Math.floor(width / across));
  const [first, second] = ways;
  if (!first) throw new Error('too wide');
  return second && alone(second) < alone(first) ? second : first;
}

function timed<T>(run: () => T): { readonly value: T; readonly ms: number } {
  const start = performance.now();
  const value = run();
  return { value, ms: performance.now() - start };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
}

function gap({ total, lowerBound }: Packing): number {
  return total - lowerBound;
}

function lowest({ strips }: Packing): number {
  return Math.min(...strips.map(({ height }) => height));
}
