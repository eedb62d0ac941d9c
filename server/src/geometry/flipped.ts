/** Flipped corners: a square laid on a corner of the block, sewn corner to corner. Finished ones may touch, and not cross. */
import { HALF, ZERO, add, atMost, less, mul, sign, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import type { Finding } from '../model/finding.ts';
import type { FlippedCorner } from '../model/pattern.ts';
import type { Laid } from './cell.ts';
import type { Patch } from './layout.ts';
import type { Size } from './move.ts';

/** A block's size, in inches or in the units of its box. */
interface Measured extends Size {
  readonly isLength: boolean;
}

/** Triangles over the base, which stays whole under them. */
export function layFlipped(corners: readonly FlippedCorner[], size: Measured): Laid {
  return {
    patches: corners.filter((corner) => sign(corner.size) > 0).map((corner) => triangle(corner, size)),
    findings: [...corners.flatMap((corner) => wrongSize(corner, size)), ...crossings(corners, size)],
  };
}

function triangle({ fabric, size: leg, corner, place }: FlippedCorner, { width, height }: Size): Patch {
  return { fabric, outline: OUTLINES[corner](leg, width, height), role: 'flipped_corner', place };
}

/** Clockwise, from the block's corner. */
const OUTLINES: Readonly<Record<FlippedCorner['corner'], (leg: Exact, width: Exact, height: Exact) => Point[]>> = {
  top_left: (leg) => [at(ZERO, ZERO), at(leg, ZERO), at(ZERO, leg)],
  top_right: (leg, width) => [at(width, ZERO), at(width, leg), at(sub(width, leg), ZERO)],
  bottom_right: (leg, width, height) => [at(width, height), at(sub(width, leg), height), at(width, sub(height, leg))],
  bottom_left: (leg, _width, height) => [at(ZERO, height), at(ZERO, sub(height, leg)), at(leg, height)],
};

function at(x: Exact, y: Exact): Point {
  return { x, y };
}

function wrongSize(corner: FlippedCorner, { width, height, isLength }: Measured): Finding[] {
  const { size: leg, place } = corner;
  if (sign(leg) <= 0) return [{ rule: 'empty-patch', place, why: 'the size of this corner is zero' }];
  if (atMost(leg, width) && atMost(leg, height)) return [];
  const over = (side: Exact): Exact => (less(side, leg) ? sub(leg, side) : ZERO);
  const [x, y] = [over(width), over(height)];
  // The corner's ends stick out as two similar triangles with these legs.
  const area = mul(HALF, add(mul(x, x), mul(y, y)));
  return [{ rule: 'outside', place, area, at: triangle(corner, { width, height }).outline[0] ?? at(ZERO, ZERO), width, height, isLength }];
}

/** Two corners cross when their finished sides along one edge are longer than it; the shared part is a triangle on that edge. */
function crossings(corners: readonly FlippedCorner[], size: Measured): Finding[] {
  return corners.flatMap((second, i) => corners.slice(0, i).flatMap((first) => crossing(first, second, size)));
}

function crossing(first: FlippedCorner, second: FlippedCorner, size: Measured): Finding[] {
  if (first.corner === second.corner) return [shared(first, second, mul(HALF, mul(smaller(first, second), smaller(first, second))), size)];
  const edge = sharedEdge(first.corner, second.corner, size);
  if (!edge) return [];
  const over = sub(add(first.size, second.size), edge);
  // A right triangle with the overlap as its long side: over² / 4 (exact while neither is longer than the edge).
  return sign(over) > 0 ? [shared(first, second, mul(mul(HALF, HALF), mul(over, over)), size)] : [];
}

function smaller(first: FlippedCorner, second: FlippedCorner): Exact {
  return less(first.size, second.size) ? first.size : second.size;
}

function shared(first: FlippedCorner, second: FlippedCorner, area: Exact, size: Measured): Finding {
  return { rule: 'overlap', place: second.place, other: first.place, area, at: triangle(second, size).outline[0] ?? at(ZERO, ZERO), isLength: size.isLength };
}

/** The length of the edge between two neighbouring corners; undefined for opposite ones. */
function sharedEdge(a: FlippedCorner['corner'], b: FlippedCorner['corner'], { width, height }: Size): Exact | undefined {
  const [sideA, sideB] = [a.split('_'), b.split('_')];
  if (sideA[0] === sideB[0]) return width;
  return sideA[1] === sideB[1] ? height : undefined;
}
