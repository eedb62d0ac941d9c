import { describe, expect, test } from 'vitest';
import { key } from '../../server/src/exact/number.ts';
import { layoutBlock } from '../../server/src/geometry/block.ts';
import { grid } from './make.ts';
import type { GridOptions } from './make.ts';
import { basePatches, expectTiles, shapes } from './oracle.ts';

/** The patches of rows in a block 6 by 6 (or as said). */
function laid(content: readonly string[], options: GridOptions = {}): ReturnType<typeof layoutBlock> {
  return layoutBlock(grid(content, { size: 6, ...options }));
}

function rulesOf(content: readonly string[], options: GridOptions = {}): string[] {
  return laid(content, options).findings.map((finding) => `${finding.rule} ${finding.place.line.text}`);
}

describe('one cell', () => {
  test.each([
    ['a', ['a: 0;0 6;0 6;6 0;6']],
    ['a/b', ['a: 0;0 6;0 0;6', 'b: 0;6 6;0 6;6']],
    ['a\\b', ['a: 0;0 6;6 0;6', 'b: 0;0 6;0 6;6']],
    ['a|b', ['a: 0;0 3;0 3;6 0;6', 'b: 3;0 6;0 6;6 3;6']],
    ['a-b', ['a: 0;0 6;0 6;3 0;3', 'b: 0;3 6;3 6;6 0;6']],
    ['a|b|c', ['a: 0;0 2;0 2;6 0;6', 'b: 2;0 4;0 4;6 2;6', 'c: 4;0 6;0 6;6 4;6']],
    ['a*2|b', ['a: 0;0 4;0 4;6 0;6', 'b: 4;0 6;0 6;6 4;6']],
    // A quarter-square unit: the outer seam cuts the inner triangles.
    ['(left\\top)/(bottom\\right)', ['bottom: 0;6 3;3 6;6', 'left: 0;0 3;3 0;6', 'right: 3;3 6;0 6;6', 'top: 0;0 6;0 3;3']],
    // Half and quarters.
    ['(left\\top)/lower', ['left: 0;0 3;3 0;6', 'lower: 0;6 6;0 6;6', 'top: 0;0 6;0 3;3']],
    ['(a|b)/c', ['a: 0;0 3;0 3;3 0;6', 'b: 3;0 6;0 3;3', 'c: 0;6 6;0 6;6']],
    ['(a|b)-(b|a)', ['a: 0;0 3;0 3;3 0;3', 'a: 3;3 6;3 6;6 3;6', 'b: 0;3 3;3 3;6 0;6', 'b: 3;0 6;0 6;3 3;3']],
    ['(a/b)@90', ['a: 0;0 6;0 6;6', 'b: 0;0 6;6 0;6']],
    ['(a|b|c)@90', ['a: 0;0 6;0 6;2 0;2', 'b: 0;2 6;2 6;4 0;4', 'c: 0;4 6;4 6;6 0;6']],
    ['(a|b)@mirror', ['a: 3;0 6;0 6;6 3;6', 'b: 0;0 3;0 3;6 0;6']],
    ['(a-b)@flip', ['a: 0;3 6;3 6;6 0;6', 'b: 0;0 6;0 6;3 0;3']],
  ])('%s', (text, expected) => {
    const layout = laid([text]);
    expect(layout.findings).toEqual([]);
    expect(shapes(layout.patches)).toEqual(expected);
    expectTiles(layout, basePatches(layout));
  });

  test('a turned group in an oblong cell is laid in the cell as it was before the turn', () => {
    const layout = laid(['(a*2|b)@90'], { size: [6, 3] });
    expect(shapes(layout.patches)).toEqual(['a: 0;0 6;0 6;2 0;2', 'b: 0;2 6;2 6;3 0;3']);
  });

  test('what a seam cuts away entirely is an empty patch, once', () => {
    expect(rulesOf(['(a/b)/c'])).toEqual(['empty-patch b']);
    expect(rulesOf(['(a/b)/(c/d)'])).toEqual(['empty-patch b', 'empty-patch c']);
  });

  test('a cell that could not be read is left out without a word', () => {
    expect(laid(['? a']).findings).toEqual([]);
    expect(shapes(laid(['? a']).patches)).toEqual(['a: 3;0 6;0 6;6 3;6']);
  });
});

