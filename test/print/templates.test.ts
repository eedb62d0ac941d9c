/** templates.pdf measured in points, from the file itself, against patches that the layout gives and sums that the plan gives. */
import { beforeAll, describe, expect, test } from 'vitest';
import { fontFiles } from '../../server/src/disk/fonts.ts';
import { toNumber } from '../../server/src/exact/number.ts';
import { foundationOf } from '../../server/src/piecing/foundation.ts';
import { templatesPdf } from '../../server/src/print/templates.ts';
import type { QuiltView } from '../../server/src/snapshot.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { readPdf } from './read-pdf.ts';
import { readPaths, type Corner, type PagePaths, type PathRead } from './read-paths.ts';
import traditional from '../../server/library/traditional.quilt';

const HEAD = 'fabric ink #22345c "Night ferry print"\nfabric rust #a4502e "Rusted chain"\nfabric sand #eadfc8 "Dry sand"\nimport "traditional.quilt"\n';
const NEAR = 0.01;

describe('shapes no ruler cuts', () => {
  const made = madeOf('block Star 12" {\n  le_moyne_star(ink, rust, sand)\n}\nblock Path 6" {\n  drunkards_path(rust, sand)\n}\nblock Kite 6" {\n  box 6 by 6\n  patch ink 0,0 6,0 2,2 0,6\n  patch rust 6,0 6,6 4,4 2,2\n  patch sand 6,6 0,6 2,2 4,4\n}\nblock Half 4" by 2" {\n  half_rectangle(ink, sand)\n}\n', ['Star', 'Path', 'Kite', 'Half']);
  let pages: readonly PagePaths[];
  beforeAll(async () => {
    pages = await readPaths(made.bytes);
  }, 60_000);

  test('each is drawn with the seam line of its patch', () => {
    const seams = pages.flatMap(({ paths }) => paths.filter(isSeamLine));
    const wanted = new Set(made.patches.map(({ outline }) => fingerprint(outline.map(({ x, y }) => [72 * toNumber(x), 72 * toNumber(y)]))));
    const drawn = new Set(seams.map(({ corners, isCurved }) => (isCurved ? '' : fingerprint(corners))).filter((each) => each !== ''));
    expect([...drawn].filter((each) => !wanted.has(each))).toEqual([]);
    expect(drawn.size).toBe(4);
    expect(seams.filter(({ isCurved }) => isCurved)).toHaveLength(2);
  });

  test('the cutting line runs exactly a seam outside every straight side', () => {
    let sides = 0;
    for (const { paths } of pages) {
      const cuts = paths.filter(isCutLine);
      for (const seam of paths.filter((path) => isSeamLine(path) && !path.isCurved)) {
        const cut = cuts.find((each) => seam.corners.every((corner) => isInside(corner, each.corners)));
        if (!cut) throw new Error('a seam line without a cutting line');
        for (const [a, b] of sidesOf(seam.corners)) {
          const heights = sidesOf(cut.corners).map(([p, q]) => [heightOver(a, b, p), heightOver(a, b, q)]).filter(([p = 0, q = 1]) => Math.abs(p - q) < NEAR);
          expect(Math.min(...heights.map(([p = 0]) => Math.abs(p - 18)))).toBeLessThan(NEAR);
          sides += 1;
        }
      }
    }
    expect(sides).toBeGreaterThan(12);
  });

  test('area for area: the diamonds of the star, the half rectangles, the kites and triangles', () => {
    const areas = pages.flatMap(({ paths }) => paths.filter((path) => isSeamLine(path) && !path.isCurved).map(({ corners }) => areaOf(corners) / 72 ** 2));
    // A diamond of the eight-pointed star in a 12" block: side 12/(2+√2), at 45°.
    const side = 12 / (2 + Math.SQRT2);
    for (const area of [side ** 2 * Math.SQRT1_2, 4, 12]) expect(Math.min(...areas.map((each) => Math.abs(each - area)))).toBeLessThan(1e-3);
  });

  test('names and counts are those of the cut list', () => {
    const said = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
    const counted = [...said.matchAll(/, cut (\d+)/g)].reduce((sum, [, count]) => sum + Number(count), 0);
    const templates = made.quilt.plan.pieces.filter(({ shape }) => shape === 'template');
    expect(counted).toBe(templates.reduce((sum, { pieces }) => sum + pieces, 0));
    expect(counted).toBeGreaterThan(10);
    expect(said).toContain('with the template turned over');
  });

  test('partners of a curved seam have their balance marks at the same place of the arc', () => {
    const arcs = pages.flatMap(({ paths }) => {
      const curved = paths.filter((path) => isSeamLine(path) && path.isCurved);
      return curved.map((seam) => paths.filter(isNotch).filter(({ corners: [at] }) => at && boxHolds(seam.corners, at)));
    });
    expect(arcs.map((marks) => marks.length)).toEqual([3, 3]);
  });
});

