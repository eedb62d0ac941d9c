import { describe, expect, test } from 'vitest';
import { fraction, key } from '../../server/src/exact/number.ts';
import type { QuiltLayout } from '../../server/src/geometry/layout.ts';
import { layoutQuilt } from '../../server/src/geometry/quilt.ts';
import { countPlaced, placedPatches } from '../../server/src/geometry/walk.ts';
import type { Setting } from '../../server/src/model/pattern.ts';
import { blockUse, fabric, fabricUse, grid, lines, place, quilt, rows, RULES, straight } from './make.ts';
import type { Blocks, QuiltOptions } from './make.ts';
import { expectTiles, flattened, isSewnStraight } from './oracle.ts';

const Star = grid(['a/b c', 'c a\\b'], { name: 'Star', size: 6 });
const Nine = grid(['a b a', 'b a b', 'a b a'], { name: 'Nine', size: 6 });
const Small = grid(['a'], { name: 'Small', size: 4 });
const Wide = grid(['a b'], { name: 'Wide', size: [6, 3] });
const Free = grid(['a b', 'b a'], { name: 'Free' });
const BLOCKS: Blocks = { Star, Nine, Small, Wide, Free };

function laid(setting: Setting, options: QuiltOptions = {}): QuiltLayout {
  return layoutQuilt(quilt(setting, { blocks: BLOCKS, ...options }), RULES);
}

function rulesOf(layout: QuiltLayout): string[] {
  return layout.findings.map((finding) => `${finding.rule} ${finding.place.line.text}`);
}

function sizeOf(layout: QuiltLayout): string {
  return `${key(layout.width)} by ${key(layout.height)}`;
}

function counts(layout: QuiltLayout): string[] {
  return layout.blocks.map(({ layout: block, count }) => `${block.instance.name} ${count}`);
}

function expectWhole(layout: QuiltLayout): void {
  expect(layout.findings).toEqual([]);
  expectTiles(layout, flattened(layout));
}

