/**
 * Setting triangles of a quilt on point, cut so that the straight grain runs along the quilt's edge.
 * A side triangle is a quarter of a square of its long side + (2+2√2)s; a corner triangle is half of a square of its leg + (2+√2)s.
 * A piece that floats (its outer edge further out, a tip cut off by the next seam) is cut as the triangle around it.
 */
import { SQRT2, ZERO, abs, add, div, equals, fraction, less, max, min, mul, sub, type Exact } from '../exact/number.ts';
import { edgesOf, withoutStraightCorners } from '../exact/polygon.ts';
import type { Point } from '../exact/point.ts';
import { isUpright, lengthBetween, withRoot } from './sides.ts';

export interface SettingTriangle {
  /** The side of the block it stands beside: what the triangle would finish at without the float. */
  readonly block: Exact;
  /** The square to cut, before rounding up. */
  readonly square: Exact;
}

/** The square for a side triangle; undefined when the outline has no edge along the quilt's. */
export function sideTriangle(outline: readonly Point[], seam: Exact, float: Exact): SettingTriangle | undefined {
  const outer = outerEdge(outline);
  if (!outer) return undefined;
  const isLevel = equals(outer.from.y, outer.to.y);
  const points = outline.map(({ x, y }) => (isLevel ? { along: x, inward: abs(sub(y, outer.from.y)) } : { along: y, inward: abs(sub(x, outer.from.x)) }));
  const [firstSum, ...sums] = points.map(({ along, inward }) => add(along, inward));
  const [firstLess, ...rest] = points.map(({ along, inward }) => sub(along, inward));
  if (!firstSum || !firstLess) return undefined;
  const longSide = sub(max(firstSum, ...sums), min(firstLess, ...rest));
  return { block: div(withoutFloat(longSide, float), SQRT2), square: add(longSide, mul(seam, withRoot(2, 2))) };
}

/** The square for a corner triangle; undefined when the outline has no corner between two edges along the quilt's, or no slanted edge. */
export function cornerTriangle(outline: readonly Point[], seam: Exact, float: Exact): SettingTriangle | undefined {
  const edges = edgesOf(withoutStraightCorners(outline));
  if (edges.every(({ from, to }) => isUpright(from, to))) return undefined;
  const outer = edges.find(({ from, to }, i) => {
    const before = edges.at(i - 1);
    return before !== undefined && isUpright(before.from, before.to) && isUpright(from, to);
  });
  const leg = outer && legAt(outer.from, outline);
  return leg && { block: mul(withoutFloat(leg, float), SQRT2), square: add(leg, mul(seam, withRoot(2, 1))) };
}

/** The leg of the triangle with its right angle at a corner that holds the outline. */
function legAt(corner: Point, outline: readonly Point[]): Exact {
  const [first, ...others] = outline.map(({ x, y }) => add(abs(sub(x, corner.x)), abs(sub(y, corner.y))));
  return first ? max(first, ...others) : ZERO;
}

/** A long side or a leg without what the float adds to it, on both ends. */
function withoutFloat(length: Exact, float: Exact): Exact {
  const left = sub(length, mul(fraction(2), float));
  return less(ZERO, left) ? left : length;
}

interface Side {
  readonly from: Point;
  readonly to: Point;
}

/** The longest edge along the axes. */
function outerEdge(outline: readonly Point[]): Side | undefined {
  const sides = edgesOf(withoutStraightCorners(outline)).filter(({ from, to }) => isUpright(from, to));
  return sides.reduce<Side | undefined>((most, side) => (most === undefined || less(lengthBetween(most.from, most.to), lengthBetween(side.from, side.to)) ? side : most), undefined);
}
