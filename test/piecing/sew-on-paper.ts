/**
 * Sews a block on paper, patch after patch, from its sections alone: every cloth is as large as the sheet, is laid along its line and
 * covers what lies beyond it. What can be seen at the end must be the block, mirrored. In doubles; shares no code with the search. What is
 * cut by lines stays convex, so shapes are compared by their hulls, and a set of patches is convex when its hull has no more area than they.
 */
import { toNumber } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';
import type { BlockLayout } from '../../server/src/geometry/layout.ts';
import type { Foundation, FoundationStep } from '../../server/src/piecing/foundation.ts';

type Corner = [number, number];
type Ring = Corner[];

const NEAR = 1e-6;

/** What is wrong, in words; nothing when the block comes out. */
export function faultsOnPaper(layout: Pick<BlockLayout, 'patches' | 'width' | 'height'>, { sections, joins }: Foundation): string[] {
  const [width, height] = [toNumber(layout.width), toNumber(layout.height)];
  const mirror = (points: readonly Point[]): Ring => points.map(({ x, y }) => [width - toNumber(x), toNumber(y)]);
  const seen = visible(layout, mirror);
  const faults: string[] = [];
  const sewn = sections.flatMap(({ steps }) => steps.flatMap(({ patch }) => patch ?? []));
  const shownOf = ({ patch, outline }: FoundationStep): Ring => (patch === undefined ? mirror(outline) : (seen.get(patch) ?? []));
  if (sewn.length !== seen.size || new Set(sewn).size !== seen.size) faults.push(`${sewn.length} patches are sewn of ${seen.size}`);
  for (const [index, { outline, steps }] of sections.entries()) {
    const sheet = mirror(outline);
    const cloths: Ring[] = [];
    for (const [step, { patch, seam, sections: unit }] of steps.entries()) {
      if (!seam) {
        if (unit && (step > 0 || unit.some((other) => other >= index))) faults.push(`section ${index}: sections that are not made yet`);
        if (step > 0) faults.push(`section ${index}: a patch without a line`);
        cloths.push(sheet);
        continue;
      }
      const [a, b] = mirror([seam.from, seam.to]) as [Corner, Corner];
      const before = steps.slice(0, step).flatMap(shownOf);
      const side = sideOf(before, a, b);
      if (side === 0) faults.push(`section ${index}, step ${step + 1}: the line runs through what is sewn`);
      if (!spans(before, a, b)) faults.push(`section ${index}, step ${step + 1}: the line does not reach across`);
      cloths.forEach((cloth, i) => (cloths[i] = clipped(cloth, a, b, side)));
      cloths.push(clipped(sheet, a, b, -side));
      if (patch === undefined) faults.push(`section ${index}, step ${step + 1}: no patch`);
    }
    steps.forEach((step, i) => {
      if (!isSame(cloths[i] ?? [], shownOf(step))) faults.push(`section ${index}, step ${i + 1}: what is seen is not the patch`);
    });
  }
  return [...faults, ...faultsOfJoins({ sections, joins }, mirror, width * height)];
}

/** Sections and joins in the order they are made; a sheet that takes joined sections in as its first piece replaces them. */
function faultsOfJoins({ sections, joins }: Pick<Foundation, 'sections' | 'joins'>, mirror: (points: readonly Point[]) => Ring, whole: number): string[] {
  const faults: string[] = [];
  const parts = new Map<string, Ring>();
  const take = (names: readonly number[]): Ring | undefined => {
    const part = parts.get(names.join());
    parts.delete(names.join());
    return part;
  };
  const join = ({ parts: [one, other], seam }: Foundation['joins'][number]): void => {
    const [a, b] = mirror([seam.from, seam.to]) as [Corner, Corner];
    const [left, right] = [take(one), take(other)];
    if (!left || !right) faults.push(`${one.join()} and ${other.join()} are joined before they are made`);
    else if (sideOf(left, a, b) * sideOf(right, a, b) !== -1 || !spans(left, a, b) || !spans(right, a, b)) faults.push(`${one.join()} and ${other.join()} are not joined by one straight seam`);
    else parts.set([...one, ...other].join(), hull([...left, ...right]));
  };
  sections.forEach(({ outline, steps }, index) => {
    for (const each of joins.filter(({ after }) => after === index)) join(each);
    const unit = steps[0]?.sections;
    const core = unit && take(unit);
    if (unit && (!core || !isSame(core, mirror(steps[0]?.outline ?? [])))) faults.push(`section ${index}: its first piece is not ${unit.join()}`);
    parts.set([...(unit ?? []), index].join(), mirror(outline));
  });
  for (const each of joins.filter(({ after }) => after === sections.length)) join(each);
  const [last, ...rest] = parts.values();
  if (!last || rest.length > 0 || Math.abs(ringArea(last) - whole) > NEAR) faults.push('the joined sections are not the block');
  return faults;
}

/** Patches as they are seen, corners that are flipped over them taken off; by their index. */
function visible({ patches }: Pick<BlockLayout, 'patches'>, mirror: (points: readonly Point[]) => Ring): Map<number, Ring> {
  const flipped = patches.filter(({ role }) => role === 'flipped_corner').map(({ outline }) => mirror(outline));
  const seen = new Map<number, Ring>();
  patches.forEach(({ outline, role }, index) => {
    let shown = mirror(outline);
    if (role !== 'flipped_corner') for (const corner of flipped) shown = withoutCorner(shown, corner);
    if (ringArea(shown) > NEAR) seen.set(index, shown);
  });
  return seen;
}

