/**
 * How a block or a quilt is sewn together: the tree of its seams, in the order they are sewn. Points are those of the layout
 * (exact; x to the right, y down). Patches are named by their index in the layout, the parts of a quilt by their index in `parts`.
 */
import type { Exact } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';

export type Assembly = Leaf | Join | Finish | Flip;

/** One patch; in the setting of a quilt, one of its parts. */
export interface Leaf {
  readonly kind: 'patch';
  readonly patch: number;
}

/** Parts sewn one after another: `seams[i]` sews `parts[i + 1]` to what the parts before it have become. */
export interface Join {
  readonly kind: 'join';
  readonly parts: readonly Assembly[];
  readonly seams: readonly Seam[];
}

/** A seam that closes what was left open within one part. */
export interface Finish {
  readonly kind: 'finish';
  readonly part: Assembly;
  readonly seam: Seam;
}

/** A square laid on a corner of a part, sewn from corner to corner and flipped. */
export interface Flip {
  readonly kind: 'flip';
  readonly part: Assembly;
  readonly patch: number;
  readonly seam: Seam;
}

/**
 * `straight` and `curved` seams run edge to edge. `set_in` pivots at its `corners`, where three or more patches meet and no seam
 * runs through. `partial` stops at `stop`, in the middle of an edge; `finish` sews the rest of it (or closes a seam between corners
 * that are set in).
 */
export type SeamKind = 'straight' | 'curved' | 'set_in' | 'partial' | 'finish' | 'flipped';

export interface Seam {
  /** Its place in the order of sewing, counted from 0. */
  readonly number: number;
  readonly kind: SeamKind;
  /** In order from one end to the other; a new one begins where the seam pivots. */
  readonly stretches: readonly Stretch[];
  /** The corners that are set in. */
  readonly corners: readonly Point[];
  /** Where a partial seam stops, and where its finish begins. */
  readonly stop?: Point;
}

/** A seam, or the part of one between two pivots: one straight line or one smooth curve. */
export interface Stretch {
  readonly from: Point;
  readonly to: Point;
  /** The patches beside it, in order from `from` to `to`; walking so, `right` lies to the right. */
  readonly left: readonly number[];
  readonly right: readonly number[];
  /** The points between its ends where corners of patches stand. */
  readonly via: readonly Point[];
  /** The curve's pieces from `from` to `to`; absent when it is straight. */
  readonly arcs?: readonly Arc[];
}

/** A circular arc, the shorter one; a positive radius bulges to the left of one who walks from `from` to `to`. */
export interface Arc {
  readonly from: Point;
  readonly to: Point;
  readonly radius: Exact;
}

export interface SewingPlan {
  readonly assembly: Assembly;
  /** Every seam once, in the order of sewing. */
  readonly seams: readonly Seam[];
  /** Corners that are set in: as few as can be, since at each of them no seam can run straight through. */
  readonly setIn: number;
  /** Seams that are sewn in two goes. */
  readonly partial: number;
  /** False when the search for fewer partial seams was given up: then `partial` is an upper bound. */
  readonly proven: boolean;
}

/** The patches of a part, in the order of sewing. */
export function patchesIn(part: Assembly): readonly number[] {
  const patches: number[] = [];
  const stack: (Assembly | number)[] = [part];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    if (typeof node === 'number') patches.push(node);
    else if (node.kind === 'patch') patches.push(node.patch);
    else if (node.kind === 'join') stack.push(...node.parts.toReversed());
    else if (node.kind === 'flip') stack.push(node.patch, node.part);
    else stack.push(node.part);
  }
  return patches;
}
