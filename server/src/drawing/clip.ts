/** Shapes cut to a convex outline, for blocks that the quilt's edge cuts (Sutherland and Hodgman, 1974). Arcs become short straight pieces. */
import { apply, determinant, type Matrix } from './matrix.ts';
import type { Outline } from './path.ts';
import { straightened } from './straightened.ts';

/**
 * The corners (x, y pairs) of what is left of a moved shape inside a clockwise convex outline; empty when nothing is. A shape that
 * is not convex may come out as one outline whose parts hang together along the cut.
 */
export function clippedTo(shape: Outline, matrix: Matrix, region: readonly number[]): number[] {
  const corners = pairs(shape.arcs ? straightened(shape.points, shape.arcs) : shape.points).map(([x, y]) => apply(matrix, x, y));
  const clockwise = determinant(matrix) < 0 ? corners.reverse() : corners;
  const sides = pairs(region);
  const left = sides.reduce((kept, from, i) => beside(kept, from, sides[(i + 1) % sides.length] ?? from), clockwise);
  return isSliver(left) ? [] : left.flat();
}

type Pair = [number, number];

/** What lies to the right of one who walks from `from` to `to` (y down). */
function beside(corners: readonly Pair[], from: Pair, to: Pair): Pair[] {
  const distance = ([x, y]: Pair): number => (to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]);
  return corners.flatMap((corner, i) => {
    const next = corners[(i + 1) % corners.length] ?? corner;
    const [here, there] = [distance(corner), distance(next)];
    const kept = here >= -NEAR ? [corner] : [];
    if ((here > NEAR && there < -NEAR) || (here < -NEAR && there > NEAR)) kept.push(between(corner, next, here / (here - there)));
    return kept;
  });
}

/** Below what a drawing shows, far above what doubles lose. */
const NEAR = 1e-9;

function between([x, y]: Pair, [toX, toY]: Pair, part: number): Pair {
  return [x + (toX - x) * part, y + (toY - y) * part];
}

function isSliver(corners: readonly Pair[]): boolean {
  const area = corners.reduce((total, [x, y], i) => total + x * (corners[(i + 1) % corners.length]?.[1] ?? y) - (corners[(i + 1) % corners.length]?.[0] ?? x) * y, 0);
  return Math.abs(area) < NEAR;
}

function pairs(points: readonly number[]): Pair[] {
  return Array.from({ length: points.length >> 1 }, (_, i) => [points[2 * i] ?? 0, points[2 * i + 1] ?? 0]);
}
