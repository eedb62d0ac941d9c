/** Random patchwork that tiles exactly: by straight cuts, triangulated grids, pinwheels, octagons, triangle rows. Same seed, same patches. */
import { HALF, ONE, SQRT2, SQRT3, ZERO, add, div, fraction, mul, sub, sum } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import { midpoint, minus, plus, samePoint, times } from '../../server/src/exact/point.ts';
import type { Point } from '../../server/src/exact/point.ts';
import { edgesOf, isSimple } from '../../server/src/exact/polygon.ts';
import { about, applyToAll, turn } from '../../server/src/exact/transform.ts';

export type Shape = readonly Point[];

export interface Partition {
  readonly target: Shape;
  readonly patches: readonly Shape[];
}

export interface Random {
  /** A whole number from 0 to below n. */
  readonly below: (n: number) => number;
  readonly pick: <T>(choices: readonly T[]) => T;
}

/** mulberry32 */
export function random(seed: number): Random {
  let state = seed;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (n: number): number => Math.floor(next() * n);
  const pick = <T>(choices: readonly T[]): T => {
    const choice = choices[below(choices.length)];
    if (choice === undefined) throw new Error('nothing to pick');
    return choice;
  };
  return { below, pick };
}

export const KINDS = { guillotine, triangles, pinwheels, octagons, triangleRows } as const;

/** Cut with straight cuts, upright, level or slanted, at ruler fractions, thirds, thousandths or surds. */
export function guillotine(r: Random): Partition {
  const target = rectangle(ZERO, ZERO, fraction(4 + r.below(9)), fraction(4 + r.below(9)));
  let patches: Shape[] = [target];
  for (let i = 3 + r.below(20); i > 0; i -= 1) {
    const chosen = r.below(patches.length);
    patches = patches.flatMap((patch, index) => (index === chosen ? cut(patch, r) : [patch]));
  }
  return { target, patches };
}

/** A grid of unequal columns and rows, its cells plain, halved or quartered, some neighbours joined to shapes with inner corners. */
export function triangles(r: Random): Partition {
  const [columns, rows] = [steps(r), steps(r)];
  const cells = columns.flatMap(([x, width]) => rows.flatMap(([y, height]) => cellPatches(rectangle(x, y, width, height), r)));
  return { target: rectangle(ZERO, ZERO, endOf(columns), endOf(rows)), patches: joined(cells, r) };
}

/** Four rectangles around a fifth, which is one again: needs partial seams, has T-junctions everywhere. */
export function pinwheels(r: Random): Partition {
  const target = rectangle(ZERO, ZERO, fraction(12), fraction(8 + r.below(8)));
  let rest: Shape = target;
  const patches: Shape[] = [];
  for (let i = 1 + r.below(4); i > 0; i -= 1) {
    const [a, b] = [fraction(1 + r.below(3), 8), fraction(1 + r.below(3), 9)];
    const [o, , c] = rest as [Point, Point, Point];
    const [w, h] = [sub(c.x, o.x), sub(c.y, o.y)];
    const [dx, dy] = [mul(w, a), mul(h, b)];
    patches.push(
      rectangle(o.x, o.y, sub(w, dx), dy),
      rectangle(sub(c.x, dx), o.y, dx, sub(h, dy)),
      rectangle(add(o.x, dx), sub(c.y, dy), sub(w, dx), dy),
      rectangle(o.x, add(o.y, dy), dx, sub(h, dy)),
    );
    rest = rectangle(add(o.x, dx), add(o.y, dy), sub(w, add(dx, dx)), sub(h, add(dy, dy)));
  }
  return { target, patches: [...patches, ...(r.below(2) === 0 ? [rest] : cellPatches(rest, r))] };
}

/** Regular octagons, the small squares on point between them, halved at the sides and quartered in the corners. */
export function octagons(r: Random): Partition {
  const side = r.pick([ONE, fraction(3, 4), SQRT2, fraction(1237, 1000)]);
  const snip = mul(side, sub(ONE, div(SQRT2, fraction(2))));
  const [across, down] = [1 + r.below(4), 1 + r.below(4)];
  const at = (i: number, dx: Exact): Exact => add(mul(side, fraction(i)), dx);
  const patches: Shape[] = [];
  for (let i = 0; i < across; i += 1) {
    for (let j = 0; j < down; j += 1) {
      const [x1, x2, x3, x4] = [ZERO, snip, sub(side, snip), side].map((d) => at(i, d)) as [Exact, Exact, Exact, Exact];
      const [y1, y2, y3, y4] = [ZERO, snip, sub(side, snip), side].map((d) => at(j, d)) as [Exact, Exact, Exact, Exact];
      patches.push(shape([x2, y1], [x3, y1], [x4, y2], [x4, y3], [x3, y4], [x2, y4], [x1, y3], [x1, y2]));
    }
  }
  for (let i = 0; i <= across; i += 1) {
    for (let j = 0; j <= down; j += 1) {
      const [x, y] = [at(i, ZERO), at(j, ZERO)];
      const [left, right] = [i === 0 ? x : sub(x, snip), i === across ? x : add(x, snip)];
      const [top, bottom] = [j === 0 ? y : sub(y, snip), j === down ? y : add(y, snip)];
      const corners = shape([x, top], [right, y], [x, bottom], [left, y]);
      patches.push(corners.filter((p, k) => !samePoint(p, corners.at(k - 1) ?? p)));
    }
  }
  return turned({ target: rectangle(ZERO, ZERO, at(across, ZERO), at(down, ZERO)), patches }, r);
}

