/** Cloth cut as the cut list says, sewn as the plan says, becomes the block: libraries, samples, random patchwork, every method. */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { cuttingInBlock } from '../../server/src/cutting/methods.ts';
import { cuttingOf } from '../../server/src/cutting/shape.ts';
import { fraction, toNumber } from '../../server/src/exact/number.ts';
import { boundingBox } from '../../server/src/exact/polygon.ts';
import type { BlockLayout } from '../../server/src/geometry/layout.ts';
import { assemble } from '../../server/src/piecing/assembly.ts';
import type { SewingPlan } from '../../server/src/piecing/plan.ts';
import { blockOutline } from '../../server/src/piecing/setting.ts';
import { sewingOfBlock } from '../../server/src/piecing/sewing.ts';
import type { Snapshot } from '../../server/src/snapshot.ts';
import { KINDS, random } from '../geometry/partitions.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { EVERY_BLOCK, cellOf, laidOut } from '../library/blocks.ts';
import { box, patchOf, rectangle, squares } from './layouts.ts';
import { sewCloth, type ClothTask } from './sew-cloth.ts';

const QUARTER = fraction(1, 4);

function planOf(layout: BlockLayout): SewingPlan {
  const plan = sewingOfBlock(layout).assembled?.plan;
  if (!plan) throw new Error(`${layout.instance.name} has no plan`);
  return plan;
}

function faultsOf(layout: BlockLayout, snapshot: Snapshot, trim = 0): readonly string[] {
  const { rules } = snapshot.pattern;
  const quilt = snapshot.quilts.find((each) => each.layout.blocks.some((block) => block.layout === layout))?.layout;
  const isOver = (patch: number): boolean => cuttingInBlock(layout, patch, rules, quilt)?.method.endsWith('at a time') === true;
  return sewCloth({ patches: layout.patches, outline: blockOutline(layout), seam: rules.seam, cutting: (patch) => cuttingInBlock(layout, patch, rules, quilt), trim: (patch) => (isOver(patch) ? trim : 0) }, planOf(layout), random(1));
}

describe('blocks of the libraries', () => {
  const laid = laidOut(EVERY_BLOCK.map(cellOf));
  test.each(EVERY_BLOCK.map((definition) => [definition.name, cellOf(definition)] as const))('%s', (_, cell) => {
    const view = laid.get(cell);
    if (!view) throw new Error('not laid out');
    const rules = { seam: QUARTER, roundUp: fraction(1, 8) };
    expect(sewCloth({ patches: view.layout.patches, outline: blockOutline(view.layout), seam: QUARTER, cutting: (patch) => cuttingInBlock(view.layout, patch, rules) }, planOf(view.layout), random(2))).toEqual([]);
  });
});

test('every sample, in every size', () => {
  const read = (name: string): string => readFileSync(new URL(`../../samples/${name}`, import.meta.url), 'utf8');
  const files = Object.fromEntries(readdirSync(new URL('../../samples/blocks/', import.meta.url)).filter((name) => name.endsWith('.quilt')).map((name) => [`blocks/${name}`, read(`blocks/${name}`)]));
  let sewn = 0;
  for (const name of readdirSync(new URL('../../samples/', import.meta.url)).filter((each) => each.endsWith('.quilt'))) {
    const snapshot = snapshotOfText(read(name), files);
    for (const { layout, sewing } of snapshot.quilts) {
      for (const block of layout.blocks) {
        if (block.layout.patches.length > 1) expect([block.name, faultsOf(block.layout, snapshot)]).toEqual([block.name, []]);
        sewn += 1;
      }
      const { setting } = sewing;
      if (!setting.assembled) throw new Error('no plan of the setting');
      const patches = setting.parts.map(({ outline }) => ({ ...box(0, 0, 1, 1), outline }));
      expect([name, sewCloth({ patches, outline: blockOutline(layout), seam: snapshot.pattern.rules.seam, cutting: () => undefined }, setting.assembled.plan, random(3))]).toEqual([name, []]);
    }
  }
  expect(sewn).toBeGreaterThan(10);
});

describe('random patchwork', () => {
  test.each([['guillotine', 1500], ['pinwheels', 1500], ['triangles', 300], ['octagons', 100], ['triangleRows', 300]] as const)('%s, %i times', (kind, times) => {
    for (let seed = 1; seed <= times; seed += 1) {
      const { target, patches: outlines } = KINDS[kind](random(seed));
      const patches = outlines.map((outline) => patchOf(outline));
      const plan = assemble(patches)?.plan;
      if (!plan) throw new Error(`no plan of ${kind} ${seed}`);
      const cutting: ClothTask['cutting'] = (patch) => patches[patch] && cuttingOf(patches[patch], { seam: QUARTER, roundUp: fraction(1, 8) });
      expect([seed, sewCloth({ patches, outline: target, seam: QUARTER, cutting }, plan, random(seed))]).toEqual([seed, []]);
    }
  });
});

