import { describe, expect, test } from 'vitest';
import { SQRT2, fraction, mul } from '../../server/src/exact/number.ts';
import { layoutBlock } from '../../server/src/geometry/block.ts';
import { layoutQuilt } from '../../server/src/geometry/quilt.ts';
import { countPlaced, nestedInstances, patchAt, patchInBlock, patchesByFabric, placedPatches } from '../../server/src/geometry/walk.ts';
import { blockUse, border, fabricUse, grid, num, onPoint, quilt, RULES, straight } from './make.ts';

const Inner = grid(['x/y'], { name: 'Inner' });
const Star = grid(['a b', 'b Inner'], { name: 'Star', size: 6, blocks: { Inner } });
const Snowball = grid(['m'], { name: 'Snowball', size: 6, corners: [{ fabric: fabricUse('corner').fabric, size: fraction(2), corner: 'top_left', place: fabricUse('corner').place }] });

function at(x: number | string, y: number | string): { x: ReturnType<typeof num>; y: ReturnType<typeof num> } {
  return { x: num(x), y: num(y) };
}

describe('patchAt', () => {
  const layout = layoutQuilt(quilt(straight(2, 2), { place: ['Star ink', 'ink Star@90'], blocks: { Star }, borders: [border(2)] }), RULES);

  test('finds the patch, with its placement and the cells it came through', () => {
    const found = patchAt(layout, at(6, 6));
    expect(found?.patch.fabric.name).toBe('x');
    expect([found?.placement?.place.line.text, ...(found?.patch.within ?? []).map((place) => place.line.text)]).toEqual(['Star', 'Inner']);
    expect(patchAt(layout, at('15/2', '15/2'))?.patch.fabric.name).toBe('y');
  });

  test('in turned blocks, plain places and borders', () => {
    // Star@90: its lower right cell, Inner, comes to the lower left.
    expect(patchAt(layout, at('17/2', '27/2'))?.patch.fabric.name).toBe('y');
    expect(patchAt(layout, at(9, 3))?.patch).toMatchObject({ role: 'plain', fabric: { name: 'ink' } });
    expect(patchAt(layout, at(1, 1))?.patch.role).toBe('border');
    expect(patchAt(layout, at(17, 1))).toBeUndefined();
  });

  test('flipped corners lie on top', () => {
    const block = layoutBlock(Snowball);
    expect(patchInBlock(block, at(0, 0))?.fabric.name).toBe('corner');
    expect(patchInBlock(block, at(3, 3))?.fabric.name).toBe('m');
    expect(patchInBlock(block, at(7, 3))).toBeUndefined();
  });

  test('blocks cut at the edge end there', () => {
    const cut = layoutQuilt(quilt(onPoint(2, 2), { place: ['Star'], blocks: { Star }, edges: blockUse(Star) }), RULES);
    expect(patchAt(cut, at(1, 1))?.placement?.part).toBe('edge');
    expect(patchAt(cut, at(100, 1))).toBeUndefined();
    expect(patchAt(cut, { x: mul(fraction(3), SQRT2), y: num('1/2') })?.placement?.part).toBe('place');
  });
});

test('counts', () => {
  const layout = layoutQuilt(quilt(straight(3, 3), { place: ['Star ink'], blocks: { Star }, borders: [border(2)] }), RULES);
  expect([...patchesByFabric(layoutBlock(Star))]).toEqual([['a', 1], ['b', 2], ['x', 1], ['y', 1]]);
  expect(countPlaced(layout)).toBe(6 * 5 + 3 + 4);
  expect([...placedPatches(layout)]).toHaveLength(countPlaced(layout));
  expect([...nestedInstances(Star)].map((instance) => instance.name)).toEqual(['Star', 'Inner']);
});

test('a click in a large quilt is answered quickly', () => {
  const layout = layoutQuilt(quilt(straight(300, 300), { place: ['Star ink'], blocks: { Star: grid(['a'], { size: 2, name: 'Star' }) } }), RULES);
  patchAt(layout, at(1, 1));
  const started = performance.now();
  for (let i = 0; i < 10; i += 1) expect(patchAt(layout, at(60 * i + 1, 60 * i + 1))).toBeDefined();
  expect(performance.now() - started).toBeLessThan(500);
});
