/** The blocks that are always there: their parameters and what they are made of. */
import { expect, test } from 'vitest';
import { key } from '../../server/src/exact/number.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import always from '../../server/library/always.quilt';
import { sampleInstance } from '../../server/src/model/instantiate.ts';
import { instanceOf, linesOf, patternOf, rowsText } from './host.ts';

const CLOTH = 'fabric a1 #100000\nfabric a2 #200000\nfabric a3 #300000\nfabric a4 #400000\n';

test('the library is clean, and every block of it can be looked at', () => {
  expect(parse(documentOf('always.quilt', always)).problems).toEqual([]);
  const pattern = patternOf('');
  const blocks = [...pattern.blocks.values()];
  expect(blocks.map(({ name, origin, parameters }) => `${origin} ${name}(${parameters.map((each) => each.name + (each.hasDefault ? '=' : '')).join(', ')})`)).toEqual([
    'library four_patch(a, b)',
    'library nine_patch(a, b)',
    'library rail(a, b, c)',
    'library half_square(a, b)',
    'library hourglass(top, right, bottom=, left=)',
    'library half_and_quarters(left, top, lower)',
    'library goose(body, sky)',
    'library square_in_square(middle, corners)',
    'library snowball(middle, corners, c=)',
    'library half_rectangle(a, b)',
    'library drunkards_path(fan, ground, r=)',
  ]);
  expect(blocks.map((definition) => sampleInstance(pattern, definition)?.findings.length)).toEqual(blocks.map(() => 0));
});

test.each([
  ['four_patch(a1, a2)', ['a1 a2', 'a2 a1']],
  ['nine_patch(a1, a2)', ['a1 a2 a1', 'a2 a1 a2', 'a1 a2 a1']],
  ['rail(a1, a2, a3)', ['(a1|a2|a3)']],
  ['half_square(a1, a2)', ['(a1/a2)']],
  ['hourglass(a1, a2)', ['((a2\\a1)/(a1\\a2))']],
  ['hourglass(a1, a2, a3, a4)', ['((a4\\a1)/(a3\\a2))']],
  ['half_and_quarters(a1, a2, a3)', ['((a1\\a2)/a3)']],
])('%s', (use, rows) => {
  const pattern = patternOf(`${CLOTH}block Buoy 6" {\n ${use}\n}`);
  expect(linesOf(pattern)).toEqual([]);
  expect(instanceOf(pattern, 'Buoy').nested?.map(rowsText)).toEqual([rows]);
});

test.each([
  ['goose(a1, a2)', '2 1', 3],
  ['square_in_square(a1, a2)', '2 2', 5],
  ['snowball(a1, a2)', '1 1', 5],
  ['snowball(a1, a2, 1/4)', '1 1', 5],
  ['half_rectangle(a1, a2)', '2 1', 2],
  ['drunkards_path(a1, a2)', '1 1', 2],
  ['drunkards_path(a1, a2, r = 3/4)', '1 1', 2],
])('%s', (use, box, count) => {
  const pattern = patternOf(`${CLOTH}block Buoy 6" {\n ${use}\n}`);
  expect(linesOf(pattern)).toEqual([]);
  const body = instanceOf(pattern, 'Buoy').nested?.[0]?.body;
  expect(body?.kind === 'patches' && body.box && [`${key(body.box.width)} ${key(body.box.height)}`, body.items.length]).toEqual([box, count]);
});

test('a declared name wins, and the hidden block gets a name of its own where it is used', () => {
  const files = { 'lib.quilt': 'fabric x #000000\nblock Flock 4" {\n goose(x, x)\n}' };
  const pattern = patternOf(`${CLOTH}import "lib.quilt"\nblock goose(a = a1) 4" {\n a\n}\nblock Buoy 4" {\n goose Flock\n}`, files);
  const [goose, flock] = instanceOf(pattern, 'Buoy').nested ?? [];
  expect([goose?.definition.origin, flock?.nested?.[0]?.name]).toEqual(['file', 'always.goose(x, x)']);
  const hidden = patternOf(`let goose = 2\n${CLOTH}block Buoy 4" {\n goose(a1, a2)\n}`);
  expect(linesOf(hidden)).toEqual(['[goose] wrong-argument: `goose` is a number and takes no arguments']);
});
