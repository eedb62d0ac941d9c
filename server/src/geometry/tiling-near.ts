/** What can meet at all: boxes of doubles around polygons, never too tight. */
import { above, below } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';

export interface Reach {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function reachOf(points: readonly Point[]): Reach {
  let [left, top] = [Number.MAX_VALUE, Number.MAX_VALUE];
  let [right, bottom] = [-Number.MAX_VALUE, -Number.MAX_VALUE];
  for (const { x, y } of points) {
    const [x1, x2, y1, y2] = [below(x), above(x), below(y), above(y)];
    if (x1 < left) left = x1;
    if (x2 > right) right = x2;
    if (y1 < top) top = y1;
    if (y2 > bottom) bottom = y2;
  }
  return { left, right, top, bottom };
}

/** False only when the two share no point. */
export function touches(a: Reach, b: Reach): boolean {
  return a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
}

/** All pairs whose reaches touch, one by one, from left to right. */
export function* nearPairs<T extends Reach>(items: readonly T[]): Generator<readonly [T, T]> {
  const byLeft = [...items].sort((a, b) => a.left - b.left);
  for (const [i, a] of byLeft.entries()) {
    for (let j = i + 1; j < byLeft.length; j += 1) {
      const b = byLeft[j];
      if (b === undefined || b.left > a.right) break;
      if (touches(a, b)) yield [a, b];
    }
  }
}
