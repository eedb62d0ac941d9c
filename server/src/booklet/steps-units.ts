/** Which units of a quilt are made by themselves, and what they and the patches are called. */
import { toInches } from '../exact/length.ts';
import { add, equals, fraction, less, max, mul, roundDownTo, TWO, type Exact } from '../exact/number.ts';
import { edgesOf, isRectangle } from '../exact/polygon.ts';
import { onSegment, orientation, samePoint } from '../exact/point.ts';
import type { Cutting } from '../cutting/shape.ts';
import { lengthBetween } from '../cutting/sides.ts';
import type { Measure } from '../cutting/plan.ts';
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import type { Rules } from '../model/pattern.ts';
import type { Stretch } from '../piecing/plan.ts';
import type { Unit } from '../piecing/units.ts';
import { plain } from './markdown.ts';
import type { Printer } from './words.ts';

/** The units with lines of their own, numbered from 1 in the order of making; the others are sewn where they are needed, once each. */
export function apartUnits(units: readonly Unit[], isMade: (unit: Unit) => boolean): ReadonlyMap<number, number> {
  const parents = units.map((): { readonly unit: Unit; readonly count: number }[] => []);
  for (const unit of units) for (const part of unit.parts) if (part.kind === 'unit') parents[part.unit]?.push({ unit, count: part.count });
  const isOnce = ({ number, count }: Unit): boolean => {
    const [only, ...others] = parents[number] ?? [];
    return only !== undefined && others.length === 0 && only.count === 1 && only.unit.count === count;
  };
  const apart = units.filter((unit) => unit.is === 'unit' && !(isOnce(unit) && !isMade(unit) && (unit.name === undefined || ROWS.has(unit.name))));
  return new Map(apart.map((unit, i) => [unit.number, i + 1]));
}

/** Names that say no more than that a unit is a row. */
const ROWS: ReadonlySet<string> = new Set(['row of squares', 'strip pair', 'strip set', 'two-patch']);

/** `sand square (2 1/2")`, as cutting.md sizes it. */
export function patchName({ fabric }: Patch, cutting: Cutting | undefined, print: Printer): string {
  const cloth = plain(fabric.name);
  if (!cutting) return cloth;
  const { shape, method } = cutting;
  const cut = fabric.directional ? cutting.cut : shortFirst(cutting.cut);
  if (method === 'strip set') return `${cloth} strip (${print.length(cutting.cut.width)} wide)`;
  if (method.endsWith('at a time')) return `${cloth} square (${print.length(cut.width)})`;
  if (shape === 'half-square triangle') return `${cloth} triangle (half a square of ${print.length(cut.width)})`;
  if (shape === 'quarter-square triangle') return `${cloth} triangle (a quarter of a square of ${print.length(cut.width)})`;
  return shape === 'template' ? `${cloth} shape (cut by its template)` : `${cloth} ${shape} (${print.size(cut)})`;
}

/** With its seam allowances. */
export function rawSize({ width, height }: Measure, seam: Exact): Measure {
  const allowances = mul(TWO, seam);
  return { width: add(width, allowances), height: add(height, allowances) };
}

/** Whether a seam runs out at the outline with a tip that a later seam could cut off. */
export function hasPoints({ layout, patches, outline }: Pick<Unit, 'layout' | 'patches' | 'outline'>): boolean {
  const rim = edgesOf(outline);
  return patches.some((index) => {
    const corners = layout.patches[index]?.outline ?? [];
    return corners.some((corner, i) => {
      const [before, next] = [corners.at(i - 1), corners[(i + 1) % corners.length]];
      const edge = rim.find(({ from, to }) => onSegment(corner, from, to) && !samePoint(corner, from) && !samePoint(corner, to));
      return edge !== undefined && before !== undefined && next !== undefined && orientation(edge.from, edge.to, before) !== 0 && orientation(edge.from, edge.to, next) !== 0;
    });
  });
}

/** Whether an edge on its outside runs aslant to the threads of its patch: rectangles are cut along their own sides, all else along the block's. */
export function hasBiasOutside({ layout, patches, outline }: Pick<Unit, 'layout' | 'patches' | 'outline'>): boolean {
  const rim = edgesOf(outline);
  return patches.some((index) => {
    const patch = layout.patches[index];
    if (!patch || patch.grain !== undefined || patch.arcs || patch.role === 'flipped_corner' || isRectangle(patch.outline)) return false;
    return edgesOf(patch.outline).some(({ from, to }) => !equals(from.x, to.x) && !equals(from.y, to.y) && rim.some((side) => onSegment(from, side.from, side.to) && onSegment(to, side.from, side.to)));
  });
}

/** The first go of a partial seam from the raw edge, down to the next eighth of an inch or half a centimetre. */
export function firstGo({ from, to }: Pick<Stretch, 'from' | 'to'>, { seam, units }: Rules): Exact {
  const step = units === 'inches' ? fraction(1, 8) : toInches(fraction(1, 2), 'cm');
  return max(step, roundDownTo(add(lengthBetween(from, to), seam), step));
}

/** Whether tips stand out beyond the edges once it is sewn: a patch of it is sharp. */
export function hasEars(layout: BlockLayout, patches: readonly number[]): boolean {
  return patches.some((index) => layout.patches[index]?.outline.length === 3 && !layout.patches[index].arcs && layout.patches[index].role !== 'flipped_corner');
}

function shortFirst({ width, height }: Measure): Measure {
  return less(height, width) ? { width: height, height: width } : { width, height };
}
