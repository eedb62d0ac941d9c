/** The seams inside a block as one sees them: what lies on both sides of each, and how long it is. Worked out once for a block. */
import { toNumber } from '../../exact/number.ts';
import type { Point } from '../../exact/point.ts';
import type { Polygon } from '../../exact/polygon.ts';
import { cutAlong } from '../../geometry/clip.ts';
import type { BlockLayout, Patch } from '../../geometry/layout.ts';
import { mapOf, pointAt, type Shape } from '../../piecing/map.ts';
import { overlaysOf } from '../../piecing/overlays.ts';

/** What one sees of a patch: a flipped corner hides a part of what it lies on. */
export interface Seen extends Shape {
  /** Its index in the layout. */
  readonly patch: number;
}

export interface SeenSeam {
  /** Indices of what is seen on either side. */
  readonly sides: readonly [number, number];
  readonly from: Point;
  readonly to: Point;
  /** Inches; along the curve where it is one. */
  readonly length: number;
  /** Of a curved one; positive when it bulges to the left of its way. */
  readonly radius?: number;
}

export interface BlockSeams {
  readonly seen: readonly Seen[];
  /** Between two patches. */
  readonly seams: readonly SeenSeam[];
  /** Straight stretches on the outside of the block, the patch to the right of one who walks along. */
  readonly rim: readonly { readonly side: number; readonly from: Point; readonly to: Point }[];
}

const known = new WeakMap<BlockLayout, BlockSeams>();

/** Without seams where the patches overlap, which is an error that is told elsewhere. */
export function seamsInBlock(layout: BlockLayout): BlockSeams {
  const found = known.get(layout) ?? seamsOf(seenOf(layout.patches));
  known.set(layout, found);
  return found;
}

function seamsOf(seen: readonly Seen[]): BlockSeams {
  const map = mapOf(seen);
  if (!map) return { seen, seams: [], rim: [] };
  const seams: SeenSeam[] = [];
  const rim: BlockSeams['rim'][number][] = [];
  for (const { a, b, left, right, radius: bend } of map.pieces) {
    const [from, to] = [pointAt(map, a), pointAt(map, b)];
    const radius = bend && toNumber(bend);
    if (left >= 0 && right >= 0) seams.push({ sides: [left, right], from, to, length: lengthOf(from, to, radius), ...(radius !== undefined && { radius }) });
    else rim.push(right >= 0 ? { side: right, from, to } : { side: left, from: to, to: from });
  }
  return { seen, seams, rim };
}

function lengthOf(from: Point, to: Point, radius: number | undefined): number {
  const chord = Math.hypot(toNumber(to.x) - toNumber(from.x), toNumber(to.y) - toNumber(from.y));
  if (!radius) return chord;
  const size = Math.max(Math.abs(radius), chord / 2);
  return 2 * size * Math.asin(chord / (2 * size));
}

function seenOf(patches: readonly Patch[]): readonly Seen[] {
  const { names, overlays } = overlaysOf(patches);
  const corners = overlays.flatMap(({ patch }) => (patches[patch] ? [{ patch, outline: patches[patch].outline }] : []));
  const bases = names.flatMap((patch, base): readonly Seen[] => {
    const { outline, arcs } = patches[patch] ?? { outline: [] };
    const over = overlays.filter((overlay) => overlay.over.includes(base)).map((overlay) => patches[overlay.patch]?.outline ?? []);
    return over.length === 0 ? [{ patch, outline, ...(arcs && { arcs }) }] : uncovered(outline, over).map((part) => ({ patch, outline: part }));
  });
  return [...bases, ...corners];
}

/** What the corners leave of an outline: beyond the long side of each. */
function uncovered(outline: Polygon, corners: readonly Polygon[]): readonly Polygon[] {
  return corners.reduce<readonly Polygon[]>((parts, [, next, last]) => (next && last ? parts.flatMap((part) => cutAlong(part, last, next)) : parts), [outline]);
}
