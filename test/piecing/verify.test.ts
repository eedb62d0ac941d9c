/** The verifier sews what the planner plans, and refuses what has been tampered with. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ZERO, fraction } from '../../server/src/exact/number.ts';
import type { Patch } from '../../server/src/geometry/layout.ts';
import { assemble } from '../../server/src/piecing/assembly.ts';
import type { SewingPlan } from '../../server/src/piecing/plan.ts';
import { blockOutline } from '../../server/src/piecing/setting.ts';
import { verifyPlan } from '../../server/src/piecing/verify.ts';
import type { SewingTask } from '../../server/src/piecing/verify.ts';
import { KINDS, random } from '../geometry/partitions.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { box, patch, patchOf, rectangle, squares } from './layouts.ts';
import { TAMPERS } from './tamper.ts';

const QUARTER = fraction(1, 4);

describe('plans that can be sewn', () => {
  test.each(Object.keys(KINDS) as (keyof typeof KINDS)[])('random patchwork: %s', (kind) => {
    for (let seed = 1; seed <= 400; seed += 1) {
      const { target, patches } = KINDS[kind](random(seed));
      const { task, plan } = sewn(patches.map((outline) => patchOf(outline)), patchOf(target).outline);
      expect([seed, verifyPlan(task, plan)]).toEqual([seed, []]);
    }
  });

  test('every block of the libraries', () => {
    const blocks = ['always', 'traditional'].flatMap((name) => snapshotOfText(readFileSync(new URL(`../../server/library/${name}.quilt`, import.meta.url), 'utf8')).blocks);
    expect(blocks.length).toBeGreaterThan(20);
    for (const { layout } of blocks) {
      const { task, plan } = sewn(layout.patches, blockOutline(layout));
      expect([layout.instance.name, verifyPlan(task, plan)]).toEqual([layout.instance.name, []]);
    }
  });

  test('curves: a quarter circle, and one that is cut by a spoke', () => {
    const fan = patch([[0, 0], [2, 0], [0, 2]], undefined, { arcs: [undefined, fraction(2), undefined] });
    const ground = patch([[2, 0], [3, 0], [3, 3], [0, 3], [0, 2]], undefined, { arcs: [undefined, undefined, undefined, undefined, fraction(-2)] });
    const whole = sewn([fan, ground], rectangle(3, 3));
    expect(verifyPlan(whole.task, whole.plan)).toEqual([]);
    expect(whole.plan.seams.map((seam) => seam.kind)).toEqual(['curved']);
    // 3-4-5 in tenths: (1.2, 1.6) lies on the circle of radius 2.
    const blades = [patch([[0, 0], [2, 0], [1.2, 1.6]], undefined, { arcs: [undefined, fraction(2), undefined] }), patch([[0, 0], [1.2, 1.6], [0, 2]], undefined, { arcs: [undefined, fraction(2), undefined] })];
    const spoked = sewn([...blades, ground], rectangle(3, 3));
    expect(verifyPlan(spoked.task, spoked.plan)).toEqual([]);
    expect(spoked.plan.seams.map((seam) => seam.kind)).toEqual(['straight', 'curved']);
  });

  test('corners flipped onto a square before it is sewn in', () => {
    const corner = (x: number, y: number, dx: number, dy: number): Patch => ({ ...patch([[x, y], [x + dx, y], [x, y + dy]]), role: 'flipped_corner' });
    const tipFirst = (flipped: Patch, x: number, y: number): Patch => {
      const at = flipped.outline.findIndex((p) => p.x.toString() === fraction(x).toString() && p.y.toString() === fraction(y).toString());
      return { ...flipped, outline: [...flipped.outline.slice(at), ...flipped.outline.slice(0, at)] };
    };
    const patches = [box(0, 0, 3, 3), box(3, 0, 3, 3), tipFirst(corner(0, 0, 1, 1), 0, 0), tipFirst(corner(6, 3, -1, -1), 6, 3)];
    const { task, plan } = sewn(patches, rectangle(6, 3));
    expect(verifyPlan(task, plan)).toEqual([]);
    expect(plan.seams.map((seam) => seam.kind)).toEqual(['flipped', 'flipped', 'straight']);
  });
});

describe('plans that have been tampered with', () => {
  test.each(Object.entries(TAMPERS))('%s', (_, tamper) => {
    let tried = 0;
    for (const kind of ['guillotine', 'triangles', 'pinwheels', 'octagons'] as const) {
      for (let seed = 1; seed <= 40; seed += 1) {
        const { target, patches } = KINDS[kind](random(seed));
        const { task, plan } = sewn(patches.map((outline) => patchOf(outline)), patchOf(target).outline);
        const other = patches.length > 1 ? tamper(plan, seed) : undefined;
        if (!other) continue;
        tried += 1;
        expect([kind, seed, verifyPlan(task, other)]).not.toEqual([kind, seed, []]);
      }
    }
    expect(tried).toBeGreaterThan(20);
  });

  test('a patch cut without its allowance', () => {
    const { task, plan } = sewn(squares('ab', 'ba'), rectangle(2, 2));
    expect(verifyPlan(task, plan)).toEqual([]);
    for (const edge of [0, 1, 2, 3]) {
      const narrow = { ...task, allowance: (index: number, side: number) => (index === 2 && side === edge ? ZERO : QUARTER) };
      expect(verifyPlan(narrow, plan)).not.toEqual([]);
    }
  });

  test('a block of another size', () => {
    const { task, plan } = sewn(squares('ab', 'ba'), rectangle(2, 2));
    expect(verifyPlan({ ...task, outline: rectangle(2, 3) }, plan)).toEqual([{ what: 'what is sewn is not the block' }]);
  });
});

function sewn(patches: readonly Patch[], outline: Patch['outline']): { readonly task: SewingTask; readonly plan: SewingPlan } {
  const plan = assemble(patches)?.plan;
  if (!plan) throw new Error('no plan');
  return { task: { patches, outline, seam: QUARTER }, plan };
}
