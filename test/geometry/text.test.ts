/** The contract's own words, from text to the plane. */
import { describe, expect, test } from 'vitest';
import { SQRT2, add, equals, fraction, key, mul } from '../../server/src/exact/number.ts';
import { patchesByFabric } from '../../server/src/geometry/walk.ts';
import { FIRST_PATTERN } from '../harness/first-pattern.ts';
import { basePatches, expectTiles, flattened, isSewnStraight } from './oracle.ts';
import { blockOf, faults, quiltOf } from './text.ts';

const FABRICS = `fabric ink #22345c "Night ferry print"
fabric rust #a4502e "Rusted chain"
fabric sand #eadfc8 "Dry sand solid"
`;

describe('the first pattern', () => {
  test.each([['crib', 3, 4], ['throw', 4, 5], ['twin', 5, 7]] as const)('%s', (size, across, down) => {
    const layout = quiltOf(FIRST_PATTERN, size);
    expect(faults(layout, FIRST_PATTERN)).toEqual([]);
    const width = add(mul(fraction(across * 15, 2), SQRT2), fraction(14));
    expect(equals(layout.width, width)).toBe(true);
    expect(layout.blocks.map(({ layout: block, count }) => `${block.instance.name} ${count}`)).toEqual([`Capstan ${across * down}`, `Nine(rust) ${(across - 1) * (down - 1)}`]);
    expectTiles(layout, flattened(layout));
  });

  test('a border cut 6 1/2" finishes 6"', () => {
    const layout = quiltOf(FIRST_PATTERN);
    expect(layout.borders.map(({ width, corners }) => `${key(width)} ${corners}`)).toEqual(['1 butted', '6 mitred']);
  });

  test('Capstan has 17 patches', () => {
    const block = blockOf(FIRST_PATTERN, 'Capstan');
    expect([...patchesByFabric(block)]).toEqual([['sand', 9], ['ink', 8]]);
  });
});

describe('blocks of the page', () => {
  test.each([
    ['block B 6" {\n  (ink\\rust)/(sand\\ink)\n}', 4],
    ['block B 6" {\n  (ink\\rust)/sand\n}', 3],
    ['block B 6" {\n  (ink|sand)-(sand|ink)\n}', 4],
    ['block B 6" {\n  ink*2|sand ink@90\n}', 3],
    ['block B 6" {\n  ink < sand\n  ^ < rust\n  sand rust ink\n}', 6],
    ['block B 6" {\n  turned 4 {\n    ink/sand rust\n    rust sand\\ink\n  }\n}', 24],
    ['block B 6" {\n  centre rust 2"\n  round 1" sand sand ink ink\n  round 1" sand sand ink ink\n}', 9],
    ['block B 4" by 2" {\n  box 2 by 1\n  patch ink 0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n  patch sand 1,0 2,0 2,1\n}', 3],
    ['block B 6" {\n  box 2 by 2\n  turned 4 {\n    patch ink 0,0 1,0 1,1\n    patch sand 0,0 1,1 0,1\n  }\n}', 8],
    ['block B 6" {\n  four_patch(ink, sand) nine_patch(rust, sand)\n  half_square(ink, sand)@90 hourglass(ink, sand)\n}', 19],
    ['block B 6" {\n  snowball(ink, sand) square_in_square(ink, sand)\n  half_and_quarters(ink, sand, rust) rail(ink, sand, rust)\n}', 16],
    ['block B 6" {\n  grid 2 1 by 1 1 1\n  goose(ink, sand) half_rectangle(ink, sand)@90\n  goose(ink, sand)@180 ^\n  goose(ink, rust) rust\n}', 12],
  ])('%s', (text, patches) => {
    const layout = blockOf(`${FABRICS}${text}\n`, 'B');
    expect(faults(layout, `${FABRICS}${text}\n`)).toEqual([]);
    expect(layout.patches).toHaveLength(patches);
    expectTiles(layout, basePatches(layout));
  });
});

