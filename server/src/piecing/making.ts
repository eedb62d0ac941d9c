/**
 * How units are made: in the way that is said where they stand (`method`), else in the way with the fewest cuts among those that
 * take the same squares and leave nothing over: half squares two at a time and geese four at a time where every block needs whole
 * sets and no such triangle is needed besides, snowballs with squares on their corners. Everything else is sewn piece by piece.
 */
import { ZERO, equals, isZero, key, less, sub, type Exact } from '../exact/number.ts';
import { area, edgesOf, isUprightRectangle, type Edge, type Polygon } from '../exact/polygon.ts';
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import type { Methods } from '../model/pattern.ts';
import { isOnPaper } from './foundation.ts';
import type { UnitName } from './names.ts';
import { patchesIn, type Assembly } from './plan.ts';

export type Way = 'singles' | 'two at a time' | 'eight at a time' | 'four at a time' | 'corners' | 'strip sets';

export interface Making {
  readonly way: Way;
  /** What is cut over on each unit, and trimmed. */
  readonly trim: Exact;
}

/** A part of a block, as far as it is known before it is a unit. */
export interface Makeable {
  readonly name: UnitName | undefined;
  readonly layout: BlockLayout;
  readonly part: Assembly;
  readonly outline: Polygon;
}

const WAYS = {
  two_at_a_time: 'two at a time',
  eight_at_a_time: 'eight at a time',
  four_at_a_time: 'four at a time',
  singles: 'singles',
  corners: 'corners',
} as const;

/** The way that is said; undefined where nothing is, and where the unit cannot be made so. */
export function saidMaking(unit: Makeable, { halfSquares, geese, strips }: Methods): Making | undefined {
  if (!isFree(unit)) return undefined;
  if (unit.name === 'half-square triangle') return halfSquares && { way: WAYS[halfSquares.way], trim: halfSquares.trim ?? ZERO };
  if (unit.name === 'flying goose') return geese && (geese.way !== 'four_at_a_time' || hasEqualWings(unit)) ? { way: WAYS[geese.way], trim: geese.trim ?? ZERO } : undefined;
  return strips?.on === true && isRow(unit) ? { way: 'strip sets', trim: ZERO } : undefined;
}

/** Where nothing is said; `counts` are what each block needs of the unit. */
export function usualMaking(unit: Makeable, counts: readonly number[]): Making | undefined {
  const isWhole = (set: number): boolean => counts.every((count) => count % set === 0);
  if (!isFree(unit)) return undefined;
  if (isSnowball(unit)) return { way: 'corners', trim: ZERO };
  if (!isUprightRectangle(unit.outline)) return undefined;
  if (unit.name === 'half-square triangle' && isWhole(2)) return { way: 'two at a time', trim: ZERO };
  return unit.name === 'flying goose' && isWhole(4) && hasEqualWings(unit) ? { way: 'four at a time', trim: ZERO } : undefined;
}

/** Equal for the same way. */
export function makingKey(making: Making | undefined): string {
  return making ? `${making.way} ${key(making.trim)}` : '';
}

/** How many are made together. */
export function setSize(way: Way): number {
  return SETS[way] ?? 1;
}

const SETS: Readonly<Partial<Record<Way, number>>> = { 'two at a time': 2, 'eight at a time': 8, 'four at a time': 4 };

/** How the parts of a row of plain pieces lie; undefined for what is no such row. */
export function rowRun(part: Assembly): 'across' | 'down' | undefined {
  if (part.kind !== 'join' || !part.parts.every((each) => each.kind === 'patch')) return undefined;
  const stretches = part.seams.flatMap((seam) => seam.stretches);
  if (stretches.every(({ from, to }) => isZero(sub(from.x, to.x)))) return 'across';
  return stretches.every(({ from, to }) => isZero(sub(from.y, to.y))) ? 'down' : undefined;
}

function patchesOf({ layout, part }: Makeable): readonly Patch[] {
  return patchesIn(part).flatMap((index) => layout.patches[index] ?? []);
}

/** Only cloth that does not mind: no grain to keep, no prints to deal, no curves; and no block that is printed. */
function isFree(unit: Makeable): boolean {
  const isPlain = ({ role, arcs, grain, fabric }: Patch): boolean => role === 'patch' && !arcs && grain === undefined && !fabric.assorted && !fabric.directional;
  return !unit.layout.instance.templates && !isOnPaper(unit.layout) && patchesOf(unit).every(isPlain);
}

/** Four at a time, what is the left wing of one goose is the right wing of another. */
function hasEqualWings(unit: Makeable): boolean {
  const patches = patchesOf(unit).map(({ outline, fabric }) => ({ fabric: fabric.name, area: area(outline) }));
  const wings = patches.filter((patch) => patches.every((other) => !less(other.area, patch.area)));
  return new Set(wings.map(({ fabric }) => fabric)).size === 1;
}

/** Rectangles side by side, cut from yardage. */
function isRow(unit: Makeable): boolean {
  return rowRun(unit.part) !== undefined && patchesOf(unit).every(({ outline, fabric }) => isUprightRectangle(outline) && fabric.source.kind === 'yardage');
}

/** Upright, and the corners do not meet: the middle reaches every side. */
function isSnowball(unit: Makeable): boolean {
  if (unit.name !== 'snowball' && unit.name !== 'snowball corner') return false;
  const middle = patchesOf(unit).find(({ outline }) => outline.length > 4);
  return middle !== undefined && isUprightRectangle(unit.outline) && edgesOf(unit.outline).every((side) => edgesOf(middle.outline).some((edge) => isAlong(edge, side)));
}

function isAlong({ from, to }: Edge, side: Edge): boolean {
  const axis = equals(side.from.x, side.to.x) ? 'x' : 'y';
  return [from, to].every((p) => equals(p[axis], side.from[axis]));
}
