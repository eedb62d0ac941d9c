/** The length of a patch's edges, and of the line inside it that follows them at a distance. In floats: it ranks nothing and decides nothing. */
import { toNumber, type Exact } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';

export interface Outline {
  /** Clockwise on the screen. */
  readonly outline: readonly Point[];
  readonly arcs?: readonly (Exact | undefined)[];
}

interface Edge {
  readonly from: Spot;
  readonly to: Spot;
  readonly length: number;
  /** Where one walks at its start and its end, in radians. */
  readonly leaves: number;
  readonly arrives: number;
  /** Of an arc; positive where it bulges out of the patch. */
  readonly radius?: number;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Of every edge, in order. */
export function lengthsOf(patch: Outline): readonly number[] {
  return edgesOf(patch).map(({ length }) => length);
}

/** 0 where the patch is too narrow for such a line. */
export function echoOf(patch: Outline, distance: number): number {
  const edges = edgesOf(patch);
  const corners = edges.map((edge, i) => turnInto(edges.at(i - 1) ?? edge, edge));
  const isConvex = edges.every(({ radius }) => radius === undefined) && corners.every((turn) => turn >= -1e-9);
  return isConvex ? insideConvex(edges, distance) : insideAny(edges, corners, distance);
}

function edgesOf({ outline, arcs }: Outline): readonly Edge[] {
  const spots = outline.map(({ x, y }): Spot => ({ x: toNumber(x), y: toNumber(y) }));
  return spots.map((from, i): Edge => {
    const to = spots[(i + 1) % spots.length] ?? from;
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    const way = Math.atan2(to.y - from.y, to.x - from.x);
    const bend = arcs?.[i];
    if (!bend) return { from, to, length: chord, leaves: way, arrives: way };
    const radius = toNumber(bend);
    const half = Math.asin(Math.min(1, chord / 2 / Math.abs(radius))) * Math.sign(radius);
    return { from, to, length: 2 * radius * half, leaves: way - half, arrives: way + half, radius };
  });
}

/** How far one turns at a corner; to the right, into a convex patch, is positive. */
function turnInto(before: Edge, after: Edge): number {
  const turn = after.leaves - before.arrives;
  return turn > Math.PI ? turn - 2 * Math.PI : turn <= -Math.PI ? turn + 2 * Math.PI : turn;
}

/** What is left when the patch is cut off along a line beside each of its edges. */
function insideConvex(edges: readonly Edge[], distance: number): number {
  let rim: readonly Spot[] = edges.map(({ from }) => from);
  for (const { from, leaves } of edges) rim = rightOf(rim, from, leaves, distance);
  return rim.reduce((sum, spot, i) => {
    const next = rim[(i + 1) % rim.length] ?? spot;
    return sum + Math.hypot(next.x - spot.x, next.y - spot.y);
  }, 0);
}

function rightOf(rim: readonly Spot[], from: Spot, way: number, distance: number): readonly Spot[] {
  const depth = ({ x, y }: Spot): number => (y - from.y) * Math.cos(way) - (x - from.x) * Math.sin(way) - distance;
  return rim.flatMap((spot, i) => {
    const next = rim[(i + 1) % rim.length] ?? spot;
    const [here, there] = [depth(spot), depth(next)];
    const share = here / (here - there);
    const meeting = { x: spot.x + share * (next.x - spot.x), y: spot.y + share * (next.y - spot.y) };
    return [...(here >= 0 ? [spot] : []), ...(here >= 0 !== there >= 0 ? [meeting] : [])];
  });
}

/** Each edge shifted inward, shorter by what its corners take; an edge that is too short for it has no line. */
function insideAny(edges: readonly Edge[], corners: readonly number[], distance: number): number {
  return edges.reduce((sum, { length, radius }, i) => {
    const cut = distance * (Math.tan((corners[i] ?? 0) / 2) + Math.tan((corners[(i + 1) % corners.length] ?? 0) / 2));
    const shifted = radius === undefined ? length : length * Math.max(0, 1 - distance / radius);
    return sum + Math.max(0, shifted - cut);
  }, 0);
}
