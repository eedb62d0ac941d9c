/** What messages say where the examples of the rules do not go: blocks without a size, quilts of rows. */
import { describe, expect, test } from 'vitest';
import { snapshotOfText } from '../harness/snapshot.ts';

function messages(text: string, rule?: string): string[] {
  return snapshotOfText(`fabric ink #22345c\nfabric sand #eadfc8\n${text}`).problems.filter((problem) => rule === undefined || problem.rule === rule).map((problem) => problem.message);
}

const goose = (patches: string, size = ''): string => `block Goose ${size}{\n  box 2 by 1\n${patches}}\nblock Pair 8" by 4" {\n  Goose\n}\nquilt {\n  straight 2 by 2\n  place { Pair }\n}\n`;
const BODY = '  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n';

describe('a block without a size is measured in the units of its box', () => {
  test('gap', () => expect(messages(goose(BODY), 'gap')).toEqual(['no patch covers 1/2 of a square of its box, at 1,0']));
  test('a gap of several squares', () => expect(messages(goose('  patch sand 0,0 1,0 0,1\n'), 'gap')).toEqual(['no patch covers 1 1/2 squares of its box, at 0,1']));
  test('overlap', () => expect(messages(goose(`${BODY}  patch sand 1,0 2,0 2,1 1/2,1\n`), 'overlap')).toEqual(['this patch lies over another by 3/4 of a square of its box, at 1 1/8,1/2']));
  test('outside', () => expect(messages(goose(`${BODY}  patch sand 1,0 3,0 2,1\n`), 'outside')).toEqual(['this patch leaves the block, 2 by 1, by 1/2 of a square of its box, at 2 1/4,1/2']));
  test('with a size, in inches', () => expect(messages(goose(BODY, '4" by 2" '), 'gap')).toEqual(['no patch covers 2 sq in of the block, at 2" from the left and 0" from the top']));
});

test('a row that does not fill the width needs a spacer at each end, not a border', () => {
  const text = 'block Buoy 5" {\n  ink sand\n}\nquilt {\n  rows 22"\n  row Buoy\n}\n';
  expect(messages(text, 'border-does-not-fit')).toEqual(['a run of these cells of 5" does not divide 22"; a spacer of 1" at each end fills it']);
});

describe('numbers that nobody would read', () => {
  const arcs = (patches: string): string[] => messages(`block Arc 4" {\n  box 2 by 2\n${patches}}\nquilt {\n  straight 1 by 1\n  place { Arc }\n  border 1" sand\n}\n`);

  test('places and areas along arcs are rounded', () => {
    const told = arcs('  patch ink 0,0 arc 3 2,0 2,2 0,2\n');
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^this patch leaves the block, 4" by 4", by about \S+(?: \S+)? sq in, at 2" from the left and (?:about )?-?\d*\.?\d+" from the top$/);
    const free = messages('quilt {\n  straight 1 by 1\n  place { Path }\n}\nblock Path 4" {\n  drunkards_path(ink, sand, 2)\n}\n', 'outside');
    for (const message of free) expect(message).not.toMatch(/\d{7}/);
  });

  test('a slip of a ten-thousandth is still said exactly', () => {
    expect(arcs('  patch ink 0,0 2,0 2,2 0,1.9999\n')).toEqual(['no patch covers 1/2500 sq in of the block, at 0" from the left and 3 4999/5000" from the top']);
  });
});