describe('every page', () => {
  const texts = ['', 'pattern "Sea mail" {\n  paper a4\n}\n', 'pattern "Sea mail" {\n  units centimetres\n}\n', 'pattern "Sea mail" {\n  language de\n}\n'];
  test.each(texts)('has squares of 1 inch and 5 centimetres, and is printed without scaling (%j)', async (pattern) => {
    const { bytes } = madeOf(`block Star 12" {\n  le_moyne_star(ink, rust, sand)\n}\nblock Big 21" {\n  templates\n  ink/sand\n}\n`, ['Star', 'Big'], pattern);
    const [pages, { printScaling, isTagged }] = [await readPaths(bytes), await readPdf(bytes)];
    expect(printScaling).toBe('None');
    expect(isTagged).toBe(true);
    expect(pages.length).toBeGreaterThan(3);
    for (const { paths, width, height } of pages) {
      const squares = paths.filter(isSquare).map(({ corners }) => sideOf(corners));
      expect(Math.min(...squares.map((side) => Math.abs(side - 72)))).toBeLessThan(1e-3);
      expect(Math.min(...squares.map((side) => Math.abs(side - (50 / 25.4) * 72)))).toBeLessThan(1e-3);
      const isMetric = pattern.includes('a4') || pattern.includes('centimetres');
      expect([width, height].map((at) => at.toFixed(2))).toEqual(isMetric ? ['595.28', '841.89'] : ['612.00', '792.00']);
    }
  });
});

test('sheets of a large shape come together at their crossed circles', async () => {
  const { bytes } = madeOf('block Big 20" {\n  templates\n  ink/sand\n}\n', ['Big']);
  const pages = await readPaths(bytes);
  const seams = pages.map(({ paths }) => paths.find((path) => isSeamLine(path)));
  // Three across, four down, three of the twelve blank.
  expect(pages).toHaveLength(9);
  let joined = 0;
  for (const [i, one] of pages.entries()) {
    for (const [k, other] of pages.entries()) {
      const [a, b] = [seams[i]?.corners[0], seams[k]?.corners[0]];
      if (i === k || !a || !b) continue;
      const shared = crossesOf(one).filter((p) => crossesOf(other).some((q) => Math.hypot(q[0] - b[0] - p[0] + a[0], q[1] - b[1] - p[1] + a[1]) < NEAR));
      if (shared.length === 2) joined += 1;
    }
  }
  // Every neighbour both ways: 5 side by side, 6 one above the other.
  expect(joined).toBe(22);
  expect(sideOf(seams[0]?.corners ?? [])).toBeCloseTo(1440 * Math.SQRT2, 2);
});

