/** Arcs as short straight pieces, for what is decided or cut on the screen only: where a click lies, what an edge leaves. */

const PIECES_OF_AN_ARC = 24;

/** The corners, with points along each arc between them. */
export function straightened(points: readonly number[], arcs: readonly number[]): number[] {
  const corners: number[] = [];
  for (let index = 0; index * 2 + 1 < points.length; index++) {
    const [x = 0, y = 0] = [points[index * 2], points[index * 2 + 1]];
    const next = (index * 2 + 2) % points.length;
    corners.push(x, y, ...arcPoints(x, y, points[next] ?? 0, points[next + 1] ?? 0, arcs[index] ?? 0));
  }
  return corners;
}

/** Points between the ends of the shorter arc of a signed radius; a positive one bulges to the left of its way. */
function arcPoints(x0: number, y0: number, x1: number, y1: number, radius: number): number[] {
  const [halfX, halfY] = [(x1 - x0) / 2, (y1 - y0) / 2];
  const half = Math.hypot(halfX, halfY);
  if (radius === 0 || half === 0) return [];
  const size = Math.max(Math.abs(radius), half);
  const side = Math.sign(radius);
  const apart = Math.sqrt(size * size - half * half) / half;
  // The centre lies to the right of the way (y down) for an arc that bulges to the left.
  const [centreX, centreY] = [x0 + halfX - side * halfY * apart, y0 + halfY + side * halfX * apart];
  const start = Math.atan2(y0 - centreY, x0 - centreX);
  const sweep = side * 2 * Math.asin(half / size);
  return Array.from({ length: PIECES_OF_AN_ARC - 1 }, (_, step) => start + (sweep * (step + 1)) / PIECES_OF_AN_ARC).flatMap((angle) => [
    centreX + size * Math.cos(angle),
    centreY + size * Math.sin(angle),
  ]);
}
