/** Outlines as SVG path data, straight edges and arcs, moved by a matrix when one is given. */
import { coordinate } from './markup.ts';
import { apply, determinant, IDENTITY, scaleOf, type Matrix } from './matrix.ts';
import type { SceneShape } from './scene.ts';

export type Outline = Pick<SceneShape, 'points' | 'arcs'>;

/** One closed subpath; empty for fewer than two corners. */
export function pathOf(outline: Outline, matrix: Matrix = IDENTITY): string {
  const corners = cornersOf(outline, matrix);
  const [first, ...rest] = corners;
  if (!first || rest.length === 0) return '';
  const scale = scaleOf(matrix);
  const mirrored = determinant(matrix) < 0;
  let path = `M${first.x} ${first.y}`;
  let last = first;
  [...rest, first].forEach((corner, index) => {
    const radius = (outline.arcs?.[index] ?? 0) * scale;
    if (radius !== 0) path += arcTo(corner, mirrored ? -radius : radius);
    else if (corner !== first) path += lineTo(last, corner);
    last = corner;
  });
  return `${path}Z`;
}

/** The outline of an upright box from the origin. */
export function boxOutline(width: number, height: number): Outline {
  return { points: [0, 0, width, 0, width, height, 0, height] };
}

interface CornerText {
  readonly x: string;
  readonly y: string;
}

function cornersOf({ points }: Outline, matrix: Matrix): CornerText[] {
  const corners: CornerText[] = [];
  for (let index = 0; index + 1 < points.length; index += 2) {
    const [x, y] = apply(matrix, points[index] ?? 0, points[index + 1] ?? 0);
    corners.push({ x: coordinate(x), y: coordinate(y) });
  }
  return corners;
}

function lineTo(from: CornerText, to: CornerText): string {
  if (from.y === to.y) return `H${to.x}`;
  return from.x === to.x ? `V${to.y}` : `L${to.x} ${to.y}`;
}

/** Outlines run clockwise, so an arc that bulges out turns clockwise too: SVG's sweep flag 1. It is always the shorter one. */
function arcTo(to: CornerText, radius: number): string {
  const size = coordinate(Math.abs(radius));
  return `A${size} ${size} 0 0 ${radius > 0 ? 1 : 0} ${to.x} ${to.y}`;
}
