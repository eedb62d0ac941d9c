/** How long the stitched lines of `quilting` are. The expected lengths are counted by hand on lines of a grid. */
import { expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

const CLOTH = 'fabric ink #22345c\nfabric sand #eadfc8\n';

function stitched(text: string): number[] {
  const [quilt] = snapshotOfText(CLOTH + text).quilts;
  if (!quilt) throw new Error('no quilt');
  return quilt.plan.quilting.map(({ length }) => toNumber(length));
}

const nine = (quilting: string, more = ''): string => `block Nine 9" {\n  ink sand ink\n  sand ink sand\n  ink sand ink\n}\nquilt {\n  straight 2 by 3\n  place { Nine }\n${more}  quilting ${quilting}\n}\n`;

test('in the ditch: every seam of squares once', () => {
  // 6 by 9 squares of 3": 5 upright lines of 27" and 8 level ones of 18".
  expect(stitched(nine('in_the_ditch'))).toEqual([5 * 27 + 8 * 18]);
  // A border of 2", its sides first: 2 seams of 27", 2 of 22".
  expect(stitched(nine('in_the_ditch', '  border 2" ink\n'))).toEqual([5 * 27 + 8 * 18 + 2 * 27 + 2 * 22]);
});

test('in the ditch: diagonals, arcs, flipped corners, what the edge cuts off', () => {
  const one = (block: string): number[] => stitched(`${block}\nquilt {\n  straight 1 by 1\n  place { A }\n  quilting in_the_ditch\n}\n`);
  expect(one('block A 4" {\n  ink/sand\n}')[0]).toBeCloseTo(4 * Math.SQRT2, 3);
  expect(one('block A 7" {\n  drunkards_path(ink, sand)\n}')[0]).toBeCloseTo((5 * Math.PI) / 2, 3);
  expect(one('block A 6" {\n  ink\n  corner sand 2" top_left bottom_right\n}')[0]).toBeCloseTo(4 * Math.SQRT2, 3);
  const onPoint = (edges: string): number[] => stitched(`block A 6" {\n  ink\n}\nquilt {\n  on_point 2 by 2\n  place { A }\n  edges sand${edges}\n  quilting in_the_ditch\n}\n`);
  // Five squares on point: 20 sides, of which four are shared by two squares and none is at the edge.
  expect(onPoint('')[0]).toBeCloseTo(16 * 6, 2);
  // Without the four corners their four seams are the edge.
  expect(onPoint(' corners none')[0]).toBeCloseTo(12 * 6, 2);
});

test('echo: a line inside every patch', () => {
  // 54 squares of 3", a line 1/4" inside each: 2 1/2" squares.
  expect(stitched(nine('echo 1/4"'))).toEqual([54 * 10]);
  // No room for it.
  expect(stitched(nine('echo 2"'))).toEqual([0]);
  // Strips narrower than twice the distance have none, however long they are.
  expect(stitched('block A 1" by 20" {\n  ink\n}\nquilt {\n  straight 1 by 1\n  place { A }\n  quilting echo 3/4"\n}\n')).toEqual([0]);
  // A triangle with legs of 4": its incircle has the radius 4 - 2√2, and the line inside shrinks in proportion.
  const legs = 2 * (8 + 4 * Math.SQRT2);
  expect(stitched('block A 4" {\n  ink/sand\n}\nquilt {\n  straight 1 by 1\n  place { A }\n  quilting echo 1/2"\n}\n')[0]).toBeCloseTo(legs * (1 - 0.5 / (4 - 2 * Math.SQRT2)), 2);
});

test('echo around a reflex corner and along an arc', () => {
  const one = (block: string): number | undefined => stitched(`${block}\nquilt {\n  straight 1 by 1\n  place { A }\n  quilting echo 1/2"\n}\n`)[0];
  // An L of 6" with a square of 2" in its notch: inside the L 24 - 4 (five corners take 1" each, the reflex one gives 1"), inside the square 4.
  expect(one('block A 6" {\n  box 6 by 6\n  patch ink 0,0 6,0 6,4 4,4 4,6 0,6\n  patch sand 4,4 6,4 6,6 4,6\n}')).toBeCloseTo(20 + 4, 3);
  // A quarter circle of radius 4" bulging out: the arc of the line has the radius 3 1/2" (its corners are those of straight edges).
  const fan = one('block A 4" {\n  box 4 by 4\n  patch ink 0,0 4,0 arc 4 0,4\n  patch sand 4,0 4,4 0,4 arc -4\n}');
  expect(fan).toBeGreaterThan(2 * 3 + (3.5 * Math.PI) / 2 - 2);
  expect(fan).toBeLessThan(2 * 4 + (4 * Math.PI) / 2 + 8);
});

test('all over: an inch for each square inch; words have no length', () => {
  expect(stitched(nine('allover'))).toEqual([18 * 27]);
  expect(stitched(nine('"Spirals"'))).toEqual([]);
  expect(stitched(nine('"Spirals" in_the_ditch'))).toHaveLength(1);
});
