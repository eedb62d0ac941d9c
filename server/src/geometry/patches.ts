/**
 * Patch blocks: corners in the units of a box, repeated by symmetry about the block's centre, other blocks set in. Whether the
 * patches cover the block exactly once is decided in `coverage.ts`.
 */
import { HALF, div, equals, mul, sign } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { backwards, signedArea, withoutStraightCorners } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import { FLIP, IDENTITY, MIRROR, about, compose, turn } from '../exact/transform.ts';
import type { BlockBody, PatchItem, PatchSpec, PatchesBody, Symmetry } from '../model/pattern.ts';
import { fabricPatch, fitBlock, together } from './cell.ts';
import type { CellContext, Laid } from './cell.ts';
import type { Patch } from './layout.ts';
import { cornersOf, grainOf, movePatch } from './move.ts';
import type { Motion, Room, Size } from './move.ts';

/** The patches of a block of the given size, and what is wrong with them one by one; how they lie together is not asked here. */
export function layPatches(context: CellContext, body: PatchesBody, size: Size): Laid {
  return layItems(drafting(context, body, size), body.items);
}

/** The units of a patch block, which are its size where it has none of its own; without a box it needs a size. */
export function naturalBox(body: Extract<BlockBody, { kind: 'patches' }>): Size | undefined {
  return body.box && { width: body.box.width, height: body.box.height };
}

interface Drafting extends Size {
  readonly context: CellContext;
  /** Units to the block's coordinates. */
  readonly across: Exact;
  readonly down: Exact;
  readonly even: boolean;
}

function drafting(context: CellContext, body: PatchesBody, size: Size): Drafting {
  const box = naturalBox(body) ?? size;
  const [across, down] = [div(size.width, box.width), div(size.height, box.height)];
  return { context, width: size.width, height: size.height, across, down, even: equals(across, down) };
}

function layItems(draft: Drafting, items: readonly PatchItem[]): Laid {
  return together(items.map((item) => layItem(draft, item)));
}

function layItem(draft: Drafting, item: PatchItem): Laid {
  switch (item.kind) {
    case 'patch':
      return layPatch(draft, item);
    case 'set_in':
      return laySetIn(draft, item);
    case 'symmetry':
      return repeat(draft, item.symmetry, layItems(draft, item.items));
  }
}

function layPatch(draft: Drafting, spec: PatchSpec): Laid {
  const corners = spec.corners.map(({ x, y }) => ({ x: mul(x, draft.across), y: mul(y, draft.down) }));
  const bends = spec.arcs.some((radius) => radius !== undefined);
  const wound = sign(signedArea(corners)) < 0;
  const outline = bends ? corners : tidy(corners);
  const arcs = spec.arcs.map((radius) => radius && mul(radius, draft.across));
  const patch: Patch = {
    ...fabricPatch(spec, wound ? backwards(outline) : outline),
    ...(bends ? { arcs: wound ? arcs.reverse() : arcs } : {}),
    ...(spec.grain ? { grain: grainOf(spec.grain) } : {}),
  };
  const problem = 'an arc needs units that are as wide as they are high';
  return { patches: [patch], findings: bends && !draft.even ? [{ rule: 'wrong-argument', place: spec.place, problem }] : [] };
}

/** Corners where the outline runs straight on say nothing; of an outline that is no shape they are all kept. */
function tidy(corners: Polygon): Polygon {
  const tidied = withoutStraightCorners(corners);
  return tidied.length >= 3 ? tidied : corners;
}

function laySetIn(draft: Drafting, item: Extract<PatchItem, { kind: 'set_in' }>): Laid {
  const room: Room = {
    x: mul(item.x, draft.across),
    y: mul(item.y, draft.down),
    width: mul(item.width, draft.across),
    height: mul(item.height, draft.down),
  };
  if (sign(room.width) <= 0 || sign(room.height) <= 0) {
    return { patches: [], findings: [{ rule: 'empty-patch', place: item.place, why: 'the width or height of this is zero' }] };
  }
  if (item.use.kind === 'block') return fitBlock(draft.context, item.use, room);
  return { patches: [fabricPatch({ ...item.use, place: item.place }, cornersOf(room))], findings: [] };
}

// ---------------------------------------------------------------------------------------------- symmetry

function repeat(draft: Drafting, symmetry: Symmetry, laid: Laid): Laid {
  const problem = problemOf(draft, symmetry);
  if (problem) return { patches: laid.patches, findings: [...laid.findings, { rule: 'wrong-argument', place: symmetry.place, problem }] };
  const motions = motionsOf(symmetry, draft);
  return { patches: motions.flatMap((motion) => laid.patches.map((patch) => movePatch(patch, motion))), findings: laid.findings };
}

function problemOf(draft: Drafting, { kind, times }: Symmetry): string | undefined {
  if (kind === 'mirrored') return times === 2 || times === 4 ? undefined : 'patches are mirrored once, or both ways with 4';
  if (!TURNS.includes(times)) return 'patches can be turned 2, 3, 4, 6, 8 or 12 times';
  return times === 2 || draft.even ? undefined : 'a turn needs units that are as wide as they are high';
}

const TURNS: readonly number[] = [2, 3, 4, 6, 8, 12];

/** About the block's centre; the first leaves everything where it is. */
function motionsOf({ kind, times }: Symmetry, { width, height }: Size): Motion[] {
  const centre = { x: mul(HALF, width), y: mul(HALF, height) };
  if (kind === 'turned') {
    const steps = 24 / times;
    return Array.from({ length: times }, (_, i) => ({ transform: about(centre, turn(i * steps)), degrees: i * steps * 15, mirrored: false }));
  }
  const here: Motion = { transform: IDENTITY, degrees: 0, mirrored: false };
  const mirrored: Motion = { transform: about(centre, MIRROR), degrees: 0, mirrored: true };
  if (times === 2) return [here, mirrored];
  const both: Motion = { transform: about(centre, compose(FLIP, MIRROR)), degrees: 180, mirrored: false };
  return [here, mirrored, both, { transform: about(centre, FLIP), degrees: 180, mirrored: true }];
}