describe('every method', () => {
  const half = 'block Any 6" {\n  ink/sand sand\\ink\n  ink\\sand sand/ink\n}\n';
  const goose = 'block Any 6" {\n  grid 1 by 1 1\n  goose(ink, sand)\n  goose(sand, ink)\n}\n';
  const nine = 'block Any 9" {\n  ink sand ink\n  sand ink sand\n  ink sand ink\n}\n';
  const ball = 'block Any 6" {\n  snowball(ink, sand)\n}\n';
  test.each([
    [half, 'half_squares singles', 0], [half, 'half_squares two_at_a_time', 0], [half, 'half_squares eight_at_a_time', 0], [half, 'half_squares eight_at_a_time trim', 1 / 8], [half, 'half_squares two_at_a_time trim 1/4"', 1 / 4],
    [goose, 'geese singles', 0], [goose, 'geese four_at_a_time', 0], [nine, 'strips on', 0], [nine, 'strips off', 0],
  ] as const)('%s%s', (block, method, trim) => {
    for (const seam of ['1/4"', '3/8"', '0.75 cm']) {
      const snapshot = snapshotOfText(`pattern "Any" {\n  seam ${seam}\n  method ${method}\n}\nfabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\n${block}quilt {\n  straight 3 by 2\n  place { Any }\n}\n`);
      const [any] = snapshot.quilts[0]?.layout.blocks ?? [];
      if (!any || snapshot.hasErrors) throw new Error(snapshot.problems.map(({ message }) => message).join('\n'));
      expect([seam, faultsOf(any.layout, snapshot, trim)]).toEqual([seam, []]);
    }
  });

  // The body is cut whole, and its corners are covered: language.md, section 7.
  test.each([[goose, 'geese corners'], [ball, 'strips off']] as const)('%s%s: the body as large as the unit, the squares as the corners', (block, method) => {
    const snapshot = snapshotOfText(`pattern "Any" {\n  method ${method}\n}\nfabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\n${block}quilt {\n  straight 3 by 2\n  place { Any }\n}\n`);
    const [quilt] = snapshot.quilts;
    const [any] = quilt?.layout.blocks ?? [];
    if (!quilt || !any) throw new Error('no quilt');
    const sizes = any.layout.patches.map((patch, i) => {
      const cut = cuttingInBlock(any.layout, i, snapshot.pattern.rules, quilt.layout);
      const { left, right, top, bottom } = boundingBox(patch.outline);
      const reach = [toNumber(right) - toNumber(left), toNumber(bottom) - toNumber(top)].sort((a, b) => a - b);
      const found = [toNumber(cut?.exactCut.width ?? fraction(0)), toNumber(cut?.exactCut.height ?? fraction(0))].sort((a, b) => a - b);
      return found.map((size, k) => size - (reach[k] ?? 0));
    });
    expect(sizes.flat().every((more) => Math.abs(more - 1 / 2) < 1e-9)).toBe(true);
  });
});

describe('what is wrong is found', () => {
  const four = squares('ab', 'ba');
  const plan = assemble(four)?.plan;
  const task: ClothTask = { patches: four, outline: rectangle(2, 2), seam: QUARTER, cutting: (patch) => four[patch] && cuttingOf(four[patch], { seam: QUARTER, roundUp: fraction(1, 8) }) };

  test('cloth that is cut too small or too large, seams out of order, a seam left out', () => {
    if (!plan || plan.assembly.kind !== 'join') throw new Error('no plan');
    expect(sewCloth(task, plan, random(1))).toEqual([]);
    for (const off of [fraction(1, 8), fraction(-1, 8)]) {
      const wrong = { ...task, cutting: (patch: number) => (patch === 1 ? cuttingOf(four[1] ?? box(0, 0, 1, 1), { seam: fraction(toNumber(off) > 0 ? 3 : 1, 8), roundUp: fraction(1, 8) }) : task.cutting(patch)) };
      expect(sewCloth(wrong, plan, random(1))).not.toEqual([]);
    }
    const [first, ...rest] = plan.assembly.parts;
    const reordered = { ...plan, assembly: { ...plan.assembly, parts: [...rest, first].filter((part) => part !== undefined) } };
    expect(sewCloth(task, reordered, random(1))).not.toEqual([]);
    expect(sewCloth(task, { ...plan, assembly: plan.assembly.parts[0] ?? plan.assembly }, random(1))).not.toEqual([]);
  });
});
