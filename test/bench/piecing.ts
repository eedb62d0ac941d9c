/**
 * How long it takes to find out how a block is sewn and how a quilt is pressed, and how that grows: `node test/bench/piecing.ts`
 * (Node 24 or later). Medians of processor time in ms, for layouts not seen before; the last column is the growth.
 */
import { ONE, SQRT2, TWO, add, div, fraction, mul, sub, sum } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { midpoint, samePoint } from '../../server/src/exact/point.ts';
import type { Point } from '../../server/src/exact/point.ts';
import { translate } from '../../server/src/exact/transform.ts';
import type { BlockLayout, Patch, QuiltLayout } from '../../server/src/geometry/layout.ts';
import type { Fabric, QuiltSpec } from '../../server/src/model/pattern.ts';
import { assemble } from '../../server/src/piecing/assembly.ts';
import { pressingOf } from '../../server/src/piecing/pressing.ts';
import { settingOf } from '../../server/src/piecing/setting.ts';
import { sewingOf } from '../../server/src/piecing/sewing.ts';
import { unitsOf } from '../../server/src/piecing/units.ts';
import { random } from '../geometry/partitions.ts';
import { INK, RUST, SAND, block, box, number, patchOf, place } from '../piecing/layouts.ts';

const RUNS = 9;
const FABRICS = [INK, SAND, RUST];
const FAMILIES: Readonly<Record<string, (patches: number) => Patch[]>> = {
  'squares, one fabric': (n) => cells(side(n), () => 0),
  'squares, three fabrics at random': (n) => cells(side(n), random(5).below),
  'cells plain, halved, quartered': (n) => pieced(side(n / 2.5), ONE),
  'the same, on point': (n) => pieced(side(n / 2.5), SQRT2),
  'log cabin': (n) => cabin(n),
  'random straight cuts': (n) => cuts(n),
  'pinwheels in a grid': (n) => pinwheels(side(n / 5)),
  'two sizes of squares (hopscotch)': (n) => hopscotch(side(n / 2)),
  'eight-pointed stars': (n) => stars(side(n / 16)),
  'octagons and squares': (n) => octagons(side(n / 2)),
};
const SIZES = [100, 400, 900];

console.log(`assembly, by patches             ${SIZES.map((n) => `${n}`.padStart(7)).join('  ')}   x9 patches takes`);
for (const [name, make] of Object.entries(FAMILIES)) print(name, SIZES.map((n) => median(() => make(n), assemble)));

console.log(`\n12 distinct blocks, by blocks    ${[120, 480, 1080].map((n) => `${n}`.padStart(7)).join('  ')}   x9 blocks takes`);
const settings = [[10, 12], [20, 24], [30, 36]] as const;
print('pressing alone', settings.map(([across, down]) => median(() => pressTask(queen(across, down)), pressingOf)));
print('all of the sewing', settings.map(([across, down]) => median(() => queen(across, down), (layout) => sewingOf(layout, { methods: {} }))));

function print(name: string, times: readonly number[]): void {
  const growth = (times.at(-1) ?? 0) / (times[0] ?? 1);
  console.log(name.padEnd(33) + times.map((t) => t.toFixed(1).padStart(7)).join('  ') + `${growth.toFixed(1)}x`.padStart(12));
}

function median<T>(make: () => T, run: (made: T) => unknown): number {
  const times = Array.from({ length: RUNS }, () => {
    const made = make();
    const start = process.cpuUsage();
    if (run(made) === undefined) throw new Error('no plan');
    return process.cpuUsage(start).user / 1000;
  });
  return times.sort((a, b) => a - b)[RUNS >> 1] ?? 0;
}

