/** Which way to press: against every way there is, on small cases, with crossings found by looking at the drawing. */
import { describe, expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';
import type { Patch } from '../../server/src/geometry/layout.ts';
import { assemble } from '../../server/src/piecing/assembly.ts';
import type { Assembled } from '../../server/src/piecing/assembly.ts';
import { solvePressing } from '../../server/src/piecing/press-solve.ts';
import type { PressProblem } from '../../server/src/piecing/press-solve.ts';
import { pressingOf } from '../../server/src/piecing/pressing.ts';
import type { Pressing } from '../../server/src/piecing/pressing.ts';
import { sewingOf } from '../../server/src/piecing/sewing.ts';
import type { Stretch } from '../../server/src/piecing/plan.ts';
import { unitsOf } from '../../server/src/piecing/units.ts';
import { KINDS, random } from '../geometry/partitions.ts';
import type { Random } from '../geometry/partitions.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { INK, RUST, SAND, block, patchOf, squares } from './layouts.ts';

describe('the solver', () => {
  test('matches every choice of sides on small problems', () => {
    for (let seed = 1; seed <= 400; seed += 1) {
      const problem = randomProblem(random(seed));
      const { sides, proven } = solvePressing(problem);
      expect(proven).toBe(true);
      expect([seed, costOf(problem, sides)]).toEqual([seed, bestCost(problem)]);
      problem.settled.forEach((side, i) => side !== undefined && expect(sides[i]).toBe(side));
    }
  });

  test('a ring of seams that cannot all lie crosswise costs one crossing, the lightest', () => {
    for (const length of [3, 51, 401]) {
      const pairs = Array.from({ length }, (_, a) => ({ a, b: (a + 1) % length, differ: true, weight: a === 2 ? 1 : 5 }));
      const none = { settled: pairs.map(() => undefined), wish: pairs.map(() => 0), pairs };
      expect(costOf(none, solvePressing(none).sides).conflicts).toBe(1);
    }
  });

  test('a tangle too wide to solve exactly is said to be so, and still answered', () => {
    const seams = Array.from({ length: 40 }, (_, i) => i);
    const pairs = seams.flatMap((a) => seams.filter((b) => b > a).map((b) => ({ a, b, differ: (a + b) % 3 === 0, weight: 1 })));
    const tangle = { settled: seams.map(() => undefined), wish: seams.map(() => 1), pairs };
    const { sides, proven } = solvePressing(tangle);
    expect(proven).toBe(false);
    expect(costOf(tangle, sides).conflicts).toBeLessThan(pairs.length / 2);
  });
});

describe('a block by itself', () => {
  test.each(['guillotine', 'triangles', 'triangleRows'] as const)('nests as much as any way of pressing: %s', (kind) => {
    let compared = 0;
    for (let seed = 1; seed <= 300; seed += 1) {
      const { patches } = KINDS[kind](random(seed));
      const assembled = assembledFrom(patches.map((outline, i) => patchOf(outline, { fabric: [INK, SAND, RUST][i % 3] ?? INK })));
      const stretches = assembled.plan.seams.flatMap((seam) => seam.stretches);
      if (stretches.length > 13 || assembled.plan.partial > 0) continue;
      const layout = block('Any', 1, 1, []);
      const pressing = pressingOf({ blocks: [{ layout, count: 3, assembled }], setting: undefined, units: unitsOf([]), methods: {} });
      const crossings = crossingsSeen(stretches);
      const open = new Set(openIn(pressing));
      const free = crossings.filter(({ a, b }) => !open.has(a) && !open.has(b));
      expect([seed, pressing.nested + pressing.conflicts]).toEqual([seed, 3 * free.length]);
      expect([seed, pressing.conflicts]).toEqual([seed, 3 * fewestConflicts(free, stretches.length)]);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(10);
  });

  test('a four-patch of two fabrics nests and goes to the dark by itself', () => {
    const pressing = pressBlock(squares('ab', 'ba'));
    expect([pressing.nested, pressing.conflicts]).toEqual([1, 0]);
    // The upper row's seam towards its left square, the lower row's towards its right one: both dark.
    expect(pressing.blocks[0]?.sides.map((sides) => sides.join())).toEqual(['right', 'left', expect.any(String)]);
  });
});

describe('a quilt', () => {
  const fabrics = 'fabric ink #22345c\nfabric rust #a4502e\nfabric sand #eadfc8\n';
  const nine = (press: string): string => `block Nine(a = ink, b = sand) 6" {\n${press}  a b a\n  b a b\n  a b a\n}\n`;
  const quilt = (cells: string): string => `quilt {\n  straight 4 by 4\n  place {\n${cells}\n  }\n}\n`;

  test('alternate blocks are pressed so that they butt', () => {
    const { seams } = sewn(fabrics + nine('') + quilt('Nine Nine(rust)\nNine(rust) Nine'));
    // Four in each block, two between each pair of neighbours, one where four blocks meet.
    expect(seams.pressing).toEqual({ nested: 16 * 4 + 24 * 2 + 9, open: 0, conflicts: 0 });
  });

  test('the same block beside itself, pressed one way, cannot; and it is said where', () => {
    const { seams, pressing } = sewn(fabrics + nine('') + quilt('Nine'));
    expect(seams.pressing).toEqual({ nested: 16 * 4 + 9, open: 0, conflicts: 24 * 2 });
    expect(pressing.named.map((conflict) => conflict.count)).toEqual([12, 12, 12, 12]);
    expect(pressing.named.every(({ between: [a, b] }) => a === b && a?.instance.name === 'Nine')).toBe(true);
  });

  test('turned every second time, it can', () => {
    expect(sewn(fabrics + nine('') + quilt('Nine Nine@90\nNine@90 Nine')).seams.pressing.conflicts).toBe(0);
  });

  test('a block pressed open leaves the seams of the setting to nest', () => {
    const { seams } = sewn(fabrics + nine('  press open\n') + quilt('Nine'));
    expect(seams.pressing).toEqual({ nested: 9, open: 16 * 8, conflicts: 0 });
  });

  test('to the dark, whatever does not nest', () => {
    const text = (way: string): string => fabrics + nine(`  press ${way}\n`) + quilt('Nine Nine(rust)\nNine(rust) Nine');
    const dark = sewn(text('to_dark'));
    expect(dark.seams.pressing.open).toBe(0);
    expect(dark.seams.pressing.nested + dark.seams.pressing.conflicts).toBe(121);
    // Within a row every seam goes towards the dark square.
    const sides = dark.pressing.blocks[0]?.sides.flat() ?? [];
    expect(sides.slice(0, 6)).toEqual(darkSides(dark));
  });

  test('eight seam ends in a point: what is sewn across last is pressed open', () => {
    const { pressing, findings } = sewn(`${fabrics}block Pin 6" {\n  turned 4 {\n    ink\\sand\n  }\n}\nquilt {\n  straight 2 by 2\n  place { Pin }\n}\n`);
    expect(pressing.blocks[0]?.sides.at(-1)).toEqual(['open']);
    expect(pressing.blocks[0]?.sides.flat().filter((side) => side === 'open').length).toBe(1);
    // Four halves meet where the blocks do: the seam between the rows as well.
    expect(pressing.setting?.sides.at(-1)).toEqual(['open']);
    expect(findings.map((finding) => finding.rule)).toEqual(['bulky-point']);
  });
});

function sewn(text: string): ReturnType<typeof sewingOf> {
  const snapshot = snapshotOfText(text);
  const layout = snapshot.quilts[0]?.layout;
  if (!layout) throw new Error(snapshot.problems.map((problem) => problem.message).join('\n'));
  return sewingOf(layout, snapshot.pattern.rules);
}

/** The sides towards the darker neighbours of the first six seams, from the fabrics alone. */
function darkSides({ blocks }: ReturnType<typeof sewingOf>): string[] {
  const [first] = blocks;
  const plan = first?.assembled?.plan;
  const isDark = (patch: number | undefined): boolean => first?.layout.patches[patch ?? -1]?.fabric.name !== 'sand';
  return (plan?.seams ?? []).slice(0, 6).map(({ stretches: [stretch] }) => (isDark(stretch?.left[0]) ? 'left' : 'right'));
}

function assembledFrom(patches: readonly Patch[]): Assembled {
  const assembled = assemble(patches);
  if (!assembled) throw new Error('no plan');
  return assembled;
}

function pressBlock(patches: readonly Patch[]): Pressing {
  return pressingOf({ blocks: [{ layout: block('Any', 2, 2, patches), count: 1, assembled: assembledFrom(patches) }], setting: undefined, units: unitsOf([]), methods: {} });
}

function openIn({ blocks }: Pressing): number[] {
  return (blocks[0]?.sides.flat() ?? []).flatMap((side, i) => (side === 'open' ? [i] : []));
}

interface Seen {
  readonly a: number;
  readonly b: number;
  /** Whether pressing both to the right makes them nest. */
  readonly bothRight: boolean;
}

/** A line that runs past a point where two others end, one from each side. Nested: their allowances point opposite ways along it. */
function crossingsSeen(stretches: readonly Stretch[]): Seen[] {
  const at = (p: Point): readonly [number, number] => [toNumber(p.x), toNumber(p.y)];
  const seen: Seen[] = [];
  const done = new Set<string>();
  for (const { from, to, via } of stretches) {
    const [ax, ay] = at(from);
    const [bx, by] = at(to);
    for (const p of via) {
      const [x, y] = at(p);
      const name = `${x.toFixed(6)} ${y.toFixed(6)}`;
      const ends = stretches.flatMap((other, index) => {
        const [one, two] = [at(other.from), at(other.to)];
        const [here, there] = near(one, [x, y]) ? [one, two] : near(two, [x, y]) ? [two, one] : [undefined, undefined];
        if (!here || !there) return [];
        const side = Math.sign((bx - ax) * (there[1] - y) - (by - ay) * (there[0] - x));
        // To the right of a walk from one end to the other, y down: the direction turned a quarter clockwise.
        const along = (bx - ax) * -(two[1] - one[1]) + (by - ay) * (two[0] - one[0]);
        return [{ index, side, along: Math.sign(Math.abs(along) < 1e-9 ? 0 : along) }];
      });
      const [first, second] = ends;
      if (done.has(name) || ends.length !== 2 || !first || !second || first.side === second.side) continue;
      done.add(name);
      seen.push({ a: first.index, b: second.index, bothRight: first.along !== second.along });
    }
  }
  return seen;
}

function near([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): boolean {
  return Math.abs(ax - bx) < 1e-9 && Math.abs(ay - by) < 1e-9;
}

function fewestConflicts(crossings: readonly Seen[], seams: number): number {
  let best = crossings.length;
  for (let sides = 0; sides < 1 << seams; sides += 1) {
    const conflicts = crossings.filter(({ a, b, bothRight }) => (((sides >> a) ^ (sides >> b)) & 1) === (bothRight ? 1 : 0)).length;
    if (conflicts < best) best = conflicts;
  }
  return best;
}

function randomProblem(r: Random): PressProblem {
  const seams = Array.from({ length: 2 + r.below(9) }, (_, i) => i);
  const pairs = Array.from({ length: r.below(2 * seams.length) }, () => ({ a: r.pick(seams), b: r.pick(seams), differ: r.below(2) === 0, weight: 1 + r.below(4) }));
  return { settled: seams.map(() => ([undefined, undefined, undefined, 0, 1] as const)[r.below(5)]), wish: seams.map(() => r.below(9) - 4), pairs };
}

interface Cost {
  readonly conflicts: number;
  readonly against: number;
}

function costOf({ wish, pairs }: PressProblem, sides: readonly number[]): Cost {
  return {
    conflicts: pairs.reduce((sum, { a, b, differ, weight }) => sum + ((sides[a] !== sides[b]) === differ ? 0 : weight), 0),
    against: wish.reduce((sum, each, i) => sum + (sides[i] === 1 ? Math.max(0, -each) : Math.max(0, each)), 0),
  };
}

function bestCost(problem: PressProblem): Cost {
  let best: Cost | undefined;
  for (let all = 0; all < 1 << problem.wish.length; all += 1) {
    const sides = problem.wish.map((_, i) => (all >> i) & 1);
    if (problem.settled.some((side, i) => side !== undefined && side !== sides[i])) continue;
    const cost = costOf(problem, sides);
    if (!best || cost.conflicts < best.conflicts || (cost.conflicts === best.conflicts && cost.against < best.against)) best = cost;
  }
  return best ?? { conflicts: 0, against: 0 };
}
