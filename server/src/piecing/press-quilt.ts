/** Where seams meet in a whole quilt: within blocks, between neighbouring blocks, and where rows are joined. */
import { ZERO, key, sub } from '../exact/number.ts';
import { midpoint, onSegment, orientation, pointKey, samePoint } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { applyTo, determinantSign, inverse } from '../exact/transform.ts';
import type { Transform } from '../exact/transform.ts';
import type { BlockLayout, Placement } from '../geometry/layout.ts';
import type { Methods } from '../model/pattern.ts';
import type { Stretch } from './plan.ts';
import { BULKY } from './press-points.ts';
import type { Pressed, RimPoint, SeamEnd, SeamPoints } from './press-points.ts';
import type { PressPair } from './press-solve.ts';
import { blockOutline } from './setting.ts';
import type { Setting } from './setting.ts';

/** The seams of a block, or of the setting, with the number of the first among all seams of the quilt. */
export interface PressedPlan {
  /** Undefined for the setting. */
  readonly layout: BlockLayout | undefined;
  readonly count: number;
  readonly points: SeamPoints;
  /** What is said where a seam lies. */
  readonly wayOf: (each: Pressed) => NonNullable<Methods['press']>['way'];
  /** The side of seams, by their numbers, that lie under a corner folded over them. */
  readonly corners: ReadonlyMap<number, 'left' | 'right'>;
  readonly first: number;
}

/** Two seams that meet at a third, and where; `weight` is how often in the quilt. */
export interface SeamPair extends PressPair {
  readonly at: Point;
  readonly layout: BlockLayout | undefined;
  readonly between: readonly [BlockLayout | undefined, BlockLayout | undefined];
}

export interface SeamMeetings {
  readonly pairs: readonly SeamPair[];
  /** Points with too many seam ends where blocks meet. */
  readonly bulky: readonly BulkyMeeting[];
}

export interface BulkyMeeting {
  /** In the quilt. */
  readonly at: Point;
  readonly ends: number;
  /** The seam, among all of the quilt, that is sewn last across it. */
  readonly over: number;
}

/** An end with the seam's number among all, and its sense in the quilt. */
interface QuiltEnd {
  readonly seam: number;
  readonly sense: number;
  readonly layout: BlockLayout | undefined;
}

export function meetingsOf(plans: readonly PressedPlan[], setting: Setting | undefined): SeamMeetings {
  const pairs = new Pairs();
  for (const plan of plans) {
    for (const { at, ends } of plan.points.crossings) {
      const [a, b] = ends.map((end) => endIn(plan, end, 1));
      if (a && b) pairs.add(a, b, { at, layout: plan.layout, weight: plan.count });
    }
  }
  const whole = plans.find((plan) => plan.layout === undefined);
  if (!setting || !whole) return { pairs: pairs.all(), bulky: [] };
  const rims = new Map(plans.flatMap((plan) => (plan.layout ? [[plan.layout, rimOf(plan, plan.layout)] as const] : [])));
  meetAlongEdges({ setting, rims, pairs });
  return { pairs: pairs.all(), bulky: meetAtCorners({ setting, rims, pairs, whole }) };
}

/** Pairs that ask the same are counted as one. */
class Pairs {
  readonly #pairs = new Map<string, SeamPair>();

  add(a: QuiltEnd, b: QuiltEnd, { at, layout, weight }: { readonly at: Point; readonly layout: BlockLayout | undefined; readonly weight: number }): void {
    const [one, two] = a.seam <= b.seam ? [a, b] : [b, a];
    const differ = one.sense !== two.sense;
    const name = `${one.seam} ${two.seam} ${differ ? 'differ' : 'same'}`;
    const known = this.#pairs.get(name) ?? { a: one.seam, b: two.seam, differ, weight: 0, at, layout, between: [one.layout, two.layout] as const };
    this.#pairs.set(name, { ...known, weight: known.weight + weight });
  }