/** 12 blocks of 25 patches in three fabrics, in turn. */
function queen(across: number, down: number): QuiltLayout {
  const blocks = Array.from({ length: 12 }, (_, i): BlockLayout => {
    const pick = random(100 + i);
    return block(`Block ${i}`, 5, 5, grid(5).flatMap(([x, y]) => (pick.below(3) > 0 ? [box(x, y, 1, 1, fabricOf(pick.below(3)))] : halves(x, y, pick.below(2)))));
  });
  const placements = Array.from({ length: across * down }, (_, i) => {
    const [column, row] = [i % across, Math.floor(i / across)];
    const chosen = blocks[(column + 5 * row) % 12] ?? block('none', 5, 5, []);
    return { block: chosen, transform: translate(number(5 * column), number(5 * row)), place: place(1), row, column, part: 'place' as const };
  });
  const [width, height] = [number(5 * across), number(5 * down)];
  const counted = blocks.map((layout) => ({ layout, name: layout.key, count: placements.filter((each) => each.block === layout).length }));
  return { spec: {} as QuiltSpec, width, height, placements, patches: [], borders: [], centre: { width, height }, blocks: counted, findings: [] };
}

function pressTask(layout: QuiltLayout): Parameters<typeof pressingOf>[0] {
  const made = layout.blocks.flatMap(({ layout: of, count }) => {
    const assembled = assemble(of.patches);
    return assembled ? [{ layout: of, count, assembled }] : [];
  });
  return { blocks: made, setting: settingOf(layout), units: unitsOf(made), methods: {} };
}

function fabricOf(i: number): Fabric {
  return FABRICS[i] ?? INK;
}

function halves(x: number, y: number, way: number): Patch[] {
  const [a, b, c, d] = box(x, y, 1, 1).outline as [Point, Point, Point, Point];
  const outlines = way === 0 ? [[a, b, c], [a, c, d]] : [[a, b, d], [b, c, d]];
  return outlines.map((outline, i) => patchOf(outline, { fabric: fabricOf(i) }));
}

function side(n: number): number {
  return Math.max(1, Math.round(Math.sqrt(n)));
}

function cells(n: number, pick: (count: number) => number): Patch[] {
  return grid(n).map(([x, y]) => box(x, y, 1, 1, FABRICS[pick(3)]));
}

function grid(n: number): (readonly [number, number])[] {
  return Array.from({ length: n * n }, (_, i) => [i % n, Math.floor(i / n)] as const);
}

function pieced(n: number, unit: Exact): Patch[] {
  const at = (i: number, j: number): Point => ({ x: mul(unit, fraction(i)), y: mul(unit, fraction(j)) });
  return grid(n).flatMap(([i, j]) => {
    const [a, b, c, d] = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
    const m = midpoint(a, c);
    const kinds = [[[a, b, c, d]], [[a, b, c], [a, c, d]], [[a, b, m], [b, c, m], [c, d, m], [d, a, m]], [[a, b, d], [b, c, m], [c, d, m]]];
    return (kinds[(i + 2 * j) % 4] ?? []).map((outline, k) => patchOf(outline, { fabric: FABRICS[k % 3] ?? INK }));
  });
}

function cabin(n: number): Patch[] {
  const patches = [box(0, 0, 1, 1)];
  let [left, top, right, bottom] = [0, 0, 1, 1];
  for (let i = 1; i < n; i += 1) {
    const turn = i % 4;
    if (turn === 1) patches.push(box(left, (top -= 1), right - left, 1, INK));
    if (turn === 2) patches.push(box((right += 1) - 1, top, 1, bottom - top, INK));
    if (turn === 3) patches.push(box(left, (bottom += 1) - 1, right - left, 1));
    if (turn === 0) patches.push(box((left -= 1), top, 1, bottom - top));
  }
  return patches;
}

function cuts(n: number): Patch[] {
  const r = random(11);
  let boxes = [[0, 0, 4096, 4096] as const];
  while (boxes.length < n) {
    const [i] = boxes.map((b, index) => [index, b[2] * b[3]] as const).sort((a, b) => b[1] - a[1])[0] ?? [0];
    const [x, y, w, h] = boxes[i] ?? [0, 0, 1, 1];
    const level = h > w;
    const at = Math.max(1, Math.floor(((level ? h : w) * (3 + r.below(5))) / 10));
    const parts = level ? ([[x, y, w, at], [x, y + at, w, h - at]] as const) : ([[x, y, at, h], [x + at, y, w - at, h]] as const);
    boxes = [...boxes.slice(0, i), ...parts, ...boxes.slice(i + 1)] as typeof boxes;
  }
  return boxes.map(([x, y, w, h], i) => box(x, y, w, h, FABRICS[i % 3]));
}

