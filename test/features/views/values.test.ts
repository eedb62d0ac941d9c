/** Light and dark: greys, lost seams and the change that mends them, and how many shapes the figure is. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isLost, nearestChange, NEAR } from '../../../server/src/checks/values.ts';
import { figureValue, shapesInQuilt, valueOfFabric } from '../../../server/src/features/views/figure.ts';
import { valuesView } from '../../../server/src/features/views/values.ts';
import { neighbours } from '../../../server/src/geometry/neighbours.ts';
import type { QuiltLayout } from '../../../server/src/geometry/layout.ts';
import { placedPatches } from '../../../server/src/geometry/walk.ts';
import type { Fabric } from '../../../server/src/model/pattern.ts';
import { lightness, type ColourValue } from '../../../server/src/text/colour.ts';
import { quilts, textOf } from '../../geometry/random-quilt.ts';
import { NAMED_COLOURS } from '../../text/named-colours.ts';
import { SAMPLES, sampleText, snapshotBeside } from './samples.ts';

const block = (fabrics: string): string => `${fabrics}block Buoy 4" {\n  one other\n  third third\n}\nquilt {\n  straight 2 by 2\n  place { Buoy }\n}\n`;

describe.each(SAMPLES)('%s', (name) => {
  const snapshot = snapshotBeside(sampleText(name));
  const { scene, table } = valuesView(snapshot, {});

  test('every patch is a grey as light as its fabric', () => {
    const colours = new Map([...snapshot.pattern.fabrics.values()].map((fabric) => [fabric.name, lightness(fabric.colour) ?? 0]));
    const shapes = [...(scene?.blocks ?? []).flatMap(({ shapes: own }) => own), ...(scene?.items ?? []).filter((item) => item.kind === 'shape')];
    expect(shapes.length).toBeGreaterThan(10);
    for (const { fabric, fill } of shapes.filter((shape) => shape.fabric !== '')) {
      expect(fill).toMatch(/^#(..)\1\1$/);
      expect(Math.abs((lightness(fill) ?? 0) - (colours.get(fabric) ?? 0))).toBeLessThan(0.3);
    }
  });

  test('the fabrics are listed from light to dark', () => {
    const values = table?.rows.map(([, value]) => Number(value)) ?? [];
    expect(values).toEqual(values.toSorted((a, b) => b - a));
  });

  test('the shapes of the figure are those that patches make one by one', () => {
    for (const { layout } of snapshot.quilts) expectShapes(layout);
  });
});

test('the shapes of any quilt are those that its patches make one by one', () => {
  fc.assert(fc.property(quilts, (quilt) => {
    const shown = snapshotBeside(textOf(quilt)).shown;
    if (shown) expectShapes(shown.layout);
  }), { numRuns: 80 });
});

test('flipped corners part the figure as one sees it', () => {
  const shown = snapshotBeside('fabric ink #22345c\nfabric sand #eadfc8\nblock Buoy 4" {\n  ink ink\n  ink ink\n  corner sand 2" top_left top_right bottom_left bottom_right\n}\nquilt {\n  straight 2 by 1\n  place { Buoy }\n}\n').shown;
  // Each dark square on point touches its neighbour at a corner only.
  expect(shown && shapesInQuilt(shown.layout, 'dark')).toBe(2);
});

test('marks lie on lost seams, and only there', () => {
  const near = valuesView(snapshotBeside(block('fabric one #22345c\nfabric other #2a3550\nfabric third #eadfc8\n')), {});
  const marks = near.scene?.blocks.flatMap(({ shapes }) => shapes.filter(({ fabric }) => fabric === '')) ?? [];
  expect(marks.length).toBe(1);
  expect(marks[0]?.points.filter((_, i) => i % 2 === 0).every((x) => Math.abs(x - 2) < 0.1)).toBe(true);
  expect(near.notes.join(' ')).toContain('it would show with other lighter, at 27.2');
  const far = valuesView(snapshotBeside(block('fabric one #22345c\nfabric other #4a5a80\nfabric third #eadfc8\n')), {});
  expect(far.scene?.blocks.flatMap(({ shapes }) => shapes.filter(({ fabric }) => fabric === '')) ?? []).toEqual([]);
});

test('the nearest change mends it, and no smaller one does', () => {
  const [fabric] = [...snapshotBeside('fabric ink #22345c\n').pattern.fabrics.values()];
  if (!fabric) throw new Error('no fabric');
  fc.assert(fc.property(fc.constantFrom(...NAMED_COLOURS), fc.constantFrom(...NAMED_COLOURS), fc.constantFrom(...NAMED_COLOURS), ([first], [second], [third]) => {
    const [one, other, beside] = [first, second, third].map((colour, i): Fabric => ({ ...fabric, name: `f${i}`, colour }));
    if (!one || !other || !beside) return;
    fc.pre(isLost(one, other));
    const neighboursOf = (each: Fabric): readonly Fabric[] => [each === one ? other : one, beside];
    const change = nearestChange(one, other, neighboursOf);
    if (!change) return;
    const around = neighboursOf(change.fabric).map(({ colour }) => lightness(colour) ?? 0);
    const from = lightness(change.fabric.colour) ?? 0;
    expect(around.every((value) => Math.abs(value - change.to) > NEAR - 1e-9)).toBe(true);
    expect(change.to > from).toBe(change.way === 'lighter');
    for (const each of [one, other]) {
      const start = lightness(each.colour) ?? 0;
      const values = neighboursOf(each).map(({ colour }) => lightness(colour) ?? 0);
      const tenths = Array.from({ length: 1001 }, (_, tenth) => tenth / 10).filter((to) => Math.abs(to - start) < Math.abs(change.to - from) - 1e-9);
      for (const to of tenths) expect(values.some((value) => Math.abs(value - to) < NEAR + 1e-9)).toBe(true);
    }
  }), { numRuns: 300 });
});

/** Patch by patch over the whole quilt, without regard to blocks. */
function expectShapes(layout: QuiltLayout): void {
  const placed = [...placedPatches(layout)];
  if (placed.some(({ patch }) => patch.role === 'flipped_corner' || patch.arcs)) return;
  const figure = figureValue(placed.map(({ patch }) => patch.fabric));
  if (figure) expect(shapesInQuilt(layout, figure)).toBe(flooded(placed.filter(({ patch }) => valueOfFabric(patch.fabric) === figure).map(({ outline }) => outline)));
  for (const value of ['light', 'medium', 'dark'] as readonly ColourValue[]) {
    expect(shapesInQuilt(layout, value)).toBe(flooded(placed.filter(({ patch }) => valueOfFabric(patch.fabric) === value).map(({ outline }) => outline)));
  }
}

function flooded(outlines: Parameters<typeof neighbours>[0]): number {
  const beside = outlines.map((): number[] => []);
  for (const [a, b] of neighbours(outlines)) {
    beside[a]?.push(b);
    beside[b]?.push(a);
  }
  const reached = new Set<number>();
  let count = 0;
  for (const start of outlines.keys()) {
    if (reached.has(start)) continue;
    count += 1;
    const waiting = [start];
    for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
      if (reached.has(at)) continue;
      reached.add(at);
      waiting.push(...(beside[at] ?? []));
    }
  }
  return count;
}
