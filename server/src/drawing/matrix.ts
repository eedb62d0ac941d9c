/** Plane transforms in doubles, as SVG writes them: x' = a·x + c·y + e, y' = b·x + d·y + f. For drawing only. */

export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

export function apply([a, b, c, d, e, f]: Matrix, x: number, y: number): [number, number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** The factor of areas; negative when the matrix mirrors. */
export function determinant([a, b, c, d]: Matrix): number {
  return a * d - b * c;
}

/** The factor of lengths, for a matrix that scales evenly. */
export function scaleOf(matrix: Matrix): number {
  return Math.sqrt(Math.abs(determinant(matrix)));
}

/** The matrix that undoes this one; undefined when it flattens the plane. */
export function inverse(matrix: Matrix): Matrix | undefined {
  const [a, b, c, d, e, f] = matrix;
  const size = determinant(matrix);
  if (size === 0) return undefined;
  return [d / size, -b / size, -c / size, a / size, (c * f - d * e) / size, (b * e - a * f) / size];
}
