/**
 * The rectangle a template is cut from: the box around the finished shape with the seam allowance on each side.
 * Points sharper than a right angle are trimmed square, a seam beyond the finished corner; right and blunt corners keep their
 * full allowance. Such a corner reaches at most s√2 beyond the finished one, and a side that an edge lies on exactly s.
 */
import { ZERO, add, div, equals, fraction, less, mul, neg, sign, sub, type Exact } from '../exact/number.ts';
import { boundingBox, edgesOf, type Box } from '../exact/polygon.ts';
import { cross, midpoint, minus, plus, samePoint, squaredDistance, times, type Point } from '../exact/point.ts';
import { rootDownTo, rootUpTo, squareRoot } from '../exact/roots.ts';
import type { Measure } from './plan.ts';
import { withRoot } from './sides.ts';

export interface Outline {
  readonly outline: readonly Point[];
  /** As in `Patch`: positive radii bulge out. */
  readonly arcs?: readonly (Exact | undefined)[];
}

export interface TemplateBox {
  readonly finished: Measure;
  readonly exactCut: Measure;
}

/** The finished box and the one to cut, along the axes of the outline. */
export function templateBox(shape: Outline, seam: Exact): TemplateBox {
  const touching = touchPoints(shape);
  const box = boundingBox(touching.map(({ at }) => at));
  const allowance = (side: Side): Exact => (isFlat(touching.filter(({ at }) => isOn(box, side, at)), side) ? seam : mul(seam, withRoot(0, 1)));
  const width = sub(box.right, box.left);
  const height = sub(box.bottom, box.top);
  return {
    finished: { width, height },
    exactCut: {
      width: add(width, add(allowance('left'), allowance('right'))),
      height: add(height, add(allowance('top'), allowance('bottom'))),
    },
  };
}

type Side = keyof Box;

/** Whether no corner alone touches the side: at each point of touch some edge runs along it. */
function isFlat(touching: readonly Touch[], side: Side): boolean {
  const along = touching.filter(({ flat }) => flat.includes(side));
  return touching.every(({ at }) => along.some((other) => samePoint(at, other.at)));
}

/** A point that may touch the box, and the sides along which the outline runs there. */
interface Touch {
  readonly at: Point;
  readonly flat: readonly Side[];
}

const UPRIGHT: readonly Side[] = ['left', 'right'];
const LEVEL: readonly Side[] = ['top', 'bottom'];

function touchPoints({ outline, arcs }: Outline): readonly Touch[] {
  return edgesOf(outline).flatMap(({ from, to }, i) => {
    const radius = arcs?.[i];
    if (samePoint(from, to)) return [];
    return radius === undefined || sign(radius) === 0 ? straightTouches(from, to) : arcTouches(from, to, radius);
  });
}

function straightTouches(from: Point, to: Point): readonly Touch[] {
  const flat = [...(equals(from.x, to.x) ? UPRIGHT : []), ...(equals(from.y, to.y) ? LEVEL : [])];
  return [from, to].map((at) => ({ at, flat }));
}

/** The ends of an arc and, where it bulges out, its furthest points. */
function arcTouches(from: Point, to: Point, radius: Exact): readonly Touch[] {
  const centres = arcCentres(from, to, radius);
  const ends = [from, to].map((at) => ({ at, flat: centres.length === 1 ? tangents(at, centres[0] ?? at) : [] }));
  if (sign(radius) < 0) return ends;
  return [...ends, ...centres.flatMap((centre) => furthest(centre, radius).filter(({ at }) => sign(cross(minus(to, from), minus(at, from))) < 0))];
}

function tangents(at: Point, centre: Point): readonly Side[] {
  return [...(equals(at.y, centre.y) ? UPRIGHT : []), ...(equals(at.x, centre.x) ? LEVEL : [])];
}

function furthest({ x, y }: Point, radius: Exact): readonly Touch[] {
  return [
    { at: { x: add(x, radius), y }, flat: UPRIGHT },
    { at: { x: sub(x, radius), y }, flat: UPRIGHT },
    { at: { x, y: add(y, radius) }, flat: LEVEL },
    { at: { x, y: sub(y, radius) }, flat: LEVEL },
  ];
}

const FINE = fraction(1, 2 ** 20);

/**
 * The centre of the shorter arc over a chord; two that enclose it where the field does not hold it. The inside of a clockwise
 * outline lies to the right of its edges, and the centre of an arc that bulges out on that side, at chord · √(r²/chord² − 1/4).
 */
function arcCentres(from: Point, to: Point, radius: Exact): readonly Point[] {
  const chord = minus(to, from);
  const inward = sign(radius) > 0 ? { x: neg(chord.y), y: chord.x } : { x: chord.y, y: neg(chord.x) };
  const squared = sub(div(mul(radius, radius), squaredDistance(from, to)), fraction(1, 4));
  const ratio = less(squared, ZERO) ? ZERO : squared;
  const exact = squareRoot(ratio);
  const roots = exact === undefined ? [rootDownTo(ratio, FINE), rootUpTo(ratio, FINE)] : [exact];
  return roots.map((root) => plus(midpoint(from, to), times(inward, root)));
}

function isOn(box: Box, side: Side, { x, y }: Point): boolean {
  return equals(box[side], side === 'left' || side === 'right' ? x : y);
}