describe('on paper', () => {
  const made = madeOf('block Ferry 6" {\n  foundation\n  square_in_square(ink, sand) ink\\sand\n  ink/sand four_patch(rust, ink)\n}\n', ['Ferry']);

  test('every patch is drawn mirrored, at true size, and numbered in its order', async () => {
    const pages = await readPaths(made.bytes);
    const drawn = pages.flatMap(({ paths }) => paths.filter(({ isClosed, isDashed, width }) => isClosed && !isDashed && Math.abs(width - 0.75) < 1e-6));
    const wanted = made.patches.map(({ outline }) => fingerprint(outline.map(({ x, y }) => [72 * (6 - toNumber(x)), 72 * toNumber(y)]).reverse() as unknown as Corner[]));
    expect(drawn.map(({ corners }) => fingerprint(corners)).sort()).toEqual(wanted.sort());
    const [layout] = made.quilt.layout.blocks;
    const plan = layout && foundationOf(layout.layout);
    if (plan?.kind !== 'foundation') throw new Error('not on paper');
    const numbers = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).filter((text) => /^[A-Z]\d+$/.test(text));
    expect(numbers.sort()).toEqual(plan.foundation.sections.flatMap(({ steps }, i) => steps.map((_, k) => `${'ABCDEFGH'.charAt(i)}${k + 1}`)).sort());
  });

  test('the number stands on its patch', async () => {
    const { bytes } = madeOf('block Buoy 6" {\n  foundation\n  grid 1 2 by 1\n  ink sand\n}\n', ['Buoy']);
    const [page] = await readPaths(bytes);
    const narrow = page?.paths.find(({ corners, isDashed, isClosed }) => isClosed && !isDashed && Math.abs(areaOf(corners) - 2 * 6 * 72 ** 2) < 1);
    const ink = page?.texts.find(({ text }) => text === 'A1');
    if (!narrow || !ink) throw new Error('not drawn');
    expect(isInside([ink.x, ink.y], narrow.corners)).toBe(true);
    // Left in the block, right on paper.
    expect(Math.max(...narrow.corners.map(([x]) => x))).toBeCloseTo(Math.max(...(page?.paths ?? []).filter(({ isDashed, isClosed }) => !isDashed && isClosed).filter(({ corners }) => areaOf(corners) > 2 * 6 * 72 ** 2 - 1 && areaOf(corners) < 37 * 72 ** 2).flatMap(({ corners }) => corners.map(([x]) => x))), 2);
  });

  test('its patches are cut roughly: 1/4" and the seam larger on each side', () => {
    const pieces = made.quilt.plan.pieces.filter((piece) => piece.for === 'Ferry');
    expect(pieces.length).toBeGreaterThan(3);
    for (const { finished, exactCut, method } of pieces) {
      expect(method).toBe('plain');
      expect(toNumber(exactCut.width) - toNumber(finished.width)).toBeCloseTo(1, 9);
      expect(toNumber(exactCut.height) - toNumber(finished.height)).toBeCloseTo(1, 9);
    }
  });
});

test('nothing is printed where a ruler cuts everything', () => {
  expect(madeOf('block Buoy 6" {\n  ink sand\n  sand ink/sand\n}\n', ['Buoy']).bytes).toHaveLength(0);
});

test('the same text gives the same bytes', () => {
  const bytes = (): Uint8Array => madeOf('block Path 7" {\n  drunkards_path(rust, sand)\n}\n', ['Path']).bytes;
  expect(Buffer.compare(bytes(), bytes())).toBe(0);
});

interface Made {
  readonly bytes: Uint8Array;
  readonly quilt: QuiltView;
  readonly patches: readonly QuiltView['layout']['patches'][number][];
}

/** A quilt of rows 84" wide, each block in one of its own; of a single block, that block. */
function madeOf(blocks: string, names: readonly string[], pattern = ''): Made {
  const head = HEAD.split('\n').filter((line) => !line.startsWith('fabric rust') || blocks.includes('rust')).join('\n');
  const setting = names.length === 1 ? `straight 1 by 1\n  place { ${names[0] ?? ''} }` : `rows 84"\n${names.map((name) => `  row ${name}`).join('\n')}`;
  const snapshot = snapshotOfText(`${pattern}${head}\n${blocks}\nquilt {\n  ${setting}\n}\n`, { 'traditional.quilt': traditional });
  if (snapshot.hasErrors) throw new Error(snapshot.problems.map(({ message }) => message).join('\n'));
  const [quilt] = snapshot.quilts;
  if (!quilt) throw new Error('no quilt');
  return { quilt, bytes: templatesPdf({ pattern: snapshot.pattern, quilt, fonts: fontFiles() }) ?? new Uint8Array(), patches: quilt.layout.blocks.flatMap(({ layout }) => layout.patches) };
}

