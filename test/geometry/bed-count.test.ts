/** `size NAME for BED`: the count of blocks that covers the bed. */
import { expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import { faults, quiltOf } from './text.ts';

const CLOTH = 'fabric ink #22345c\nfabric sand #eadfc8\n';
const top = (setting: string, more = ''): string => `${CLOTH}block Buoy 9" {\n  ink sand\n  sand ink\n}\nquilt {\n  ${setting}\n  place { Buoy }\n${more}}\n`;

function countOf(text: string, size: string): string {
  const { setting } = quiltOf(text, size).spec;
  return setting && 'across' in setting ? `${setting.across} by ${setting.down}` : 'none';
}

// The mattresses and a drop of at least 12" at the sides and the foot: C. A. Taylor, A Time to Sew, http://atimetosewquilts.com/measurements.htm.
test.each([
  // 39" + 24" = 63" = 7 blocks of 9"; 75" + 12" = 87" needs 10.
  ['twin_bed', '7 by 10'],
  // 84" by 92".
  ['queen_bed', '10 by 11'],
  // 100" by 92".
  ['king_bed', '12 by 11'],
  // The mattress alone: 28" by 52".
  ['crib_bed', '4 by 6'],
])('blocks of 9" on a %s: %s', (bed, count) => {
  expect(countOf(`${top('straight 2 by 2')}size one for ${bed}\n`, 'one')).toBe(count);
});

test('borders take part, those of the size before those of the quilt', () => {
  const text = `${top('straight 2 by 2', '  border 6" sand\n')}size plain for twin_bed\nsize wide for twin_bed {\n  border 12" ink\n}\n`;
  expect(countOf(text, 'plain')).toBe('6 by 9');
  expect(countOf(text, 'wide')).toBe('5 by 7');
});

test('on point, with sashing, and with a tile that is turned, where counts are even', () => {
  const onPoint = `${top('on_point 2 by 2', '  edges sand\n')}size one for twin_bed\n`;
  // 9" * sqrt(2) is about 12.73": 5 are about 63.6", 7 are about 89.1".
  expect(countOf(onPoint, 'one')).toBe('5 by 7');
  // 6 * 11" - 2" = 64"; 8 * 11" - 2" = 86", 9 are 97".
  expect(countOf(`${top('straight 2 by 2', '  sashing 2" sand\n')}size one for twin_bed\n`, 'one')).toBe('6 by 9');
  const turned = top('straight 2 by 2').replace('place {', 'place turned 4 {');
  expect(countOf(`${turned}size one for twin_bed\n`, 'one')).toBe('8 by 10');
});

// Written from the table of mattresses anew: https://quiltersresources.com/measurements.html.
test.each([['twin_bed', 39, 75], ['twin_xl_bed', 39, 80], ['full_bed', 54, 75], ['queen_bed', 60, 80], ['king_bed', 76, 80], ['california_king_bed', 72, 84]])(
  'the count is the least that covers a %s: one block fewer would not',
  (bed, width, length) => {
    const found = quiltOf(`${top('straight 2 by 2', '  border 2 1/2" sand\n')}size one for ${bed}\n`, 'one');
    const [beyond, below] = [toNumber(found.width) - width - 24, toNumber(found.height) - length - 12];
    expect([beyond >= 0 && beyond < 9, below >= 0 && below < 9]).toEqual([true, true]);
  },
);

test('a written count stands, and so does the count of a setting in the size', () => {
  const text = `${top('straight 2 by 2')}size a 3 by 4 for twin_bed\nsize b for twin_bed {\n  straight 5 by 6\n}\n`;
  expect([countOf(text, 'a'), countOf(text, 'b')]).toEqual(['3 by 4', '5 by 6']);
});

test('a top that is brought to a size keeps its count where that covers', () => {
  const text = `${top('straight 3 by 4', '  border to 70" by 90" sand\n')}size one for twin_bed\n`;
  expect(countOf(text, 'one')).toBe('3 by 4');
  expect(quiltOf(text, 'one').findings).toEqual([]);
});

test('no count of very small blocks is looked for without end', () => {
  const text = `${top('straight 3 by 4').replace('Buoy 9"', 'Buoy 1/8"')}size one for twin_bed\n`;
  expect(faults(quiltOf(text, 'one'), text)).toEqual(['wrong-argument 11: one']);
});

test('the count in `quilt` does not matter, however large', () => {
  for (const count of ['1 by 1', '3 by 90000', '90000 by 3']) expect(countOf(`${top(`straight ${count}`)}size one for twin_bed\n`, 'one')).toBe('7 by 10');
});

test('rows have their own size, and a bed asks no count of them', () => {
  const text = `${CLOTH}block Buoy 9" {\n  ink\n}\nquilt {\n  rows 63"\n  row Buoy\n}\nsize one for twin_bed\n`;
  expect(quiltOf(text, 'one').findings).toEqual([]);
});
