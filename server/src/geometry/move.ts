/**
 * Moving what has been laid: turns in steps of 90°, mirror images, scales and shifts of whole patches. A moved outline stays
 * clockwise, its arcs stay on their edges, and a grain line the author fixed goes with the patch.
 */
import { add, asFraction, fraction, isRational, mul, neg, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { backwards } from '../exact/polygon.ts';
import { FLIP, IDENTITY, MIRROR, applyToAll, compose, determinantSign, translate, turn } from '../exact/transform.ts';
import type { Transform } from '../exact/transform.ts';
import type { TurnBy } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';
import type { Patch } from './layout.ts';

export interface Size {
  readonly width: Exact;
  readonly height: Exact;
}

/** A rectangle whose sides run along the axes. */
export interface Room extends Size {
  readonly x: Exact;
  readonly y: Exact;
}

/** A transform, and what it does to a grain line of g degrees: `mirrored` ? degrees − g : degrees + g. */
export interface Motion {
  readonly transform: Transform;
  readonly degrees: number;
  readonly mirrored: boolean;
  /** The factor of lengths, where it is the same in every direction; arcs are scaled by it. */
  readonly factor?: Exact;
}

export const AT_REST: Motion = { transform: IDENTITY, degrees: 0, mirrored: false };

/** A box of the given size after the turns, in the order written: its new size, and the motion that keeps it at the origin. */
export function turnBox(turns: readonly TurnBy[], size: Size): Size & { readonly motion: Motion } {
  return turns.reduce(turnOnce, { ...size, motion: AT_REST });
}

/** First `inner`, then `outer`. */
export function chain(outer: Motion, inner: Motion): Motion {
  const factor = outer.factor && inner.factor ? mul(outer.factor, inner.factor) : (outer.factor ?? inner.factor);
  return {
    transform: compose(outer.transform, inner.transform),
    degrees: (outer.degrees + (outer.mirrored ? -inner.degrees : inner.degrees)) % 360,
    mirrored: outer.mirrored !== inner.mirrored,
    ...(factor ? { factor } : {}),
  };
}

/** A motion by a transform that neither turns nor mirrors. */
export function plainly(transform: Transform, factor?: Exact): Motion {
  return { ...AT_REST, transform, ...(factor ? { factor } : {}) };
}

/** The patch moved. `within` is the cell of the outer block through which it comes in. */
export function movePatch(patch: Patch, motion: Motion, within?: Place): Patch {
  const turnedOver = determinantSign(motion.transform) < 0;
  const corners = applyToAll(patch.outline, motion.transform);
  return {
    ...patch,
    outline: turnedOver ? backwards(corners) : corners,
    ...(patch.arcs ? { arcs: moveArcs(patch.arcs, motion, turnedOver) } : {}),
    ...(patch.grain ? { grain: moveGrain(patch.grain, motion) } : {}),
    ...(within ? { within: [within, ...(patch.within ?? [])] } : {}),
  };
}

/** The patches shifted; the cheap case of `movePatch`. */
export function shiftPatch(patch: Patch, dx: Exact, dy: Exact): Patch {
  return { ...patch, outline: patch.outline.map((p) => ({ x: add(p.x, dx), y: add(p.y, dy) })) };
}

/** The corners of a room, clockwise from the upper left. */
export function cornersOf(room: Room): { x: Exact; y: Exact }[] {
  const right = add(room.x, room.width);
  const bottom = add(room.y, room.height);
  return [
    { x: room.x, y: room.y },
    { x: right, y: room.y },
    { x: right, y: bottom },
    { x: room.x, y: bottom },
  ];
}

function turnOnce(box: Size & { readonly motion: Motion }, by: TurnBy): Size & { readonly motion: Motion } {
  const step = STEPS[by];
  const quarter = by === '90' || by === '270';
  const width = quarter ? box.height : box.width;
  const height = quarter ? box.width : box.height;
  const shift = translate(mul(step.right, width), mul(step.down, height));
  const motion: Motion = { transform: compose(shift, step.transform), degrees: step.degrees, mirrored: step.mirrored };
  return { width, height, motion: chain(motion, box.motion) };
}

const NONE = fraction(0);
const WHOLE = fraction(1);

/** Each turn about the origin, and how many of the new widths and heights bring the box back to the origin. */
const STEPS: Readonly<Record<TurnBy, Motion & { readonly right: Exact; readonly down: Exact }>> = {
  90: { transform: turn(6), degrees: 90, mirrored: false, right: WHOLE, down: NONE },
  180: { transform: turn(12), degrees: 180, mirrored: false, right: WHOLE, down: WHOLE },
  270: { transform: turn(18), degrees: 270, mirrored: false, right: NONE, down: WHOLE },
  mirror: { transform: MIRROR, degrees: 0, mirrored: true, right: WHOLE, down: NONE },
  flip: { transform: FLIP, degrees: 180, mirrored: true, right: NONE, down: WHOLE },
};

function moveArcs(arcs: readonly (Exact | undefined)[], motion: Motion, turnedOver: boolean): (Exact | undefined)[] {
  const { factor } = motion;
  const scaled = arcs.map((radius) => (radius && factor ? mul(radius, factor) : radius));
  return turnedOver ? scaled.reverse() : scaled;
}

function moveGrain(grain: Exact, motion: Motion): Exact {
  return grainOf(add(motion.mirrored ? neg(grain) : grain, fraction(motion.degrees)));
}

/** A grain line in degrees as one in [0, 180): it has no direction. */
export function grainOf(turned: Exact): Exact {
  if (!isRational(turned)) return turned;
  const { n, d } = asFraction(turned) ?? { n: 0n, d: 1n };
  const half = 180n * d;
  const turns = (n - (((n % half) + half) % half)) / half;
  return sub(turned, fraction(turns * 180n));
}