function isSeamLine({ isClosed, isDashed, width }: PathRead): boolean {
  return isClosed && isDashed && Math.abs(width - 0.5) < 1e-6;
}

function isCutLine({ isClosed, isDashed, width, isFilled }: PathRead): boolean {
  return isClosed && !isDashed && !isFilled && Math.abs(width - 0.75) < 1e-6;
}

function isNotch({ isClosed, isDashed, width, corners: [a, b, c] }: PathRead): boolean {
  return !isClosed && !isDashed && c === undefined && a !== undefined && b !== undefined && Math.abs(width - 0.6) < 1e-6 && Math.abs(Math.hypot(a[0] - b[0], a[1] - b[1]) - 18) < NEAR;
}

function isSquare({ corners, isClosed, isCurved }: PathRead): boolean {
  return isClosed && !isCurved && corners.length === 4 && sidesOf(corners).every(([a, b]) => Math.abs(Math.hypot(a[0] - b[0], a[1] - b[1]) - sideOf(corners)) < 1e-3 && (Math.abs(a[0] - b[0]) < 1e-3 || Math.abs(a[1] - b[1]) < 1e-3));
}

/** Crossed circles: the middles of small curved outlines. */
function crossesOf({ paths }: PagePaths): readonly Corner[] {
  return paths
    .filter(({ isCurved, isFilled, corners, isDashed }) => isCurved && !isFilled && !isDashed && Math.max(...corners.map(([x]) => x)) - Math.min(...corners.map(([x]) => x)) < 12)
    .map(({ corners }) => [(Math.max(...corners.map(([x]) => x)) + Math.min(...corners.map(([x]) => x))) / 2, (Math.max(...corners.map(([, y]) => y)) + Math.min(...corners.map(([, y]) => y))) / 2]);
}

function sidesOf(corners: readonly Corner[]): readonly (readonly [Corner, Corner])[] {
  return corners.map((corner, i) => [corner, corners[(i + 1) % corners.length] ?? corner]);
}

function sideOf([a, b]: readonly Corner[]): number {
  return a && b ? Math.hypot(a[0] - b[0], a[1] - b[1]) : 0;
}

function heightOver([ax, ay]: Corner, [bx, by]: Corner, [x, y]: Corner): number {
  return ((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / Math.hypot(bx - ax, by - ay);
}

function areaOf(corners: readonly Corner[]): number {
  return Math.abs(sidesOf(corners).reduce((sum, [a, b]) => sum + (a[0] * b[1] - a[1] * b[0]) / 2, 0));
}

function isInside([x, y]: Corner, corners: readonly Corner[]): boolean {
  return sidesOf(corners).reduce((inside, [a, b]) => (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]) ? !inside : inside), false);
}

function boxHolds(corners: readonly Corner[], [x, y]: Corner): boolean {
  const [xs, ys] = [corners.map(([at]) => at), corners.map(([, at]) => at)];
  return x > Math.min(...xs) - 1 && x < Math.max(...xs) + 1 && y > Math.min(...ys) - 1 && y < Math.max(...ys) + 1;
}

/** Shared by congruent polygons, mirror images too: sides and diagonals in order, to a hundredth of a point, from where they read least. */
function fingerprint(corners: readonly Corner[]): string {
  const read = (list: readonly Corner[]): string[] => list.map((a, i) => {
    const [b, c] = [list[(i + 1) % list.length] ?? a, list[(i + 2) % list.length] ?? a];
    return `${Math.hypot(a[0] - b[0], a[1] - b[1]).toFixed(1)} ${Math.hypot(a[0] - c[0], a[1] - c[1]).toFixed(1)}`;
  });
  const least = (parts: string[]): string => parts.map((_, i) => [...parts.slice(i), ...parts.slice(0, i)].join('; ')).sort()[0] ?? '';
  return [least(read(corners)), least(read([...corners].reverse()))].sort()[0] ?? '';
}
