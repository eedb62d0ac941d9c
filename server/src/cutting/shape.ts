/**
 * What shape a patch is, and the square or rectangle it is cut from: every size from the outline and the seam s (language.md,
 * section 7). Rectangle: finished + 2s. Half-square triangle: leg + (2+√2)s, two from a square. Quarter-square triangle: long
 * side + (2+2√2)s, four from a square. Which of the two: the one whose straight grain lies along the axes of the block, so that
 * no outer edge of a block is on the bias. Everything is exact, then rounded up to the ruler.
 */
import { ZERO, abs, add, equals, fraction, isZero, less, mul, sign, sub, toInteger, div, roundUpTo, type Exact } from '../exact/number.ts';
import { boundingBox, edgesOf, isRectangle, isUprightRectangle, signedArea, withoutStraightCorners } from '../exact/polygon.ts';
import type { Point } from '../exact/point.ts';
import { applyToAll, turn } from '../exact/transform.ts';
import type { PatchRole } from '../geometry/layout.ts';
import type { Methods } from '../model/pattern.ts';
import type { CutMethod, Measure, PieceShape } from './plan.ts';
import { cornerTriangle, sideTriangle } from './setting.ts';
import { isUpright, lengthBetween, rightIsosceles, withRoot } from './sides.ts';
import { templateBox } from './template.ts';

/** What a patch needs to be cut; its axes are those of the block (or the quilt) it belongs to. */
export interface Cuttable {
  readonly outline: readonly Point[];
  readonly arcs?: readonly (Exact | undefined)[];
  readonly role: PatchRole;
  readonly grain?: Exact;
}

export interface CutRules {
  readonly seam: Exact;
  readonly roundUp: Exact;
  /** Of the pattern; a block's own come before them. */
  readonly methods?: Methods;
  /** How far the setting triangles of the quilt reach past its blocks; zero when absent. */
  readonly float?: Exact;
  /** Every shape is cut with a template. */
  readonly printed?: true;
}

export interface Cutting {
  readonly shape: PieceShape;
  readonly finished: Measure;
  readonly exactCut: Measure;
  readonly cut: Measure;
  readonly piecesPerCut: number;
  readonly method: CutMethod;
  /** Whole sets of four squares are cut, for eight pieces. */
  readonly fours?: true;
  /** Strip sets: how long a segment is cut, and how many segments there are of the sewn strips. */
  readonly segment?: Exact;
  readonly segments?: number;
}

/** How a patch is cut; undefined when it has no area. Measures keep the patch's width and height where it stands upright. */
export function cuttingOf(patch: Cuttable, rules: CutRules): Cutting | undefined {
  const known = (rules.printed ? undefined : plainUpright(patch, rules.seam)) ?? (hasArea(patch.outline) ? recognise(patch, rules) : undefined);
  if (!known) return undefined;
  const { width, height } = known.exactCut;
  return { ...known, cut: { width: roundUpTo(width, rules.roundUp), height: roundUpTo(height, rules.roundUp) } };
}

type Known = Omit<Cutting, 'cut'>;

/** Most patches of most quilts, known at a glance: four corners, sides along the axes, nothing special said. */
function plainUpright({ outline, arcs, grain, role }: Cuttable, seam: Exact): Known | undefined {
  const [a, b, c, d] = outline;
  if (!a || !b || !c || !d || outline.length !== 4 || arcs || grain || role === 'flipped_corner' || role === 'side_triangle' || role === 'corner_triangle') return undefined;
  const isLevelFirst = equals(a.y, b.y) && equals(c.y, d.y) && equals(b.x, c.x) && equals(d.x, a.x);
  const isUprightFirst = equals(a.x, b.x) && equals(c.x, d.x) && equals(b.y, c.y) && equals(d.y, a.y);
  const finished = { width: abs(sub(a.x, c.x)), height: abs(sub(a.y, c.y)) };
  if ((!isLevelFirst && !isUprightFirst) || isZero(finished.width) || isZero(finished.height)) return undefined;
  return straightSided(finished, seam);
}

function hasArea(outline: readonly Point[]): boolean {
  return outline.length > 2 && sign(signedArea(outline)) !== 0;
}

function recognise(patch: Cuttable, rules: CutRules): Known {
  const { seam } = rules;
  if (patch.role === 'flipped_corner') return flippedCorner(patch.outline, seam);
  const isCurved = patch.arcs?.some((radius) => radius !== undefined) ?? false;
  if (patch.grain !== undefined) return onGrain(patch, patch.grain, rules, isCurved);
  if (isCurved || rules.printed) return template(patch, seam);
  return settingTriangle(patch, rules) ?? rectangle(patch.outline, seam) ?? slantedSash(patch, seam) ?? triangle(patch.outline, seam, 'any grain') ?? template(patch, seam);
}

function settingTriangle({ role, outline }: Cuttable, { seam, float = ZERO }: CutRules): Known | undefined {
  if (role === 'side_triangle') {
    const side = sideTriangle(outline, seam, float);
    return side && known('side setting triangle', square(side.block), square(side.square), 'twice on the diagonal');
  }
  const corner = role === 'corner_triangle' ? cornerTriangle(outline, seam, float) : undefined;
  return corner && known('corner setting triangle', square(corner.block), square(corner.square), 'once on the diagonal');
}

