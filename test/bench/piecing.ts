/**
 * How long it takes to find out how a block is sewn, and how that grows: `node test/bench/piecing.ts` (Node 24 or later).
 * Medians in ms of fresh layouts; the last column is the time for nine times the patches over the time for the first.
 */
import { ONE, SQRT2, TWO, add, div, fraction, mul, sub } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { midpoint } from '../../server/src/exact/point.ts';
import type { Point } from '../../server/src/exact/point.ts';
import type { Patch } from '../../server/src/geometry/layout.ts';
import { assemble } from '../../server/src/piecing/assembly.ts';
import { random } from '../geometry/partitions.ts';
import { INK, RUST, SAND, box, patchOf } from '../piecing/layouts.ts';

const RUNS = 7;
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

console.log('patches                               100      400      900   x9 patches takes');
for (const [name, make] of Object.entries(FAMILIES)) {
  const times = [100, 400, 900].map((n) => median(() => make(n)));
  const growth = (times[2] ?? 0) / (times[0] ?? 1);
  console.log(name.padEnd(34) + times.map((t) => t.toFixed(1).padStart(7)).join('  ') + `${growth.toFixed(1)}x`.padStart(12));
}

function median(make: () => readonly Patch[]): number {
  const times = Array.from({ length: RUNS }, () => {
    const patches = make();
    const start = performance.now();
    if (!assemble(patches)) throw new Error('no plan');
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[RUNS >> 1] ?? 0;
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

function octagons(n: number): Patch[] {
  const snip = div(SQRT2, add(TWO, TWO));
  return grid(n).flatMap(([i, j]) => {
    const at = (x: Exact, y: Exact): Point => ({ x: add(x, fraction(i)), y: add(y, fraction(j)) });
    const [o, a, b, w] = [fraction(0), sub(ONE, snip), snip, ONE];
    const corners = [at(b, o), at(a, o), at(w, b), at(w, a), at(a, w), at(b, w), at(o, a), at(o, b)];
    const snips = [[at(o, o), at(b, o), at(o, b)], [at(a, o), at(w, o), at(w, b)], [at(w, a), at(w, w), at(a, w)], [at(o, a), at(b, w), at(o, w)]];
    return [patchOf(corners, { fabric: INK }), ...snips.map((outline) => patchOf(outline))];
  });
}
