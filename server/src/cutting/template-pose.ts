/**
 * How a shape lies: its sides in order, so that two shapes can be laid one upon the other. Shapes that are the same when moved, turned
 * or turned over share a key, exactly; of each it is known whether it is turned over. Marks on the sides come along.
 */
import { ZERO, add, fraction, key, mul, neg, sub, toInteger, type Exact } from '../exact/number.ts';
import { cross, dot, minus, squaredDistance, type Point } from '../exact/point.ts';
import { edgesOf } from '../exact/polygon.ts';
import { applyTo, turn } from '../exact/transform.ts';
import type { Outline } from './template.ts';

export interface Posable extends Outline {
  /** Degrees from upright, when the author fixed it or the fabric is directional. */
  readonly grain?: Exact;
  readonly isDirectional?: boolean;
}

export interface Pose {
  /** Shared by shapes that one template serves. */
  readonly key: string;
  /** The other side of the template lies up, against other poses of the same key. Never so for what is its own mirror image. */
  readonly isTurnedOver: boolean;
  /** The sides in the order of the key, each an edge of the outline by its index. */
  readonly sides: readonly number[];
  /** The sides are walked backwards in that order. */
  readonly isBackwards: boolean;
}

export function poseOf(shape: Posable): Pose {
  const grain = grainOf(shape);
  const [own, other] = [readings(shape, grain), readings(mirrored(shape), grain && mirroredGrain(grain))] as const;
  const isTurned = other.text < own.text;
  const [bare, over] = [readings(shape, undefined), readings(mirrored(shape), undefined)];
  const isOwnMirror = bare.text === over.text && (shape.grain === undefined || own.text === other.text);
  const count = shape.outline.length;
  const sides = isTurned ? other.order.map((i) => count - 1 - i) : own.order;
  return { key: isTurned ? other.text : own.text, isTurnedOver: isTurned && !isOwnMirror, sides, isBackwards: isTurned };
}

/** Shared by shapes that are the same when moved, turned or turned over, whatever their grain. */
export function formOf(shape: Outline): { readonly key: string; readonly isTurnedOver: boolean } {
  const [own, over] = [readings(shape, undefined).text, readings(mirrored(shape), undefined).text];
  return over < own ? { key: over, isTurnedOver: true } : { key: own, isTurnedOver: false };
}

/** Wound the same way again: edge i becomes edge n − 1 − i. */
export function mirrored<S extends Outline>(shape: S): S {
  const { outline, arcs } = shape;
  const flipped = outline.map(({ x, y }) => ({ x: neg(x), y }));
  const turned = [...flipped.slice(0, 1), ...flipped.slice(1).reverse()];
  return { ...shape, outline: turned, ...(arcs ? { arcs: outline.map((_, i) => arcs[outline.length - 1 - i]) } : {}) };
}

/** The grain line, and after how much of a turn it reads the same: a quarter where either straight grain will do, a half where one is fixed. */
interface Grain {
  readonly way: Point;
  readonly turns: 1 | 2 | 4;
  /** Degrees that no exact way is known for. */
  readonly other: string;
}

const UPRIGHT: Point = { x: ZERO, y: fraction(-1) };

function grainOf({ grain, isDirectional }: Posable): Grain {
  const steps = grain === undefined ? 0 : toInteger(mul(grain, fraction(1, 15)));
  const turns = isDirectional ? 1 : grain === undefined ? 4 : 2;
  return { way: steps === undefined ? UPRIGHT : applyTo(UPRIGHT, turn(steps)), turns, other: steps === undefined && grain ? key(grain) : '' };
}

function mirroredGrain({ way, ...rest }: Grain): Grain {
  return { ...rest, way: { x: neg(way.x), y: way.y } };
}

interface Reading {
  readonly text: string;
  readonly order: readonly number[];
}

/** Around the shape from the corner from which it reads least. */
function readings({ outline, arcs }: Outline, grain: Grain | undefined): Reading {
  const edges = edgesOf(outline);
  const parts = edges.map(({ from, to }, i) => {
    const next = edges[(i + 1) % edges.length] ?? { from: to, to: from };
    const [along, on] = [minus(to, from), minus(next.to, next.from)];
    return [squaredDistance(from, to), dot(along, on), cross(along, on), arcs?.[i] ?? ZERO, ...(grain ? grainAgainst(along, grain) : [])].map(key).join(' ');
  });
  const least = parts
    .map((_, i) => ({ text: [...parts.slice(i), ...parts.slice(0, i)].join('; '), start: i }))
    .reduce((best, each) => (each.text < best.text ? each : best), { text: parts.join('; '), start: 0 });
  const order = parts.map((_, i) => (i + least.start) % parts.length);
  return { text: grain ? `${least.text} | ${grain.turns} ${grain.other}` : least.text, order };
}

/** The edge as a number in the plane over the grain's, squared until turns that do not matter make no difference. */
function grainAgainst(along: Point, { way, turns }: Grain): readonly Exact[] {
  let [x, y] = [dot(way, along), cross(way, along)];
  for (let n = turns; n > 1; n /= 2) [x, y] = [sub(mul(x, x), mul(y, y)), mul(add(x, x), y)];
  return [x, y];
}
