/**
 * Cutting polygons along a line, exactly. The part that stays lies to the right of one who walks from `a` to `b` (y down, see
 * `exact/point.ts`); so does the inside of every clockwise outline, which is why its rim along the cut runs from a to b too.
 */
import { compare } from '../exact/number.ts';
import { meetingOfLines, orientation } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { edgesOf, withoutStraightCorners } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';

/**
 * What of a clockwise simple polygon lies to the right of the line a → b: nothing, one polygon, or several when the outline is
 * not convex.
 */
export function cutAlong(polygon: Polygon, a: Point, b: Point): Polygon[] {
  const rim = rimOf(polygon, a, b);
  if (rim.every((corner) => corner.side >= 0)) return [polygon];
  if (rim.every((corner) => corner.side <= 0)) return [];
  return joined(runsOf(rim), a, b)
    .map(withoutStraightCorners)
    .filter((part) => part.length >= 3);
}

/** What of a clockwise simple polygon lies in a clockwise convex region. */
export function cutTo(polygon: Polygon, region: Polygon): Polygon[] {
  return edgesOf(region).reduce<Polygon[]>((parts, edge) => parts.flatMap((part) => cutAlong(part, edge.from, edge.to)), [polygon]);
}

interface RimPoint {
  readonly point: Point;
  /** + on the side that stays, 0 on the line. */
  readonly side: -1 | 0 | 1;
}

/** A stretch of the outline on the side that stays; its ends are on the line. */
interface Run {
  readonly points: readonly Point[];
  readonly start: Point;
  readonly end: Point;
}

/** The corners with the points where the line crosses an edge between them. */
function rimOf(polygon: Polygon, a: Point, b: Point): RimPoint[] {
  const sides = polygon.map((corner) => orientation(a, b, corner));
  return edgesOf(polygon).flatMap(({ from, to }, i) => {
    const side = sides[i] ?? 0;
    const corner = { point: from, side };
    if (side * (sides[(i + 1) % polygon.length] ?? 0) >= 0) return [corner];
    const crossing = meetingOfLines(from, to, a, b);
    return crossing ? [corner, { point: crossing, side: 0 as const }] : [corner];
  });
}

function runsOf(rim: readonly RimPoint[]): Run[] {
  const first = rim.findIndex((corner, i) => startsRun(rim, i, corner));
  const around = [...rim.slice(first), ...rim.slice(0, first)];
  const runs: Point[][] = [];
  around.forEach((corner, i) => {
    const open = runs.at(-1);
    if (startsRun(around, i, corner)) {
      if (corner.side === 0 && open && sideAt(around, i - 1) > 0) open.push(corner.point);
      runs.push([corner.point]);
    } else if (open && (corner.side > 0 || sideAt(around, i - 1) > 0)) open.push(corner.point);
  });
  const last = runs.at(-1);
  const begin = around[0];
  if (last && begin && sideAt(around, around.length - 1) > 0) last.push(begin.point);
  return runs.map((points) => ({ points, start: points[0] ?? rimPoint(begin), end: points.at(-1) ?? rimPoint(begin) }));
}

/** A run starts where the outline leaves the line for the side that stays; a sharp corner that only touches the line does not part it. */
function startsRun(rim: readonly RimPoint[], i: number, corner: RimPoint): boolean {
  if (corner.side !== 0 || sideAt(rim, i + 1) <= 0) return false;
  if (sideAt(rim, i - 1) <= 0) return true;
  const [before, after] = [rim.at(i - 1), rim[(i + 1) % rim.length]];
  return before !== undefined && after !== undefined && orientation(before.point, corner.point, after.point) < 0;
}

function sideAt(rim: readonly RimPoint[], i: number): number {
  return rim.at(i % rim.length)?.side ?? 0;
}

function rimPoint(corner: RimPoint | undefined): Point {
  if (!corner) throw new RangeError('A run without points.');
  return corner.point;
}

/** Joins each run's end to the next run's start along the line, until the loops close. */
function joined(runs: readonly Run[], a: Point, b: Point): Polygon[] {
  const ahead = (p: Point, q: Point): number => alongOrder(p, q, a, b);
  const next = (run: Run): Run | undefined =>
    runs
      .filter((other) => ahead(run.end, other.start) > 0)
      .reduce<Run | undefined>((nearest, other) => (!nearest || ahead(other.start, nearest.start) > 0 ? other : nearest), undefined);
  const left = new Set(runs);
  const loops: Polygon[] = [];
  for (const run of runs) {
    const loop: Point[] = [];
    for (let each: Run | undefined = run; each && left.delete(each); each = next(each)) loop.push(...each.points);
    if (loop.length > 0) loops.push(loop);
  }
  return loops;
}

/** + when q lies farther along a → b than p, both on that line. */
function alongOrder(p: Point, q: Point, a: Point, b: Point): number {
  const across = compare(b.x, a.x);
  return across === 0 ? compare(q.y, p.y) * compare(b.y, a.y) : compare(q.x, p.x) * across;
}
