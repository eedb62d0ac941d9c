/** Every block of the library files: its name, its layout as text, and that it tiles, judged apart from the tool's own checks. */
import polygonClipping from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import type { BlockLayout, Patch } from '../../server/src/geometry/layout.ts';
import { formatTree } from '../../server/src/syntax/format.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { ALWAYS_THERE, EVERY_BLOCK, LIBRARY, TRADITIONAL, cellOf, cornersOf, laidOut, read, type Corner, type LaidOut } from './blocks.ts';
import { NUMBERS, PATCHES } from './counts.ts';

describe('the files', () => {
  test.each(Object.entries(LIBRARY))('%s has no problem by itself', (_, text) => expect(read(text).problems).toEqual([]));

  test('traditional is in canonical layout', () => expect(formatTree(parse(documentOf('library', LIBRARY.traditional)))).toBe(LIBRARY.traditional));

  test('at least forty traditional blocks', () => expect(TRADITIONAL.length).toBeGreaterThanOrEqual(40));

  test('names are plain, each once, and none hides a block that is always there', () => {
    const names = EVERY_BLOCK.map(({ name }) => name);
    expect(names.filter((name) => !/^[a-z][a-z0-9_]*$/.test(name))).toEqual([]);
    expect(new Set(names).size).toBe(names.length);
  });

  test('every traditional block says in a line above it how it is built', () => {
    const lines = LIBRARY.traditional.split('\n');
    const silent = lines.filter((line, index) => line.startsWith('block ') && !/^\/\/ [A-Z].*\.$/.test(lines[index - 1] ?? ''));
    expect(silent).toEqual([]);
  });

  test('two or three fabrics must be given, and nothing else', () => {
    const must = TRADITIONAL.map(({ name, parameters }) => ({ name, kinds: parameters.filter(({ hasDefault }) => !hasDefault).map(({ kind }) => kind) }));
    expect(must.filter(({ kinds }) => kinds.length < 2 || kinds.length > 3 || kinds.includes('number'))).toEqual([]);
  });

  test('with a name, and without one, an import hides nothing of the pattern', () => {
    const { problems, shown } = read(`import "traditional"
import "traditional" as trad
fabric ink #22345c
fabric sand #eadfc8
block pinwheel 6" {
  ink sand
  sand ink
}
block Star 6" {
  trad.shoo_fly(ink, sand, trad.pinwheel(sand, ink))
}
quilt {
  straight 2 by 1
  place { pinwheel Star }
}
`);
    expect(problems.map(({ message }) => message)).toEqual([]);
    expect(shown?.layout.blocks.map(({ layout }) => layout.patches.length)).toEqual([4, 12 + 8]);
  });
});

const CELLS = EVERY_BLOCK.map(cellOf);
const LARGE = laidOut(CELLS);
const SMALL = laidOut(CELLS, '4');

describe.each(EVERY_BLOCK.map((definition) => [definition.name, cellOf(definition)] as const))('%s', (name, cell) => {
  const { layout, problems } = found(LARGE, cell);

  test('has no finding, and as many patches as drawn', () => {
    expect(problems).toEqual([]);
    expect(layout.findings).toEqual([]);
    expect(layout.patches.length).toBe(PATCHES[name]);
  });

  test('tiles', () => expectTiled(cell, layout));

  test('has the same patches at another size', () => {
    const texts = (of: BlockLayout, scale: number): string[] => of.patches.map((patch) => textOf(cornersOf(patch, scale)));
    expect(texts(found(SMALL, cell).layout, 3)).toEqual(texts(layout, 1));
  });
});

const NUMBERED = EVERY_BLOCK.flatMap((definition) => (NUMBERS[definition.name] ?? []).map((more) => cellOf(definition).replace(')', `, ${more})`)));

describe('with other numbers', () => {
  const laid = laidOut(NUMBERED);

  test.each(NUMBERED)('%s tiles', (cell) => {
    const { layout, problems } = found(laid, cell);
    expect([...problems, ...layout.findings]).toEqual([]);
    expectTiled(cell, layout);
  });

  test('every number is tried', () => {
    const numbered = EVERY_BLOCK.filter(({ parameters }) => parameters.some(({ kind }) => kind === 'number'));
    expect(numbered.map(({ name }) => name).sort()).toEqual(Object.keys(NUMBERS).sort());
  });
});