describe('straight', () => {
  test('a tile repeats to fill it', () => {
    const layout = laid(straight(3, 2), { place: ['Star Nine', 'Nine Star'] });
    expect(sizeOf(layout)).toBe('18 by 12');
    expect(counts(layout)).toEqual(['Star 3', 'Nine 3']);
    expectWhole(layout);
    expect(layout.placements.map(({ row, column, part, block }) => `${row} ${column} ${part} ${block.instance.name}`)[3]).toBe('1 0 place Nine');
  });

  test('a fabric fills its place', () => {
    const layout = laid(straight(3, 3), { place: ['Star ink', 'ink Star'] });
    expect(sizeOf(layout)).toBe('18 by 18');
    expect(layout.patches.map(({ role, place: where }) => `${role} ${where.line.text}`)).toEqual(Array.from({ length: 4 }, () => 'plain ink'));
    expectWhole(layout);
  });

  test('seams and groups fill a place as well', () => {
    const layout = laid(straight(2, 2), { place: ['Star a/b', '(Star)@90 (a|b)@90'] });
    expectWhole(layout);
    expect(counts(layout)).toEqual(['Star 2']);
    expect(layout.patches).toHaveLength(4);
  });

  test('columns may be of different widths when their blocks agree', () => {
    const layout = laid(straight(4, 2), { place: ['Star Small@90', 'Star Small'], blocks: { ...BLOCKS, Small: grid(['a'], { size: [4, 6] }), Star } });
    expect(rulesOf(layout)).toContain('sizes-differ Block');
    const upright = grid(['a', 'b'], { name: 'Upright', size: [3, 6] });
    const even = laid(straight(4, 2), { place: ['Star Upright'], blocks: { Star, Upright: upright } });
    expect(sizeOf(even)).toBe('18 by 12');
    expectWhole(even);
  });

  test('a block of another size, once at its cell, with both numbers', () => {
    const layout = laid(straight(4, 4), { place: ['Star Nine', 'Nine Small'] });
    expect(rulesOf(layout)).toEqual(['sizes-differ Small']);
    const [finding] = layout.findings;
    expect(finding?.rule === 'sizes-differ' && [key(finding.found), key(finding.expected), finding.what]).toEqual(['4', '6', 'the width is']);
    expect(finding?.rule === 'sizes-differ' && finding.other.line.text).toBe('Nine');
  });

  test('turned blocks are measured as they stand', () => {
    const layout = laid(straight(2, 2), { place: ['Wide', 'Wide@180'] });
    expect(sizeOf(layout)).toBe('12 by 6');
    expectWhole(layout);
    expect(sizeOf(laid(straight(2, 2), { place: ['Wide@90'] }))).toBe('6 by 12');
  });

  test('a block without a size takes that of its place', () => {
    const layout = laid(straight(2, 1), { place: ['Star Free'] });
    expectWhole(layout);
    expect(key(layout.placements[1]?.block.width ?? fraction(0))).toBe('6');
    expect(rulesOf(laid(straight(2, 1), { place: ['Free'] }))).toEqual(['wrong-argument Free']);
    expect(rulesOf(laid(straight(2, 1), { place: ['ink sand'] }))).toEqual(['wrong-argument place']);
    expect(rulesOf(laid(straight(2, 1), { place: ['Wide', 'Free'], blocks: { Wide, Free: grid(['a b c'], { name: 'Free' }) } }))).toEqual([]);
  });

  test('joined places', () => {
    const Large = grid(['a b', 'b a'], { name: 'Large', size: 12 });
    const layout = laid(straight(6, 2), { place: ['Large < Star', '^ ^ Nine'], blocks: { ...BLOCKS, Large } });
    expect(sizeOf(layout)).toBe('36 by 12');
    expect(counts(layout)).toEqual(['Large 2', 'Star 2', 'Nine 2']);
    expectWhole(layout);
    expect(rulesOf(laid(straight(4, 2), { place: ['Large < Star', '^ ^ Nine'], blocks: { ...BLOCKS, Large } }))).toEqual(['wrong-argument Large']);
    expect(rulesOf(laid(straight(3, 2), { place: ['Nine < Star', '^ ^ Nine'] }))).toEqual(['does-not-fit Nine']);
  });

  test('rows of the tile must be of one length', () => {
    expect(rulesOf(laid(straight(2, 2), { place: ['Star Nine', 'Star'] }))).toEqual(['row-length Star']);
  });

  test('nothing placed, no setting', () => {
    expect(rulesOf(laid(straight(2, 2)))).toEqual(['wrong-argument straight']);
    const spec = { ...quilt(straight(2, 2)), setting: undefined } as unknown as Parameters<typeof layoutQuilt>[0];
    expect(rulesOf(layoutQuilt(spec, RULES))).toEqual(['wrong-argument quilt']);
  });
});

