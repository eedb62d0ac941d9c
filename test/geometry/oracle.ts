/** Judges of a finished layout that share nothing with the code that made it: Clipper2, polygon-clipping, and the exact tiling check. */
import { expect } from 'vitest';
import { ZERO, toNumber } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { signedArea } from '../../server/src/exact/polygon.ts';
import type { Polygon } from '../../server/src/exact/polygon.ts';
import type { BlockLayout, QuiltLayout } from '../../server/src/geometry/layout.ts';
import { checkTiling } from '../../server/src/geometry/tiling.ts';
import { cornersOf } from '../../server/src/geometry/move.ts';
import { placedPatches } from '../../server/src/geometry/walk.ts';
import { askPolygonClipping, clipperDifference } from './tiling-oracle.ts';

interface Box {
  readonly width: Exact;
  readonly height: Exact;
}

/** Every patch of a quilt in its coordinates; flipped corners lie over others and are left out. */
export function flattened(layout: QuiltLayout): Polygon[] {
  return [...placedPatches(layout)].filter(({ patch }) => patch.role !== 'flipped_corner').map(({ outline }) => outline);
}

export function basePatches(layout: BlockLayout): Polygon[] {
  return layout.patches.filter((patch) => patch.role !== 'flipped_corner').map((patch) => patch.outline);
}

/** The outlines are clockwise, cover the box and do not overlap: by areas and unions of doubles, and exactly. */
export function expectTiles(box: Box, outlines: readonly Polygon[]): void {
  const whole = toNumber(box.width) * toNumber(box.height);
  const areas = outlines.map((outline) => toNumber(signedArea(outline)));
  const target = cornersOf({ x: ZERO, y: ZERO, width: box.width, height: box.height });
  expect(areas.every((area) => area > 0)).toBe(true);
  expect(areas.reduce((total, area) => total + area, 0)).toBeCloseTo(whole, 6);
  expect(Math.abs(clipperDifference(target, outlines))).toBeLessThan(1e-4);
  // Where it gives up (corners on slanted edges, rounded), the other two have spoken.
  expect(askPolygonClipping(target, outlines) ?? 0).toBeLessThan(1e-6);
  expect(checkTiling(box, outlines)).toEqual([]);
}

/** Patches as a set of texts that no order of patches or first corner changes: `fabric: x,y x,y …`. */
export function shapes(patches: readonly { readonly fabric: { readonly name: string }; readonly outline: Polygon }[]): string[] {
  return patches
    .map(({ fabric, outline }) => {
      const corners = outline.map(({ x, y }) => `${String(x)};${String(y)}`);
      const start = corners.indexOf([...corners].sort()[0] ?? '');
      return `${fabric.name}: ${[...corners.slice(start), ...corners.slice(0, start)].join(' ')}`;
    })
    .sort();
}

/** The patches come apart along straight lines, again and again, until each is alone: they can be sewn without set-in seams. */
export function isSewnStraight(outlines: readonly Polygon[]): boolean {
  return comesApart(outlines.map((outline) => outline.map(({ x, y }) => [toNumber(x), toNumber(y)] as const)));
}

type Corners = readonly (readonly [number, number])[];

function comesApart(patches: readonly Corners[]): boolean {
  if (patches.length <= 1) return true;
  for (const patch of patches) {
    for (const [i, a] of patch.entries()) {
      const b = patch[(i + 1) % patch.length] ?? a;
      const sides = patches.map((other) => sideOf(other, a, b));
      if (sides.includes(0) || !sides.includes(1) || !sides.includes(-1)) continue;
      return comesApart(patches.filter((_, n) => sides[n] === 1)) && comesApart(patches.filter((_, n) => sides[n] === -1));
    }
  }
  return false;
}

/** 1 and −1 for the sides of a line, 0 across it. */
function sideOf(patch: Corners, [ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): -1 | 0 | 1 {
  const length = Math.hypot(bx - ax, by - ay);
  const distances = patch.map(([x, y]) => ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length);
  if (distances.every((distance) => distance > -1e-9)) return 1;
  return distances.every((distance) => distance < 1e-9) ? -1 : 0;
}
