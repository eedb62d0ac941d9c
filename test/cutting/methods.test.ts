/** Cutting follows `method`: sizes against printed tables and the formulae of language.md, counts in whole sets, and what is over. */
import { describe, expect, test } from 'vitest';
import { cuttingMarkdown } from '../../server/src/booklet/cutting-list.ts';
import { stepsMarkdown } from '../../server/src/booklet/steps.ts';
import type { Piece } from '../../server/src/cutting/plan.ts';
import { geeseWork, halfSquareWork } from '../../server/src/cutting/work.ts';
import { toNumber } from '../../server/src/exact/number.ts';
import { made, type Made } from './from-text.ts';
import { n } from './layouts.ts';
import { GEESE, HALF_SQUARE } from './triangle-tables.ts';

const FABRICS = 'fabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\n';

/** A quilt of one block, set in a row. */
function quiltOf(block: string, method: string, across: number, fabrics = FABRICS): Made {
  return made(`pattern "Methods" {\n  ${method}\n}\n${fabrics}block Buoy ${block}\nquilt {\n  straight ${across} by 1\n  place { Buoy }\n}\n`);
}

function cutOf(piece: Piece | undefined): readonly [number, number] {
  if (!piece) throw new Error('no such piece');
  return [toNumber(piece.cut.width), toNumber(piece.cut.height)];
}

function pieceOf({ plan }: Made, fabric: string, shape?: Piece['shape']): Piece {
  const found = plan.pieces.find((piece) => piece.fabric.name === fabric && (shape === undefined || piece.shape === shape));
  if (!found) throw new Error(`no ${shape ?? 'piece'} of ${fabric}`);
  return found;
}

const number = (text: string): number => toNumber(n(text));
const halfSquare = (size: string): string => `${size}" {\n  ink/sand\n}`;
const goose = (height: string, width: string, sky = 'sand', other = sky): string =>
  `${width}" by ${height}" {\n  box 2 by 1\n  patch ink 0,1 1,0 2,1\n  patch ${sky} 0,0 1,0 0,1\n  patch ${other} 1,0 2,0 2,1\n}`;

describe('half squares', () => {
  test.each(HALF_SQUARE)('%s", two at a time and singly: squares of %s"', (finished, cut) => {
    for (const way of ['two_at_a_time', 'singles']) {
      const piece = pieceOf(quiltOf(halfSquare(finished), `method half_squares ${way}`, 7), 'sand');
      expect([cutOf(piece), piece.cutCount, piece.pieces]).toEqual([[number(cut), number(cut)], 4, 7]);
    }
  });

  // 2 · finished + (4 + 2√2) · 1/4", that is + 1 3/4" on a ruler with eighths (language.md, section 7).
  test.each(HALF_SQUARE)('%s", eight at a time: 1 3/4" more than twice the side', (finished) => {
    const side = 2 * number(finished) + 1.75;
    const piece = pieceOf(quiltOf(halfSquare(finished), 'method half_squares eight_at_a_time', 9), 'ink');
    expect([cutOf(piece), piece.cutCount, piece.piecesPerCut, piece.pieces]).toEqual([[side, side], 2, 8, 9]);
  });

  test('`trim` is cut over: 1/8" for each unit, or what is said', () => {
    // 3 + (2 + √2)/4 + 1/8 = 3.979; twice that, 7.957.
    expect(cutOf(pieceOf(quiltOf(halfSquare('3'), 'method half_squares two_at_a_time trim', 1), 'ink'))[0]).toBe(4);
    expect(cutOf(pieceOf(quiltOf(halfSquare('3'), 'method half_squares eight_at_a_time trim', 1), 'ink'))[0]).toBe(8);
    expect(cutOf(pieceOf(quiltOf(halfSquare('3'), 'method half_squares singles trim 1/4"', 1), 'ink'))[0]).toBe(4.125);
  });

  test('sets of different fabrics are not shared', () => {
    const block = '6" {\n  ink/sand ink/rust\n  sand/ink rust/ink\n}';
    const { plan } = quiltOf(block, 'method half_squares eight_at_a_time', 1, `${FABRICS}fabric rust #a4502e "Rust"\n`);
    expect(plan.pieces.map(({ fabric, cutCount, pieces }) => [fabric.name, cutCount, pieces])).toEqual([['ink', 1, 2], ['ink', 1, 2], ['sand', 1, 2], ['rust', 1, 2]]);
  });

  test('a block has its own way, and a directional or assorted fabric none', () => {
    const block = '3" {\n  method half_squares eight_at_a_time\n  ink/sand\n}';
    expect(pieceOf(quiltOf(block, 'method half_squares two_at_a_time', 8), 'ink').piecesPerCut).toBe(8);
    const print = pieceOf(quiltOf(halfSquare('3'), 'method half_squares eight_at_a_time', 8, FABRICS.replace('"Ink"', '"Ink" directional')), 'ink');
    expect(print.method).toBe('once on the diagonal');
  });
});