/** The right angle of a flipped corner is its first. */
function withoutCorner(ring: Ring, [tip, a, b]: Ring): Ring {
  if (!tip || !a || !b) return ring;
  const outside = -sideOf([tip], a, b);
  const under = clipped(clipped(clipped(ring, a, b, -outside), tip, a, sideOf([b], tip, a)), b, tip, sideOf([a], b, tip));
  return ringArea(under) > NEAR ? clipped(ring, a, b, outside) : ring;
}

/** The fewest sections of a set of patches, by trying every one; Infinity when there are none. */
export function fewestSections(outlines: readonly (readonly Point[])[]): number {
  const rings = outlines.map((outline): Ring => outline.map(({ x, y }) => [toNumber(x), toNumber(y)]));
  const known = new Map<number, number>();
  const ringsOf = (set: number): Ring[] => rings.filter((_, i) => set & (1 << i));
  const isConvex = (set: number): boolean => Math.abs(ringArea(hull(ringsOf(set).flat())) - ringsOf(set).reduce((sum, ring) => sum + Math.abs(ringArea(ring)), 0)) < NEAR;
  const isSheet = (set: number): boolean => isConvex(set) && ((set & (set - 1)) === 0 || rings.some((_, i) => set & (1 << i) && isConvex(1 << i) && isSheet(set & ~(1 << i))));
  const innerParts = (set: number): number[] => {
    if (!isConvex(set)) return [];
    const smaller = rings.flatMap((_, i) => (set & (1 << i) && set !== 1 << i && isConvex(1 << i) && isConvex(set & ~(1 << i)) ? [set & ~(1 << i)] : []));
    return smaller.flatMap((part) => [part, ...innerParts(part)]);
  };
  const fewest = (set: number): number => {
    const before = known.get(set);
    if (before !== undefined) return before;
    let best = isSheet(set) ? 1 : Infinity;
    // One more sheet around a smaller convex set: every set that single convex patches can be added to.
    for (const part of innerParts(set)) best = Math.min(best, fewest(part) + 1);
    if (best > 1 && isConvex(set)) for (let part = (set - 1) & set; part > (set ^ part); part = (part - 1) & set) if (isConvex(part) && isConvex(set ^ part)) best = Math.min(best, fewest(part) + fewest(set ^ part));
    known.set(set, best);
    return best;
  };
  return fewest((1 << rings.length) - 1);
}

/** +1 or −1 when all lie to one side of the line or on it, else 0. */
function sideOf(points: Ring, [ax, ay]: Corner, [bx, by]: Corner): number {
  const length = Math.hypot(bx - ax, by - ay);
  const sides = points.map(([x, y]) => ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length);
  if (sides.every((side) => side > -NEAR)) return 1;
  return sides.every((side) => side < NEAR) ? -1 : 0;
}

/** What lies on the line reaches exactly from a to b. */
function spans(points: Ring, a: Corner, b: Corner): boolean {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const on = points.filter((p) => Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length < NEAR);
  const along = on.map((p) => ((b[0] - a[0]) * (p[0] - a[0]) + (b[1] - a[1]) * (p[1] - a[1])) / length);
  return on.length > 1 && Math.abs(Math.min(...along)) < NEAR && Math.abs(Math.max(...along) - length) < NEAR;
}

/** What of a convex ring lies to one side of a line (Sutherland and Hodgman 1974). */
function clipped(ring: Ring, a: Corner, b: Corner, side: number): Ring {
  const height = ([x, y]: Corner): number => side * ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]));
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    const [at, next] = [height(p), height(q)];
    const kept: Ring = at >= 0 ? [p] : [];
    if (at * next < 0) kept.push([p[0] + ((q[0] - p[0]) * at) / (at - next), p[1] + ((q[1] - p[1]) * at) / (at - next)]);
    return kept;
  });
}

/** Two convex rings. */
function isSame(one: Ring, other: Ring): boolean {
  const both = ringArea(hull([...one, ...other]));
  return Math.abs(ringArea(one) - both) < NEAR && Math.abs(ringArea(other) - both) < NEAR;
}

function ringArea(ring: Ring): number {
  return Math.abs(ring.reduce((sum, [x, y], i) => { const [u, v] = ring[(i + 1) % ring.length] ?? [x, y]; return sum + (x * v - u * y) / 2; }, 0));
}

/** Andrew's monotone chain (1979), of corners on a fine grid: else noise in x would put those of an upright edge out of order. */
function hull(points: Ring): Ring {
  const sorted = points.map(([x, y]): Corner => [snapped(x), snapped(y)]).sort(([ax, ay], [bx, by]) => ax - bx || ay - by);
  const half = (list: Ring): Ring => {
    const kept: Ring = [];
    for (const p of list) {
      while (kept.length > 1) {
        const [[ax, ay], [bx, by]] = kept.slice(-2) as [Corner, Corner];
        if ((bx - ax) * (p[1] - ay) - (by - ay) * (p[0] - ax) > 0) break;
        kept.pop();
      }
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

function snapped(value: number): number {
  return Math.round(value * 1e8) / 1e8;
}
