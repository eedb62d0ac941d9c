/**
 * Does it tile, against clippers on the same patches in the same run: `npm run bench -- tiling`.
 * Medians in ms after warming up; the ratios are what to compare, the milliseconds depend on the machine. Clippers are given doubles, and
 * the time to make them counts, as does ours to read exact numbers.
 */
import { HALF, ONE, SQRT2, add, fraction, mul } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { midpoint } from '../../server/src/exact/point.ts';
import type { Point } from '../../server/src/exact/point.ts';
import { checkTiling } from '../../server/src/geometry/tiling.ts';
import { askPolygonClipping, clipperDifference } from '../geometry/tiling-oracle.ts';

interface Case {
  readonly name: string;
  readonly target: Point[];
  readonly patches: Point[][];
}

const RUNS = 9;

const grids: [string, number, Exact][] = [
  ['1,000, whole inches', 18, ONE],
  ['1,000, eighths', 18, fraction(17, 8)],
  ['10,000, whole inches', 58, ONE],
  ['10,000, eighths', 58, fraction(17, 8)],
  ['10,000, thousandths', 58, fraction(1237, 1000)],
  ['10,000, on point', 58, add(ONE, mul(SQRT2, HALF))],
];
const cases = grids.flatMap(([name, side, unit]) => {
  const whole = { name: `${name}, whole`, ...grid(side, unit) };
  return [whole, { ...oneOff(whole), name: `${name}, one off` }];
});
const block = grid(12, ONE);
const quarters = { ...block, patches: block.patches.slice(0, 400) };
cases.push({ ...oneOff(quarters), name: '400 in a block, one off, rest missing' });

for (const { target, patches } of cases.slice(0, 4)) for (let i = 0; i < 20; i += 1) checkTiling(target, patches);

console.log('patches                              ours  clipper2  ratio  polygon-clipping  ratio');
for (const { name, target, patches } of cases) {
  const ours = median(() => checkTiling(target, patches));
  const wasm = median(() => clipperDifference(target, patches));
  const slow = patches.length > 2000 ? once(() => askPolygonClipping(target, patches)) : median(() => askPolygonClipping(target, patches));
  const columns = [ours.toFixed(2).padStart(7), wasm.toFixed(2).padStart(9), `${(wasm / ours).toFixed(1)}x`.padStart(6), slow.toFixed(0).padStart(17), `${(slow / ours).toFixed(0)}x`.padStart(6)];
  console.log(name.padEnd(34) + columns.join(' '));
}

/** Cells plain, halved and quartered in turn, three patches a cell on average. */
function grid(side: number, unit: Exact): Omit<Case, 'name'> {
  const at = (i: number, j: number): Point => ({ x: mul(unit, fraction(i)), y: mul(unit, fraction(j)) });
  const patches: Point[][] = [];
  for (let i = 0; i < side; i += 1) {
    for (let j = 0; j < side; j += 1) {
      const [a, b, c, d] = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
      const m = midpoint(a, c);
      patches.push(...[[[a, b, c, d]], [[a, b, c], [a, c, d]], [[a, b, m], [b, c, m], [c, d, m], [d, a, m]], [[a, b, d], [b, c, m], [c, d, m]]][(i + 2 * j) % 4] ?? []);
    }
  }
  return { target: [at(0, 0), at(side, 0), at(side, side), at(0, side)], patches };
}

function oneOff({ target, patches }: Omit<Case, 'name'>): Omit<Case, 'name'> {
  const which = patches.length >> 1;
  return { target, patches: patches.map((patch, i) => (i === which ? patch.map((p) => ({ x: add(p.x, fraction(1, 1000)), y: p.y })) : patch)) };
}

function median(run: () => unknown): number {
  const times = Array.from({ length: RUNS }, () => once(run)).sort((a, b) => a - b);
  return times[RUNS >> 1] ?? 0;
}

function once(run: () => unknown): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}
