/** "From left to right" names parts from left to right: the middles of the parts lie in that order, in every library block and random patchwork (of parts that are rectangles). */
import { describe, expect, test } from 'vitest';
import { placed } from '../../server/src/booklet/steps-sew.ts';
import { toNumber } from '../../server/src/exact/number.ts';
import { area, boundingBox } from '../../server/src/exact/polygon.ts';
import type { Patch } from '../../server/src/geometry/layout.ts';
import { assemble } from '../../server/src/piecing/assembly.ts';
import { patchesIn, type Assembly, type Join } from '../../server/src/piecing/plan.ts';
import { KINDS, random } from '../geometry/partitions.ts';
import { EVERY_BLOCK, cellOf, laidOut } from '../library/blocks.ts';
import { gridBoxes } from '../piecing/grid-boxes.ts';
import { box, patchOf } from '../piecing/layouts.ts';

function joinsIn(node: Assembly): readonly Join[] {
  if (node.kind === 'patch') return [];
  return node.kind === 'join' ? [...node.parts.flatMap(joinsIn), node] : joinsIn(node.part);
}

/** Where a part reaches from and to, along an axis. */
function reach(part: Assembly, patches: readonly Patch[], axis: 'x' | 'y'): readonly [number, number] {
  const { left, right, top, bottom } = boundingBox(patchesIn(part).flatMap((patch) => patches[patch]?.outline ?? []));
  return axis === 'x' ? [toNumber(left), toNumber(right)] : [toNumber(top), toNumber(bottom)];
}

function isBox(part: Assembly, patches: readonly Patch[]): boolean {
  const [[left, right], [top, bottom]] = [reach(part, patches, 'x'), reach(part, patches, 'y')];
  const sum = patchesIn(part).reduce((total, patch) => total + (patches[patch]?.role === 'flipped_corner' ? 0 : toNumber(area(patches[patch]?.outline ?? []))), 0);
  return Math.abs((right - left) * (bottom - top) - sum) < 1e-9;
}

function checkOrder(patches: readonly Patch[]): number {
  const plan = assemble(patches)?.plan;
  let checked = 0;
  for (const join of plan ? joinsIn(plan.assembly) : []) {
    const { run, isBack } = placed(join);
    if ((run !== 'across' && run !== 'down') || !join.parts.every((part) => isBox(part, patches))) continue;
    const parts = isBack ? join.parts.toReversed() : join.parts;
    const places = parts.map((part) => reach(part, patches, run === 'across' ? 'x' : 'y'));
    expect(places.every(([from], i) => i === 0 || from >= (places[i - 1]?.[1] ?? 0) - 1e-9)).toBe(true);
    checked += 1;
  }
  return checked;
}

test('blocks of the libraries', () => {
  const laid = laidOut(EVERY_BLOCK.map(cellOf));
  const checked = [...laid.values()].reduce((sum, { layout }) => sum + checkOrder(layout.patches), 0);
  expect(checked).toBeGreaterThan(200);
});

describe('random patchwork', () => {
  const shapes = (seed: number): readonly Patch[] => KINDS.triangles(random(seed)).patches.map((outline) => patchOf(outline));
  const boxes = (seed: number): readonly Patch[] => gridBoxes(random(seed), { least: 4, most: 20, side: 10 }).boxes.map((each) => box(...each));
  test.each([['cells, plain and halved', shapes], ['rectangles', boxes]] as const)('%s', (_, make) => {
    let checked = 0;
    for (let seed = 1; seed <= 200; seed += 1) checked += checkOrder(make(seed));
    expect(checked).toBeGreaterThan(100);
  });
});
