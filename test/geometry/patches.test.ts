import { describe, expect, test } from 'vitest';
import { SQRT2, SQRT3, add, div, fraction, key, mul, sub } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { layoutBlock } from '../../server/src/geometry/block.ts';
import type { Finding } from '../../server/src/model/finding.ts';
import type { BlockInstance, FlippedCorner, PatchItem } from '../../server/src/model/pattern.ts';
import { block, blockUse, fabric, fabricUse, grid, num, patch, patches, place, symmetry } from './make.ts';
import type { BlockOptions } from './make.ts';
import { basePatches, expectTiles, shapes } from './oracle.ts';

function rulesOf(instance: BlockInstance): string[] {
  return layoutBlock(instance).findings.map((finding) => `${finding.rule} ${finding.place.line.text}`);
}

/** The facts of a finding as text: areas and the like. */
function facts(finding: Finding | undefined, ...names: string[]): string[] {
  return names.map((name) => key((finding as unknown as Record<string, Exact>)[name] ?? fraction(-1)));
}

function turned(times: number, items: readonly PatchItem[]): PatchItem {
  return { kind: 'symmetry', symmetry: symmetry('turned', times), items };
}

function mirrored(times: 2 | 4, items: readonly PatchItem[]): PatchItem {
  return { kind: 'symmetry', symmetry: symmetry('mirrored', times), items };
}

const GOOSE = [patch('patch body 0,1 1,0 2,1'), patch('patch sky 0,0 1,0 0,1'), patch('patch sky 1,0 2,0 2,1')];

describe('a box', () => {
  test('is scaled to the block', () => {
    const layout = layoutBlock(patches(GOOSE, { box: [2, 1], size: [4, 2] }));
    expect(layout.findings).toEqual([]);
    expect(shapes(layout.patches)).toEqual(['body: 0;2 2;0 4;2', 'sky: 0;0 2;0 0;2', 'sky: 2;0 4;0 4;2']);
    expectTiles(layout, basePatches(layout));
  });

  test('is the block when the block has no size', () => {
    const layout = layoutBlock(patches(GOOSE, { box: [2, 1] }));
    expect([layout.width, layout.height].map(key)).toEqual(['2', '1']);
  });

  test('may be left out', () => {
    expect(rulesOf(patches([patch('patch a 0,0 3,0 3,3 0,3')], { size: 3 }))).toEqual([]);
  });

  test('patches are wound clockwise, without straight corners', () => {
    const layout = layoutBlock(patches([patch('patch a 0,0 0,2 1,2 2,2 2,0')], { box: [2, 2], size: 2 }));
    expect(shapes(layout.patches)).toEqual(['a: 0;0 2;0 2;2 0;2']);
  });
});

describe('what is wrong', () => {
  test('a gap, at the name, with its area in inches', () => {
    const layout = layoutBlock(patches(GOOSE.slice(1), { box: [2, 1], size: [4, 2], name: 'Goose' }));
    expect(layout.findings).toMatchObject([{ rule: 'gap', regions: 1, place: { line: { text: 'Goose' } } }]);
    expect(facts(layout.findings[0], 'area')).toEqual(['4']);
  });

  test('an overlap, at the later patch', () => {
    const layout = layoutBlock(patches([...GOOSE, patch('patch c 1,0 2,0 2,1')], { box: [2, 1], size: [4, 2] }));
    expect(layout.findings).toMatchObject([{ rule: 'overlap', place: { line: { text: 'patch c 1,0 2,0 2,1' } }, other: { line: { text: 'patch sky 1,0 2,0 2,1' } } }]);
    expect(facts(layout.findings[0], 'area')).toEqual(['2']);
  });

  test('a patch that leaves the block', () => {
    const layout = layoutBlock(patches([patch('patch a 0,0 2,0 2,3/2 0,3/2')], { box: [2, 1], size: [4, 2] }));
    expect(layout.findings).toMatchObject([{ rule: 'outside' }]);
    expect(facts(layout.findings[0], 'area', 'width', 'height')).toEqual(['4', '4', '2']);
  });

  test.each([
    ['patch a 0,0 1,1', 'three corners'],
    ['patch a 0,0 1,1 2,2', 'one line'],
    ['patch a 0,0 2,2 2,0 0,2', 'crosses'],
  ])('no patch: %s', (text, why) => {
    const { findings } = layoutBlock(patches([patch(text)], { box: [2, 2], size: 2 }));
    expect(findings).toMatchObject([{ rule: 'empty-patch', why: expect.stringContaining(why) as string }]);
  });

  test('copies by symmetry are reported once', () => {
    const layout = layoutBlock(patches([turned(4, [patch('patch a 0,0 3/2,0 3/2,1 0,1')])], { box: [2, 2], size: 2 }));
    expect(layout.findings.map((finding) => finding.rule)).toEqual(['overlap']);
  });

  test('no gap where a line could not be resolved', () => {
    const whole = patches(GOOSE.slice(1), { box: [2, 1], size: [4, 2] });
    const broken: BlockInstance = { ...whole, body: { ...whole.body, incomplete: true } as BlockInstance['body'] };
    expect(rulesOf(broken)).toEqual([]);
  });

  test('an empty block is a gap', () => {
    expect(rulesOf(block({ kind: 'empty' }, { size: 4, name: 'Star' }))).toEqual(['gap Star']);
  });

  test('nothing that is off by a thousandth passes', () => {
    expect(rulesOf(patches([patch('patch a 0,0 1,0 1,999/1000 0,999/1000')], { box: [1, 1], size: 1, name: 'Thin' }))).toEqual(['gap Thin']);
  });
});

