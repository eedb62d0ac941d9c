/** Every patch of a quilt where it lies, which of them is at a point, and how many there are; for drawing, clicks and counting. */
import { ZERO } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import { clockwise, locate } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import { applyTo, applyToAll, inverse } from '../exact/transform.ts';
import { cutTo } from './clip.ts';
import type { BlockInstance } from '../model/pattern.ts';
import type { BlockLayout, Patch, Placement, QuiltLayout } from './layout.ts';
import { cornersOf } from './move.ts';
import { reachOf } from './tiling-near.ts';
import type { Reach } from './tiling-near.ts';
import { usesIn } from './uses.ts';

export interface PlacedPatch {
  /** In the block's coordinates when it belongs to a placement, else in the quilt's. */
  readonly patch: Patch;
  /** In the quilt's coordinates, clockwise; of a patch that the quilt's edge cuts, what is left. */
  readonly outline: Polygon;
  readonly placement?: Placement;
}

/** All patches in drawing order: later ones lie over earlier ones where they overlap (flipped corners). */
export function* placedPatches(layout: QuiltLayout): Generator<PlacedPatch> {
  for (const placement of layout.placements) yield* patchesIn(placement);
  for (const patch of layout.patches) yield { patch, outline: patch.outline };
}

/** The patches of one placed block. */
export function* patchesIn(placement: Placement): Generator<PlacedPatch> {
  for (const patch of placement.block.patches) {
    const outline = clockwise(applyToAll(patch.outline, placement.transform));
    for (const part of placement.clip ? cutTo(outline, placement.clip) : [outline]) yield { patch, outline: part, placement };
  }
}

/** The topmost patch that holds the point, edges included; undefined outside the quilt. Curved edges count as straight. */
export function patchAt(layout: QuiltLayout, point: Point): PlacedPatch | undefined {
  const near = reachOf([point]);
  for (const spot of [...spotsOf(layout)].reverse()) {
    if (spot.left > near.right || spot.right < near.left || spot.top > near.bottom || spot.bottom < near.top) continue;
    const found = spot.placement ? patchInPlacement(spot.placement, point) : spot.patch && loosePatch(spot.patch, point);
    if (found) return found;
  }
  return undefined;
}

/** The topmost patch of a block that holds a point in the block's coordinates. */
export function patchInBlock(block: BlockLayout, point: Point): Patch | undefined {
  return block.patches.findLast((patch) => locate(patch.outline, point) >= 0);
}

/** How many patches a block has of each fabric, by the fabric's name, in the order they first appear. */
export function patchesByFabric(block: BlockLayout): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { fabric } of block.patches) counts.set(fabric.name, (counts.get(fabric.name) ?? 0) + 1);
  return counts;
}

/** How many patches the quilt has in all. */
export function countPlaced(layout: QuiltLayout): number {
  return layout.blocks.reduce((total, { layout: block, count }) => total + count * block.patches.length, layout.patches.length);
}

/** A block and all blocks nested in it, each instance once, outer ones first. */
export function nestedInstances(instance: BlockInstance): ReadonlySet<BlockInstance> {
  const found = new Set<BlockInstance>();
  const visit = (block: BlockInstance): void => {
    if (found.has(block)) return;
    found.add(block);
    for (const use of usesIn(block)) visit(use.block);
  };
  visit(instance);
  return found;
}

interface Spot extends Reach {
  readonly placement?: Placement;
  readonly patch?: Patch;
}

const spots = new WeakMap<QuiltLayout, readonly Spot[]>();

/** Where everything lies, roughly; made when first asked for. */
function spotsOf(layout: QuiltLayout): readonly Spot[] {
  const known = spots.get(layout);
  if (known) return known;
  const found = [...layout.placements.map(spotOf), ...layout.patches.map((patch): Spot => ({ patch, ...reachOf(patch.outline) }))];
  spots.set(layout, found);
  return found;
}

function spotOf(placement: Placement): Spot {
  const { width, height } = placement.block;
  const corners = cornersOf({ x: ZERO, y: ZERO, width, height });
  return { placement, ...reachOf(applyToAll(corners, placement.transform)) };
}

function patchInPlacement(placement: Placement, point: Point): PlacedPatch | undefined {
  if (placement.clip && locate(placement.clip, point) < 0) return undefined;
  const patch = patchInBlock(placement.block, applyTo(point, inverse(placement.transform)));
  return patch && [...patchesIn(placement)].find((placed) => placed.patch === patch && locate(placed.outline, point) >= 0);
}

function loosePatch(patch: Patch, point: Point): PlacedPatch | undefined {
  return locate(patch.outline, point) >= 0 ? { patch, outline: patch.outline } : undefined;
}
