/** Where a label has most room: the middle of about the largest circle in a shape, found by looking at a fine grid of points. */
import type { PlaneShape } from '../cutting/template-outline.ts';
import { straightened } from '../drawing/straightened.ts';

export interface Middle {
  readonly x: number;
  readonly y: number;
  /** Of the circle. */
  readonly radius: number;
}

const STEPS = 32;

export function middleOf({ points, arcs }: PlaneShape): Middle {
  const corners = arcs ? straightened(points, arcs) : points;
  const [xs, ys] = [corners.filter((_, i) => i % 2 === 0), corners.filter((_, i) => i % 2 === 1)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - top];
  let best: Middle = { x: left + width / 2, y: top + height / 2, radius: 0 };
  for (let i = 1; i < STEPS; i += 1) {
    for (let k = 1; k < STEPS; k += 1) {
      const [x, y] = [left + (width * i) / STEPS, top + (height * k) / STEPS];
      const radius = clearance(corners, x, y);
      // Of equals, the first: rounding must not decide which.
      if (radius > best.radius + 1e-9) best = { x, y, radius };
    }
  }
  return best;
}

/** The distance to the outline; below zero outside. */
function clearance(corners: readonly number[], x: number, y: number): number {
  let inside = false;
  let least = Infinity;
  for (let to = 0, from = corners.length - 2; to < corners.length; from = to, to += 2) {
    const [ax = 0, ay = 0, bx = 0, by = 0] = [corners[from], corners[from + 1], corners[to], corners[to + 1]];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    const [dx, dy] = [bx - ax, by - ay];
    const along = dx === 0 && dy === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(x - ax - dx * along, y - ay - dy * along));
  }
  return inside ? least : -least;
}
