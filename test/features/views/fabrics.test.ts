/** The fabric sheet: what a tile shows is what its colourway gives, no two tiles look alike, and the figure is what it is said to be. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Scene } from '../../../server/src/drawing/scene.ts';
import { exchangesOf, MOST_SHOWN } from '../../../server/src/features/views/exchanges.ts';
import { fabricsView, fabricWriting } from '../../../server/src/features/views/fabrics.ts';
import { lookedAt } from '../../../server/src/features/views/looked-at.ts';
import { readabilityOf } from '../../../server/src/features/views/readability.ts';
import { withEdits } from '../../../server/src/features/refactor/edit.ts';
import { toNumber } from '../../../server/src/exact/number.ts';
import { neighbours } from '../../../server/src/geometry/neighbours.ts';
import type { BlockLayout } from '../../../server/src/geometry/layout.ts';
import { lightness } from '../../../server/src/text/colour.ts';
import { quilts, textOf } from '../../geometry/random-quilt.ts';
import { NAMED_COLOURS } from '../../text/named-colours.ts';
import { colourAt } from './looks.ts';
import { SAMPLES, sampleText, snapshotBeside } from './samples.ts';

const many = (count: number): string => {
  const names = Array.from({ length: count }, (_, i) => `f${i}`);
  return `${names.map((name, i) => `fabric ${name} ${NAMED_COLOURS[i * 7]?.[0] ?? ''}\n`).join('')}block Row 6" by 1" { ${names.join('|')} }\nquilt {\n  straight 1 by 2\n  place { Row }\n}\n`;
};

describe.each([...SAMPLES.map((name) => [name, sampleText(name)] as const), ['five fabrics', many(5)] as const, ['eight fabrics', many(8)] as const])('%s', (_, text) => {
  const snapshot = snapshotBeside(text);
  const block = lookedAt(snapshot, {});
  const view = fabricsView(snapshot, {});

  test('a tile becomes a colourway that gives the colours shown', () => {
    for (const tile of view.tiles.filter(({ isSet }) => !isSet)) {
      const writing = fabricWriting(snapshot, {}, tile.id);
      const after = snapshotBeside(withEdits(snapshot, writing?.edits ?? []).document.text);
      expect(after.problems.map(({ message }) => message)).toEqual(snapshot.problems.map(({ message }) => message));
      const colorway = writing?.colorway;
      const own = lookedAt(after, { colorway });
      expect(own?.name).toBe(block?.name);
      const part = tileScene(view.scene, tile);
      for (const { x, y } of spots(own?.scene, 40)) expect(colourAt(part, x, y), `${tile.name} at ${x} ${y}`).toBe(colourAt(own?.scene, x, y));
    }
  });

  test('the fabrics as they are come first, and write nothing', () => {
    expect(view.tiles[0]).toMatchObject({ isSet: true, action: undefined });
    expect(fabricWriting(snapshot, {}, view.tiles[0]?.id ?? '')).toBeUndefined();
    expect(fabricWriting(snapshot, {}, '9.9.9')).toBeUndefined();
  });

  test('no two look alike, turned or mirrored', () => {
    const { width, height } = block?.scene ?? { width: 0, height: 0 };
    const looks = view.tiles.map((tile) => symmetricLooks(tileScene(view.scene, tile), width, height));
    looks.forEach((one, i) => looks.slice(i + 1).forEach((other) => expect(one.some((look) => look === other[0])).toBe(false)));
  });

  test('after the first the most readable comes first', () => {
    const figures = view.tiles.slice(1).map(({ detail }) => Number(/reads (\d+)/.exec(detail)?.[1]));
    expect(figures).toEqual(figures.toSorted((a, b) => b - a));
  });
});

test('no more than a stated number are shown', () => {
  const { shown, different, pairsOnly } = exchangesOf(blockOf(many(5)));
  // A row of five has 120 orders, each of which is another one mirrored.
  expect([shown.length, different, pairsOnly]).toEqual([MOST_SHOWN, 60, false]);
  expect(fabricsView(snapshotBeside(many(5)), {}).notes[0]).toContain('the 24 that read best of 60');
  const eight = exchangesOf(blockOf(many(8)));
  expect(eight.pairsOnly).toBe(true);
  expect(fabricsView(snapshotBeside(many(8)), {}).notes[0]).toContain('Only two at a time');
});

describe('the figure', () => {
  test('of two fabrics beside each other is the difference of their lightness', () => {
    fc.assert(fc.property(fc.constantFrom(...NAMED_COLOURS), fc.constantFrom(...NAMED_COLOURS), ([one, a], [other, b]) => {
      const layout = blockOf(`fabric one ${one}\nfabric other ${other}\nblock Four 4" {\n  one other\n  other one\n}\nquilt {\n  straight 1 by 1\n  place { Four }\n}\n`);
      expect(readabilityOf(layout).difference).toBeCloseTo(Math.abs(a - b), 2);
    }));
  });

  test('is the mean over the seams, by length: worked out from pairs of neighbours', () => {
    fc.assert(fc.property(quilts, (quilt) => {
      const layout = blockOf(textOf(quilt));
      fc.pre(layout.patches.every(({ arcs, role }) => !arcs && role !== 'flipped_corner'));
      const outlines = layout.patches.map(({ outline }) => outline);
      let [length, weighed] = [0, 0];
      for (const [a, b] of neighbours(outlines)) {
        const shared = sharedLength(outlines[a] ?? [], outlines[b] ?? []);
        length += shared;
        weighed += shared * Math.abs((lightness(layout.patches[a]?.fabric.colour ?? '') ?? 0) - (lightness(layout.patches[b]?.fabric.colour ?? '') ?? 0));
      }
      const found = readabilityOf(layout);
      expect(found.length).toBeCloseTo(length, 6);
      expect(found.difference ?? 0).toBeCloseTo(length === 0 ? 0 : weighed / length, 6);
    }), { numRuns: 60 });
  });
});

test('a curved seam is as long as its curve', () => {
  const layout = blockOf('fabric ink #22345c\nfabric sand #eadfc8\nblock Fan 4" {\n  patch ink 0,0 3,0 arc 3 0,3\n  patch sand 3,0 4,0 4,4 0,4 0,3 arc -3\n}\nquilt {\n  straight 1 by 1\n  place { Fan }\n}\n');
  expect(readabilityOf(layout).length).toBeCloseTo((3 * Math.PI) / 2, 6);
});

type Outline = BlockLayout['patches'][number]['outline'];

/** In doubles: the overlap of every pair of edges that run opposite ways on one line. */
function sharedLength(one: Outline, other: Outline): number {
  const edges = (outline: Outline): number[][] => outline.map(({ x, y }, i) => [x, y, outline[(i + 1) % outline.length]?.x ?? x, outline[(i + 1) % outline.length]?.y ?? y].map(toNumber));
  let total = 0;
  for (const [ax = 0, ay = 0, bx = 0, by = 0] of edges(one)) {
    const length = Math.hypot(bx - ax, by - ay);
    const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
    for (const [cx = 0, cy = 0, dx = 0, dy = 0] of edges(other)) {
      const off = (x: number, y: number): number => Math.abs((x - ax) * uy - (y - ay) * ux);
      const along = (x: number, y: number): number => (x - ax) * ux + (y - ay) * uy;
      if (off(cx, cy) > 1e-9 || off(dx, dy) > 1e-9) continue;
      total += Math.max(0, Math.min(length, along(cx, cy)) - Math.max(0, along(dx, dy)));
    }
  }
  return total;
}

