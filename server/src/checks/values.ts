/** When the seam between two fabrics is lost because they are of nearly one value, and the nearest change of value that would mend it. */
import type { Fabric } from '../model/pattern.ts';
import { lightness } from '../text/colour.ts';

/** In L*, from 0 (black) to 100 (white): half a step of the grey scale of ten steps by which quilters tell values. */
export const NEAR = 5;

const LIGHTEST = 100;

/** L*, from 0 to 100. */
export function lightnessOf({ colour }: Pick<Fabric, 'colour'>): number {
  return lightness(colour) ?? 0;
}

export function differenceOf(one: Pick<Fabric, 'colour'>, other: Pick<Fabric, 'colour'>): number {
  const [a, b] = [lightnessOf(one), lightnessOf(other)];
  return a < b ? b - a : a - b;
}

/** Too near to be told apart, unless the author says that their values differ. What only stands for a cloth is not judged. */
export function isLost(one: Fabric, other: Fabric): boolean {
  if (one.standsFor || other.standsFor) return false;
  const saidToDiffer = one.value && other.value && one.value !== other.value;
  return differenceOf(one, other) < NEAR && !saidToDiffer;
}

export interface ValueChange {
  readonly fabric: Fabric;
  /** L* from here on, away from where it is now, the seam shows: a tenth, rounded to the safe side. */
  readonly to: number;
  readonly way: 'lighter' | 'darker';
}

/**
 * The smallest change of lightness of one of the two that sets it apart from everything in `beside` it (the other of the two among
 * them); undefined when black and white are both too near.
 */
export function nearestChange(one: Fabric, other: Fabric, beside: (fabric: Fabric) => readonly Fabric[]): ValueChange | undefined {
  const changes = [one, other].flatMap((fabric) => {
    const neighbours = beside(fabric).map(lightnessOf);
    return (['lighter', 'darker'] as const).flatMap((way) => {
      const to = clearOf(lightnessOf(fabric), neighbours, way);
      return to === undefined ? [] : [{ fabric, to, way }];
    });
  });
  return changes.toSorted((a, b) => stepOf(a) - stepOf(b))[0];
}

function stepOf({ fabric, to }: ValueChange): number {
  const from = lightnessOf(fabric);
  return to < from ? from - to : to - from;
}

/** From a value up or down to the first tenth that no neighbour is near. Rounded at each neighbour: a rounded value may come near the next. */
function clearOf(from: number, neighbours: readonly number[], way: ValueChange['way']): number | undefined {
  const up = way === 'lighter';
  const inOrder = neighbours.toSorted((a, b) => (up ? a - b : b - a));
  const value = inOrder.reduce((at, each) => (isNear(at, each) ? tenth(up ? each + NEAR : each - NEAR, up) : at), from);
  return value < 0 || value > LIGHTEST ? undefined : value;
}

function isNear(a: number, b: number): boolean {
  return a - b < NEAR && b - a < NEAR;
}

/** The next tenth upwards or downwards. */
function tenth(value: number, up: boolean): number {
  const rest = (value * 10) % 1;
  const below = (value * 10 - rest) / 10;
  return rest === 0 || !up ? below : below + 1 / 10;
}
