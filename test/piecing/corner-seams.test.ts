/** Seams of squares that are sewn on corners lie to the corner (common practice, no source: the square is folded over its seam). */
import { describe, expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import type { BlockLayout, Patch } from '../../server/src/geometry/layout.ts';
import type { Methods } from '../../server/src/model/pattern.ts';
import type { Stretch } from '../../server/src/piecing/plan.ts';
import { sewingOf, type QuiltSewing } from '../../server/src/piecing/sewing.ts';
import { random, type Random } from '../geometry/partitions.ts';
import { drawn } from './drawn.ts';
import { leastConflicts } from './highs.ts';
import { INK, RUST, SAND, block, box, patch, place } from './layouts.ts';
import { quiltOf } from './random-quilts.ts';

const GEESE: Methods = { geese: { way: 'corners', place: place(0) } };

/** The cloth of corners, nowhere else. */
const CORNER = SAND;

const FLIPPED = patch([[0, 0], [1, 0], [0, 1]], CORNER, { role: 'flipped_corner' });

describe('the allowance lies to the corner, though the body is darker', () => {
  test.each([
    ['a goose', [...goose(0, 0), box(0, 1, 2, 1, INK)], GEESE, 2],
    ['a snowball', snowball(0, 0), {}, 4],
    ['a flipped corner', [box(0, 0, 2, 2, INK), FLIPPED], {}, 1],
    ['a goose, where all is to go to the dark', [...goose(0, 0), box(0, 1, 2, 1, INK)], { ...GEESE, press: { way: 'to_dark', place: place(0) } }, 2],
  ] as [string, Patch[], Methods, number][])('%s', (_, patches, methods, count) => {
    const towards = slanted(sewn(block('Any', 2, 2, patches), methods)).map(({ cloth }) => cloth);
    expect(towards).toEqual(Array.from({ length: count }, () => 'sand'));
  });

  test('not where geese are made of triangles', () => {
    const towards = slanted(sewn(block('Any', 2, 2, [...goose(0, 0), box(0, 1, 2, 1, INK)]), {})).map(({ cloth }) => cloth);
    expect(towards).toEqual(['ink', 'ink']);
  });

  test('and open where that is said', () => {
    const open = sewn(block('Any', 2, 2, snowball(0, 0)), { press: { way: 'open', place: place(0) } });
    expect(open.pressing.blocks[0]?.sides.flat()).toEqual(['open', 'open', 'open', 'open']);
  });
});

test('as few crossings fail to nest as can with such seams as they are', () => {
  let [dearer, conflicts] = [0, 0];
  for (let seed = 1; seed <= 25; seed += 1) {
    const r = random(seed);
    const blocks = Array.from({ length: 2 + r.below(3) }, (_, i) => randomBlock(r, i));
    const layout = quiltOf(r, blocks, { across: 3, down: 3, cells: 4 });
    const sewing = sewingOf(layout, { methods: GEESE });
    const { seams, meetings } = drawn(layout, sewing);
    const pairs = meetings.filter(({ a, b }) => seams[a]?.open === false && seams[b]?.open === false).map(({ a, b, bothRight }) => ({ a, b, differ: !bothRight, weight: 1 }));
    const settled = settledIn(sewing, seams.length);
    const least = leastConflicts({ settled, pairs });
    expect([seed, sewing.pressing.proven, sewing.pressing.conflicts]).toEqual([seed, true, least]);
    expect(slanted(sewing).filter(({ cloth }) => cloth !== 'sand' && cloth !== 'open')).toEqual([]);
    conflicts += least;
    if (least > leastConflicts({ settled: settled.map(() => undefined), pairs })) dearer += 1;
  }
  expect(conflicts).toBeGreaterThan(20);
  expect(dearer).toBeGreaterThan(5);
});

function sewn(layout: BlockLayout, methods: Methods): QuiltSewing {
  return sewingOf(quiltOf(random(1), [layout], { across: 1, down: 1, cells: 2 }), { methods });
}

interface Towards {
  readonly stretch: Stretch;
  /** Where the seam goes; or `open`. */
  readonly cloth: string;
}

/** Every stretch that is neither upright nor level: here those of corners alone. */
function slanted({ blocks, pressing }: QuiltSewing): Towards[] {
  return blocks.flatMap(({ layout, assembled }, i) =>
    (assembled?.plan.seams ?? []).flatMap(({ number, stretches }) =>
      stretches.filter(isSlanted).map((stretch) => {
        const side = pressing.blocks[i]?.sides[number]?.[stretches.indexOf(stretch)] ?? 'open';
        const [patch = -1] = side === 'left' ? stretch.left : stretch.right;
        return { stretch, cloth: side === 'open' ? 'open' : (layout.patches[patch]?.fabric.name ?? '') };
      })));
}

/** By the cloth of corners alone, in the order of `drawn`: left is 1. */
function settledIn({ blocks }: QuiltSewing, count: number): (0 | 1 | undefined)[] {
  const sides = blocks.flatMap(({ layout, assembled }) =>
    (assembled?.plan.seams ?? []).flatMap(({ stretches }) =>
      stretches.map((stretch): 0 | 1 | undefined => (isSlanted(stretch) ? (stretch.left.every((patch) => layout.patches[patch]?.fabric === CORNER) ? 1 : 0) : undefined))));
  return Array.from({ length: count }, (_, i) => sides[i]);
}

function isSlanted({ from, to }: Stretch): boolean {
  return toNumber(from.x) !== toNumber(to.x) && toNumber(from.y) !== toNumber(to.y);
}

type Cell = (x: number, y: number) => Patch[];

/** Cells of two by two. */
const CELLS: readonly Cell[] = [
  (x, y) => [box(x, y, 1, 1, INK), box(x + 1, y, 1, 1, RUST), box(x, y + 1, 1, 1, RUST), box(x + 1, y + 1, 1, 1, INK)],
  (x, y) => [box(x, y, 2, 2, RUST)],
  (x, y) => [...goose(x, y), ...goose(x, y + 1)],
  snowball,
];

function goose(x: number, y: number): Patch[] {
  return [
    patch([[x, y + 1], [x + 1, y], [x + 2, y + 1]], INK),
    patch([[x, y], [x + 1, y], [x, y + 1]], CORNER),
    patch([[x + 1, y], [x + 2, y], [x + 2, y + 1]], CORNER),
  ];
}

function snowball(x: number, y: number): Patch[] {
  const [a, b] = [0.5, 1.5];
  const at = (corners: readonly (readonly [number, number])[], of: typeof INK): Patch => patch(corners.map(([u, v]) => [x + u, y + v] as const), of);
  return [
    at([[a, 0], [b, 0], [2, a], [2, b], [b, 2], [a, 2], [0, b], [0, a]], INK),
    at([[0, 0], [a, 0], [0, a]], CORNER), at([[b, 0], [2, 0], [2, a]], CORNER), at([[2, b], [2, 2], [b, 2]], CORNER), at([[0, b], [a, 2], [0, 2]], CORNER),
  ];
}

function randomBlock(r: Random, i: number): BlockLayout {
  const base = [[0, 0], [2, 0], [0, 2], [2, 2]].flatMap(([x = 0, y = 0]) => r.pick(CELLS)(x, y));
  const patches = r.below(2) === 0 && base[0]?.outline.length === 4 ? [...base, FLIPPED] : base;
  return block(`Block ${i}`, 4, 4, patches);
}
