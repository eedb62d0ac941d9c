/**
 * What a unit is called in the trade, from the shapes in it; the fabrics do not matter. Common names (see Brackman, Encyclopedia of
 * Pieced Quilt Patterns, 1993, for blocks; the units are named as workshop books name them).
 */
import { add, compare, equals, fraction, isZero, mul } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { midpoint, samePoint, squaredDistance } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { area, isRectangle, isRightAngle } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import type { Coloured } from './canonical.ts';

export type UnitName =
  | 'half-square triangle'
  | 'half-rectangle triangle'
  | 'hourglass'
  | 'half-and-quarters'
  | 'flying goose'
  | 'square in a square'
  | 'snowball'
  | 'snowball corner'
  | 'pinwheel'
  | 'two-patch'
  | 'four-patch'
  | 'nine-patch'
  | 'uneven nine-patch'
  | 'sixteen-patch'
  | 'checkerboard'
  | 'row of squares'
  | 'strip pair'
  | 'strip set'
  | "drunkard's path";

/** Undefined for what has no name of its own. */
export function unitName(outline: Polygon, shapes: readonly Coloured[]): UnitName | undefined {
  if (!isRectangle(outline)) return undefined;
  if (shapes.some(isBent)) return isSquare(outline) && shapes.length === 2 ? "drunkard's path" : undefined;
  const seen = { outline, shapes: shapes.map((shape) => shape.outline), whole: area(outline) };
  if (seen.shapes.every(isRectangle)) return rectanglesName(seen);
  return seen.shapes.every((shape) => shape.length === 3) ? trianglesName(seen) : mixedName(seen);
}

interface Seen {
  readonly outline: Polygon;
  readonly shapes: readonly Polygon[];
  readonly whole: Exact;
}

function isBent({ arcs }: Coloured): boolean {
  return arcs?.some((radius) => radius !== undefined && !isZero(radius)) === true;
}

function rectanglesName({ outline, shapes, whole }: Seen): UnitName | undefined {
  const count = shapes.length;
  const [across, down] = sidesSquared(outline);
  if (shapes.every(isSquare) && shapes.every((shape) => equals(area(shape), mul(whole, fraction(1, count))))) return squaresName(count, across, down);
  if (shapes.every((shape) => hasSide(shape, across)) || shapes.every((shape) => hasSide(shape, down))) return count === 2 ? 'strip pair' : 'strip set';
  return isUnevenNine(shapes) ? 'uneven nine-patch' : undefined;
}

/** Equal squares: a row when one side of the unit is theirs. */
function squaresName(count: number, across: Exact, down: Exact): UnitName {
  const isRow = [across, down].some((side) => equals(mul(side, fraction(count * count)), across) || equals(mul(side, fraction(count * count)), down));
  if (isRow) return count === 2 ? 'two-patch' : 'row of squares';
  if (!equals(across, down)) return 'checkerboard';
  return count === 4 ? 'four-patch' : count === 9 ? 'nine-patch' : count === 16 ? 'sixteen-patch' : 'checkerboard';
}

/** Nine rectangles in three columns and three rows. */
function isUnevenNine(shapes: readonly Polygon[]): boolean {
  if (shapes.length !== 9) return false;
  const first = shapes[0];
  if (!first) return false;
  const corners = shapes.flat();
  const distinct = corners.filter((p, i) => corners.findIndex((q) => samePoint(p, q)) === i);
  return distinct.length === 16 && first.length === 4;
}

function trianglesName(seen: Seen): UnitName | undefined {
  const { outline, shapes, whole } = seen;
  const parts = shapes.map((shape) => area(shape));
  const share = (n: number, d: number): number => parts.filter((part) => equals(part, mul(whole, fraction(n, d)))).length;
  const square = isSquare(outline);
  if (shapes.length === 2 && share(1, 2) === 2) return square ? 'half-square triangle' : 'half-rectangle triangle';
  if (!shapes.every(isHalfSquare)) return undefined;
  if (shapes.length === 3 && square && share(1, 2) === 1 && share(1, 4) === 2) return 'half-and-quarters';
  if (shapes.length === 3 && !square && share(1, 2) === 1 && share(1, 4) === 2) return 'flying goose';
  const middle = midpoint(outline[0] ?? ORIGIN, outline[2] ?? ORIGIN);
  const around = shapes.filter((shape) => shape.some((p) => samePoint(p, middle))).length;
  if (shapes.length === 4 && square && share(1, 4) === 4 && around === 4) return 'hourglass';
  return shapes.length === 8 && square && share(1, 8) === 8 && around === 8 && isPinwheel(shapes, middle) ? 'pinwheel' : undefined;
}

/** Sharp corners in the middle, all eight: four half-square triangles. */
function isPinwheel(shapes: readonly Polygon[], middle: Point): boolean {
  return shapes.every((shape) => {
    const [a, b] = shape.filter((p) => !samePoint(p, middle));
    return a !== undefined && b !== undefined && !isRightAngle(a, middle, b);
  });
}

/** One shape with corners cut off by triangles. */
function mixedName({ outline, shapes, whole }: Seen): UnitName | undefined {
  const corners = shapes.filter((shape) => shape.length === 3 && isHalfSquare(shape));
  const [middle] = shapes.filter((shape) => shape.length !== 3);
  if (!middle || corners.length !== shapes.length - 1) return undefined;
  const isTip = (corner: Polygon): boolean => corner.some((p) => outline.some((q) => samePoint(p, q)));
  if (!corners.every(isTip)) return undefined;
  if (corners.length === 4 && isSquare(outline) && isSquare(middle) && equals(area(middle), mul(whole, fraction(1, 2)))) return 'square in a square';
  if (corners.length === 4 && middle.length === 8 && corners.every((corner) => equals(area(corner), area(corners[0] ?? corner)))) return 'snowball';
  return corners.length === 1 && middle.length === 5 ? 'snowball corner' : undefined;
}

function isSquare(shape: Polygon): boolean {
  const [across, down] = sidesSquared(shape);
  return isRectangle(shape) && equals(across, down);
}

function hasSide(shape: Polygon, squared: Exact): boolean {
  return sidesSquared(shape).some((side) => equals(side, squared));
}

/** The squared lengths of the first two sides. */
function sidesSquared([a, b, c]: Polygon): readonly [Exact, Exact] {
  return [squaredDistance(a ?? ORIGIN, b ?? ORIGIN), squaredDistance(b ?? ORIGIN, c ?? ORIGIN)];
}

/** A right triangle with equal legs. */
function isHalfSquare(shape: Polygon): boolean {
  const sides = shape.map((p, i) => squaredDistance(p, shape[(i + 1) % 3] ?? p)).sort(compare);
  const [a, b, c] = sides;
  return shape.length === 3 && a !== undefined && b !== undefined && c !== undefined && equals(a, b) && equals(add(a, b), c);
}

const ORIGIN: Point = { x: fraction(0), y: fraction(0) };
