/** Blocks drawn in the language are cut as others print them. */
import { describe, expect, test } from 'vitest';
import { SQRT2, mul } from '../../server/src/exact/number.ts';
import type { Piece } from '../../server/src/cutting/plan.ts';
import { made, ofBlock } from './from-text.ts';
import { cutLines, inches } from './layouts.ts';
import { PRINTED_BLOCKS, TRADITIONAL } from './printed-blocks.ts';

describe('printed cutting lists', () => {
  test.each(PRINTED_BLOCKS)('$name', ({ name, fabrics, text, cuts }) => {
    const { plan } = ofBlock(text, name, fabrics);
    expect(cutLines(plan.pieces).sort()).toEqual([...cuts].sort());
    expect(new Set(plan.pieces.map((piece) => piece.for))).toEqual(new Set([name]));
  });

  /** Card Trick of 12, 9 and 6": quarter squares of finished unit + 1 1/4, half squares + 1 and trimmed (7/8 is exact). http://mackandmabel.blogspot.com/2014_01_01_archive.html */
  test.each([
    ['12', '5 1/4', '4 7/8'],
    ['9', '4 1/4', '3 7/8'],
    ['6', '3 1/4', '2 7/8'],
  ])('Card Trick of %s"', (size, quarter, half) => {
    const text = `block Card ${size}" {
  g/a                (a\\g)/b        g\\b
  (g\\a)/d           (a\\b)/(d\\c)   (b\\g)/c
  g\\d               d/(c\\g)        g/c
}`;
    const { plan } = ofBlock(text, 'Card', ['a', 'b', 'c', 'd', 'g']);
    const sizes = new Set(plan.pieces.map(({ cut, method }) => `${inches(cut.width)} ${method}`));
    expect(sizes).toEqual(new Set([`${quarter} twice on the diagonal`, `${half} once on the diagonal`]));
  });
});

describe('traditional blocks', () => {
  test.each(TRADITIONAL)('$name', ({ name, text, cuts }) => {
    const { plan } = ofBlock(text, name, ['a']);
    const printed = (piece: Piece): string => {
      const finished = piece.shape === 'quarter-square triangle' ? inches(mul(piece.finished.width, SQRT2)) : size(piece.finished);
      return [piece.shape, finished, size(piece.cut), piece.pieces, piece.cutCount].join(', ');
    };
    expect(plan.pieces.map(printed).sort()).toEqual(cuts.map((cut) => cut.join(', ')).sort());
  });
});

function size({ width, height }: Piece['cut']): string {
  return inches(width) === inches(height) ? inches(width) : `${inches(width)} x ${inches(height)}`;
}

describe('the same block turned, mirrored and at other sizes', () => {
  const block = (size: string): string => `block Buoy ${size} {
  grid 2 1 2 by 2 1 2
  sand/ink   sand-ink   ink\\sand
  sand|ink   sand       ink|sand
  sand\\ink   ink-sand   ink/sand
}`;
  const cut = (cell: string, setting = 'straight 1 by 1'): string[] => {
    const { plan } = made(`fabric ink #22345c "ink"\nfabric sand #eadfc8 "sand"\n${block('7 1/2"')}\nquilt {\n  ${setting}\n  place { ${cell} }\n  edges sand\n}\n`.replace(setting === 'straight 1 by 1' ? '  edges sand\n' : '\u0000', ''));
    return cutLines(plan.pieces.filter((piece) => piece.for === 'Buoy'));
  };

  test.each(['Buoy@90', 'Buoy@180', 'Buoy@270', 'Buoy@mirror', 'Buoy@flip', 'Buoy@90@mirror'])('%s', (cell) => expect(cut(cell)).toEqual(cut('Buoy')));

  test('on point', () => expect(cut('Buoy', 'on_point 1 by 1')).toEqual(cut('Buoy')));

  test('nested in a larger block it grows with its cell', () => {
    const text = `fabric ink #22345c "ink"\nfabric sand #eadfc8 "sand"\n${block('7 1/2"')}\nblock Sea 30" {\n  Buoy Buoy\n  Buoy Buoy\n}\nquilt {\n  straight 1 by 1\n  place { Sea }\n}\n`;
    expect(cutLines(made(text).plan.pieces)[0]).toBe('ink: 8 of 6 7/8 two at a time');
  });
});
