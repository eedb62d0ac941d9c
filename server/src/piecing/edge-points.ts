/** Points of blocks that lie on the edge of the quilt, where nothing but the seam of the binding is outside them. */
import { equals, isZero } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import { applyToAll } from '../exact/transform.ts';
import type { Placement, QuiltLayout } from '../geometry/layout.ts';

/** The placements with such points, in the order of the layout; none where there is a border, or the blocks float. */
export function placementsWithEdgePoints(layout: QuiltLayout): readonly Placement[] {
  if (layout.borders.length > 0 || layout.spec.float) return [];
  const sides = sidesOf(layout);
  return layout.placements.filter(({ block, transform, clip }) => !clip && block.patches.some(({ outline }) => hasTip(applyToAll(outline, transform), sides)));
}

export function hasEdgePoints(layout: QuiltLayout): boolean {
  return placementsWithEdgePoints(layout).length > 0;
}

type Side = (p: Point) => boolean;

function sidesOf({ width, height }: QuiltLayout): readonly Side[] {
  return [({ x }) => isZero(x), ({ y }) => isZero(y), ({ x }) => equals(x, width), ({ y }) => equals(y, height)];
}

/** A corner on one side of the quilt, both its edges running inward: a seam a thread further in would cut it off. */
function hasTip(outline: readonly Point[], sides: readonly Side[]): boolean {
  return outline.some((corner, i) => {
    const [side, ...more] = sides.filter((isOn) => isOn(corner));
    const [before, next] = [outline.at(i - 1) ?? corner, outline[(i + 1) % outline.length] ?? corner];
    return side !== undefined && more.length === 0 && !side(before) && !side(next);
  });
}
