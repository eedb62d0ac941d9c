/**
 * Which of a part's straight seams to sew last: all that run one way, or the plainest of them (see `plainest`). Of the ways there are, in this order: along the part's own sides; leaving nested blocks whole; the longest; leaving the
 * fewest different parts; level, then upright.
 */
import { compare, isZero } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { squaredDistance } from '../exact/point.ts';
import { groupedBy } from '../text/grouped.ts';
import { pieceAt, pointAt, vertexOf } from './map.ts';
import type { SeamMap } from './map.ts';
import type { Run } from './order.ts';
import { across, endOf, isInside, lookAt, startOf } from './region.ts';
import type { Region, Undoing } from './region.ts';

export interface Taste {
  /** For each patch the nested blocks it lies in, outermost first, each copy with a number of its own. */
  readonly nests: readonly (readonly number[])[];
  /** `across`: rows run from left to right wherever they can, as a setting is sewn. */
  readonly rows: 'longest' | 'across';
  /** How many different parts a region falls into when these runs come out. */
  readonly distinct: (runs: readonly Run[]) => number;
}

/** Parallel runs to take out together; empty when there are none. */
export function chooseRows(state: Undoing, region: Region, chords: readonly Run[], taste: Taste): readonly Run[] {
  const { map } = state;
  const groups = [...groupedBy(chords, (run) => headingOf(map, run)).values()].map((group) => plainest(map, group, taste));
  if (groups.length <= 1) return groups[0] ?? [];
  const own = headingsAround(state, region);
  const aligned = preferred(groups, (group) => (own.has(headingOf(map, group[0])) ? 0 : 1));
  const whole = preferred(aligned, (group) => deepest(map, group, taste));
  const level = taste.rows === 'across' ? preferred(whole, (group) => levelness(map, group)) : whole;
  const long = longest(map, level);
  const alike = long.length > 1 ? preferred(long, taste.distinct) : long;
  return preferred(alike, (group) => levelness(map, group))[0] ?? [];
}

/**
 * Of parallel runs those that leave nested blocks whole; of these, those whose lines go on beyond the part (lines of the block's
 * grid before lines within a cell); of these, those that no other seam could run across. The rows of a setting are all taken.
 */
function plainest(map: SeamMap, group: readonly Run[], taste: Taste): readonly Run[] {
  if (group.length <= 1) return group;
  const shallow = preferred(group, (run) => deepest(map, [run], taste));
  if (taste.rows === 'across') return shallow;
  const lines = preferred(shallow, (run) => [startOf(run), endOf(run)].filter((germ) => isStem(map, germ)).length);
  return preferred(lines, (run) => (isCrossed(map, run) ? 1 : 0));
}

/** True when a seam ends in the middle of another. */
function isStem(map: SeamMap, germ: number): boolean {
  return map.partner[germ] === -1 && map.outer[vertexOf(map, germ)] === 0;
}

/** True when another seam runs straight through one of the run's vertices: it could be sewn last instead. */
function isCrossed(map: SeamMap, run: Run): boolean {
  return run.inner.some((vertex) => (map.germs[vertex] ?? []).filter((germ) => map.partner[germ] !== -1).length > 2);
}

/** Curved runs are each of a kind of their own. */
function headingOf(map: SeamMap, run: Run | undefined): number {
  const headings = (run?.germs ?? []).map((germ) => pieceAt(map, germ >> 1).heading);
  return headings.find((heading) => heading < 0) ?? headings[0] ?? -1;
}

function headingsAround(state: Undoing, region: Region): ReadonlySet<number> {
  const { map } = state;
  lookAt(state, region);
  const headings = new Set<number>();
  for (const patch of region.patches) {
    for (const piece of map.around[patch] ?? []) if (!isInside(state, region, across(map, piece, patch))) headings.add(pieceAt(map, piece).heading);
  }
  return headings;
}

/** Through how many levels of nested blocks a run cuts at most. */
function deepest(map: SeamMap, runs: readonly Run[], { nests }: Taste): number {
  let most = 0;
  for (const run of runs) {
    for (const germ of run.germs) {
      const { left, right } = pieceAt(map, germ >> 1);
      const [a, b] = [nests[left] ?? [], nests[right] ?? []];
      let common = 0;
      while (common < a.length && a[common] === b[common]) common += 1;
      if (common > most) most = common;
    }
  }
  return most;
}

function longest(map: SeamMap, groups: readonly (readonly Run[])[]): readonly (readonly Run[])[] {
  if (groups.length <= 1) return groups;
  const lengths = groups.map((group) => group.map((run) => squaredLength(map, run)).reduce((a, b) => (compare(a, b) < 0 ? b : a)));
  const most = lengths.reduce((a, b) => (compare(a, b) < 0 ? b : a));
  return groups.filter((_, i) => compare(lengths[i] ?? most, most) === 0);
}

function squaredLength(map: SeamMap, run: Run): Exact {
  return squaredDistance(pointAt(map, vertexOf(map, startOf(run))), pointAt(map, vertexOf(map, endOf(run))));
}

/** 0 for level seams, 1 for upright ones, then the others in the order they are met. */
function levelness(map: SeamMap, group: readonly Run[]): number {
  const heading = headingOf(map, group[0]);
  const direction = map.headings[heading];
  if (!direction) return map.headings.length + 2;
  if (isZero(direction.y)) return 0;
  return isZero(direction.x) ? 1 : heading + 2;
}

/** Those with the least mark. */
function preferred<T>(list: readonly T[], mark: (each: T) => number): readonly T[] {
  if (list.length <= 1) return list;
  const marks = list.map(mark);
  const best = marks.reduce((a, b) => (b < a ? b : a));
  return list.filter((_, i) => marks[i] === best);
}
