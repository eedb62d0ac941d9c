/** Random rectangles that fill a grid of whole numbers. */
import type { Random } from '../geometry/partitions.ts';
import type { Box } from './brute.ts';

/** A grid filled from the top left by boxes of whole sizes, or parted again and again, crosswise, straight or in a ring. */
export function gridBoxes(r: Random, { least, most, side }: { readonly least: number; readonly most: number; readonly side: number } = SMALL): { readonly boxes: Box[]; readonly width: number; readonly height: number } {
  for (;;) {
    const [width, height] = [3 + r.below(side - 2), 3 + r.below(side - 2)];
    const boxes = r.below(3) === 0 ? filled(width, height, r) : parted([0, 0, width, height], r, 0);
    if (boxes.length >= least && boxes.length <= most) return { boxes, width, height };
  }
}

const SMALL = { least: 4, most: 11, side: 7 };

function filled(width: number, height: number, r: Random): Box[] {
  const free = new Set(Array.from({ length: width * height }, (_, i) => i));
  const boxes: Box[] = [];
  for (const cell of free) {
    const [x, y] = [cell % width, Math.floor(cell / width)];
    let [w, h] = [1 + r.below(3), 1 + r.below(3)];
    while (!cellsOf([x, y, w, h], width).every((each) => free.has(each)) || x + w > width || y + h > height) [w, h] = r.below(2) === 0 ? [Math.max(1, w - 1), h] : [w, Math.max(1, h - 1)];
    for (const each of cellsOf([x, y, w, h], width)) free.delete(each);
    boxes.push([x, y, w, h]);
  }
  return boxes;
}

function parted([x, y, w, h]: Box, r: Random, depth: number): Box[] {
  const kind = r.below(4 + depth);
  if (kind <= 1 && w >= 3 && h >= 3) {
    const [a, b] = [1 + r.below(w - 2), 1 + r.below(h - 2)];
    const [c, d] = [a + 1 + r.below(w - a - 1), b + 1 + r.below(h - b - 1)];
    const ring: Box[] = [[0, 0, c, b], [c, 0, w - c, d], [a, d, w - a, h - d], [0, b, a, h - b], [a, b, c - a, d - b]];
    const turned = r.below(2) === 0 ? ring : ring.map(([i, j, m, n]): Box => [w - i - m, j, m, n]);
    return turned.flatMap(([i, j, m, n]) => parted([x + i, y + j, m, n], r, depth + 1));
  }
  if (kind === 2 && w >= 2 && h >= 2) {
    const [a, b] = [1 + r.below(w - 1), 1 + r.below(h - 1)];
    const four: Box[] = [[0, 0, a, b], [a, 0, w - a, b], [0, b, a, h - b], [a, b, w - a, h - b]];
    return four.flatMap(([i, j, m, n]) => parted([x + i, y + j, m, n], r, depth + 1));
  }
  return [[x, y, w, h]];
}

function cellsOf([x, y, w, h]: Box, width: number): number[] {
  return Array.from({ length: w * h }, (_, i) => (y + Math.floor(i / w)) * width + x + (i % w));
}
