/**
 * Do the patches cover the target exactly once? Decided exactly, and said where and how much when they do not.
 *
 * First the verdict, from edge ends alone (`tiling-chain.ts`): nothing left over means yes. Otherwise what is left over bounds the
 * faults (`tiling-pieces.ts`, `tiling-regions.ts`): the value of a place is the number of patches there, less one inside the target;
 * −1 is a gap, more than 0 an overlap or outside. Which patches those are is asked of the pairs that come near such a place.
 * The work grows with the patches for a yes, and with what is wrong for a no.
 */
import { ZERO, compare, sign, sum } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { orientation, samePoint } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { convexWinding, edgesOf, isConvex, isSimple, locate, signedArea } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import { leftover } from './tiling-chain.ts';
import type { Loop, Stretch } from './tiling-chain.ts';
import { nearPairs, reachOf, touches } from './tiling-near.ts';
import type { Reach } from './tiling-near.ts';
import { piecesOf } from './tiling-pieces.ts';
import { regionsWhere } from './tiling-regions.ts';
import type { Region } from './tiling-regions.ts';

/** A rectangle from 0,0 to width,height (without width or height it holds nothing), or any simple polygon, wound either way. */
export type Target = { readonly width: Exact; readonly height: Exact } | Polygon;

/** Patches are named by their index; areas are in square units of the coordinates. */
export type TilingFault = EmptyPatch | Gap | Overlap | Outside | More;

/** No shape; the patch counts as missing. `crosses itself` includes outlines that touch themselves. */
export interface EmptyPatch {
  readonly kind: 'empty';
  readonly patch: number;
  readonly reason: 'no area' | 'crosses itself' | 'too few corners';
}

/** Places of the target without a patch, from left to right. */
export interface Gap {
  readonly kind: 'gap';
  readonly regions: readonly Region[];
}

/** Patches a < b share `area` in all; `outline`, and `at` inside it, are of the largest place. */
export interface Overlap {
  readonly kind: 'overlap';
  readonly a: number;
  readonly b: number;
  readonly area: Exact;
  readonly at: Point;
  readonly outline: Polygon;
  readonly regions: readonly Region[];
}

/** So much of the patch lies outside the target; `at` is inside the largest such place. */
export interface Outside {
  readonly kind: 'outside';
  readonly patch: number;
  readonly area: Exact;
  readonly at: Point;
  readonly outline: Polygon;
  readonly regions: readonly Region[];
}

/** More is wrong than is worth listing: what is listed is true, and not all. */
export interface More {
  readonly kind: 'more';
}

/** How much to look at before answering `more`. */
export interface TilingLimits {
  /** Meetings of the lines left over; 20,000 unless said. */
  readonly meetings?: number;
  /** Pairs of patches with a shared place; 1,000 unless said. */
  readonly overlaps?: number;
}

/**
 * Nothing when the patches (simple, wound either way, corners anywhere on each other's edges) tile the target; else what is wrong,
 * in the order empty, gap, overlap, outside, more. Throws RangeError when a polygon given as target is not simple.
 */
export function checkTiling(target: Target, patches: readonly Polygon[], limits: TilingLimits = {}): TilingFault[] {
  const shapes = patches.map(shapeOf);
  const faults: TilingFault[] = shapes.flatMap((shape, patch) => (typeof shape === 'string' ? [{ kind: 'empty', patch, reason: shape }] : []));
  const loops = shapes.flatMap((shape, index) => (typeof shape === 'string' ? [] : [{ ...shape, index }]));
  const outline = outlineOf(target);
  const stretches = leftover([...loops, ...outline.map((loop) => ({ ...loop, weight: -loop.weight }))]);
  return stretches.length === 0 ? faults : [...faults, ...faultsIn(stretches, loops, outline, limits)];
}

type Named = Loop & { readonly index: number };

function outlineOf(target: Target): Loop[] {
  const shape = shapeOf('width' in target ? rectangle(target.width, target.height) : target);
  if (typeof shape !== 'string') return [shape];
  if ('width' in target) return [];
  throw new RangeError('The outline to fill is not a simple polygon.');
}

function rectangle(width: Exact, height: Exact): Polygon {
  if (sign(width) <= 0 || sign(height) <= 0) return [];
  return [
    { x: ZERO, y: ZERO },
    { x: width, y: ZERO },
    { x: width, y: height },
    { x: ZERO, y: height },
  ];
}