describe('symmetry', () => {
  const quarter = [patch('patch a 0,0 1,0 1,1 0,1')];

  test('turned 4', () => {
    const layout = layoutBlock(patches([turned(4, quarter)], { box: [2, 2], size: 6 }));
    expect(layout.findings).toEqual([]);
    expectTiles(layout, basePatches(layout));
  });

  test('turned 2 and mirrored in an oblong box', () => {
    for (const item of [turned(2, [patch('patch a 0,0 2,0 1,1 0,1')]), mirrored(4, [patch('patch a 0,0 3/2,0 3/2,1/2 0,1/2')]), mirrored(2, [patch('patch a 0,0 3/2,0 3/2,1 0,1')])]) {
      const layout = layoutBlock(patches([item], { box: [3, 1], size: [9, 3] }));
      expect(layout.findings).toEqual([]);
      expectTiles(layout, basePatches(layout));
    }
  });

  test('turned 8: an eight-pointed star', () => {
    const side = div(fraction(1), add(fraction(2), SQRT2));
    const half = num('1/2');
    const tip = div(side, SQRT2);
    const at = (x: Exact, y: Exact) => ({ x, y, place: place() });
    const diamond: PatchItem = {
      kind: 'patch', fabric: fabric('star'), arcs: [], place: place('diamond'),
      corners: [at(half, half), at(half, sub(half, side)), at(sub(half, tip), sub(sub(half, side), tip)), at(sub(half, tip), sub(half, tip))],
    };
    const zero = fraction(0);
    const square: PatchItem = { kind: 'patch', fabric: fabric('sky'), arcs: [], place: place('square'), corners: [at(zero, zero), at(side, zero), at(side, side), at(zero, side)] };
    const triangle: PatchItem = { kind: 'patch', fabric: fabric('sky'), arcs: [], place: place('triangle'), corners: [at(side, zero), at(sub(fraction(1), side), zero), at(half, sub(half, side))] };
    const layout = layoutBlock(patches([turned(8, [diamond]), turned(4, [square, triangle])], { box: [1, 1], size: 12 }));
    expect(layout.findings).toEqual([]);
    expectTiles(layout, basePatches(layout));
  });

  test('turned 6 in a box that is scaled evenly', () => {
    const at = (x: Exact, y: Exact) => ({ x, y, place: place() });
    const [zero, one, two, root] = [fraction(0), fraction(1), fraction(2), SQRT3];
    const half = div(root, two);
    const wedge: PatchItem = { kind: 'patch', fabric: fabric('a'), arcs: [], place: place('wedge'), corners: [at(one, half), at(num('1/2'), zero), at(num('3/2'), zero)] };
    const corner: PatchItem = { kind: 'patch', fabric: fabric('b'), arcs: [], place: place('corner'), corners: [at(zero, zero), at(num('1/2'), zero), at(zero, half)] };
    const layout = layoutBlock(patches([turned(6, [wedge]), mirrored(4, [corner])], { box: [2, root], size: [4, mul(two, root)] }));
    expect(layout.findings).toEqual([]);
    expectTiles(layout, basePatches(layout));
    expect(rulesOf(patches([turned(6, [wedge]), mirrored(4, [corner])], { box: [2, root], size: [4, 4] }))).toContain('wrong-argument turned');
  });

  test('what cannot be repeated', () => {
    expect(rulesOf(patches([turned(5, quarter)], { box: [2, 2], size: 6, name: 'B' }))[0]).toBe('wrong-argument turned');
    expect(rulesOf(patches([turned(4, quarter)], { box: [2, 2], size: [6, 3], name: 'B' }))[0]).toBe('wrong-argument turned');
  });

  test('a grain line goes with its patch', () => {
    const upright = { ...patch('patch a 0,0 1,0 1,1 0,1'), grain: fraction(30) } as PatchItem;
    const grains = (item: PatchItem): string[] => layoutBlock(patches([item], { box: [2, 2], size: 2 })).patches.map(({ grain }) => (grain ? key(grain) : ''));
    expect(grains({ ...upright, grain: fraction(400) } as PatchItem)).toEqual(['40']);
    expect(grains({ ...upright, grain: fraction(-30) } as PatchItem)).toEqual(['150']);
    expect(grains(turned(4, [upright]))).toEqual(['30', '120', '30', '120']);
    expect(grains(mirrored(4, [upright]))).toEqual(['30', '150', '30', '150']);
  });
});

