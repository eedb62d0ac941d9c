/** Points of bulk where blocks meet in the setting: told once, at the block that touches the first of them. */
import { expect, test } from 'vitest';
import { snapshotOfText } from '../harness/snapshot.ts';

const START = 'fabric ink #22345c\nfabric sand #eadfc8\nblock Half 4" {\n  ink/sand\n}\n';

function bulky(quilt: string): string[] {
  return snapshotOfText(START + quilt).problems.filter(({ rule }) => rule === 'bulky-point').map(({ place, message }) => `${place.line.text.slice(place.from, place.to)}: ${message}`);
}

// By hand: the four diagonals and the four halves of the two seams between the blocks are eight ends at the middle of a pinwheel.
test('the middle of a pinwheel of four blocks', () => {
  expect(bulky('quilt {\n  straight 2 by 2\n  place {\n    Half@90 Half\n    Half Half@90\n  }\n}\n')).toEqual([
    'Half@90: 8 seams end at one point where blocks meet, 4" from the left and 4" from the top of the quilt: press the seam between the rows open',
  ]);
});

// Of 5 by 5 inner corners of 6 by 6 blocks those where both counts are odd or both even have four diagonals: 9 and 4.
test('in a tile that repeats, once with how many more', () => {
  const [one, ...others] = bulky('quilt {\n  straight 6 by 6\n  place {\n    Half@90 Half\n    Half Half@90\n  }\n}\n');
  expect(one).toMatch(/^Half@90: 8 seams end .*, and so at 12 more points: press/);
  expect(others).toEqual([]);
});

test('two diagonals that meet are not many', () => {
  expect(bulky('quilt {\n  straight 2 by 2\n  place { Half }\n}\n')).toEqual([]);
});