/** The polygon with its winding for weight, or why it bounds nothing. */
function shapeOf(polygon: Polygon): Loop | EmptyPatch['reason'] {
  const winding = convexWinding(polygon);
  if (winding !== 0) return { corners: polygon, weight: winding };
  const corners = polygon.filter((p, i) => !samePoint(p, polygon.at(i - 1) ?? p));
  const [a, b] = corners;
  if (a === undefined || b === undefined || corners.length < 3) return 'too few corners';
  if (corners.every((p) => orientation(a, b, p) === 0)) return 'no area';
  return isSimple(corners) ? { corners, weight: sign(signedArea(corners)) } : 'crosses itself';
}

function faultsIn(stretches: readonly Stretch[], loops: readonly Named[], outline: readonly Loop[], limits: TilingLimits): TilingFault[] {
  const most = limits.meetings ?? MOST_MEETINGS;
  const pieces = piecesOf(stretches, most);
  const gaps = pieces === undefined ? [] : regionsWhere(pieces, (value) => value < 0);
  const crowded = pieces && regionsWhere(pieces, (value) => value > 0).map((region) => reachOf(region.outline));
  const suspects = loops
    .map((loop) => ({ ...loop, ...reachOf(loop.corners) }))
    .filter((loop) => crowded === undefined || crowded.some((place) => touches(place, loop)));
  const others = [...overlapsAmong(suspects, limits), ...suspects.flatMap((patch) => outsideOf(patch, outline, most))];
  return ordered(gaps, pieces === undefined ? [...others, { kind: 'more' }] : others);
}

type Suspect = Named & Reach;

function overlapsAmong(suspects: readonly Suspect[], limits: TilingLimits): (Overlap | More)[] {
  const found: Overlap[] = [];
  let toPass = MOST_NEIGHBOURS;
  for (const [first, second] of nearPairs(suspects)) {
    toPass -= 1;
    if (toPass < 0 || found.length === (limits.overlaps ?? MOST_OVERLAPS)) return [...found, { kind: 'more' }];
    const [a, b] = first.index < second.index ? [first, second] : [second, first];
    if (isBeside(a, b) || isBeside(b, a)) continue;
    const places = placesWhere([rising(a, 1), rising(b, 1)], 2, limits.meetings ?? MOST_MEETINGS);
    if (places === undefined) return [...found, { kind: 'more' }];
    if (places.length > 0) found.push({ kind: 'overlap', a: a.index, b: b.index, ...told(places) });
  }
  return found;
}

function outsideOf(patch: Suspect, outline: readonly Loop[], most: number): (Outside | More)[] {
  if (outline.some(({ corners }) => isConvex(corners) && patch.corners.every((p) => locate(corners, p) >= 0))) return [];
  const places = placesWhere([rising(patch, 1), ...outline.map((loop) => rising(loop, 2))], 1, most);
  if (places === undefined) return [{ kind: 'more' }];
  return places.length === 0 ? [] : [{ kind: 'outside', patch: patch.index, ...told(places) }];
}

/** The places where the loops' values add up to `value`. */
function placesWhere(loops: readonly Loop[], value: number, most: number): Region[] | undefined {
  const pieces = piecesOf(leftover(loops), most);
  return pieces && regionsWhere(pieces, (sum) => sum === value);
}

/** The same outline, counting `weight` inside. */
function rising({ corners, weight }: Loop, value: number): Loop {
  return { corners, weight: weight * value };
}

/** True when an edge of a, which then is convex, has all of b on its outer side: they share no area. */
function isBeside(a: Loop, b: Loop): boolean {
  if (!isConvex(a.corners)) return false;
  return edgesOf(a.corners).some(({ from, to }) => b.corners.every((p) => orientation(from, to, p) * a.weight <= 0));
}

function told(regions: readonly Region[]): Pick<Overlap, 'area' | 'at' | 'outline' | 'regions'> {
  const [largest] = [...regions].sort((a, b) => compare(b.area, a.area));
  if (largest === undefined) throw new RangeError('There is no place to tell of.');
  return { area: sum(regions.map(({ area }) => area)), at: largest.inside, outline: largest.outline, regions };
}

/** The gaps, then overlaps by a and b, then parts outside by patch, then at most one `more`. */
function ordered(gaps: readonly Region[], faults: readonly (Overlap | Outside | More)[]): TilingFault[] {
  return [
    ...(gaps.length === 0 ? [] : [{ kind: 'gap', regions: gaps } as const]),
    ...faults.filter((fault) => fault.kind === 'overlap').sort((f, g) => f.a - g.a || f.b - g.b),
    ...faults.filter((fault) => fault.kind === 'outside').sort((f, g) => f.patch - g.patch),
    ...faults.filter((fault) => fault.kind === 'more').slice(0, 1),
  ];
}

const MOST_MEETINGS = 20_000;
const MOST_OVERLAPS = 1_000;
/** Pairs of patches with touching boxes; a pair takes about a microsecond to pass. */
const MOST_NEIGHBOURS = 200_000;