describe('settings of the page', () => {
  const BLOCKS = `${FABRICS}
block Star 6" {
  ink/sand sand
  sand ink\\sand
}
block Dot 2" {
  rust
}
block Rope 3" by 2" {
  ink/sand
}
block Lattice {
  grid 1" by 1" rest 1"
  ink
  rust
  ink
}
`;

  test.each([
    ['straight 3 by 4\n  place { Star ink }', '18 by 24'],
    ['straight 4 by 4\n  place turned 4 {\n    Star ink\n    ink Star\n  }', '24 by 24'],
    ['straight 3 by 3\n  place { Star }\n  sashing 1" sand cornerstones rust outer', '22 by 22'],
    ['straight 3 by 3\n  place { Star }\n  sashing Lattice', '20 by 20'],
    ['straight 3 by 3\n  place { Star }\n  border pieced Rope corner Dot', '22 by 22'],
    ['straight 3 by 3\n  place { Star }\n  border fit 1" rust\n  border pieced { Rope Dot } corner Dot', '24 by 24'],
    ['straight 3 by 3\n  place { Star }\n  border to 24" by 30" rust\n  border top 2" sides 1" ink corners squares sand', '26 by 34'],
    ['grid 6" 2" by 6" 2"\n  place {\n    Star ink\n    sand Dot@90\n  }', '8 by 8'],
    ['rows 18"\n  row Star\n  row 2" rust\n  row Rope', '18 by 10'],
  ])('%s', (statements, size) => {
    const text = `${BLOCKS}quilt {\n  ${statements}\n}\n`;
    const layout = quiltOf(text);
    expect(faults(layout, text)).toEqual([]);
    expect(`${key(layout.width)} by ${key(layout.height)}`).toBe(size);
    expectTiles(layout, flattened(layout));
    expect(isSewnStraight(flattened(layout))).toBe(true);
  });

  test('a pattern in centimetres', () => {
    const text = `pattern "M" {\n  units centimetres\n  seam 0.75 cm\n}\n${FABRICS}block B 15 cm {\n  snowball(ink, sand) sand\n  sand ink\n}\nquilt {\n  straight 4 by 4\n  place { B }\n  border cut 6.5 cm ink\n}\n`;
    const layout = quiltOf(text);
    expect(faults(layout, text)).toEqual([]);
    expect(equals(layout.width, mul(fraction(70), fraction(50, 127)))).toBe(true);
    expectTiles(layout, flattened(layout));
  });
});

test('findings of the plane stand at their places', () => {
  const text = `${FABRICS}block B 6" {\n  grid 2" 2" 1" by 1 1\n  ink sand ink\n  sand ink\n}\nquilt {\n  straight 2 by 2\n  place { B }\n  border pieced B\n}\n`;
  expect(faults(blockOf(text, 'B'), text)).toEqual(['grid-sum 5: 2" 2" 1"', 'row-length 7: sand ink']);
});

test('the grain of a directional fabric is turned with what it stands in', () => {
  const text = `fabric stripe #22345c "Stripe" directional\nfabric sand #eadfc8 "Sand"\nblock B 6" {\n  (stripe|sand) (stripe|sand)@90\n  stripe@90 stripe\n}\n`;
  const grains = blockOf(text, 'B').patches.map(({ fabric, grain }) => `${fabric.name} ${grain ? key(grain) : ''}`);
  expect(grains).toEqual(['stripe 0', 'sand ', 'stripe 90', 'sand ', 'stripe 90', 'stripe 0']);
});

test('drunkard\'s path, with its curve', () => {
  const text = `${FABRICS}block B 7" {\n  drunkards_path(ink, sand) drunkards_path(sand, ink)@90\n  drunkards_path(sand, ink)@270 drunkards_path(ink, sand)@180\n}\n`;
  const layout = blockOf(text, 'B');
  expect(faults(layout, text)).toEqual([]);
  expect(layout.patches.map(({ arcs }) => (arcs ?? []).flatMap((arc) => (arc ? [key(arc)] : [])).join())).toEqual(['5/2', '-5/2', '5/2', '-5/2', '5/2', '-5/2', '5/2', '-5/2']);
});

describe('what is missing in a quilt that is being written', () => {
  const BLOCK = `${FABRICS}block Star 6" {\n  ink/sand sand\n  rust ink\n}\n`;

  test.each([
    ['', ['wrong-argument 8: quilt']],
    ['straight 2 by 2', ['wrong-argument 9: straight 2 by 2']],
    ['straight 2 by 2\n  place { }', ['wrong-argument 10: place']],
    ['straight 2 by 2\n  place { Sta }', []],
    ['straight 2 by', []],
    ['on_point 2 by 2\n  place { Star }', ['wrong-argument 9: on_point 2 by 2']],
    ['on_point 2 by 2\n  place { Star }\n  edges snad', []],
    ['on_point 1 by 1\n  place { Star }\n  edges sand', []],
    ['on_point 2 by 2\n  place { Star }\n  between { Sta }\n  edges sand', []],
    ['rows 12"', ['wrong-argument 9: rows 12"']],
    ['straight 9000 by 9000\n  place { Star }', ['too-large 9: straight 9000 by 9000']],
  ])('%s', (statements, expected) => {
    const text = `${BLOCK}quilt {\n  ${statements}\n}\n`;
    expect(faults(quiltOf(text), text)).toEqual(expected);
  });
});

describe('a border at two sides only', () => {
  const text = (border: string): string => `${FABRICS}block B 6" {\n  ink sand\n}\nquilt {\n  straight 2 by 3\n  place { B }\n  ${border}\n}\n`;

  test.each([['border top 0" sides 3" ink', 18, 18], ['border top 3" sides 0" ink corners mitred', 12, 24], ['border top 0" sides 1" ink corners squares rust', 14, 18]])('%s', (border, width, height) => {
    const layout = quiltOf(text(border));
    expect(faults(layout, text(border))).toEqual([]);
    expect([key(layout.width), key(layout.height)]).toEqual([`${width}`, `${height}`]);
    expectTiles(layout, flattened(layout));
  });

  test('one of the two widths is more than none', () => {
    expect(faults(quiltOf(text('border top 0" sides 0" ink')), text('border top 0" sides 0" ink'))).toEqual(['wrong-argument 10: border top 0" sides 0" ink']);
  });
});
