/** Whole patterns in the language arrive at the sizes, counts and lengths others print for them. */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import { planCutting } from '../../server/src/cutting/build.ts';
import { cuttingMarkdown } from '../../server/src/booklet/cutting-list.ts';
import { patternJson } from '../../server/src/booklet/pattern-json.ts';
import type { Piece } from '../../server/src/cutting/plan.ts';
import { hostOf, made } from './from-text.ts';
import { cutLines, n } from './layouts.ts';
import { PRINTED_PATTERNS } from './printed-patterns.ts';

describe('printed patterns', () => {
  test.each(PRINTED_PATTERNS)('$name', ({ text, cuts, yards, backing, binding }) => {
    const { plan } = made(text);
    expect(cutLines(plan.pieces).sort()).toEqual([...cuts].sort());
    for (const [name, printed] of Object.entries(yards)) {
      const planned = plan.fabrics.find(({ fabric }) => fabric.name === name);
      expect(toNumber(planned?.length ?? n(1000)), name).toBeLessThanOrEqual(toNumber(n(printed)) * 36);
    }
    if (backing) expect([plan.backing?.panels, toNumber(plan.backing?.buy ?? n(0)) / 36]).toEqual([backing.panels, toNumber(n(backing.yards))]);
    if (binding !== undefined) expect(plan.binding?.strips).toBe(binding);
  });
});

describe('the same plan every time', () => {
  test.each(PRINTED_PATTERNS)('$name', ({ text }) => expect(JSON.stringify(made(text).plan.pieces.map(({ cut, cutCount }) => [cut, cutCount]))).toBe(JSON.stringify(made(text).plan.pieces.map(({ cut, cutCount }) => [cut, cutCount]))));
});

describe('on point', () => {
  const text = (block: string): string => `fabric a #808080 "a" width 60"
fabric b #404040 "b" width 60"
block Plain ${block}" {
  a
}
quilt {
  on_point 3 by 4
  place { Plain }
  edges b
}`;

  /** Moonlight Quilters Guild, http://www.moonlightquilters.org/tip-on-point-settings/: 6" block, 9 3/4, 5 1/8, plain squares 6 1/2. */
  test('a 6" block: 18 squares, 10 sides, 4 corners', () => {
    expect(cutLines(made(text('6')).plan.pieces)).toEqual(['a: 18 of 6 1/2', 'b: 3 of 9 3/4 twice on the diagonal', 'b: 2 of 5 1/8 once on the diagonal']);
  });

  test('floating: larger triangles, all alike', () => {
    const floating = text('6').replace('edges b', 'edges b float 1"');
    // 8.4853 + 2 + 1.2071 = 11.69, 4.2426 + 2 + 0.8536 = 7.096
    expect(cutLines(made(floating).plan.pieces)).toEqual(['a: 18 of 6 1/2', 'b: 3 of 11 3/4 twice on the diagonal', 'b: 2 of 7 1/8 once on the diagonal']);
  });
});

describe('colourways, sizes and units', () => {
  const text = `pattern "Buoys" {
  units centimetres
  seam 0.75 cm
}
fabric ink #22345c "ink"
fabric sand #eadfc8 "sand"
block Buoy 20 cm {
  ink/sand sand
  sand ink/sand
}
quilt {
  straight 3 by 4
  place { Buoy }
  border 5 cm ink
  backing sand
  binding cut 6 cm ink
}
size small 3 by 4
size large 6 by 8
`;

  test('metric sizes are on the millimetre; a larger quilt has more pieces of the same size', () => {
    const { quilts } = made(text);
    const cuts = quilts.map(({ plan }) => plan.pieces.filter((piece) => piece.for === 'Buoy').map(({ cut, cutCount }) => [(toNumber(cut.width) * 2.54).toFixed(3), cutCount]));
    expect(cuts).toEqual([
      [['12.600', 12], ['12.600', 12], ['11.500', 24]],
      [['12.600', 48], ['12.600', 48], ['11.500', 96]],
    ]);
  });
});

