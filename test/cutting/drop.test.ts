/** The drop over a mattress, against published examples, and what is said of it. */
import { expect, test } from 'vitest';
import { cuttingMarkdown } from '../../server/src/booklet/cutting-list.ts';
import { patternJson } from '../../server/src/booklet/pattern-json.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { inches } from './layouts.ts';

function made(width: string, height: string, bed: string): { drop: string | undefined; line: string | undefined; problems: string[]; json: unknown } {
  const text = `fabric ink #22345c\nfabric sand #eadfc8\nblock Top ${width} by ${height} {\n  ink sand\n}\nquilt {\n  straight 1 by 1\n  place { Top }\n}\nsize bed 1 by 1 for ${bed}\n`;
  const snapshot = snapshotOfText(text);
  const [quilt] = snapshot.quilts;
  if (!quilt) throw new Error('no quilt');
  const { drop } = quilt.plan;
  return {
    drop: drop && `${inches(drop.sides)} ${inches(drop.foot)}`,
    line: cuttingMarkdown(snapshot, quilt).split('\n').find((each) => each.startsWith('- On a')),
    problems: snapshot.problems.filter(({ rule }) => rule === 'uneven-drop').map(({ message }) => message),
    json: (JSON.parse(patternJson(snapshot)) as { sizes: { drop?: unknown }[] }).sizes[0]?.drop,
  };
}

// https://ciaspalette.com: a twin mattress of 39 x 75 with a drop of 12 in at both sides and the foot: 63 x 87. With 15 in more at the top for pillows it is a bedspread.
test.each([
  ['63"', '87"', 'twin_bed', '12 12', 0],
  ['63"', '102"', 'twin_bed', '12 27', 0],
  ['63"', '107"', 'twin_bed', '12 32', 1],
  ['90"', '99"', 'queen_bed', '15 19', 0],
  ['90"', '90"', 'queen_bed', '15 10', 1],
  ['100"', '90"', 'king_bed', '12 10', 0],
  ['72"', '84"', 'california_king_bed', '0 0', 0],
])('%s by %s on a %s hangs %s', (width, height, bed, expected, told) => {
  const { drop, problems } = made(width, height, bed);
  expect(drop).toBe(expected);
  expect(problems).toHaveLength(told);
});

test('a quilt that is smaller than the mattress', () => {
  const { line, problems, json } = made('50"', '70"', 'full_bed');
  expect(line).toBe('- On a full bed (mattress 54" by 75") 2" of the mattress shows at each side, 5" of the mattress shows at the foot, its head at the head of the mattress.');
  expect(problems).toEqual(['the quilt is 4" narrower and 5" shorter than the mattress of a full bed']);
  expect(json).toMatchObject({ bed: 'full_bed', sides: { in: -2 }, foot: { in: -5 } });
});

test('what is said', () => {
  expect(made('90"', '90"', 'queen_bed')).toMatchObject({
    line: '- On a queen bed (mattress 60" by 80") 15" hangs at each side, 10" hangs at the foot, its head at the head of the mattress.',
    problems: ['over the mattress of a queen bed 15" hangs at each side and 10" at the foot'],
  });
});