  all(): SeamPair[] {
    return [...this.#pairs.values()];
  }
}

function endIn(plan: PressedPlan, { pressed, sense }: SeamEnd, turned: number): QuiltEnd {
  return { seam: plan.first + pressed.as, sense: sense * turned, layout: plan.layout };
}

/** What a block shows its neighbours. */
interface Rim {
  readonly plan: PressedPlan;
  readonly byPoint: ReadonlyMap<string, RimPoint>;
  /** Points that are not corners of the block, with one seam end: they can nest with a neighbour's. */
  readonly single: readonly RimPoint[];
}

function rimOf(plan: PressedPlan, layout: BlockLayout): Rim {
  const corners = blockOutline(layout);
  const byPoint = new Map(plan.points.rim.map((point) => [pointKey(point.at), point]));
  const single = plan.points.rim.filter(({ at, ends }) => ends.length === 1 && !corners.some((corner) => samePoint(corner, at)));
  return { plan, byPoint, single };
}

interface Edges {
  readonly setting: Setting;
  readonly rims: ReadonlyMap<BlockLayout, Rim>;
  readonly pairs: Pairs;
}

/** Ends of both blocks at one point of the seam between them. Neighbours that lie to each other in the same way are compared once. */
function meetAlongEdges({ setting, rims, pairs }: Edges): void {
  const { assembled, parts } = setting;
  const known = new Map<string, readonly (readonly [QuiltEnd, QuiltEnd, Point])[]>();
  for (const { a, b, left, right } of assembled?.map.pieces ?? []) {
    const [one, two] = [parts[left]?.placement, parts[right]?.placement];
    const [from, to] = [assembled?.map.points[a], assembled?.map.points[b]];
    if (!one || !two || !from || !to) continue;
    const [rim, other] = [rims.get(one.block), rims.get(two.block)];
    if (!rim || !other || rim.single.length === 0 || other.single.length === 0) continue;
    const name = relation(one, two, { from, to });
    const met = known.get(name) ?? meetOn({ one, rim }, { two, other }, { from, to });
    known.set(name, met);
    for (const [first, second, at] of met) pairs.add(first, second, { at, layout: undefined, weight: 1 });
  }
}

/** Equal when the second block and the seam lie to the first in the same way. */
function relation(one: Placement, two: Placement, edge: { readonly from: Point; readonly to: Point }): string {
  const from = one.transform;
  const offsets = [two.transform, { dx: edge.from.x, dy: edge.from.y }, { dx: edge.to.x, dy: edge.to.y }].flatMap(({ dx, dy }) => [sub(dx, from.dx), sub(dy, from.dy)]);
  return [one.block.key, two.block.key, linear(from), linear(two.transform), ...offsets.map(key)].join(' ');
}

function linear({ xx, xy, yx, yy }: Transform): string {
  return [xx, xy, yx, yy].map(key).join(',');
}

function meetOn(first: { readonly one: Placement; readonly rim: Rim }, second: { readonly two: Placement; readonly other: Rim }, edge: { readonly from: Point; readonly to: Point }): (readonly [QuiltEnd, QuiltEnd, Point])[] {
  const place = ({ transform }: Placement, { single, plan }: Rim): [string, { at: Point; end: QuiltEnd }][] =>
    single.flatMap(({ at, ends: [end] }) => {
      const here = applyTo(at, transform);
      const inside = onSegment(here, edge.from, edge.to) && !samePoint(here, edge.from) && !samePoint(here, edge.to);
      return end && inside ? [[pointKey(here), { at: here, end: endIn(plan, end, determinantSign(transform)) }]] : [];
    });
  const near = new Map(place(first.one, first.rim));
  return place(second.two, second.other).flatMap(([name, { at, end }]) => {
    const met = near.get(name);
    return met ? [[met.end, end, at] as const] : [];
  });
}

/**
 * Where row seams run past the ends of others: a seam between blocks nests with a block's own on the other side. Answers the
 * points where a row seam runs across too many ends. (Seams between blocks that meet across a row seam are crossings of the setting's own plan.)
 */
function meetAtCorners({ setting, rims, pairs, whole }: Edges & { readonly whole: PressedPlan }): BulkyMeeting[] {
  const touching = partsAt(setting);
  return whole.points.meetings.flatMap(({ at, ends, through }) => {
    const [over] = through;
    if (!over) return [];
    const inner = (touching.get(pointKey(at)) ?? []).flatMap((placement) => blockEnds(placement, rims.get(placement.block), at));
    const [own, block] = [ends[0], inner[0]];
    if (own && block && ends.length === 1 && inner.length === 1 && isAcross(over.stretch, otherEnd(own, at), block.middle)) {
      pairs.add(endIn(whole, own, 1), block.end, { at, layout: undefined, weight: 1 });
    }
    const all = inner.length + ends.length + 2;
    return all >= BULKY ? [{ at, ends: all, over: whole.first + over.as }] : [];
  });
}

function otherEnd({ pressed: { stretch } }: SeamEnd, at: Point): Point {
  return samePoint(stretch.from, at) ? stretch.to : stretch.from;
}

function isAcross({ from, to }: Stretch, p: Point, q: Point): boolean {
  return orientation(from, to, p) !== orientation(from, to, q);
}

/** For each point of the setting the blocks that touch it. */
function partsAt({ assembled, parts }: Setting): Map<string, Placement[]> {
  const touching = new Map<string, Set<Placement>>();
  for (const { a, b, left, right } of assembled?.map.pieces ?? []) {
    for (const vertex of [a, b]) {
      const point = assembled?.map.points[vertex];
      if (!point) continue;
      const name = pointKey(point);
      const here = touching.get(name) ?? new Set();
      touching.set(name, here);
      for (const placement of [parts[left]?.placement, parts[right]?.placement]) if (placement) here.add(placement);
    }
  }
  return new Map([...touching].map(([name, here]) => [name, [...here]]));
}

/** The ends a placed block has at a point, and a point inside it to tell its side by. */
function blockEnds({ transform, block }: Placement, rim: Rim | undefined, at: Point): { readonly end: QuiltEnd; readonly middle: Point }[] {
  if (!rim || rim.byPoint.size === 0) return [];
  const local = rim.byPoint.get(pointKey(applyTo(at, inverse(transform))));
  const middle = applyTo(midpoint({ x: ZERO, y: ZERO }, { x: block.width, y: block.height }), transform);
  return (local?.ends ?? []).map((end) => ({ end: endIn(rim.plan, end, determinantSign(transform)), middle }));
}