/** Rows of equilateral triangles with halves at both ends. */
export function triangleRows(r: Random): Partition {
  const side = r.pick([ONE, fraction(5, 2), SQRT3, fraction(1237, 1000)]);
  const height = mul(side, div(SQRT3, fraction(2)));
  const [across, down] = [1 + r.below(5), 1 + r.below(5)];
  const patches: Shape[] = [];
  for (let j = 0; j < down; j += 1) {
    const [top, bottom] = [mul(height, fraction(j)), mul(height, fraction(j + 1))];
    const [flat, tip] = r.below(2) === 0 ? [top, bottom] : [bottom, top];
    const at = (halves: number): Exact => mul(side, fraction(halves, 2));
    patches.push(shape([ZERO, flat], [at(1), tip], [ZERO, tip]));
    for (let i = 0; i < across; i += 1) {
      patches.push(shape([at(2 * i), flat], [at(2 * i + 2), flat], [at(2 * i + 1), tip]));
      const last = i === across - 1;
      patches.push(last ? shape([at(2 * i + 1), tip], [at(2 * i + 2), flat], [at(2 * i + 2), tip]) : shape([at(2 * i + 1), tip], [at(2 * i + 2), flat], [at(2 * i + 3), tip]));
    }
  }
  const target = rectangle(ZERO, ZERO, mul(side, fraction(across)), mul(height, fraction(down)));
  return turned({ target, patches: joined(patches, r) }, r);
}

/** The same patches, wound and begun anywhere, some with corners where their edges run straight on. */
export function scrambled(patches: readonly Shape[], r: Random): Shape[] {
  return patches.map((patch) => {
    const fuller = r.below(4) === 0 ? edgesOf(patch).flatMap(({ from, to }) => (r.below(3) === 0 ? [from, midpoint(from, to)] : [from])) : patch;
    const wound = r.below(2) === 0 ? fuller : [...fuller].reverse();
    const start = r.below(wound.length);
    return [...wound.slice(start), ...wound.slice(0, start)];
  });
}

export function rectangle(x: Exact, y: Exact, width: Exact, height: Exact): Shape {
  return shape([x, y], [add(x, width), y], [add(x, width), add(y, height)], [x, add(y, height)]);
}

export function shape(...corners: readonly (readonly [Exact, Exact])[]): Shape {
  return corners.map(([x, y]) => ({ x, y }));
}

/** Turned by some 15°, about some point: the target is a polygon then. */
function turned(partition: Partition, r: Random): Partition {
  if (r.below(2) === 0) return partition;
  const motion = about({ x: fraction(r.below(7)), y: fraction(r.below(7), 3) }, turn(r.below(24)));
  return { target: applyToAll(partition.target, motion), patches: partition.patches.map((patch) => applyToAll(patch, motion)) };
}

function steps(r: Random): (readonly [Exact, Exact])[] {
  const sizes = Array.from({ length: 1 + r.below(5) }, () => r.pick([ONE, fraction(2), fraction(7, 8), fraction(10, 3), SQRT2, fraction(1237, 1000)]));
  return sizes.map((size, i) => [sum(sizes.slice(0, i)), size]);
}

function endOf(list: readonly (readonly [Exact, Exact])[]): Exact {
  return sum(list.map(([, size]) => size));
}

function cellPatches(cell: Shape, r: Random): Shape[] {
  const [a, b, c, d] = cell as [Point, Point, Point, Point];
  const m = midpoint(a, c);
  return r.pick<Shape[]>([[cell], [[a, b, c], [a, c, d]], [[a, b, d], [b, c, d]], [[a, b, m], [b, c, m], [c, d, m], [d, a, m]], [[a, b, m], [b, c, d, m], [d, a, m]]]);
}

/** Some pairs with a whole edge in common become one patch. */
function joined(patches: readonly Shape[], r: Random): Shape[] {
  let list = [...patches];
  for (let i = r.below(patches.length); i > 0; i -= 1) {
    const a = r.pick(list);
    const b = r.pick(list.filter((other) => other === a || sharedEdge(a, other) !== undefined));
    const both = a === b ? undefined : union(a, b);
    if (both !== undefined && isSimple(both)) list = [...list.filter((patch) => patch !== a && patch !== b), both];
  }
  return list;
}

function sharedEdge(a: Shape, b: Shape): readonly [number, number] | undefined {
  for (const [i, e] of edgesOf(a).entries()) {
    const j = edgesOf(b).findIndex((f) => samePoint(e.from, f.to) && samePoint(e.to, f.from));
    if (j >= 0) return [i, j];
  }
  return undefined;
}

function union(a: Shape, b: Shape): Shape | undefined {
  const [i, j] = sharedEdge(a, b) ?? [];
  if (i === undefined || j === undefined) return undefined;
  const around = [...b.slice(j + 1), ...b.slice(0, j + 1)];
  return [...a.slice(0, i + 1), ...around.slice(1, -1), ...a.slice(i + 1)];
}

/** A convex patch in two, from a place on one edge to a place on another. */
function cut(patch: Shape, r: Random): Shape[] {
  const [i, j] = [r.below(patch.length), r.below(patch.length)].sort((a, b) => a - b) as [number, number];
  if (i === j) return [patch];
  const [p, q] = [placeOn(patch, i, r), placeOn(patch, j, r)];
  const [one, two] = [[p, ...patch.slice(i + 1, j + 1), q], [q, ...patch.slice(j + 1), ...patch.slice(0, i + 1), p]];
  return isSimple(one) && isSimple(two) ? [one, two] : [patch];
}

function placeOn(patch: Shape, edge: number, r: Random): Point {
  const { from, to } = edgesOf(patch)[edge] as { from: Point; to: Point };
  const parts = [HALF, HALF, fraction(1, 3), fraction(3, 8), fraction(333, 1000), sub(SQRT2, ONE), ZERO];
  return plus(from, times(minus(to, from), r.pick(parts)));
}
