/**
 * How far a quilt hangs over the mattress of the bed it is for. Its head lies at the head of the mattress: what it is wider than
 * the mattress hangs at the two sides in halves, what it is longer hangs at the foot, or is tucked over the pillows
 * (http://ciaspalette.com/categories/mattresses.html: a twin of 39" by 75" with a drop of 12" is 63" by 87").
 */
import { HALF, mul, sub } from '../exact/number.ts';
import type { QuiltLayout } from '../geometry/layout.ts';
import { BEDS } from '../model/sizes.ts';
import type { DropPlan } from './plan.ts';

/** Undefined for a size that does not say what bed it is for. */
export function planDrop({ spec, width, height }: QuiltLayout): DropPlan | undefined {
  const bed = spec.size?.bed;
  const mattress = bed === undefined ? undefined : BEDS.get(bed);
  if (bed === undefined || !mattress) return undefined;
  return {
    bed,
    mattress: { width: mattress.width, height: mattress.length },
    sides: mul(HALF, sub(width, mattress.width)),
    foot: sub(height, mattress.length),
  };
}