function pinwheels(n: number): Patch[] {
  return grid(n).flatMap(([i, j]) => {
    const [x, y] = [3 * i, 3 * j];
    return [box(x, y, 2, 1, INK), box(x + 2, y, 1, 2, INK), box(x + 1, y + 2, 2, 1, INK), box(x, y + 1, 1, 2, INK), box(x + 1, y + 1, 1, 1)];
  });
}

/** Squares of 2 and of 1, each small one beside four large ones; what sticks out of the block is cut off. */
function hopscotch(n: number): Patch[] {
  const size = Math.round(n * Math.sqrt(5));
  const patches: Patch[] = [];
  for (let i = -2 * n; i < 3 * n; i += 1) {
    for (let j = -2 * n; j < 3 * n; j += 1) {
      const [x, y] = [2 * i - j, i + 2 * j];
      for (const [left, top, width, of] of [[x, y, 2, SAND], [x + 2, y, 1, INK]] as const) {
        const [l, t] = [Math.max(0, left), Math.max(0, top)];
        const [r, b] = [Math.min(size, left + width), Math.min(size, top + width)];
        if (l < r && t < b) patches.push(box(l, t, r - l, b - t, of));
      }
    }
  }
  return patches;
}

function stars(n: number): Patch[] {
  const size = add(TWO, SQRT2);
  return grid(n).flatMap(([i, j]) => {
    const at = (x: Exact, y: Exact): Point => ({ x: add(x, mul(size, fraction(i))), y: add(y, mul(size, fraction(j))) });
    const [o, a, m, b, w] = [fraction(0), ONE, div(size, TWO), sub(size, ONE), size];
    const quarter = (turn: (x: Exact, y: Exact) => Point): Patch[] => [
      patchOf([turn(m, m), turn(a, a), turn(a, o), turn(m, sub(m, ONE))], { fabric: INK }),
      patchOf([turn(m, m), turn(m, sub(m, ONE)), turn(b, o), turn(b, a)], { fabric: RUST }),
      patchOf([turn(o, o), turn(a, o), turn(a, a), turn(o, a)]),
      patchOf([turn(a, o), turn(b, o), turn(m, sub(m, ONE))]),
    ];
    const turns = [at, (x: Exact, y: Exact) => at(sub(w, y), x), (x: Exact, y: Exact) => at(sub(w, x), sub(w, y)), (x: Exact, y: Exact) => at(y, sub(w, x))];
    return turns.flatMap(quarter);
  });
}

/** Regular octagons with squares on point between them, cut in half at the sides and in quarters at the corners. */
function octagons(n: number): Patch[] {
  const snip = sub(ONE, div(SQRT2, TWO));
  const at = (i: number, dx: Exact): Exact => sum([fraction(i), dx]);
  const zero = fraction(0);
  const wholes = grid(n).map(([i, j]) => {
    const [x1, x2, x3, x4] = [zero, snip, sub(ONE, snip), ONE].map((d) => at(i, d)) as [Exact, Exact, Exact, Exact];
    const [y1, y2, y3, y4] = [zero, snip, sub(ONE, snip), ONE].map((d) => at(j, d)) as [Exact, Exact, Exact, Exact];
    return patchOf([[x2, y1], [x3, y1], [x4, y2], [x4, y3], [x3, y4], [x2, y4], [x1, y3], [x1, y2]].map(([x = zero, y = zero]) => ({ x, y })), { fabric: INK });
  });
  const between = grid(n + 1).map(([i, j]) => {
    const [x, y] = [fraction(i), fraction(j)];
    const [left, right] = [i === 0 ? x : sub(x, snip), i === n ? x : add(x, snip)];
    const [top, bottom] = [j === 0 ? y : sub(y, snip), j === n ? y : add(y, snip)];
    const corners = [{ x, y: top }, { x: right, y }, { x, y: bottom }, { x: left, y }];
    return patchOf(corners.filter((p, k) => !samePoint(p, corners.at(k - 1) ?? p)));
  });
  return [...wholes, ...between];
}