describe('flying geese', () => {
  test.each(GEESE)('%s" by %s", four at a time: small squares %s", large %s"', (height, width, small, large) => {
    const quilt = quiltOf(goose(height, width), 'method geese four_at_a_time', 6);
    const [body, wings] = [pieceOf(quilt, 'ink'), pieceOf(quilt, 'sand')];
    expect([cutOf(body)[0], cutOf(wings)[0]]).toEqual([number(large), number(small)]);
    expect([body.cutCount, wings.cutCount, wings.pieces]).toEqual([2, 8, 12]);
  });

  // Rectangle finished + 1/2" each way, squares height + 1/2": McCall's 303; heritagethreads.wordpress.com 2016/06/21; sewingwithstitcher.com block 10.
  test.each([['3', '6', '3 1/2', '6 1/2'], ['1 1/2', '3', '2', '3 1/2'], ['2', '4', '2 1/2', '4 1/2']])('%s" by %s" with corners: a rectangle %s" by %s"', (height, width, short, long) => {
    const quilt = quiltOf(goose(height, width), 'method geese corners', 5);
    const [body, wings] = [pieceOf(quilt, 'ink', 'rectangle'), pieceOf(quilt, 'sand', 'square')];
    expect([cutOf(body), cutOf(wings)]).toEqual([[number(short), number(long)], [number(short), number(short)]]);
    expect([body.cutCount, wings.cutCount]).toEqual([5, 10]);
  });

  test('with two different wings they are not made four at a time', () => {
    const quilt = quiltOf(goose('2', '4', 'sand', 'rust'), 'method geese four_at_a_time', 4, `${FABRICS}fabric rust #a4502e "Rust"\n`);
    expect(pieceOf(quilt, 'ink').method).toBe('twice on the diagonal');
  });
});

describe('strip sets', () => {
  const nine = '9" {\n  ink sand ink\n  sand ink sand\n  ink sand ink\n}';

  test('of a nine-patch: strips as wide as its squares with their seams, segments to fill the rows', () => {
    const { plan } = quiltOf(nine, 'method strips on', 6);
    const strips = plan.pieces.map((piece) => [piece.fabric.name, piece.shape, cutOf(piece), piece.piecesPerCut, piece.pieces, piece.cutCount]);
    // 40" give 11 segments of 3 1/2": 24 and 6 of ink, 12 and 12 of sand.
    expect(strips).toEqual([
      ['ink', 'strip', [3.5, 40], 11, 24, 3],
      ['ink', 'strip', [3.5, 40], 11, 6, 1],
      ['sand', 'strip', [3.5, 40], 11, 12, 2],
      ['sand', 'strip', [3.5, 40], 11, 12, 2],
    ]);
  });

  test('a rail across: the strips are as wide as its bars, the segments as long as it is high', () => {
    const { plan } = quiltOf('6" {\n  ink|sand|ink\n}', 'method strips on', 4);
    expect(plan.pieces.map((piece) => [piece.fabric.name, cutOf(piece), piece.segment && toNumber(piece.segment)])).toEqual([['ink', [2.5, 40], 6.5], ['sand', [2.5, 40], 6.5]]);
  });

  test('`strips off` cuts every patch', () => {
    expect(quiltOf(nine, 'method strips off', 6).plan.pieces.every(({ shape }) => shape === 'square')).toBe(true);
  });
});

describe('in words', () => {
  const wordsOf = (quilt: Made): string => {
    const [first] = quilt.quilts;
    return first ? `${cuttingMarkdown(quilt, first)}${stepsMarkdown(quilt, first)}` : '';
  };

  test('the cut list and the steps tell the way, the sets and what is over', () => {
    const eight = wordsOf(quiltOf(halfSquare('3'), 'method half_squares eight_at_a_time', 9));
    expect(eight).toContain('cut 2 squares 7 3/4", to be sewn eight at a time: 16 half-square triangles for Buoy.');
    expect(eight).toContain('in 2 pairs, right sides together: ink square (7 3/4") and sand square (7 3/4").');
    expect(eight).toContain('That makes 16. You need 9: 7 over.');
    const four = wordsOf(quiltOf(goose('2', '4'), 'method geese four_at_a_time', 3));
    expect(four).toContain('Take 1 large square: ink square (5 1/4"). Take 4 small squares: sand square (2 7/8").');
    expect(four).toContain('That makes 4. You need 3: 1 over.');
    const strips = wordsOf(quiltOf('6" {\n  ink|sand|ink\n}', 'method strips on', 7));
    expect(strips).toContain('Make 1 strip set:');
    expect(strips).toContain('Make one more in the same way, at least 6 1/2" long, from parts of strips.');
    expect(strips).toContain('Cut 7 segments, each 6 1/2" long.');
  });
});

test('the work of each way: cuts and units that are over', () => {
  expect((['singles', 'two_at_a_time', 'eight_at_a_time'] as const).map((way) => halfSquareWork(way, 16))).toEqual([{ cuts: 32, seams: 16, over: 0 }, { cuts: 24, seams: 16, over: 0 }, { cuts: 12, seams: 8, over: 0 }]);
  expect(halfSquareWork('eight_at_a_time', 9)).toEqual({ cuts: 12, seams: 8, over: 7 });
  expect((['singles', 'four_at_a_time', 'corners'] as const).map((way) => geeseWork(way, 8))).toEqual([{ cuts: 22, seams: 16, over: 0 }, { cuts: 16, seams: 12, over: 0 }, { cuts: 40, seams: 16, over: 0 }]);
});
