import { describe, expect, test } from 'vitest';
import { HALF, SQRT2, fraction, key, mul, neg, toNumber } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { signedArea } from '../../server/src/exact/polygon.ts';
import { straightened } from '../../server/src/geometry/bent.ts';
import { layoutBlock } from '../../server/src/geometry/block.ts';
import type { BlockInstance, PatchItem } from '../../server/src/model/pattern.ts';
import { blockUse, grid, num, patch, patches, symmetry } from './make.ts';

/** A patch with arcs by the index of the corner they follow. */
function bent(text: string, arcs: Readonly<Record<number, Exact>>): PatchItem {
  return patch(text, Array.from({ length: 8 }, (_, i) => arcs[i]));
}

const R = num('5/7');
const FAN = bent('patch fan 0,0 5/7,0 0,5/7', { 1: R });
const GROUND = bent('patch ground 5/7,0 1,0 1,1 0,1 0,5/7', { 4: neg(R) });
const Path_ = patches([FAN, GROUND], { box: [1, 1], name: 'Path' });

function rulesOf(instance: BlockInstance): string[] {
  return layoutBlock(instance).findings.map((finding) => `${finding.rule} ${finding.place.line.text}`);
}

describe('a quarter circle', () => {
  test('fits its neighbour, at any size', () => {
    for (const size of [undefined, 7, '15/2', mul(SQRT2, fraction(5))]) {
      const block = patches([FAN, GROUND], { box: [1, 1], name: 'Path', ...(size ? { size } : {}) });
      expect(layoutBlock(block).findings).toEqual([]);
    }
    expect(layoutBlock(patches([FAN, GROUND], { box: [1, 1], size: 7 })).patches.map(({ arcs }) => arcs?.map((arc) => (arc ? key(arc) : '')))).toEqual([['', '5', ''], ['', '', '', '', '-5']]);
  });

  test('has the area of a quarter circle', () => {
    const [fan] = straightened(layoutBlock(patches([FAN, GROUND], { box: [1, 1], size: 7 })).patches);
    expect(toNumber(signedArea(fan ?? []))).toBeCloseTo((Math.PI * 25) / 4, 2);
  });

  test('turned, mirrored and nested it bends as before', () => {
    const outer = grid(['Path Path@90', 'Path@mirror (Path)@flip'], { size: 14, blocks: { Path: Path_ } });
    expect(layoutBlock(outer).findings).toEqual([]);
    const set: PatchItem = { kind: 'set_in', use: blockUse(Path_, 'mirror'), x: fraction(0), y: fraction(0), width: fraction(1), height: fraction(1), place: blockUse(Path_).place };
    const turned = patches([{ kind: 'symmetry', symmetry: symmetry('turned', 4), items: [set] }], { box: [2, 2], size: 14 });
    const layout = layoutBlock(turned);
    expect(layout.findings).toEqual([]);
    expect(layout.patches.flatMap(({ arcs }) => (arcs ?? []).filter((arc) => arc !== undefined)).map(key)).toEqual(['5', '-5', '5', '-5', '5', '-5', '5', '-5']);
  });
});