describe('columns and rows', () => {
  test('proportions', () => {
    const layout = layoutBlock(grid(['a b c', 'd e f', 'g h i'], { size: '15/2', columns: '2 1 2', rows: '2 1 2' }));
    expect(shapes(layout.patches)[4]).toBe('e: 3;3 9/2;3 9/2;9/2 3;9/2');
    expectTiles(layout, basePatches(layout));
  });

  test('lengths add up to the block', () => {
    expect(rulesOf(['a b c'], { columns: '1" 3" 2"' })).toEqual([]);
    const { findings } = laid(['a b c'], { columns: '1" 3" 1/2"' });
    expect(findings).toMatchObject([{ rule: 'grid-sum', what: 'the columns', last: { isLength: true } }]);
    const [finding] = findings;
    if (finding?.rule !== 'grid-sum' || !finding.last) throw new Error('no sum');
    expect([finding.found, finding.expected, finding.last.value].map(key)).toEqual(['9/2', '6', '1/2']);
  });

  test('rest takes what lengths leave, proportions share it', () => {
    expect(shapes(laid(['a b c'], { columns: '1" rest 2"' }).patches)[1]).toBe('b: 1;0 4;0 4;6 1;6');
    expect(shapes(laid(['a b c'], { columns: '1 2" 3' }).patches)[1]).toBe('b: 1;0 3;0 3;6 1;6');
    expect(rulesOf(['a b'], { columns: 'rest 6"' })).toEqual(['grid-sum 6"']);
    expect(rulesOf(['a b'], { columns: 'rest 2' })).toEqual(['wrong-argument rest']);
    expect(rulesOf(['a b'], { columns: '0 2' })).toEqual(['wrong-argument 0']);
  });

  test('rows of another length', () => {
    expect(rulesOf(['a b c', 'a b', 'a b c'])).toEqual(['row-length a b']);
    expect(laid(['a b c', 'a b', 'a b c']).findings).toMatchObject([{ found: 2, expected: 3, of: 'cells', related: { line: { text: 'a b c' } } }]);
    expect(rulesOf(['a b', 'a b', 'a b'], { columns: '1 1 1', rows: '1 1' })).toEqual(['row-length a b', 'row-length a b', 'row-length a b', 'row-length a b']);
    expect(laid(['a b', 'a b', 'a b'], { columns: '1 1', rows: '1 1' }).findings).toMatchObject([{ of: 'rows', found: 3, expected: 2 }]);
    expect(laid(['a b'], { columns: '1 1', rows: '1 1' }).findings).toMatchObject([{ of: 'rows', found: 1, expected: 2, place: { line: { text: 'grid' } } }]);
  });
});

describe('joined cells', () => {
  test('across, down and both', () => {
    const layout = laid(['a <', 'b c']);
    expect(shapes(layout.patches)).toEqual(['a: 0;0 6;0 6;3 0;3', 'b: 0;3 3;3 3;6 0;6', 'c: 3;3 6;3 6;6 3;6']);
    expect(shapes(laid(['a < c', '^ ^ d', 'e f g']).patches)[0]).toBe('a: 0;0 4;0 4;4 0;4');
    expect(shapes(laid(['a < c', '^ < d', 'e f g']).patches)[0]).toBe('a: 0;0 4;0 4;4 0;4');
  });

  test('a seam or a block goes on as well', () => {
    expect(shapes(laid(['a/b <', 'c d']).patches).slice(0, 2)).toEqual(['a: 0;0 6;0 0;3', 'b: 0;3 6;0 6;3']);
    const goose = grid(['x y'], { name: 'Goose' });
    expect(shapes(laid(['Goose <', 'c d'], { blocks: { Goose: goose } }).patches).slice(2)).toEqual(['x: 0;0 3;0 3;3 0;3', 'y: 3;0 6;0 6;3 3;3']);
  });

  test('no rectangle, or nothing to go on from', () => {
    expect(rulesOf(['a <', '^ b'])).toEqual(['wrong-argument ^']);
    expect(rulesOf(['< a'])).toEqual(['wrong-argument <']);
    expect(rulesOf(['^ a'])).toEqual(['wrong-argument ^']);
    const layout = laid(['a <', '^ b']);
    expectTiles(layout, basePatches(layout));
  });
});

describe('nested blocks', () => {
  const Goose = grid(['a b'], { name: 'Goose', size: [4, 2] });
  const Unit = grid(['(a\\b)/c'], { name: 'Unit' });

  test('are scaled evenly and know the cells they came through', () => {
    const layout = laid(['c', 'Goose'], { blocks: { Goose } });
    expect(shapes(layout.patches)).toEqual(['a: 0;3 3;3 3;6 0;6', 'b: 3;3 6;3 6;6 3;6', 'c: 0;0 6;0 6;3 0;3']);
    expect(layout.patches[1]?.within?.map((place) => place.line.text)).toEqual(['Goose']);
  });

  test('are turned first and fitted then', () => {
    expect(laid(['Goose@90 c'], { blocks: { Goose } }).findings).toEqual([]);
    expect(shapes(laid(['Goose@90 c'], { blocks: { Goose } }).patches)).toEqual(['a: 0;0 3;0 3;3 0;3', 'b: 0;3 3;3 3;6 0;6', 'c: 3;0 6;0 6;6 3;6']);
  });

  test('of another proportion do not fit', () => {
    const layout = laid(['Goose c'], { blocks: { Goose } });
    expect(layout.findings).toMatchObject([{ rule: 'does-not-fit', name: 'Goose', isLength: true }]);
    expectTiles(layout, basePatches(layout));
  });

  test('are cut by a seam, and what goes of them is no fault', () => {
    const layout = laid(['Unit/c'], { blocks: { Unit } });
    expect(layout.findings).toEqual([]);
    expect(shapes(layout.patches)).toEqual(['a: 0;0 3;3 0;6', 'b: 0;0 6;0 3;3', 'c: 0;6 6;0 6;6']);
    expectTiles(layout, basePatches(layout));
  });

  test('bring their findings along, each once', () => {
    const Bad = grid(['a b', 'c'], { name: 'Bad' });
    expect(rulesOf(['Bad Bad', 'Bad Bad'], { blocks: { Bad } })).toEqual(['row-length c']);
  });

  test('with a rest are laid out in their cell', () => {
    const Strip = grid(['a', 'b', 'a'], { name: 'Strip', columns: '2"', rows: '1" rest 1"' });
    const layout = laid(['Strip c'], { blocks: { Strip }, columns: '2" 4"' });
    expect(layout.findings).toEqual([]);
    expect(shapes(layout.patches)).toContain('b: 0;1 2;1 2;5 0;5');
  });
});