function blockOf(text: string): BlockLayout {
  const found = lookedAt(snapshotBeside(text), {});
  if (!found) throw new Error('no block');
  return found.layout;
}

/** The part of a sheet that a tile covers, as a scene of its own with sides of 1. */
function tileScene(scene: Scene | undefined, { x, y, width, height }: { readonly x: number; readonly y: number; readonly width: number; readonly height: number }): Scene | undefined {
  return scene && { ...scene, width: 1, height: 1, items: scene.items.map((item) => (item.kind === 'shape' ? { ...item, points: item.points.map((value, i) => (i % 2 === 0 ? (value - x) / width : (value - y) / height)), ...(item.arcs && { arcs: item.arcs.map((radius) => radius / width) }) } : item)) };
}

/** Points of the unit square that lie well inside patches, not on seams. */
function spots(scene: Scene | undefined, count: number): readonly { readonly x: number; readonly y: number }[] {
  expect(scene).toBeDefined();
  return Array.from({ length: count }, (_, i) => ({ x: ((i * 0.618034 + 0.0317) % 1), y: ((i * 0.754878 + 0.0593) % 1) }));
}

/** What one sees at many points, for each way of turning and mirroring. */
function symmetricLooks(scene: Scene | undefined, width: number, height: number): readonly string[] {
  const square: readonly ((x: number, y: number) => [number, number])[] = [(x, y) => [1 - y, x], (x, y) => [y, 1 - x], (x, y) => [y, x], (x, y) => [1 - y, 1 - x]];
  const ways: readonly ((x: number, y: number) => [number, number])[] = [(x, y) => [x, y], (x, y) => [1 - x, 1 - y], (x, y) => [1 - x, y], (x, y) => [x, 1 - y], ...(Math.abs(width - height) < 1e-9 ? square : [])];
  return ways.map((way) => spots(scene, 200).map(({ x, y }) => colourAt(scene, ...way(x, y))).join());
}