describe('what is wrong', () => {
  test('a neighbour that is straight, or bends another way', () => {
    expect(rulesOf(patches([FAN, patch('patch ground 5/7,0 1,0 1,1 0,1 0,5/7')], { box: [1, 1] }))).toEqual(['overlap patch ground 5/7,0 1,0 1,1 0,1 0,5/7']);
    const flatter = bent('patch ground 5/7,0 1,0 1,1 0,1 0,5/7', { 4: neg(num('6/7')) });
    expect(rulesOf(patches([FAN, flatter], { box: [1, 1] }))).toEqual(['overlap patch ground 5/7,0 1,0 1,1 0,1 0,5/7']);
    const rounder = bent('patch ground 5/7,0 1,0 1,1 0,1 0,5/7', { 4: neg(num('4/7')) });
    expect(rulesOf(patches([FAN, rounder], { box: [1, 1], name: 'Hole' }))).toEqual(['gap Hole']);
  });

  test('a radius that does not reach', () => {
    expect(rulesOf(patches([bent('patch a 0,0 1,0 1,1 0,1', { 0: num('1/3') })], { box: [1, 1] }))).toEqual(['wrong-argument patch a 0,0 1,0 1,1 0,1']);
  });

  test('an edge of the block that bends', () => {
    expect(rulesOf(patches([bent('patch a 0,0 1,0 1,1 0,1', { 0: fraction(1) })], { box: [1, 1] }))).toEqual(['outside patch a 0,0 1,0 1,1 0,1']);
    expect(rulesOf(patches([bent('patch a 0,0 1,0 1,1 0,1', { 0: fraction(-1) })], { box: [1, 1], name: 'Dent' }))).toEqual(['gap Dent']);
  });

  test('an arc that reaches across a corner', () => {
    const items = [bent('patch a 0,0 4,0 4,1 0,1', { 2: fraction(2) }), bent('patch b 0,1 4,1 4,2 0,2', { 0: fraction(-2) })];
    expect(rulesOf(patches(items, { box: [4, 2] })).map((rule) => rule.split(' ')[0])).toContain('outside');
  });

  test('units that are not as wide as they are high', () => {
    expect(rulesOf(patches([FAN, GROUND], { box: [1, 1], size: [7, 14] }))).toContain('wrong-argument patch fan 0,0 5/7,0 0,5/7');
  });

  test('a seam across a curve', () => {
    expect(rulesOf(grid(['Path\\x'], { size: 7, blocks: { Path: Path_ } }))).toContain('wrong-argument Path');
    // From the other corner it stays clear of nothing either, but a patch that is kept whole keeps its curve.
    expect(rulesOf(grid(['Path/x'], { size: 7, blocks: { Path: Path_ } }))).toContain('wrong-argument Path');
  });
});

describe('shared curves', () => {
  test('half circles, and arcs that touch', () => {
    const half = mul(HALF, fraction(2));
    const items = [
      bent('patch a 0,0 2,0 2,1 0,1', { 2: half }),
      bent('patch b 0,1 2,1 2,3 0,3', { 0: neg(half), 2: neg(half) }),
      bent('patch c 0,3 2,3 2,4 0,4', { 0: half }),
    ];
    expect(rulesOf(patches(items, { box: [2, 4] }))).toEqual([expect.stringMatching(/^empty-patch patch b/)]);
    const apart = items.map((item, i) => (i === 0 ? item : i === 1 ? bent('patch b 0,1 2,1 2,4 0,4', { 0: neg(half), 2: neg(half) }) : bent('patch c 0,4 2,4 2,5 0,5', { 0: half })));
    expect(rulesOf(patches(apart, { box: [2, 5] }))).toEqual([]);
  });

  test('a corner on the curve parts it for the neighbours', () => {
    // The quarter circle of radius 5 about 0,0 from 5,0 to 0,5 passes through 3,4.
    const five = fraction(5);
    const items = [
      bent('patch fan 0,0 5,0 0,5', { 1: five }),
      bent('patch right 5,0 7,0 7,7 3,4', { 3: neg(five) }),
      bent('patch left 3,4 7,7 0,7 0,5', { 3: neg(five) }),
    ];
    expect(rulesOf(patches(items, { box: [7, 7] }))).toEqual([]);
  });

  test('on a slant', () => {
    const melon = { ...bent('patch melon 0,0 0,1 1,1', {}), arcs: [undefined, undefined, fraction(1)] } as PatchItem;
    const rest = { ...bent('patch rest 0,0 1,0 1,1', {}), arcs: [undefined, undefined, fraction(-1)] } as PatchItem;
    expect(rulesOf(patches([melon, rest], { box: [1, 1], size: 9 }))).toEqual([]);
  });
});
