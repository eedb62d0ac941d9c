/**
 * Sides for seams: the fewest crossings that do not nest, proven by eliminating one seam after the other (each table holds the best
 * that can follow for every choice of the seams it still touches); among those, the most seams to the side they would rather go.
 * R. Dechter, Bucket elimination, Artificial Intelligence 113 (1999) 41.
 */

export interface PressProblem {
  /** For each seam: its side when that is settled (0 right, 1 left). */
  readonly settled: readonly (0 | 1 | undefined)[];
  /** For each seam how much it would rather go left; negative: right. */
  readonly wish: readonly number[];
  /** Seams that must lie on the same or on different sides, and how many crossings ask for it. */
  readonly pairs: readonly PressPair[];
}

export interface PressPair {
  readonly a: number;
  readonly b: number;
  readonly differ: boolean;
  readonly weight: number;
}

export interface PressAnswer {
  readonly sides: readonly (0 | 1)[];
  /** False when some knot of seams was too entangled to solve exactly. */
  readonly proven: boolean;
}

export function solvePressing(problem: PressProblem): PressAnswer {
  const total = problem.wish.reduce((sum, wish) => sum + (wish < 0 ? -wish : wish), 1);
  const sides = problem.wish.map((): 0 | 1 => 0);
  let proven = true;
  for (const group of connected(problem)) proven = solveGroup({ problem, ...group, crossing: total }, sides) && proven;
  return { sides, proven };
}

/** A table over some seams; bit i of its index is the side of the i-th. */
interface Table {
  readonly seams: readonly number[];
  readonly cost: Float64Array;
}

interface Group extends Knot {
  readonly problem: PressProblem;
  /** What a crossing that does not nest costs: more than all wishes together. */
  readonly crossing: number;
}

/** Seams that hang together by pairs, and those pairs. */
interface Knot {
  readonly group: readonly number[];
  readonly pairs: readonly PressPair[];
}

/** A table with more seams than this is not made. */
const WIDEST = 16;

function connected({ wish, pairs }: PressProblem): readonly Knot[] {
  const next = wish.map((): number[] => []);
  for (const { a, b } of pairs) {
    next[a]?.push(b);
    next[b]?.push(a);
  }
  const knotOf = new Map<number, { readonly group: readonly number[]; readonly pairs: PressPair[] }>();
  for (const start of wish.keys()) {
    if (knotOf.has(start)) continue;
    const group = [start];
    const knot = { group, pairs: [] };
    knotOf.set(start, knot);
    for (const seam of group) {
      for (const other of next[seam] ?? []) {
        if (knotOf.has(other)) continue;
        knotOf.set(other, knot);
        group.push(other);
      }
    }
  }
  for (const pair of pairs) knotOf.get(pair.a)?.pairs.push(pair);
  return [...new Set(knotOf.values())];
}

/** Writes the sides of a group; false when they are only good, not proven best. */
function solveGroup(context: Group, sides: (0 | 1)[]): boolean {
  const at = new Map<number, Set<Table>>(context.group.map((seam) => [seam, new Set()]));
  const put = (table: Table): void => table.seams.forEach((seam) => at.get(seam)?.add(table));
  tablesOf(context).forEach(put);
  const order: { readonly seam: number; readonly from: readonly Table[] }[] = [];
  const loose = context.group.filter((seam) => touching(seam, at).length <= 1);
  while (at.size > 0) {
    const seam = nextSeam(loose, at);
    const around = touching(seam, at);
    if (around.length > WIDEST) {
      improve(context, sides);
      return false;
    }
    const from = [...(at.get(seam) ?? [])];
    at.delete(seam);
    for (const other of around) for (const table of from) at.get(other)?.delete(table);
    if (around.length > 0) put(without(seam, around, from));
    for (const other of around) if (touching(other, at).length <= 1) loose.push(other);
    order.push({ seam, from });
  }
  for (const { seam, from } of order.reverse()) choose(seam, from, sides);
  return true;
}