describe('a middle may be a block', () => {
  const frames = TRADITIONAL.filter(({ parameters }) => parameters.some((parameter) => parameter.name === 'middle' && parameter.hasDefault)).map(cellOf);
  const within = (cell: string): string => cell.replace(')', ', middle: pinwheel(f2, f3))');
  const laid = laidOut(frames.map(within));

  test('in several families', () => expect(frames.length).toBeGreaterThanOrEqual(6));

  test.each(frames)('%s', (cell) => {
    const { layout, problems } = found(laid, within(cell));
    expect([...problems, ...layout.findings]).toEqual([]);
    expect(layout.patches.length).toBe(found(LARGE, cell).layout.patches.length - 1 + 8);
    expectTiled(cell, layout);
  });
});

test('what is always there and what is traditional is all counted', () => {
  expect(Object.keys(PATCHES).sort()).toEqual([...ALWAYS_THERE, ...TRADITIONAL].map(({ name }) => name).sort());
});

function found(laid: ReadonlyMap<string, LaidOut>, cell: string): LaidOut {
  const one = laid.get(cell);
  if (!one) throw new Error(`no ${cell}`);
  return one;
}

/** Areas by plain arithmetic, and the union of the patches by polygon-clipping; arcs as chords of a degree. */
function expectTiled(cell: string, layout: BlockLayout): void {
  const [width, height] = [toNumber(layout.width), toNumber(layout.height)];
  const base = layout.patches.filter(({ role }) => role !== 'flipped_corner');
  const total = base.reduce((sum, patch) => sum + areaOf(patch), 0);
  expect(total, cell).toBeCloseTo(width * height, 8);
  for (const [x, y] of layout.patches.flatMap((patch) => cornersOf(patch, 1))) {
    expect(x >= -1e-9 && x <= width + 1e-9 && y >= -1e-9 && y <= height + 1e-9, `${cell}: ${x}, ${y}`).toBe(true);
  }
  const union = polygonClipping.union([], ...base.map((patch) => [rounded(chords(patch))]));
  const covered = union.flat().reduce((sum, ring) => sum + shoelace(ring), 0);
  expect(Math.abs(covered - width * height), cell).toBeLessThan(base.some(({ arcs }) => arcs) ? 0.02 : 1e-6);
}

/** The polygon, and a circle's segment added or taken for each bent edge: r²(θ − sin θ)/2. */
function areaOf(patch: Patch): number {
  const corners = cornersOf(patch, 1);
  const segments = corners.map((from, index) => {
    const [radius, to] = [radiusAt(patch, index), corners[(index + 1) % corners.length] ?? from];
    if (radius === 0) return 0;
    const angle = 2 * Math.asin(Math.hypot(to[0] - from[0], to[1] - from[1]) / (2 * Math.abs(radius)));
    return (Math.sign(radius) * radius ** 2 * (angle - Math.sin(angle))) / 2;
  });
  return shoelace(corners) + segments.reduce((sum, area) => sum + area, 0);
}

function radiusAt({ arcs }: Patch, index: number): number {
  const radius = arcs?.[index];
  return radius ? toNumber(radius) : 0;
}

/** Clockwise on the screen is more than zero. */
function shoelace(corners: readonly Corner[]): number {
  return corners.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = corners[(index + 1) % corners.length] ?? [x, y];
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}

/** An arc that bulges out of a patch that runs clockwise has its centre on the right of the edge. */
function chords(patch: Patch): Corner[] {
  const corners = cornersOf(patch, 1);
  return corners.flatMap((from, index): Corner[] => {
    const [radius, to] = [radiusAt(patch, index), corners[(index + 1) % corners.length] ?? from];
    if (radius === 0) return [from];
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const chord = Math.hypot(dx, dy);
    const inward = (Math.sign(radius) * Math.sqrt(Math.max(radius ** 2 - (chord / 2) ** 2, 0))) / chord;
    const centre: Corner = [from[0] + dx / 2 - dy * inward, from[1] + dy / 2 + dx * inward];
    const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
    const sweep = Math.sign(radius) * 2 * Math.asin(Math.min(chord / (2 * Math.abs(radius)), 1));
    const steps = Math.max(Math.round(Math.abs(sweep) * (180 / Math.PI)), 1);
    return Array.from({ length: steps }, (_, step): Corner => {
      const angle = start + (sweep * step) / steps;
      return [centre[0] + Math.abs(radius) * Math.cos(angle), centre[1] + Math.abs(radius) * Math.sin(angle)];
    });
  });
}

function rounded(ring: readonly Corner[]): [number, number][] {
  return ring.map(([x, y]) => [Math.round(x * 1e8) / 1e8, Math.round(y * 1e8) / 1e8]);
}

function textOf(corners: readonly Corner[]): string {
  return corners.map(([x, y]) => `${x.toFixed(7)},${y.toFixed(7)}`).join(' ');
}
