/** From text to shapes and back, under turns, mirrors and arcs. */
import { describe, expect, it } from 'vitest';
import { sceneOfBlock, sceneOfQuilt } from '../../server/src/drawing/build.ts';
import { hit, outlineOf } from '../../server/src/drawing/outline.ts';
import type { Place } from '../../server/src/text/place.ts';
import { FAN, HALVES, MIRROR, RUST, SNOWBALL, block, box, compose, exact, place, placed, quilt, scale, translate, turn } from './layouts.ts';
import { area, polygons } from './read-svg.ts';

const at = (x: number, y: number): ReturnType<typeof translate> => translate(exact(x), exact(y));
const only = (...places: readonly Place[]) => (each: Place): boolean => places.some((place) => place.line === each.line && place.from === each.from);

const scene = sceneOfQuilt(
  quilt(12, 6, [
    placed(HALVES, place(10), at(0, 0)),
    placed(HALVES, place(10), compose(at(6, 0), turn(6))),
    placed(FAN, place(11), compose(at(9, 0), MIRROR)),
    placed(SNOWBALL, place(12), compose(at(9, 0), scale(exact(0.75)))),
  ], [box(RUST, place(13), 0, 3, 12, 3, { role: 'border' })]),
);

describe('outlineOf', () => {
  it('goes round every placed instance of a patch', () => {
    expect(outlineOf(scene, only(place(1)))).toBe('M0 0H3L0 3ZM6 0V3L3 0Z');
  });
  it('goes round the whole block for the cell that sets it', () => {
    expect(outlineOf(scene, only(place(10)))).toBe('M0 0H3V3H0ZM6 0V3H3V0Z');
  });
  it('keeps an arc on its side when mirrored', () => {
    const [fan = []] = polygons(outlineOf(scene, only(place(3))));
    expect(area(fan)).toBeCloseTo(-Math.PI, 3);
  });
  it('finds patches by the cell of the block they came in through', () => {
    expect(polygons(outlineOf(scene, only(place(20))))).toHaveLength(2);
  });
  it('finds what belongs to no block', () => {
    expect(outlineOf(scene, only(place(13)))).toBe('M0 3H12V6H0Z');
  });
  it('is empty for a text that makes nothing', () => {
    expect(outlineOf(scene, only(place(40)))).toBe('');
  });
});

describe('hit', () => {
  it.each([
    ['a patch and its placement', 0.5, 0.5, [1, 10]],
    ['its neighbour across the seam', 2.5, 2.5, [2, 10]],
    ['a turned block', 5.5, 0.5, [1, 10]],
    ['inside a mirrored arc', 7.7, 1.3, [3, 11]],
    ['outside a mirrored arc', 7.4, 1.6, [4, 11]],
    ['a flipped corner over its base, in nested cells', 9.1, 0.1, [6, 20, 12]],
    ['the base beside it', 10.5, 1.5, [5, 20, 12]],
    ['a border', 11, 5, [13]],
    ['nothing outside', 13, 1, []],
    ['nothing left of it', -0.1, 1, []],
  ])('%s', (_, x, y, lines) => {
    expect(hit(scene, x, y)).toEqual(lines.map((line) => place(line)));
  });
  it('names the placement where the block has a gap', () => {
    const gappy = sceneOfQuilt(quilt(3, 3, [placed(block('Gap', 3, 3, [box(RUST, place(1), 0, 0, 1, 3)]), place(2), at(0, 0))]));
    expect(hit(gappy, 2, 2)).toEqual([place(2)]);
  });
  it('works in a block by itself', () => {
    expect(hit(sceneOfBlock(HALVES), 0.2, 0.2)).toEqual([place(1)]);
  });
  it('agrees with the outline at every point of a grid', () => {
    for (let x = 0.13; x < 12; x += 0.37) {
      for (let y = 0.11; y < 6; y += 0.41) {
        const [first] = hit(scene, x, y);
        if (!first) throw new Error(`nothing at ${x} ${y}`);
        expect(polygons(outlineOf(scene, only(first))).some((polygon) => holds(polygon, x, y)), `${x} ${y}`).toBe(true);
      }
    }
  });
});

/** By winding number, unlike the code under test. */
function holds(polygon: readonly (readonly [number, number])[], x: number, y: number): boolean {
  const turns = polygon.reduce((sum, [px, py], index) => {
    const [qx, qy] = polygon[(index + 1) % polygon.length] ?? [0, 0];
    return sum + Math.atan2((px - x) * (qy - y) - (qx - x) * (py - y), (px - x) * (qx - x) + (py - y) * (qy - y));
  }, 0);
  return Math.abs(turns) > 3;
}