describe('symmetry', () => {
  test.each([
    ['turned', 2, ['a'], ['a: 0;0 3;0 3;6 0;6', 'a: 3;0 6;0 6;6 3;6']],
    ['turned', 2, ['a', 'b'], ['a: 0;0 3;0 3;3 0;3', 'a: 3;3 6;3 6;6 3;6', 'b: 0;3 3;3 3;6 0;6', 'b: 3;0 6;0 6;3 3;3']],
    ['turned', 4, ['a|b'], ['a: 0;0 3/2;0 3/2;3 0;3', 'a: 0;6 0;9/2 3;9/2 3;6', 'a: 3;0 6;0 6;3/2 3;3/2', 'a: 6;3 6;6 9/2;6 9/2;3',
      'b: 0;3 3;3 3;9/2 0;9/2', 'b: 3/2;0 3;0 3;3 3/2;3', 'b: 3;3 3;3/2 6;3/2 6;3', 'b: 3;3 9/2;3 9/2;6 3;6']],
    ['mirrored', 2, ['a/b'], ['a: 0;0 3;0 0;6', 'a: 3;0 6;0 6;6', 'b: 0;6 3;0 3;6', 'b: 3;0 6;6 3;6']],
    ['mirrored', 4, ['a/b'], ['a: 0;0 3;0 0;3', 'a: 0;3 3;6 0;6', 'a: 3;0 6;0 6;3', 'a: 3;6 6;3 6;6',
      'b: 0;3 3;0 3;3', 'b: 0;3 3;3 3;6', 'b: 3;0 6;3 3;3', 'b: 3;3 6;3 3;6']],
  ] as const)('%s %d of %s', (kind, times, content, expected) => {
    const layout = laid([...content], { symmetry: { kind, times } });
    expect(layout.findings).toEqual([]);
    expect(shapes(layout.patches)).toEqual([...expected]);
    expectTiles(layout, basePatches(layout));
  });

  test('grid gives the part or the whole', () => {
    const part = laid(['a b', 'c d'], { columns: '1 2', rows: '1 2', symmetry: { kind: 'mirrored', times: 4 } });
    const whole = laid(['a b', 'c d'], { columns: '1 2 2 1', rows: '1 2 2 1', symmetry: { kind: 'mirrored', times: 4 } });
    expect(part.findings).toEqual([]);
    expect(shapes(part.patches)).toEqual(shapes(whole.patches));
    expect(shapes(part.patches)[0]).toBe('a: 0;0 1;0 1;1 0;1');
    expect(rulesOf(['a b', 'c d'], { columns: '1 2 1 2', rows: '1 2 2 1', symmetry: { kind: 'turned', times: 4 } })).toEqual(['wrong-argument 1']);
  });

  test('the size of a block without one counts the whole', () => {
    const whole = layoutBlock(grid(['a b', 'c d'], { columns: '1 2', symmetry: { kind: 'mirrored', times: 4 } }));
    expect([whole.width, whole.height].map(key)).toEqual(['6', '4']);
  });

  test('a block that cannot be turned 4 times', () => {
    expect(rulesOf(['a'], { size: [6, 3], symmetry: { kind: 'turned', times: 4 } })).toEqual(['wrong-argument turned']);
    expect(rulesOf(['a'], { symmetry: { kind: 'turned', times: 3 } })).toEqual(['wrong-argument turned']);
  });
});

describe('limits', () => {
  test('a block with too many patches is refused before it is laid', () => {
    let block = grid(['a a', 'a a'], { name: 'B0' });
    for (let level = 1; level < 64; level += 1) block = grid(['X X', 'X X'], { name: `B${level}`, blocks: { X: block } });
    const started = performance.now();
    const layout = layoutBlock(block);
    expect(layout.findings.map((finding) => finding.rule)).toEqual(['too-large']);
    expect(layout.patches).toEqual([]);
    expect(performance.now() - started).toBeLessThan(100);
  });

  test('64 levels of nesting are no trouble', () => {
    let block = grid(['a/b'], { name: 'B0' });
    for (let level = 1; level < 64; level += 1) block = grid(['X c'], { name: `B${level}`, blocks: { X: block }, columns: '1 1', size: [6, 3] });
    expect(layoutBlock(block).patches.length).toBe(65);
  });
});
