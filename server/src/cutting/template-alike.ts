/**
 * Shapes of a block that one template serves lie on the cloth as the first of them does, however they are turned in the block: the blades
 * of a fan are cut alike. Only where the author fixed no grain, and where no direction of the cloth shows.
 */
import { isRectangle } from '../exact/polygon.ts';
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import { rightIsosceles } from './sides.ts';
import { formOf, mirrored } from './template-pose.ts';

const known = new WeakMap<BlockLayout, readonly Patch[]>();

/** A patch of the block, for cutting: with the outline of the first of its shape, turned over where it must be. */
export function laidAlike(block: BlockLayout, index: number): Patch {
  const laid = known.get(block) ?? layAlike(block);
  known.set(block, laid);
  const patch = laid[index];
  if (!patch) throw new RangeError(`no patch ${index}`);
  return patch;
}

function layAlike({ patches }: BlockLayout): readonly Patch[] {
  const firsts = new Map<string, { readonly patch: Patch; readonly isTurnedOver: boolean }>();
  return patches.map((patch) => {
    if (!isFree(patch)) return patch;
    const { key, isTurnedOver } = formOf(patch);
    const first = firsts.get(key);
    if (!first) {
      firsts.set(key, { patch, isTurnedOver });
      return patch;
    }
    const { outline, arcs } = isTurnedOver === first.isTurnedOver ? first.patch : mirrored(first.patch);
    return { ...patch, outline, ...(arcs ? { arcs } : {}) };
  });
}

/** A shape that no square gives. */
function isFree({ role, grain, fabric, arcs, outline }: Patch): boolean {
  if (role !== 'patch' || grain !== undefined || fabric.directional || outline.length < 3) return false;
  return (arcs?.some((radius) => radius !== undefined) ?? false) || (!isRectangle(outline) && !rightIsosceles(outline));
}
