/**
 * The lattice of a setting on point. Places are counted in halves of the pitch, which is the diagonal of block and sash: blocks stand
 * at odd, odd, those between at even, even, and the edges cut the even places into side and corner triangles. Sashes cross where
 * the sum is odd. Rows are sewn from the upper left to the lower right, as blocks turned 45° clockwise see them.
 */
import { HALF, ONE, SQRT2, ZERO, add, fraction, mul, neg } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import { compose, translate, turn } from '../exact/transform.ts';
import type { Motion, Room, Size } from './move.ts';

export interface Lattice {
  readonly across: number;
  readonly down: number;
  /** The side of the blocks. */
  readonly block: Exact;
  /** The width of the sashing, or zero. */
  readonly sash: Exact;
  /** How far the setting triangles reach past the blocks' places. */
  readonly float: Exact;
  /** Half the diagonal of block and sash: from a place to the next. */
  readonly step: Exact;
  /** Half the diagonal of the block. */
  readonly reach: Exact;
  /** A · pitch and B · pitch, without the float; the lattice has its origin at its upper left corner. */
  readonly width: Exact;
  readonly height: Exact;
}

export function latticeOf(counts: { readonly across: number; readonly down: number }, block: Exact, extra: { readonly sash: Exact; readonly float: Exact }): Lattice {
  const step = mul(mul(HALF, SQRT2), add(block, extra.sash));
  return {
    ...counts,
    block,
    ...extra,
    step,
    reach: mul(mul(HALF, SQRT2), block),
    width: mul(fraction(2 * counts.across), step),
    height: mul(fraction(2 * counts.down), step),
  };
}

/** The point i half pitches from the left and j from the top; halves count too. */
export function latticePoint({ step }: Lattice, i: Exact, j: Exact): Point {
  return { x: mul(i, step), y: mul(j, step) };
}

/** The room inside the edges, the float included. */
export function latticeRoom({ width, height, float }: Lattice): Room {
  const around = add(float, float);
  return { x: neg(float), y: neg(float), width: add(width, around), height: add(height, around) };
}

/** Turns a box about its middle, which comes to stand at 0,0, by 45° clockwise. */
export function onPoint({ width, height }: Size): Motion {
  const centred = translate(neg(mul(HALF, width)), neg(mul(HALF, height)));
  return { transform: compose(turn(3), centred), degrees: 45, mirrored: false, factor: ONE };
}

export const ORIGIN: Point = { x: ZERO, y: ZERO };
