/**
 * How long the stitched lines of `quilting` are. In the ditch: every seam of the top once. Echo: a line inside every patch, at its
 * distance from the seams and the edge. All over: an estimate, one inch of line for each square inch of the top, which is what lines
 * an inch apart take (common practice, no source). Thread and turning at the ends are not in it.
 */
import { fraction, toNumber, type Exact } from '../exact/number.ts';
import type { BlockLayout, Patch, QuiltLayout } from '../geometry/layout.ts';
import { patchesIn } from '../geometry/walk.ts';
import type { QuiltingLine } from '../model/pattern.ts';
import { echoOf, lengthsOf, type Outline } from './quilting-echo.ts';
import type { QuiltingPlan } from './plan.ts';

/** A line for each way that can be measured, in the order of the text; nothing for words. Lengths are exact to 1/1000". */
export function planQuilting(layout: QuiltLayout): readonly QuiltingPlan[] {
  return (layout.spec.quiltingLines ?? []).flatMap((line): QuiltingPlan[] => {
    if (line.kind === 'words') return [];
    return [{ kind: line.kind, ...(line.kind === 'echo' ? { distance: line.distance } : {}), length: rounded(stitchedLength(layout, line)), place: line.place }];
  });
}

function stitchedLength(layout: QuiltLayout, line: Exclude<QuiltingLine, { readonly kind: 'words' }>): number {
  switch (line.kind) {
    case 'in_the_ditch':
      return inTheDitch(layout);
    case 'allover':
      return areaOf(layout);
    case 'echo':
      return overPatches(layout, (patch) => echoOf(patch, toNumber(line.distance)));
  }
}

/** Seams lie between two patches, the edge of the top at one. A flipped corner lies over its base: its long side is a seam more. */
function inTheDitch(layout: QuiltLayout): number {
  const around = overPatches(layout, (patch) => (patch.role === 'flipped_corner' ? 2 * longest(patch) : total(lengthsOf(patch))));
  return (around - edgeOf(layout)) / 2;
}

function longest(patch: Outline): number {
  return Math.max(0, ...lengthsOf(patch));
}

/** A value summed over every patch of the top; blocks of a kind are looked at once, those that the edge cuts one by one. */
function overPatches(layout: QuiltLayout, value: (patch: Outline & Pick<Patch, 'role'>) => number): number {
  const ofBlock = new Map<BlockLayout, number>();
  const whole = (block: BlockLayout): number => {
    const known = ofBlock.get(block) ?? total(block.patches.map(value));
    ofBlock.set(block, known);
    return known;
  };
  const blocks = layout.placements.map((placement) => {
    if (!placement.clip) return whole(placement.block);
    return total([...patchesIn(placement)].map(({ patch, outline }) => value({ outline, role: patch.role })));
  });
  return total(blocks) + total(layout.patches.map(value));
}

/** Around the top. Where its corners are left out (`corners none`), what is missing tells how far: four triangles with equal legs. */
function edgeOf(layout: QuiltLayout): number {
  const [width, height] = [toNumber(layout.width), toNumber(layout.height)];
  const missing = width * height - areaOf(layout);
  const leg = missing < 1e-6 ? 0 : Math.sqrt(missing / 2);
  return 2 * (width + height) - 4 * (2 - Math.SQRT2) * leg;
}

/** In square inches, without the corners that are left out. */
function areaOf(layout: QuiltLayout): number {
  const { width, height, spec } = layout;
  if (spec.cornerFilling?.filling !== 'none' || spec.setting?.kind !== 'on_point') return toNumber(width) * toNumber(height);
  return overPatches(layout, (patch) => (patch.role === 'flipped_corner' ? 0 : shoelace(patch)));
}

/** Arcs lie between two patches, so that what one gains by them the other loses. */
function shoelace({ outline }: Outline): number {
  const points = outline.map(({ x, y }) => ({ x: toNumber(x), y: toNumber(y) }));
  return Math.abs(total(points.map((from, i) => {
    const to = points[(i + 1) % points.length] ?? from;
    return from.x * to.y - to.x * from.y;
  }))) / 2;
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function rounded(inches: number): Exact {
  return fraction(Math.round(Math.max(0, inches) * 1000), 1000);
}
