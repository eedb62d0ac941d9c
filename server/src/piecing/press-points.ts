/** Where seams of one plan meet: crossings that can nest, points that pile up, and ends on the outline that meet a neighbour's. */
import { sign } from '../exact/number.ts';
import { cross, minus, onSegment, orientation, pointKey, samePoint } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { edgesOf } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import type { Seam, SewingPlan, Stretch } from './plan.ts';

/** A stretch of a seam that is pressed by itself. Both goes of a partial seam are pressed as one: the finish names the other. */
export interface Pressed {
  readonly number: number;
  readonly seam: Seam;
  readonly stretch: Stretch;
  /** The number of the stretch it is pressed with; its own unless it is a finish. */
  readonly as: number;
}

/**
 * A seam's end at a point. `sense` is + when its allowance, pressed to the right of the stretch, lies clockwise of the seam as seen
 * from the point, − when it lies the other way.
 */
export interface SeamEnd {
  readonly pressed: Pressed;
  readonly sense: 1 | -1;
}

/** The seams that end at a point, and what runs through it. */
export interface Meeting {
  readonly at: Point;
  readonly ends: SeamEnd[];
  readonly through: Pressed[];
}

/** Two seams end at a third from both sides, one from each: they nest when their allowances lie clockwise alike, or both not. */
export interface Crossing {
  readonly at: Point;
  readonly ends: readonly [SeamEnd, SeamEnd];
}

/** A point with eight seam ends or more; `over` is what is sewn last across it. */
export interface BulkyPoint {
  readonly at: Point;
  readonly ends: number;
  readonly over: readonly Pressed[];
}

/** Seams that end at one point of the outline. */
export interface RimPoint {
  readonly at: Point;
  readonly ends: readonly SeamEnd[];
}

export interface SeamPoints {
  readonly pressed: readonly Pressed[];
  readonly meetings: readonly Meeting[];
  readonly crossings: readonly Crossing[];
  readonly bulky: readonly BulkyPoint[];
  readonly rim: readonly RimPoint[];
}

/** As many seam ends in one point are too many to press to one side. */
export const BULKY = 8;

/** Those of a block, whose plan has one outline; remembered for blocks whose pressing is asked for again and again. */
export function blockSeamPoints(plan: SewingPlan, outline: Polygon): SeamPoints {
  const found = known.get(plan) ?? seamPoints(plan, outline);
  known.set(plan, found);
  return found;
}

const known = new WeakMap<SewingPlan, SeamPoints>();

export function seamPoints(plan: SewingPlan, outline: Polygon): SeamPoints {
  const pressed = pressedIn(plan);
  const points = meetings(pressed);
  const edges = edgesOf(outline);
  const isOnRim = (p: Point): boolean => edges.some(({ from, to }) => onSegment(p, from, to));
  const inner = points.filter((point) => point.through.length > 0 || !isOnRim(point.at));
  return {
    pressed,
    meetings: points,
    crossings: inner.flatMap(crossingAt),
    bulky: inner.flatMap(bulkyAt),
    rim: points.filter((point) => !inner.includes(point)).map(({ at, ends }) => ({ at, ends })),
  };
}

export function pressedIn(plan: SewingPlan): Pressed[] {
  const all: Pressed[] = [];
  const partial = new Map<string, Pressed>();
  for (const seam of plan.seams) {
    for (const stretch of seam.stretches) {
      const stop = seam.stop && [stretch.from, stretch.to].some((p) => seam.stop !== undefined && samePoint(p, seam.stop)) ? pointKey(seam.stop) : undefined;
      const number = all.length;
      const first = stop === undefined || seam.kind === 'partial' ? undefined : partial.get(stop);
      const pressed = { number, seam, stretch, as: first?.number ?? number };
      if (stop !== undefined && seam.kind === 'partial') partial.set(stop, pressed);
      all.push(pressed);
    }
  }
  return all;
}

function meetings(pressed: readonly Pressed[]): Meeting[] {
  const points = new Map<string, Meeting>();
  const meetingAt = (at: Point): Meeting => {
    const name = pointKey(at);
    const known = points.get(name) ?? { at, ends: [], through: [] };
    points.set(name, known);
    return known;
  };
  for (const each of pressed) {
    const { from, to, via } = each.stretch;
    const isStop = (p: Point): boolean => each.seam.stop !== undefined && samePoint(p, each.seam.stop);
    if (!isStop(from)) meetingAt(from).ends.push({ pressed: each, sense: 1 });
    if (!isStop(to)) meetingAt(to).ends.push({ pressed: each, sense: -1 });
    for (const p of via) meetingAt(p).through.push(each);
  }
  return [...points.values()];
}

function crossingAt({ at, ends, through }: Meeting): Crossing[] {
  const [over] = through;
  if (!over || through.length > 1 || ends.length !== 2) return [];
  const [a, b] = ends;
  if (!a || !b || sideOf(over.stretch, a, at) === sideOf(over.stretch, b, at)) return [];
  return [{ at, ends: [a, b] }];
}

/** On which side of a stretch another ends at a point: + on the right. */
function sideOf(over: Stretch, { pressed: { stretch } }: SeamEnd, at: Point): number {
  const other = samePoint(stretch.from, at) ? stretch.to : stretch.from;
  if (!over.arcs) return orientation(over.from, over.to, other);
  const beside = samePoint(stretch.from, at) ? [stretch.left[0], stretch.right[0]] : [stretch.left.at(-1), stretch.right.at(-1)];
  if (beside.some((patch) => patch !== undefined && over.right.includes(patch))) return 1;
  return beside.some((patch) => patch !== undefined && over.left.includes(patch)) ? -1 : sign(cross(minus(over.to, over.from), minus(other, at)));
}

function bulkyAt({ at, ends, through }: Meeting): BulkyPoint[] {
  const count = ends.length + 2 * through.length;
  if (count < BULKY) return [];
  const last = ends.reduce<Pressed | undefined>((latest, { pressed }) => (latest && latest.seam.number > pressed.seam.number ? latest : pressed), undefined);
  return [{ at, ends: count, over: through.length > 0 ? through : last ? [last] : [] }];
}