/** The others that share a table with a seam. */
function touching(seam: number, at: ReadonlyMap<number, ReadonlySet<Table>>): number[] {
  const others = new Set<number>();
  for (const table of at.get(seam) ?? []) for (const other of table.seams) if (other !== seam) others.add(other);
  return [...others];
}

/** One that touches at most one other while there are such, else one that touches the fewest. */
function nextSeam(loose: number[], at: ReadonlyMap<number, ReadonlySet<Table>>): number {
  for (let seam = loose.pop(); seam !== undefined; seam = loose.pop()) if (at.has(seam)) return seam;
  const counted = [...at.keys()].map((seam) => ({ seam, count: touching(seam, at).length }));
  return counted.reduce((a, b) => (b.count < a.count ? b : a)).seam;
}

/** The better side of a seam when those eliminated after it have theirs; right when both are as good. */
function choose(seam: number, from: readonly Table[], sides: (0 | 1)[]): void {
  const cost = ([0, 1] as const).map((side) => {
    sides[seam] = side;
    return from.reduce((sum, table) => sum + costAt(table, sides), 0);
  });
  sides[seam] = (cost[1] ?? 0) < (cost[0] ?? 0) ? 1 : 0;
}

function tablesOf({ problem, group, pairs, crossing }: Group): Table[] {
  const single = group.map((seam): Table => {
    const wish = problem.wish[seam] ?? 0;
    const settled = problem.settled[seam];
    const cost = (side: 0 | 1): number => (settled !== undefined && settled !== side ? Number.MAX_SAFE_INTEGER : side === 1 ? (wish < 0 ? -wish : 0) : wish > 0 ? wish : 0);
    return { seams: [seam], cost: Float64Array.of(cost(0), cost(1)) };
  });
  return [...single, ...pairs.map((pair) => pairTable(pair, crossing))];
}

function pairTable({ a, b, differ, weight }: PressPair, crossing: number): Table {
  const [same, other] = differ ? [weight * crossing, 0] : [0, weight * crossing];
  return a === b ? { seams: [a], cost: Float64Array.of(same, same) } : { seams: [a, b], cost: Float64Array.of(same, other, other, same) };
}

/** The tables added up over a seam's better side. */
function without(seam: number, around: readonly number[], from: readonly Table[]): Table {
  const cost = new Float64Array(1 << around.length);
  const bits = new Map(around.map((each, i) => [each, i]));
  for (let index = 0; index < cost.length; index += 1) {
    const sideOf = (other: number, own: number): number => (other === seam ? own : (index >> (bits.get(other) ?? 0)) & 1);
    const [right, left] = [0, 1].map((own) => from.reduce((sum, table) => sum + (table.cost[table.seams.reduce((bitsOf, other, i) => bitsOf | (sideOf(other, own) << i), 0)] ?? 0), 0));
    cost[index] = (right ?? 0) < (left ?? 0) ? (right ?? 0) : (left ?? 0);
  }
  return { seams: around, cost };
}

function costAt({ seams, cost }: Table, sides: readonly number[]): number {
  return cost[seams.reduce((index, seam, i) => index | ((sides[seam] ?? 0) << i), 0)] ?? 0;
}

/** Turns single seams over while that helps. */
function improve(context: Group, sides: (0 | 1)[]): void {
  const tables = tablesOf(context);
  const at = new Map<number, Table[]>();
  for (const table of tables) for (const seam of table.seams) at.set(seam, [...(at.get(seam) ?? []), table]);
  const costOf = (seam: number): number => (at.get(seam) ?? []).reduce((sum, table) => sum + costAt(table, sides), 0);
  for (let better = true; better; ) {
    better = false;
    for (const seam of context.group) {
      const [before, side] = [costOf(seam), sides[seam]];
      sides[seam] = side === 1 ? 0 : 1;
      if (costOf(seam) < before) better = true;
      else sides[seam] = side ?? 0;
    }
  }
}
