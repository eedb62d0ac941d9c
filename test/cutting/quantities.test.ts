/** Every quantity that an output prints can be expected, by a path that text can write. */
import { describe, expect, test } from 'vitest';
import { quantityNames } from '../../server/src/cutting/quantities.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

const TEXT = `fabric ink #22345c
fabric sand #eadfc8
fabric rust #a4502e
block Nine(a = ink, b = sand) 6" {
  a b a
  b a b
  a b a
}
quilt {
  on_point 3 by 4
  place { Nine }
  between { Nine(rust) }
  edges sand
  border 2" ink corners squares rust
  border 4" rust
  backing sand
  binding cut 2 1/4" rust
  quilting in_the_ditch echo 1/4" allover
}
size queen 3 by 4 for queen_bed
`;

const FILES = { 'lib.quilt': 'fabric moss #3a7d5d\nblock Star 6" {\n  moss moss\n}\n' };

function problems(expectations: string, text = TEXT): string[] {
  return snapshotOfText(text + expectations, FILES).problems.filter(({ rule }) => rule === 'expect-failed').map(({ message }) => message);
}

describe('what holds', () => {
  test.each([
    'expect queen.blocks 18', 'expect patches 188', 'expect borders 2',
    'expect Nine.count 18', 'expect Nine.patches 9', 'expect Nine.finished 6"', 'expect Nine.unfinished 6 1/2"', 'expect Nine.sand 4',
    'expect setting.sand 14', 'expect border_1.width 2"', 'expect border_1.strips 4', 'expect border_1.cut 2 1/2"', 'expect border_1.ink 4', 'expect border_1.rust 4',
    'expect border_2.width 4"', 'expect border_2.longest at least 38"', 'expect cut border_1.rust 2 1/2" by 2 1/2"', 'expect cut Nine.ink 2 1/2" by 2 1/2"',
    'expect backing.panels 2', 'expect backing.seams 1', 'expect backing.panel at least 40"', 'expect batting.width at least 38"',
    'expect binding.width 2 1/4"', 'expect binding.strips at most 6', 'expect ink.strips at least 3', 'expect ink.lower_bound at most 40"', 'expect ink at most 2 yd',
    'expect sand.width 40"', 'expect sand.cuts at least 10', 'expect drop.sides at most 0"', 'expect drop.foot at most 0"', 'expect pieces at least 100',
    'expect seams at least 100', 'expect seams.open 0', 'expect crossings.nested at least 10', 'expect crossings.not_nested at most 100', 'expect ink.cuts.strips at least 3', 'expect ink.cuts.pieces at least 3', 'expect seams.set_in 0', 'expect queen.seams.partial 0', 'expect mattress.width 60"', 'expect backing at most 4 yd', 'expect binding at most 1/2 yd',
    'expect quilting.in_the_ditch at least 10 yd', 'expect quilting.echo at least 20 yd', 'expect quilting.allover at least 30 yd', 'expect quilting.length at least 60 yd',
  ])('%s', (expectation) => expect(problems(`${expectation}\n`)).toEqual([]));
});

test('names with dots of their own', () => {
  const text = 'import "lib.quilt" as lib\nquilt {\n  straight 2 by 2\n  place { lib.Star }\n}\n';
  expect(problems('expect lib.Star.count 4\nexpect lib.Star.lib.moss 2\nexpect cut lib.Star.lib.moss 3 1/2" by 6 1/2"\nexpect lib.moss.pieces 8\n', text)).toEqual([]);
});

test('half squares and geese are counted over the whole quilt, in blocks within blocks as well', () => {
  const text = `fabric ink #22345c
fabric sand #eadfc8
block Half 3" {
  ink/sand
}
block Goose 6" by 3" {
  patch ink 0,3 3,0 6,3
  patch sand 0,0 3,0 0,3
  patch sand 3,0 6,0 6,3
}
block Beacon 6" {
  Goose
  (Half|Half)
}
quilt {
  straight 3 by 2
  place { Beacon }
}
`;
  expect(problems('expect units.half_squares 12\nexpect units.geese 6\n', text)).toEqual([]);
  expect(problems('expect units.geese 5\n', text)).toEqual(['`units.geese` is 6, expected 5']);
});

test('unknown ones name the nearest', () => {
  expect(problems('expect border_1.wide 2"\nexpect bindin.strips 3\nexpect cut Nein.ink 2" by 2"\n')).toEqual([
    'there is no quantity `border_1.wide` in queen; did you mean `border_1.width`?',
    'there is no quantity `bindin.strips` in queen; did you mean `binding.strips`?',
    'nothing is cut for `Nein.ink` in queen; did you mean `Nine.ink`?',
  ]);
});

test('one that fails is named as it can be written', () => {
  expect(problems('expect borders 3\n')).toEqual(['`queen.borders` is 2, expected 3']);
});

test('where blocks of one name differ, what differs is no quantity of the name', () => {
  expect(problems('expect Nine.ink 5\n')[0]).toMatch(/^there is no quantity `Nine.ink`/);
});

test('every path can be written', () => {
  const { quilts } = snapshotOfText(TEXT);
  for (const quilt of quilts) for (const name of quantityNames(quilt)) expect(name).toMatch(/^[A-Za-z]\w*(\([^)]*\))?(\.[A-Za-z]\w*)*$/);
});