/** A sash on point that the quilt's edge cuts: a strip, cut along its own sides as long as its points reach, trimmed when the rows are sewn. */
function slantedSash({ role, outline }: Cuttable, seam: Exact): Known | undefined {
  if (role !== 'sash') return undefined;
  const along = applyToAll(outline, turn(3));
  if (edgesOf(withoutStraightCorners(along)).filter(({ from, to }) => isUpright(from, to)).length < 2) return undefined;
  const { finished, exactCut } = templateBox({ outline: along }, seam);
  return known('strip', finished, exactCut, 'plain');
}

/** A rectangle on any slant, cut along its own edges. */
function rectangle(outline: readonly Point[], seam: Exact): Known | undefined {
  if (!isRectangle(outline)) return undefined;
  return straightSided(isUprightRectangle(outline) ? boxSize(outline) : slantedSize(outline), seam);
}

function straightSided(finished: Measure, seam: Exact): Known {
  const shape = equals(finished.width, finished.height) ? 'square' : 'rectangle';
  return known(shape, finished, widened(finished, mul(seam, fraction(2))), 'plain');
}

/**
 * A right isosceles triangle. On the block's axes the grain decides; on any other slant it is half a square (no edge of it
 * lies on the outside), unless the grain is fixed: then undefined.
 */
function triangle(outline: readonly Point[], seam: Exact, grain: 'any grain' | 'fixed grain'): Known | undefined {
  const found = rightIsosceles(outline);
  if (!found) return undefined;
  const leg = lengthBetween(found.corner, found.ends[0]);
  const long = mul(leg, withRoot(0, 1));
  if (isUpright(...found.ends)) return known('quarter-square triangle', square(leg), square(add(long, mul(seam, withRoot(2, 2)))), 'twice on the diagonal');
  if (grain === 'fixed grain' && !isUpright(found.corner, found.ends[0])) return undefined;
  return known('half-square triangle', square(leg), square(add(leg, mul(seam, withRoot(2, 1)))), 'once on the diagonal');
}

/** A square laid on a corner, sewn corner to corner and flipped: it is cut whole, finished + 2s. */
function flippedCorner(outline: readonly Point[], seam: Exact): Known {
  const found = rightIsosceles(outline);
  const box = boxSize(outline);
  const size = found ? lengthBetween(found.corner, found.ends[0]) : less(box.width, box.height) ? box.height : box.width;
  return known('square', square(size), square(add(size, mul(seam, fraction(2)))), 'plain');
}

/** A patch whose grain line the author fixed: turned until it stands upright, then cut along the axes or as a template. */
function onGrain(patch: Cuttable, grain: Exact, { seam, printed }: CutRules, isCurved: boolean): Known {
  const steps = toInteger(div(grain, fraction(15)));
  if (steps === undefined) return anyTurn(patch, seam);
  const turned = { ...patch, outline: applyToAll(patch.outline, turn(-(steps % 24))) };
  if (isCurved || printed) return template(turned, seam);
  const upright = isUprightRectangle(turned.outline) ? rectangle(turned.outline, seam) : undefined;
  return upright ?? triangle(turned.outline, seam, 'fixed grain') ?? template(turned, seam);
}

function template(patch: Cuttable, seam: Exact): Known {
  const { finished, exactCut } = templateBox(patch, seam);
  return known('template', finished, exactCut, 'template');
}

/** On a grain line whose turn is outside the field: the square that holds the template however it is turned. */
function anyTurn(patch: Cuttable, seam: Exact): Known {
  const { finished, exactCut } = templateBox(patch, seam);
  const origin = { x: ZERO, y: ZERO };
  return known('template', finished, square(lengthBetween(origin, { x: exactCut.width, y: exactCut.height })), 'template');
}

const PIECES_PER_CUT: Readonly<Partial<Record<CutMethod, number>>> = { 'once on the diagonal': 2, 'twice on the diagonal': 4 };

function known(shape: PieceShape, finished: Measure, exactCut: Measure, method: CutMethod): Known {
  return { shape, finished, exactCut, method, piecesPerCut: PIECES_PER_CUT[method] ?? 1 };
}

function square(side: Exact): Measure {
  return { width: side, height: side };
}

function widened({ width, height }: Measure, by: Exact): Measure {
  return { width: add(width, by), height: add(height, by) };
}

function boxSize(outline: readonly Point[]): Measure {
  const { left, right, top, bottom } = boundingBox(outline);
  return { width: sub(right, left), height: sub(bottom, top) };
}

/** The shorter side first. */
function slantedSize(outline: readonly Point[]): Measure {
  const [a, b, c] = withoutStraightCorners(outline);
  if (!a || !b || !c) return boxSize(outline);
  const sides = [lengthBetween(a, b), lengthBetween(b, c)] as const;
  const [width, height] = less(sides[1], sides[0]) ? [sides[1], sides[0]] : sides;
  return { width, height };
}