describe('symmetry of the setting', () => {
  /** The turn of each placed block, row by row, as where its upper left corner goes. */
  function pattern(layout: QuiltLayout, across: number): string[] {
    const names = layout.placements.map(({ block, transform }) => `${block.instance.name}${TURNS[[transform.xx, transform.yx].map(key).join()] ?? '?'}${key(transform.yy) === key(transform.xx) && key(transform.xy) === '0' ? '' : ''}`);
    return Array.from({ length: names.length / across }, (_, row) => names.slice(row * across, (row + 1) * across).join(' '));
  }
  const TURNS: Readonly<Record<string, string>> = { '1,0': '', '0,1': '@90', '-1,0': '@180', '0,-1': '@270' };

  test('turned 4: the last cell of the tile touches the centre, and it repeats outward', () => {
    const layout = laid(straight(4, 4), { place: ['Star Nine', 'Nine Star'], symmetry: { kind: 'turned', times: 4 } });
    expectWhole(layout);
    expect(pattern(layout, 4)).toEqual([
      'Star Nine Nine@90 Star@90', 'Nine Star Star@90 Nine@90', 'Nine@270 Star@270 Star@180 Nine@180', 'Star@270 Nine@270 Nine@180 Star@180',
    ]);
    const wide = laid(straight(6, 2), { place: ['Star Nine', 'Nine Star'], symmetry: { kind: 'turned', times: 4 } });
    expectWhole(wide);
    expect(pattern(wide, 6)).toEqual(['Star Nine Star Star@90 Nine@90 Star@90', 'Star@270 Nine@270 Star@270 Star@180 Nine@180 Star@180']);
  });

  test('mirrored 4, and two parts', () => {
    const four = laid(straight(2, 2), { place: ['Star'], symmetry: { kind: 'mirrored', times: 4 } });
    expect(four.placements.map(({ transform }) => [transform.xx, transform.yy].map(key).join())).toEqual(['1,1', '-1,1', '1,-1', '-1,-1']);
    expectWhole(four);
    const two = laid(straight(2, 2), { place: ['Star', 'Nine'], symmetry: { kind: 'turned', times: 2 } });
    expect(pattern(two, 2)).toEqual(['Star Nine@180', 'Nine Star@180']);
    const mirror = laid(straight(2, 2), { place: ['Star', 'Nine'], symmetry: { kind: 'mirrored', times: 2 } });
    expect(mirror.placements.map(({ block }) => block.instance.name)).toEqual(['Star', 'Star', 'Nine', 'Nine']);
  });

  test('needs even counts', () => {
    const layout = laid(straight(3, 4), { place: ['Star'], symmetry: { kind: 'turned', times: 4 } });
    expect(rulesOf(layout)).toEqual(['wrong-argument turned']);
    expectTiles(layout, flattened(layout));
    expect(rulesOf(laid(straight(4, 3), { place: ['Star'], symmetry: { kind: 'turned', times: 2 } }))).toEqual([]);
  });
});

describe('grid', () => {
  const setting = (columns: string, down: string): Setting => ({ kind: 'grid', columns: lines(columns), rows: lines(down), place: place('grid') });

  test('unequal columns and rows', () => {
    const layout = laid(setting('6" 4" 6"', '6" 4"'), { place: ['Star ink Nine', 'ink Small ink'] });
    expect(sizeOf(layout)).toBe('16 by 10');
    expectWhole(layout);
  });

  test('plain numbers are lengths in the units of the pattern', () => {
    expect(sizeOf(laid(setting('6 4', '6'), { place: ['Star ink'] }))).toBe('10 by 6');
    const metric = layoutQuilt(quilt(setting('254 10', '127/5'), { place: ['ink'], blocks: BLOCKS }), { ...RULES, units: 'centimetres' });
    expect(sizeOf(metric)).toBe('13200/127 by 10');
  });

  test('a block of another size does not fit; joined cells make room', () => {
    expect(rulesOf(laid(setting('6" 4"', '6"'), { place: ['Small Star'] }))).toEqual(['does-not-fit Small', 'does-not-fit Star']);
    expect(rulesOf(laid(setting('3" 3" 4"', '6"'), { place: ['Star < ink'] }))).toEqual([]);
    expect(rulesOf(laid(setting('3" rest', '6"'), { place: ['ink'] }))).toEqual(['wrong-argument rest']);
  });

  test('with sashing', () => {
    const layout = laid(setting('6" 4" 6"', '6" 4"'), { place: ['Star ink Nine', 'ink Small ink'], sashing: { width: fraction(1), outer: true, cornerstones: fabricUse('stone') } });
    expect(sizeOf(layout)).toBe('20 by 13');
    expectWhole(layout);
  });
});

