/**
 * Where the sides of a patch are matched with its neighbours: where a corner of another patch stands on a side, and on curves in the
 * middle of each stretch between such places (at its quarters, when it is long). Both partners of a seam find the same places, since
 * each sees all the corners on it. In doubles, for drawing.
 */
import type { Patch } from '../geometry/layout.ts';
import { planeShape, sidesOf, type PlaneShape, type Side } from './template-outline.ts';
import { directionOf, normalOf, vector, type Vector } from './template-plane.ts';

export interface SideMark {
  /** The edge of the outline, by its index. */
  readonly side: number;
  /** From 0 at its beginning to 1 at its end. */
  readonly along: number;
}

/** The marks of one of the patches of a block, or of a setting. */
export function marksOfPatch(patches: readonly Patch[], index: number): readonly SideMark[] {
  const patch = patches[index];
  if (!patch) return [];
  const corners = patches.flatMap((other, i) => (i === index || other.role === 'flipped_corner' ? [] : cornersOf(planeShape(other))));
  return sidesOf(planeShape(patch)).flatMap((side, i) => {
    const met = unique(corners.flatMap((corner) => placeOn(side, corner) ?? []));
    return [...met, ...balance(side, met)].sort((a, b) => a - b).map((along) => ({ side: i, along }));
  });
}

/** A mark on the seam line, and the way out from there, of length 1. */
export function markAt(side: Side, along: number): { readonly at: Vector; readonly out: Vector } {
  const at = pointOn(side, along);
  return { at, out: normalOf(directionOf(at, side)) };
}

/** Curved stretches longer than this, in inches, have marks at their quarters too. */
const LONG = 6;

function balance(side: Side, met: readonly number[]): readonly number[] {
  if (!side.centre) return [];
  const ends = [0, ...met, 1];
  const length = Math.abs(side.radius * sweepOf(side));
  return ends.slice(1).flatMap((end, i) => {
    const start = ends[i] ?? 0;
    const parts = (end - start) * length > LONG ? [1 / 4, 1 / 2, 3 / 4] : [1 / 2];
    return parts.map((part) => start + (end - start) * part);
  });
}

function cornersOf({ points }: PlaneShape): readonly Vector[] {
  return Array.from({ length: points.length >> 1 }, (_, i) => vector(points[2 * i] ?? 0, points[2 * i + 1] ?? 0));
}

/** How far along a side a point between its ends lies; undefined when it is not on it. */
function placeOn(side: Side, p: Vector): number | undefined {
  const along = side.centre ? angleTo(side, p) / sweepOf(side) : alongChord(side, p);
  if (along < NEAR || along > 1 - NEAR) return undefined;
  const at = pointOn(side, along);
  return Math.hypot(at.x - p.x, at.y - p.y) < NEAR ? along : undefined;
}

const NEAR = 1e-6;

function alongChord({ from, to }: Side, p: Vector): number {
  const [x, y] = [to.x - from.x, to.y - from.y];
  return ((p.x - from.x) * x + (p.y - from.y) * y) / (x * x + y * y);
}

/** Signed: positive clockwise on the screen. */
function sweepOf({ from, to, radius }: Side): number {
  const half = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  return Math.sign(radius) * 2 * Math.asin(Math.min(1, half / Math.abs(radius)));
}

function angleTo({ from, centre = from }: Side, p: Vector): number {
  const [a, b] = [vector(from.x - centre.x, from.y - centre.y), vector(p.x - centre.x, p.y - centre.y)];
  return Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
}

/** From 0 at its beginning to 1 at its end. */
export function pointOn(side: Side, along: number): Vector {
  const { from, to, centre } = side;
  if (!centre) return vector(from.x + (to.x - from.x) * along, from.y + (to.y - from.y) * along);
  const angle = sweepOf(side) * along;
  const [x, y] = [from.x - centre.x, from.y - centre.y];
  return vector(centre.x + x * Math.cos(angle) - y * Math.sin(angle), centre.y + x * Math.sin(angle) + y * Math.cos(angle));
}

function unique(places: readonly number[]): number[] {
  return [...places].sort((a, b) => a - b).filter((place, i, all) => i === 0 || place - (all[i - 1] ?? 0) > NEAR);
}