describe('a block set in', () => {
  const Square = grid(['a b'], { name: 'Square', size: [4, 4] });
  const set = (x: number, width: number, height: number): PatchItem => ({
    kind: 'set_in', use: blockUse(Square), x: fraction(x), y: fraction(0), width: fraction(width), height: fraction(height), place: place('set in'),
  });

  test('is fitted, and covers its place', () => {
    const layout = layoutBlock(patches([set(0, 1, 1), patch('patch c 1,0 2,0 2,1 1,1')], { box: [2, 1], size: [6, 3] }));
    expect(layout.findings).toEqual([]);
    expect(shapes(layout.patches)).toEqual(['a: 0;0 3/2;0 3/2;3 0;3', 'b: 3/2;0 3;0 3;3 3/2;3', 'c: 3;0 6;0 6;3 3;3']);
    expectTiles(layout, basePatches(layout));
  });

  test('of another proportion, or over another patch', () => {
    expect(rulesOf(patches([set(0, 2, 1)], { box: [2, 1], size: [6, 3] }))).toEqual(['does-not-fit Square']);
    const over = layoutBlock(patches([patch('patch c 0,0 2,0 2,1 0,1'), set(0, 1, 1)], { box: [2, 1], size: [6, 3] }));
    expect(over.findings).toMatchObject([{ rule: 'overlap', place: { line: { text: 'Square' } } }]);
  });
});

describe('built from the centre', () => {
  const strip = (side: 'top' | 'right' | 'bottom' | 'left', name: string, width = 1) => ({ width: fraction(width), side, fabric: fabric(name), place: place(side) });
  const cabin = (options: BlockOptions, rounds = 2): BlockInstance =>
    block({
      kind: 'centre',
      centre: { use: fabricUse('rust'), width: fraction(2), height: fraction(2), place: place('centre') },
      strips: Array.from({ length: rounds }, () => [strip('top', 'light'), strip('right', 'light'), strip('bottom', 'dark'), strip('left', 'dark')]).flat(),
    }, options);

  test('a log cabin', () => {
    const layout = layoutBlock(cabin({ size: 6 }));
    expect(layout.findings).toEqual([]);
    expect(layout.patches.map((each) => shapes([each])[0])).toEqual([
      'rust: 2;2 4;2 4;4 2;4', 'light: 2;1 4;1 4;2 2;2', 'light: 4;1 5;1 5;4 4;4', 'dark: 2;4 5;4 5;5 2;5', 'dark: 1;1 2;1 2;5 1;5',
      'light: 1;0 5;0 5;1 1;1', 'light: 5;0 6;0 6;5 5;5', 'dark: 1;5 6;5 6;6 1;6', 'dark: 0;0 1;0 1;6 0;6',
    ]);
    expectTiles(layout, basePatches(layout));
  });

  test('must come to the block', () => {
    const { findings } = layoutBlock(cabin({ size: [7, 6] }));
    expect(findings).toMatchObject([{ rule: 'grid-sum', what: 'the centre and its strips across' }]);
    expect(facts(findings[0], 'found', 'expected')).toEqual(['6', '7']);
    expect([layoutBlock(cabin({})).width].map(key)).toEqual(['6']);
  });
});

describe('flipped corners', () => {
  const corner = (where: FlippedCorner['corner'], size: number | string): FlippedCorner => ({ corner: where, size: num(size), fabric: fabric('corner'), place: place(where) });
  const snowball = (corners: readonly FlippedCorner[], size: number | readonly [number, number] = 6): BlockInstance => grid(['m'], { size, corners });

  test('lie over the base, which stays whole', () => {
    const layout = layoutBlock(snowball([corner('top_left', 2), corner('top_right', 2), corner('bottom_left', 2), corner('bottom_right', 2)]));
    expect(layout.findings).toEqual([]);
    expect(layout.patches.map((each) => each.role)).toEqual(['patch', 'flipped_corner', 'flipped_corner', 'flipped_corner', 'flipped_corner']);
    expect(shapes(layout.patches)).toEqual(['corner: 0;0 2;0 0;2', 'corner: 0;4 2;6 0;6', 'corner: 4;0 6;0 6;2', 'corner: 4;6 6;4 6;6', 'm: 0;0 6;0 6;6 0;6']);
    expectTiles(layout, basePatches(layout));
  });

  test('may touch, and not cross', () => {
    expect(rulesOf(snowball([corner('top_left', 3), corner('top_right', 3)]))).toEqual([]);
    expect(rulesOf(snowball([corner('top_left', 6), corner('bottom_right', 6)]))).toEqual([]);
    const { findings } = layoutBlock(snowball([corner('top_left', 3), corner('top_right', 4)]));
    expect(findings).toMatchObject([{ rule: 'overlap', place: { line: { text: 'top_right' } }, other: { line: { text: 'top_left' } } }]);
    expect(facts(findings[0], 'area')).toEqual(['1/4']);
    expect(rulesOf(snowball([corner('bottom_left', 3), corner('top_left', 4)]))).toEqual(['overlap top_left']);
  });

  test('stay in the block', () => {
    const { findings } = layoutBlock(snowball([corner('top_left', 5)], [8, 4]));
    expect(findings).toMatchObject([{ rule: 'outside' }]);
    expect(facts(findings[0], 'area')).toEqual(['1/2']);
  });
});