describe('rows', () => {
  const setting = (width: number, ...content: (string | number)[]): Setting => ({
    kind: 'rows', width: fraction(width), place: place('rows'),
    rows: content.map((row) => (typeof row === 'number' ? { kind: 'plain', height: fraction(row), fabric: fabric('plain'), place: place('row') } : { kind: 'cells', cells: rows([row], BLOCKS)[0]?.cells ?? [], place: place(row) })),
  });

  test('cells repeat to fill the width, plain rows are strips', () => {
    const layout = laid(setting(24, 'Star Nine', 2, 'Small', 2, 'Wide'));
    expect(sizeOf(layout)).toBe('24 by 17');
    expect(counts(layout)).toEqual(['Star 2', 'Nine 2', 'Small 6', 'Wide 4']);
    expectWhole(layout);
    expectWhole(laid(setting(18, 'Star ink')));
  });

  test('a row that does not fill it names the spacer', () => {
    const layout = laid(setting(27, 'Star'));
    expect(layout.findings).toMatchObject([{ rule: 'border-does-not-fit', what: 'a run of these cells', place: { line: { text: 'Star' } } }]);
    const [finding] = layout.findings;
    expect(finding?.rule === 'border-does-not-fit' && [finding.side, finding.unit, finding.spacer ?? fraction(0)].map(key)).toEqual(['27', '6', '3/2']);
  });

  test('heights must agree', () => {
    expect(rulesOf(laid(setting(20, 'Star Small Star Small')))).toEqual(['sizes-differ Small', 'sizes-differ Small']);
    expect(rulesOf(laid(setting(24, 'ink')))).toEqual(['wrong-argument ink']);
  });
});

describe('sashing', () => {
  test('short strips between blocks, long ones between rows', () => {
    const layout = laid(straight(3, 2), { place: ['Star'], sashing: { width: fraction(1) } });
    expect(sizeOf(layout)).toBe('20 by 13');
    expectWhole(layout);
    expect(isSewnStraight(flattened(layout))).toBe(true);
    expect(layout.patches.map(({ outline, role }) => `${role} ${key(outline[1]?.x ?? fraction(0))}`)).toEqual(['sash 7', 'sash 14', 'sash 7', 'sash 14', 'sash 20']);
  });

  test('cornerstones and a frame', () => {
    const layout = laid(straight(3, 2), { place: ['Star'], sashing: { width: fraction(1), cornerstones: fabricUse('stone'), outer: true } });
    expect(sizeOf(layout)).toBe('22 by 15');
    expectWhole(layout);
    expect(layout.patches.filter(({ role }) => role === 'sash')).toHaveLength(17);
    expect(layout.patches.filter(({ role }) => role === 'cornerstone')).toHaveLength(12);
    expectWhole(laid(straight(3, 2), { place: ['Star'], sashing: { width: fraction(1), outer: true } }));
  });

  test('a block as sashing, with a rest', () => {
    const Sash = grid(['b', 'a', 'b'], { name: 'Sash', columns: '2"', rows: '1" rest 1"' });
    const Stone = grid(['a b', 'b a'], { name: 'Stone' });
    for (const cornerstones of [undefined, blockUse(Stone)]) {
      const layout = laid(straight(2, 2), { place: ['Star'], sashing: { filling: blockUse(Sash), ...(cornerstones ? { cornerstones } : {}) } });
      expect(sizeOf(layout)).toBe('14 by 14');
      expectWhole(layout);
      expect(layout.placements.filter(({ part }) => part === 'sashing')).toHaveLength(cornerstones ? 4 : 3);
    }
  });

  test('a block with a size must have the length of its strip', () => {
    const Sash = grid(['a'], { name: 'Sash', size: [2, 6] });
    expect(rulesOf(laid(straight(2, 2), { place: ['Star'], sashing: { filling: blockUse(Sash) } }))).toEqual(['does-not-fit Sash']);
    expect(rulesOf(laid(straight(2, 2), { place: ['Star'], sashing: { filling: blockUse(Sash), cornerstones: fabricUse('c') } }))).toEqual([]);
    expect(rulesOf(laid(straight(2, 2), { place: ['Star'], sashing: { filling: blockUse(Free) } }))).toEqual(['wrong-argument Free']);
  });

  test('a block that is drawn with a size takes up the rest of each strip all the same', () => {
    const Sash = grid(['b', 'a', 'b'], { name: 'Sash', columns: '2"', rows: '1" rest 1"', size: [2, 9] });
    for (const cornerstones of [undefined, fabricUse('c')]) {
      const layout = laid(straight(2, 2), { place: ['Star'], sashing: { filling: blockUse(Sash), ...(cornerstones ? { cornerstones } : {}) } });
      expect(sizeOf(layout)).toBe('14 by 14');
      expectWhole(layout);
    }
    const Short = grid(['b', 'a', 'b'], { name: 'Short', columns: '2"', rows: '4" rest 4"', size: [2, 9] });
    const { blocks } = laid(straight(2, 2), { place: ['Star'], sashing: { filling: blockUse(Short), cornerstones: fabricUse('c') } });
    expect(blocks.flatMap(({ layout }) => layout.findings.map(({ rule }) => rule))).toEqual(['grid-sum']);
  });

  test('goes around joined cells', () => {
    const Large = grid(['a'], { name: 'Large', size: 13 });
    for (const cornerstones of [undefined, fabricUse('stone')]) {
      for (const outer of [false, true]) {
        const sashing = { width: fraction(1), outer, ...(cornerstones ? { cornerstones } : {}) };
        for (const content of [['Large < Star', '^ ^ Nine', 'Star Star Nine'], ['Star Large <', 'Nine ^ ^'], ['Large < Large <', '^ ^ ^ ^', 'Star Star Large <', 'Star Star ^ ^']]) {
          const layout = laid(straight(content[0]?.split(' ').length ?? 0, content.length), { place: content, blocks: { ...BLOCKS, Large }, sashing });
          expectWhole(layout);
        }
      }
    }
    expect(sizeOf(laid(straight(3, 2), { place: ['Large < Star', '^ ^ Nine'], blocks: { ...BLOCKS, Large }, sashing: { width: fraction(1) } }))).toBe('20 by 13');
  });
});

