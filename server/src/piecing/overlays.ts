/** Corners that are flipped: which patches they lie over, and the seam that sews them on. */
import { atMost } from '../exact/number.ts';
import { onSegment, samePoint } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { boundingBox, edgesOf } from '../exact/polygon.ts';
import { cutTo } from '../geometry/clip.ts';
import type { Patch } from '../geometry/layout.ts';
import type { Overlay } from './realise.ts';
import type { Seam } from './plan.ts';

/** The base patches of a layout, and the corners over them; `names` gives the patch of each base. */
export function overlaysOf(patches: readonly Pick<Patch, 'outline' | 'role'>[]): { readonly names: readonly number[]; readonly overlays: readonly Overlay[] } {
  const names = [...patches.keys()].filter((patch) => patches[patch]?.role !== 'flipped_corner');
  const bases = names.map((patch) => patches[patch]?.outline ?? []);
  const overlays = patches.flatMap((patch, index): Overlay[] => {
    if (patch.role !== 'flipped_corner') return [];
    const over = basesUnder(patch.outline, bases);
    const seam = flippedSeam(patch.outline, { corner: index, over });
    return seam && over.length > 0 ? [{ patch: index, over, seam }] : [];
  });
  return { names, overlays };
}

/** The one base whose corner it covers, or all that share area with it. */
function basesUnder(corner: readonly Point[], bases: readonly (readonly Point[])[]): number[] {
  const whole = bases.findIndex((base) => holdsCorner(base, corner));
  if (whole >= 0) return [whole];
  const box = boundingBox(corner);
  return [...bases.keys()].filter((i) => {
    const base = bases[i] ?? [];
    const other = boundingBox(base);
    const apart = atMost(other.right, box.left) || atMost(box.right, other.left) || atMost(other.bottom, box.top) || atMost(box.bottom, other.top);
    return !apart && cutTo(base, corner).length > 0;
  });
}

/** True when two edges of the base, at a corner of it, run along the legs of the flipped corner. */
function holdsCorner(base: readonly Point[], [tip, next, last]: readonly Point[]): boolean {
  if (!tip || !next || !last) return false;
  const at = base.findIndex((p) => samePoint(p, tip));
  const edges = edgesOf(base);
  const [into, out] = [edges.at(at - 1), edges[at]];
  return at >= 0 && into !== undefined && out !== undefined && onSegment(next, out.from, out.to) && onSegment(last, into.from, into.to);
}

/** From leg to leg, the corner to the right. */
function flippedSeam([, from, to]: readonly Point[], { corner, over }: { readonly corner: number; readonly over: readonly number[] }): Omit<Seam, 'number'> | undefined {
  if (!from || !to) return undefined;
  return { kind: 'flipped', stretches: [{ from, to, left: over, right: [corner], via: [] }], corners: [] };
}
