/**
 * The fewest sections of a block on paper, by the sides of its lines alone. A line parts a set of patches when none of them lies
 * across it and some lie on both sides. A set is one section when lines that part a single patch from the rest take it apart down to
 * one patch. What is left of a set that lines take apart only so far, its core, can be made of sections of its own and is then the first
 * piece of the sheet; and every line that parts the set gives two sets to join. The best of all these counts. Sets are worked out once.
 * Where there is too much to try, each time the largest section that can be taken off is.
 * (No smaller core would do with fewer sections than the whole one: what serves a convex part serves every part that a line leaves of it.)
 */

/** For one line: of each patch, +1 to the right, −1 to the left, 0 across it. */
export type Sides = Int8Array;

export type SectionTree =
  /** `core`: what the steps are added to; absent where the first step is a patch. */
  | { readonly kind: 'section'; readonly core?: SectionTree; readonly order: readonly SectionStep[] }
  | { readonly kind: 'join'; readonly line: number; readonly right: SectionTree; readonly left: SectionTree };

export interface SectionStep {
  readonly patch: number;
  /** The line it is sewn along, and its side; undefined and 0 for the first. */
  readonly line: number | undefined;
  readonly side: number;
}

export type Sections =
  | { readonly kind: 'sections'; readonly tree: SectionTree; readonly proven: boolean }
  /** `stuck`: patches that no line parts. */
  | { readonly kind: 'none'; readonly stuck: readonly number[] };

/** Looks at lines and patches before the search for the fewest sections is given up. */
const MOST_LOOKS = 5_000_000;

export function findSections(lines: readonly Sides[], patches: number): Sections {
  const all = [...Array(patches).keys()];
  const search: Search = { lines, found: new Map(), looks: 0 };
  const best = fewest(search, all);
  if (best?.tree) return { kind: 'sections', tree: best.tree, proven: true };
  const { tree, stuck, count } = best ?? largestFirst({ lines, found: new Map(), looks: 0 }, all);
  return tree ? { kind: 'sections', tree, proven: count <= 2 } : { kind: 'none', stuck };
}

interface Search {
  readonly lines: readonly Sides[];
  readonly found: Map<string, Best>;
  looks: number;
}

interface Best {
  readonly count: number;
  readonly tree?: SectionTree;
  readonly stuck: readonly number[];
}

/** Undefined when it is given up. */
function fewest(search: Search, set: readonly number[]): Best | undefined {
  const name = set.join();
  const known = search.found.get(name);
  if (known) return known;
  const best = tryAll(search, set);
  if (best) search.found.set(name, best);
  return best;
}

function tryAll(search: Search, set: readonly number[]): Best | undefined {
  const { order, core } = orderOf(search, set);
  if (core.length === 0) return { count: 1, tree: { kind: 'section', order }, stuck: [] };
  if (search.looks > MOST_LOOKS) return undefined;
  const inner = order.length === 0 ? undefined : fewest(search, core);
  if (order.length > 0 && !inner?.tree) return inner;
  let best = inner ? aroundCore(inner, order) : { count: Infinity, stuck: set };
  for (const { line, right, left } of partingsOf(search, set)) {
    if (best.count === 2) break;
    const one = fewest(search, right);
    if (!one?.tree) return one;
    if (one.count + 1 >= best.count) continue;
    const other = fewest(search, left);
    if (!other?.tree) return other;
    if (one.count + other.count < best.count) best = joined(line, one, other);
  }
  return best;
}

/** Takes off the largest section that lies around a core or to one side of a line; where there is none, halves the set. */
function largestFirst(search: Search, set: readonly number[]): Best {
  const { order, core } = orderOf(search, set);
  if (core.length === 0) return { count: 1, tree: { kind: 'section', order }, stuck: [] };
  const partings = partingsOf(search, set);
  const largest = partings
    .flatMap((parting) => [parting.right, parting.left].filter((side) => side.length > order.length && isSection(search, side)).map((side) => ({ parting, size: side.length })))
    .reduce<{ readonly parting: Parting; readonly size: number } | undefined>((best, each) => (best && best.size >= each.size ? best : each), undefined);
  if (!largest && order.length > 0) return aroundCore(largestFirst(search, core), order);
  const parting = largest?.parting ?? partings[0];
  return parting ? joined(parting.line, largestFirst(search, parting.right), largestFirst(search, parting.left)) : { count: Infinity, stuck: set };
}