describe('limits and work', () => {
  test('too many places are refused at once', () => {
    const started = performance.now();
    const layout = laid(straight(1_000_000, 1_000_000), { place: ['Star'] });
    expect(layout.findings).toMatchObject([{ rule: 'too-large', place: { line: { text: 'straight' } }, found: '1,000,000,000,000 patches', limit: '100,000 patches' }]);
    expect(layout.placements).toEqual([]);
    expect(laid(straight(200, 101), { place: ['Star'] }).findings.map((finding) => finding.rule)).toEqual(['too-large']);
    expect(performance.now() - started).toBeLessThan(500);
  });

  test('a block is laid out once however often it is set', () => {
    const layout = laid(straight(20, 20), { place: ['Star Nine'] });
    expect(new Set(layout.placements.map(({ block }) => block)).size).toBe(2);
    expect(countPlaced(layout)).toBe(200 * (Star.body.kind === 'grid' ? 6 : 0) + 200 * 9);
  });

  test('100,000 patches are laid quickly', () => {
    const Hundred = grid(Array.from({ length: 10 }, () => 'a b a b a b a b a b'), { name: 'Hundred', size: 5 });
    const started = performance.now();
    expect(laid(straight(40, 25), { place: ['Hundred'], blocks: { Hundred } }).findings).toEqual([]);
    expect(performance.now() - started).toBeLessThan(300);
    const plain = performance.now();
    const layout = laid(straight(400, 250), { place: ['Small ink'], blocks: { Small } });
    expect(layout.placements.length + layout.patches.length).toBe(100_000);
    expect(performance.now() - plain).toBeLessThan(3000);
    expect([...placedPatches(layout)]).toHaveLength(100_000);
  });
});

