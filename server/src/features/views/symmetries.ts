/** The turns and mirrorings that bring a block's patches onto each other, whatever their fabrics. */
import { div, equals, TWO } from '../../exact/number.ts';
import { pointKey } from '../../exact/point.ts';
import { about, applyToAll, compose, FLIP, IDENTITY, MIRROR, turn, type Transform } from '../../exact/transform.ts';
import type { BlockLayout } from '../../geometry/layout.ts';

const known = new WeakMap<BlockLayout, readonly (readonly number[])[]>();

/** For each symmetry, where each patch comes to lie: the number of the patch there. The one that moves nothing is the first. */
export function symmetriesOf(layout: BlockLayout): readonly (readonly number[])[] {
  const found = known.get(layout) ?? find(layout);
  known.set(layout, found);
  return found;
}

function find({ width, height, patches }: BlockLayout): readonly (readonly number[])[] {
  const centre = { x: div(width, TWO), y: div(height, TWO) };
  const places = new Map(patches.map(({ outline, role }, index) => [placeName(outline, role), index]));
  const ways = equals(width, height) ? [...HALVES, ...QUARTERS] : HALVES;
  return ways.flatMap((way) => {
    const images = patches.map(({ outline, role }) => places.get(placeName(applyToAll(outline, about(centre, way)), role)));
    return images.every((image) => image !== undefined) && new Set(images).size === patches.length ? [images] : [];
  });
}

const HALF = turn(12);
const QUARTER = turn(6);
const HALVES: readonly Transform[] = [IDENTITY, HALF, MIRROR, FLIP];
const QUARTERS: readonly Transform[] = [QUARTER, turn(18), compose(MIRROR, QUARTER), compose(FLIP, QUARTER)];

/** Its corners in an order of their own; curves are told by their ends. */
function placeName(outline: Parameters<typeof applyToAll>[0], role: string): string {
  return `${role} ${outline.map(pointKey).toSorted().join(' ')}`;
}
