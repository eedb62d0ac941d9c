/** Lines and circles in doubles, for drawing templates. y runs down; the inside of a clockwise outline lies to the right of its sides. */

export interface Vector {
  readonly x: number;
  readonly y: number;
}

/** A side of an outline, straight or an arc about a centre; positive radii bulge out. */
interface Way {
  readonly from: Vector;
  readonly to: Vector;
  readonly radius: number;
  readonly centre?: Vector | undefined;
}

/** An endless line by a point and a way of length 1, or a circle. */
export type Curve = { readonly kind: 'line'; readonly at: Vector; readonly way: Vector } | { readonly kind: 'circle'; readonly centre: Vector; readonly radius: number };

export function vector(x: number, y: number): Vector {
  return { x, y };
}

/** The centre of the shorter arc over a chord: inside for one that bulges out. A radius shorter than half the chord counts as half the chord. */
export function centreOf(from: Vector, to: Vector, radius: number): Vector {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const ratio = Math.sign(radius) * Math.sqrt(Math.max(0, (radius * radius) / (x * x + y * y) - 1 / 4));
  return vector((from.x + to.x) / 2 - y * ratio, (from.y + to.y) / 2 + x * ratio);
}

/** The way one walks at a point of a side, of length 1. */
export function directionOf(p: Vector, { from, to, radius, centre }: Way): Vector {
  if (!centre) return unit(vector(to.x - from.x, to.y - from.y));
  const turned = vector(centre.y - p.y, p.x - centre.x);
  return unit(radius > 0 ? turned : vector(-turned.x, -turned.y));
}

/** Out of a clockwise outline, of length 1. */
export function normalOf(way: Vector): Vector {
  return vector(way.y, -way.x);
}

/** What a side lies on, moved out by a distance. An arc that bends in tighter than that becomes its chord. */
export function lineOf(side: Way, out: number): Curve {
  const radius = Math.abs(side.radius) + Math.sign(side.radius) * out;
  if (side.centre && radius > 0) return { kind: 'circle', centre: side.centre, radius };
  const way = unit(vector(side.to.x - side.from.x, side.to.y - side.from.y));
  const normal = normalOf(way);
  return { kind: 'line', at: vector(side.from.x + normal.x * out, side.from.y + normal.y * out), way };
}

/** Where one side ends and another begins; where their lines meet if a side between them was left out. */
export function meeting(one: Way, next: Way): Vector {
  if (Math.hypot(one.to.x - next.from.x, one.to.y - next.from.y) < 1e-9) return next.from;
  const points = intersections(lineOf(one, 0), lineOf(next, 0));
  const far = (p: Vector): number => Math.hypot(p.x - next.from.x, p.y - next.from.y);
  return points.reduce((best, p) => (far(p) < far(best) ? p : best), points[0] ?? next.from);
}

/** Where two curves meet: none, one or two points. */
export function intersections(one: Curve, other: Curve): Vector[] {
  if (one.kind === 'line' && other.kind === 'line') return linesMeet(one, other);
  if (one.kind === 'line') return other.kind === 'circle' ? lineMeets(one, other) : [];
  return other.kind === 'line' ? lineMeets(other, one) : circlesMeet(one, other);
}

type Line = Extract<Curve, { readonly kind: 'line' }>;
type Circle = Extract<Curve, { readonly kind: 'circle' }>;

function linesMeet(one: Line, other: Line): Vector[] {
  const slant = one.way.x * other.way.y - one.way.y * other.way.x;
  if (Math.abs(slant) < 1e-12) return [];
  const along = ((other.at.x - one.at.x) * other.way.y - (other.at.y - one.at.y) * other.way.x) / slant;
  return [vector(one.at.x + one.way.x * along, one.at.y + one.way.y * along)];
}

function lineMeets({ at, way }: Line, { centre, radius }: Circle): Vector[] {
  const foot = (centre.x - at.x) * way.x + (centre.y - at.y) * way.y;
  const near = vector(at.x + way.x * foot, at.y + way.y * foot);
  const squared = radius * radius - (near.x - centre.x) ** 2 - (near.y - centre.y) ** 2;
  if (squared < 0) return [];
  const half = Math.sqrt(squared);
  return [vector(near.x - way.x * half, near.y - way.y * half), vector(near.x + way.x * half, near.y + way.y * half)];
}

/** They meet on the line that lies square to that through their centres (the radical axis). */
function circlesMeet(one: Circle, other: Circle): Vector[] {
  const [x, y] = [other.centre.x - one.centre.x, other.centre.y - one.centre.y];
  const apart = Math.hypot(x, y);
  if (apart < 1e-12) return [];
  const along = (apart * apart + one.radius ** 2 - other.radius ** 2) / (2 * apart);
  const way = vector(-y / apart, x / apart);
  return lineMeets({ kind: 'line', at: vector(one.centre.x + (x / apart) * along, one.centre.y + (y / apart) * along), way }, one);
}

function unit({ x, y }: Vector): Vector {
  const length = Math.hypot(x, y);
  return vector(x / length, y / length);
}
