/**
 * Two slow answers that share nothing with the planner, for rectangles on a small whole-number grid and for small patches of any kind.
 *
 * `fewestCuts`: a seam must be sewn after every seam that ends on it. Seams that wait for each other in a ring need one of their
 * stretches sewn in two goes. All choices of stretches are tried, and at every crossing both ways.
 *
 * `fewestSetIn`: all ways to part a set of patches in two are tried; a corner is set in when the seam that closes it turns there.
 */
import { sign, toNumber } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';
import { cross, dot, minus, onSegment, pointKey } from '../../server/src/exact/point.ts';
import type { Polygon } from '../../server/src/exact/polygon.ts';
import { edgesOf } from '../../server/src/exact/polygon.ts';

export type Box = readonly [x: number, y: number, width: number, height: number];

export interface Stretch {
  readonly level: boolean;
  /** The line: y of level ones, x of upright ones. */
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

/** The least number of stretches to sew in two goes; undefined when more than `most`. */
export function fewestCuts(boxes: readonly Box[], most: number): number | undefined {
  const stretches = stretchesOf(boxes);
  const crossings = crossingsOf(stretches);
  for (let count = 0; count <= most; count += 1) {
    for (const cut of choices(stretches.length, count)) {
      for (let ways = 0; ways < 1 << crossings.length; ways += 1) {
        const levelAt = new Map(crossings.map((name, i) => [name, ((ways >> i) & 1) === 1]));
        if (hasOrder(stretches, new Set(cut), levelAt)) return count;
      }
    }
  }
  return undefined;
}

/** Between neighbouring corners on a line, inside the block. */
export function stretchesOf(boxes: readonly Box[]): Stretch[] {
  const corners = boxes.flatMap(([x, y, w, h]) => [[x, y], [x + w, y], [x, y + h], [x + w, y + h]] as const);
  const right = Math.max(...corners.map(([x]) => x));
  const bottom = Math.max(...corners.map(([, y]) => y));
  const found = new Map<string, Stretch>();
  for (const [x, y, w, h] of boxes) {
    const sides = [[true, y, x, x + w], [true, y + h, x, x + w], [false, x, y, y + h], [false, x + w, y, y + h]] as const;
    for (const [level, line, from, to] of sides) {
      if (line === 0 || line === (level ? bottom : right)) continue;
      const stops = [...new Set(corners.filter(([cx, cy]) => (level ? cy : cx) === line).map(([cx, cy]) => (level ? cx : cy)))].filter((at) => at >= from && at <= to).sort((a, b) => a - b);
      stops.slice(1).forEach((end, i) => {
        const stretch = { level, line, from: stops[i] ?? 0, to: end };
        found.set(`${level} ${line} ${stretch.from}`, stretch);
      });
    }
  }
  return [...found.values()];
}

export function endsOf({ level, line, from, to }: Stretch): readonly [string, string] {
  return level ? [`${from} ${line}`, `${to} ${line}`] : [`${line} ${from}`, `${line} ${to}`];
}

/** Points where two level and two upright stretches meet. */
function crossingsOf(stretches: readonly Stretch[]): string[] {
  const counts = new Map<string, number>();
  for (const stretch of stretches) for (const end of endsOf(stretch)) counts.set(end, (counts.get(end) ?? 0) + 1);
  return [...counts].filter(([, count]) => count === 4).map(([name]) => name);
}

/** Halves of stretches are joined to seams through every point they run through; the seams must have an order. */
function hasOrder(stretches: readonly Stretch[], cut: ReadonlySet<number>, levelAt: ReadonlyMap<string, boolean>): boolean {
  const halves = stretches.flatMap((stretch, i) => endsOf(stretch).map((end) => ({ end, level: stretch.level, stretch: i })));
  const seam = halves.map((_, i) => i);
  const root = (i: number): number => (seam[i] === i ? i : root(seam[i] ?? i));
  const join = (i: number, j: number): void => {
    seam[root(i)] = root(j);
  };
  stretches.forEach((_, i) => {
    if (!cut.has(i)) join(2 * i, 2 * i + 1);
  });
  const at = Map.groupBy(halves.keys(), (i) => halves[i]?.end ?? '');
  const before: (readonly [number, number])[] = [];
  for (const [end, here] of at) {
    const level = here.filter((i) => halves[i]?.level === true);
    const upright = here.filter((i) => halves[i]?.level === false);
    if (level.length + upright.length < 3) continue;
    const isLevel = levelAt.get(end) ?? level.length === 2;
    const [through, ending] = isLevel ? [level, upright] : [upright, level];
    join(through[0] ?? 0, through[1] ?? 0);
    before.push(...ending.map((i) => [i, through[0] ?? 0] as const));
  }
  return isAcyclic(before.map(([a, b]) => [root(a), root(b)] as const));
}

function isAcyclic(arcs: readonly (readonly [number, number])[]): boolean {
  let left = arcs;
  for (;;) {
    const targets = new Set(left.map(([, b]) => b));
    const rest = left.filter(([a]) => targets.has(a));
    if (rest.length === left.length) return rest.length === 0;
    left = rest;
  }
}

function* choices(n: number, count: number, from = 0): Generator<number[]> {
  if (count === 0) yield [];
  else for (let i = from; i < n; i += 1) for (const rest of choices(n, count - 1, i + 1)) yield [i, ...rest];
}

/** Without seams sewn partway: the fewest corners that must be set in; infinite when a ring would have to close. At most 12 patches. */
export function fewestSetIn(patches: readonly Polygon[]): number {
  const corners = new Map(patches.flat().map((p) => [pointKey(p), p]));
  const around = [...corners.values()].map((p) => ({ p, at: patches.map((patch) => waysAt(patch, p)) }));
  const all = (1 << patches.length) - 1;
  const neighbours = patches.map((_, i) => patches.reduce((set, _other, j) => (i !== j && touch(patches[i] ?? [], patches[j] ?? []) ? set | (1 << j) : set), 0));
  const known = new Map<number, number>();
  const isTogether = (set: number): boolean => {
    let reached = set & -set;
    for (let next = reached; ; reached = next) {
      for (let i = 0; i < patches.length; i += 1) if ((reached >> i) & 1) next |= (neighbours[i] ?? 0) & set;
      if (next === reached) return reached === set;
    }
  };
  const least = (set: number): number => {
    const found = known.get(set);
    if (found !== undefined) return found;
    let best = (set & (set - 1)) === 0 ? 0 : Number.POSITIVE_INFINITY;
    for (let a = (set - 1) & set; a > 0; a = (a - 1) & set) {
      const b = set ^ a;
      if (a < b || !isTogether(a) || !isTogether(b)) continue;
      const own = turns(around, a, b);
      if (own < best) best = Math.min(best, own + least(a) + least(b));
    }
    known.set(set, best);
    return best;
  };
  return least(all);
}

type Around = readonly { readonly p: Point; readonly at: readonly (readonly Point[])[] }[];

/** Corners that the seam between two sets closes with a turn; infinite when their border is not one line. */
function turns(around: Around, a: number, b: number): number {
  let [ends, bends] = [0, 0];
  for (const { at } of around) {
    const [inA, inB] = [a, b].map((set) => at.flatMap((ways, i) => ((set >> i) & 1 ? ways : [])));
    const border = (inA ?? []).filter((u) => (inB ?? []).some((v) => sameWay(u, v)));
    if (border.length === 1) ends += 1;
    if (border.length > 2) return Number.POSITIVE_INFINITY;
    const [u, v] = border;
    if (u && v && !isStraight(u, v)) bends += 1;
  }
  return ends === 2 ? bends : Number.POSITIVE_INFINITY;
}

/** The directions in which a patch's edges leave a point on its outline; those it covers to the right of one and left of another aside. */
function waysAt(patch: Polygon, p: Point): Point[] {
  return edgesOf(patch).flatMap(({ from, to }) => {
    if (!onSegment(p, from, to)) return [];
    return [minus(from, p), minus(to, p)].filter((v) => sign(dot(v, v)) > 0);
  });
}

function sameWay(u: Point, v: Point): boolean {
  return sign(cross(u, v)) === 0 && sign(dot(u, v)) > 0;
}

function isStraight(u: Point, v: Point): boolean {
  return sign(cross(u, v)) === 0 && sign(dot(u, v)) < 0;
}

function touch(a: Polygon, b: Polygon): boolean {
  return edgesOf(a).some((e) => edgesOf(b).some((f) => overlap(e.from, e.to, f.from, f.to)));
}

/** Two edges that lie on one line and share more than a point. */
function overlap(a: Point, b: Point, c: Point, d: Point): boolean {
  const along = minus(b, a);
  if (sign(cross(along, minus(c, a))) !== 0 || sign(cross(along, minus(d, a))) !== 0) return false;
  const at = (p: Point): number => toNumber(dot(minus(p, a), along));
  const [from, to] = [Math.min(at(c), at(d)), Math.max(at(c), at(d))];
  return from < at(b) - 1e-9 && to > 1e-9;
}