describe('parts of a quilt', () => {
  const head = `fabric a #808080 "a"
fabric b #404040 "b"
block Four 6" {
  a b
  b a
}
`;

  test('sashing without cornerstones: short strips, and long ones joined', () => {
    const { plan } = made(`${head}quilt {\n  straight 8 by 3\n  place { Four }\n  sashing 1" a\n}\n`);
    // 8 · 6 + 7 · 1 = 55; two rows between: 2 x 55 1/2 = 111 from 3 strips of 40.
    expect(cutLines(plan.pieces.filter((piece) => piece.for === 'sashing'))).toEqual(['a: 3 of 1 1/2 x 40 from strips joined', 'a: 21 of 1 1/2 x 6 1/2']);
  });

  test('a pieced border is its blocks; the borders around it keep their numbers', () => {
    const { plan } = made(`${head}block Unit 6" by 3" {\n  a/b b\\a\n}\nquilt {\n  straight 4 by 5\n  place { Four }\n  border 3" b\n  border pieced Unit corner a\n  border 2" a\n}\n`);
    expect(plan.borders.map(({ number }) => number)).toEqual([1, 3]);
    expect(cutLines(plan.pieces.filter((piece) => piece.for === 'Unit'))).toEqual(['a: 22 of 3 7/8 two at a time', 'b: 22 of 3 7/8 two at a time']);
    expect(cutLines(plan.pieces.filter((piece) => piece.for === 'border 2'))).toEqual(['a: 4 of 3 1/2']);
  });

  test('a block as the edge is cut whole', () => {
    const { plan } = made(`${head}quilt {\n  on_point 4 by 5\n  place { Four }\n  between { a }\n  edges Four\n  corners b\n}\n`);
    expect(cutLines(plan.pieces)).toEqual(['a: 68 of 3 1/2', 'a: 12 of 6 1/2', 'b: 68 of 3 1/2', 'b: 2 of 5 1/8 once on the diagonal']);
  });

  test('mitred borders and binding of a quilt on point', () => {
    const { plan } = made(`${head}quilt {\n  on_point 3 by 4\n  place { Four }\n  edges a\n  border 3" b corners mitred\n  binding cut 2 1/4" a\n}\n`);
    // 3 · 6√2 + 6 = 31.456 and 4 · 6√2 + 6 = 39.941, + 1.2071: 2 of 32 3/4 and 2 of 41 1/4 are 148", 4 strips of 40 joined 158 1/2".
    // 2 (31.456 + 39.941) + 10 = 152.8.
    expect(cutLines(plan.pieces.filter(({ shape }) => shape === 'strip'))).toEqual(['a: 4 of 2 1/4 x 40 from strips joined', 'b: 4 of 3 1/2 x 40 from strips joined']);
  });
});

describe('every sample is planned', () => {
  const folder = new URL('../../samples/', import.meta.url);
  const samples = readdirSync(folder).filter((name) => name.endsWith('.quilt'));

  test.each(samples)('%s', (name) => {
    const { quilts } = made(readFileSync(new URL(name, folder), 'utf8'), hostOf(folder));
    for (const { plan, layout } of quilts) {
      expect(plan.tooWide).toEqual([]);
      // Every patch is cut once: those of blocks, and those of the quilt but for the border strips.
      const placed = layout.placements.reduce((total, { block }) => total + block.patches.length, 0) + layout.patches.filter(({ role }) => role !== 'border').length;
      const isPatch = ({ method, shape, for: use }: Piece): boolean => use !== 'binding' && !(shape === 'strip' && use.startsWith('border') && method !== 'template');
      expect(plan.pieces.filter(isPatch).reduce((total, piece) => total + piece.pieces, 0)).toBe(placed);
    }
  });

  test.each(samples)('%s: its outputs are written', (name) => {
    const source = made(readFileSync(new URL(name, folder), 'utf8'), hostOf(folder));
    const parsed = JSON.parse(patternJson(source)) as { sizes: unknown[] };
    expect(parsed.sizes.length).toBe(source.quilts.length);
    for (const quilt of source.quilts) expect(cuttingMarkdown(source, quilt)).not.toMatch(/undefined|NaN|\[object/);
  });
});

describe('a quilt of the largest kind', () => {
  test('40,000 placed patches are planned in a moment', () => {
    const { pattern, quilts } = made(`fabric a #808080 "a"\nfabric b #404040 "b"\nblock Star 12" {\n  a/b b\\a a/b b\\a\n  a b b a\n  a b b a\n  a/b b\\a a/b b\\a\n}\nquilt {\n  straight 40 by 42\n  place { Star }\n}\n`);
    const [quilt] = quilts;
    if (!quilt) throw new Error('no quilt');
    const start = performance.now();
    const plan = planCutting(quilt.layout, pattern);
    const took = performance.now() - start;
    expect(plan.pieces.reduce((total, piece) => total + piece.pieces, 0)).toBe(40 * 42 * 24);
    expect(took).toBeLessThan(500);
  });
});