function isSection(search: Search, set: readonly number[]): boolean {
  const name = set.join();
  const known = search.found.get(name)?.count;
  if (known === undefined) search.found.set(name, { count: orderOf(search, set).core.length === 0 ? 1 : Infinity, stuck: [] });
  return search.found.get(name)?.count === 1;
}

function joined(line: number, right: Best, left: Best): Best {
  const count = right.count + left.count;
  return right.tree && left.tree ? { count, tree: { kind: 'join', line, right: right.tree, left: left.tree }, stuck: [] } : { count, stuck: right.tree ? left.stuck : right.stuck };
}

/** A sheet whose first piece is made of the sections of the core. */
function aroundCore({ count, tree, stuck }: Best, order: readonly SectionStep[]): Best {
  return tree ? { count: count + 1, tree: { kind: 'section', core: tree, order }, stuck: [] } : { count, stuck };
}

interface Parting {
  readonly line: number;
  readonly right: readonly number[];
  readonly left: readonly number[];
}

/** Even halves first: they come down to sections soonest. */
function partingsOf(search: Search, set: readonly number[]): readonly Parting[] {
  return talliesOf(search, set)
    .flatMap(({ across, right, left }, line): Parting[] => {
      const sides = search.lines[line];
      return across > 0 || right === 0 || left === 0 || !sides ? [] : [{ line, right: set.filter((patch) => (sides[patch] ?? 0) > 0), left: set.filter((patch) => (sides[patch] ?? 0) < 0) }];
    })
    .sort((a, b) => Math.abs(a.right.length - a.left.length) - Math.abs(b.right.length - b.left.length));
}

/** How many patches of a set lie on each side of a line and across it, and the sums of their numbers: of a single one, its number. */
interface Tally {
  across: number;
  right: number;
  left: number;
  rights: number;
  lefts: number;
}

function talliesOf(search: Search, set: readonly number[]): readonly Tally[] {
  search.looks += search.lines.length * set.length;
  return search.lines.map((sides) => {
    const tally: Tally = { across: 0, right: 0, left: 0, rights: 0, lefts: 0 };
    for (const patch of set) add(tally, sides[patch] ?? 0, patch, 1);
    return tally;
  });
}

function add(tally: Tally, side: number, patch: number, times: 1 | -1): void {
  if (side === 0) tally.across += times;
  else if (side > 0) {
    tally.right += times;
    tally.rights += times * patch;
  } else {
    tally.left += times;
    tally.lefts += times * patch;
  }
}

/**
 * The order of sewing, and what cannot be taken apart so. From a row, whose two ends alone can come last, the one that the text names
 * last is taken off; elsewhere what could come last for longest, so that the sewing goes in rounds.
 */
function orderOf(search: Search, set: readonly number[]): { readonly order: readonly SectionStep[]; readonly core: readonly number[] } {
  const tallies = talliesOf(search, set);
  const order: SectionStep[] = [];
  const since = new Map<number, number>();
  const rest = new Set(set);
  let isRow = true;
  for (let ends = endsOf(tallies); ends.size > 0; ends = endsOf(tallies)) {
    isRow &&= ends.size <= 2;
    for (const patch of ends.keys()) if (!since.has(patch)) since.set(patch, order.length);
    const age = (patch: number): number => (isRow ? 0 : (since.get(patch) ?? 0));
    const [patch, line] = [...ends].reduce((best, end) => ((age(end[0]) - age(best[0]) || best[0] - end[0]) < 0 ? end : best));
    order.push({ patch, line, side: search.lines[line]?.[patch] ?? 0 });
    rest.delete(patch);
    search.looks += tallies.length;
    tallies.forEach((tally, each) => add(tally, search.lines[each]?.[patch] ?? 0, patch, -1));
  }
  if (rest.size > 1) return { order: order.reverse(), core: [...rest] };
  return { order: [...order, ...[...rest].map((patch) => ({ patch, line: undefined, side: 0 }))].reverse(), core: [] };
}

/** Every patch that a line parts from all others, and the first such line. */
function endsOf(tallies: readonly Tally[]): ReadonlyMap<number, number> {
  const ends = new Map<number, number>();
  tallies.forEach(({ across, right, left, rights, lefts }, line) => {
    if (across > 0 || right === 0 || left === 0) return;
    if (right === 1 && !ends.has(rights)) ends.set(rights, line);
    if (left === 1 && !ends.has(lefts)) ends.set(lefts, line);
  });
  return ends;
}
