/** Drawing at true size: figures think in inches, a pen puts them on the open page. */
import { apply, type Matrix } from '../drawing/matrix.ts';
import type { Extent } from '../cutting/template-extent.ts';
import type { PlaneShape } from '../cutting/template-outline.ts';
import { POINTS_PER_INCH, widthOf, write, type Pdf, type WriteOptions } from './pdf.ts';
import { drawLine, drawOutline, type Ink } from './picture.ts';

/** How far one sheet of a large figure goes on under the next, in points: half an inch. */
export const OVERLAP = 36;

/** What is drawn at true size, and what is said about it. */
export interface Figure {
  readonly name: string;
  /** Below the name. */
  readonly lines: readonly string[];
  readonly alt: string;
  /** In inches, of all that is drawn. */
  readonly extent: Extent;
  /** Around all of it: what a map of its sheets shows. */
  readonly outline: PlaneShape;
  /** Beside the squares of its page. */
  readonly advice: readonly string[];
  readonly draw: (pen: Pen) => void;
}

export interface Pen {
  readonly pdf: Pdf;
  /** From inches to points on the page. */
  readonly matrix: Matrix;
  /** In points: texts that do not lie in it are left out. */
  readonly window: Extent;
}

/** The figure's upper left corner at x, y (points); turned by a quarter, clockwise, its lower left one. */
export function penAt(pdf: Pdf, { left, top, bottom }: Extent, at: { readonly x: number; readonly y: number; readonly isTurned: boolean; readonly window: Extent }): Pen {
  const k = POINTS_PER_INCH;
  const matrix: Matrix = at.isTurned ? [0, k, -k, 0, at.x + bottom * k, at.y - left * k] : [k, 0, 0, k, at.x - left * k, at.y - top * k];
  return { pdf, matrix, window: at.window };
}

export function outline({ pdf, matrix }: Pen, shape: PlaneShape, ink: Ink): void {
  drawOutline(pdf, shape, matrix, ink);
}

/** x and y in turn, in inches. */
export function line({ pdf, matrix }: Pen, points: readonly number[], ink: Omit<Ink, 'fill'>): void {
  const placed = Array.from({ length: points.length >> 1 }, (_, i) => apply(matrix, points[2 * i] ?? 0, points[2 * i + 1] ?? 0));
  drawLine(pdf, placed.flat(), ink);
}

/** A filled circle; the radius in points. */
export function dot({ pdf, matrix }: Pen, x: number, y: number, radius: number): void {
  const [px, py] = apply(matrix, x, y);
  drawOutline(pdf, { points: [px - radius, py, px + radius, py], arcs: [radius, radius] }, [1, 0, 0, 1, 0, 0], { fill: '#000000' });
}

/** Its middle at a point, moved down by `below` points, whichever way the figure is turned. */
export function text({ pdf, matrix, window }: Pen, said: string, x: number, y: number, { below = 0, ...options }: WriteOptions & { readonly below?: number }): void {
  const [px, py] = apply(matrix, x, y);
  const wide = widthOf(pdf, said, options);
  // What one sheet would cut through stands whole on the next, unless it is wider than they overlap.
  const [across, down] = [wide > OVERLAP ? 0 : wide / 2, options.size ?? 10];
  if (px - across < window.left || px + across > window.right || py - down < window.top || py + down > window.bottom) return;
  write(pdf, said, px - wide / 2, py + below + (options.size ?? 10) * 0.33, options);
}
