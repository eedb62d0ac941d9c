/**
 * The fewest seams that must be sewn partway first. Where everything comes apart (`order.ts`) there are none. Otherwise each seam
 * that is left waits, with an end in the middle of another, for that other to go; the waits run in rings, and a ring is broken by
 * leaving one of its seams open beside the end that waits: a cut. Rings that wait for others are solved after them.
 */
import { copyOf, isOpen, spread, startApart } from './order.ts';
import type { Apart } from './order.ts';
import type { SeamMap } from './map.ts';
import { disjointRings, ringThrough } from './rings.ts';
import type { Waiting } from './rings.ts';
import { knotsIn, nextWaits, stillWaiting, waitingEnds } from './waits.ts';

export interface Cuts {
  /** Germs, each the end that waits: the seam is left open in the middle of its last piece. */
  readonly germs: readonly number[];
  /** True when no smaller number of cuts does. */
  readonly proven: boolean;
}

/** A search is given up after so many tries, and not begun in knots with more ends. */
const MOST_TRIES = 1000;
const MOST_ENDS = 100;

/** A knot with more vertices is left alone: some 900 patches that all wait for each other. */
const MOST_WHOLE = 1800;

/** Undefined when so much waits that it is given up. */
export function cutsNeeded(map: SeamMap): Cuts | undefined {
  const apart = startApart(map);
  spread(map, apart, { vertices: [...apart.open.keys()].filter((vertex) => isOpen(apart, vertex)) });
  const knots = knotsIn(map, apart);
  return knots.some((knot) => knot.length > MOST_WHOLE) ? undefined : solveKnots(map, apart, knots);
}

/** One knot after the other: what a knot waits for is open when its turn comes, which may leave smaller knots of it. */
function solveKnots(map: SeamMap, apart: Apart, knots: readonly (readonly number[])[]): Cuts {
  const germs: number[] = [];
  let proven = true;
  for (const knot of knots) {
    const rest = knotsIn(map, apart, knot);
    const [first] = rest;
    if (!first) continue;
    const found = rest.length === 1 ? solveKnot(map, apart, first) : solveKnots(map, apart, rest);
    if (rest.length === 1) spread(map, apart, { cuts: found.germs });
    germs.push(...found.germs);
    proven &&= found.proven;
  }
  return { germs, proven };
}

/** The fewest cuts that open every vertex of a knot. */
function solveKnot(map: SeamMap, apart: Apart, knot: readonly number[]): Cuts {
  const ends = waitingEnds(map, apart, knot);
  const least = disjointRings({ map, apart, ends });
  const found = greedyCuts(map, apart, ends);
  if (found.length <= least) return { germs: found, proven: true };
  const few = withoutIdle(map, apart, { knot, germs: found });
  const tries = { left: ends.length > MOST_ENDS ? 0 : MOST_TRIES };
  for (let count = least; count < few.length; count += 1) {
    const germs = search({ map, tries }, { map, apart, ends }, { count, banned: new Set() });
    if (tries.left < 0) return { germs: few, proven: false };
    if (germs) return { germs, proven: true };
  }
  return { germs: few, proven: true };
}

interface Search {
  readonly map: SeamMap;
  readonly tries: { left: number };
}

/** Cuts, at most `count` and none of the banned, after which nothing waits; undefined when there are none or the tries are used up. */
function search(context: Search, waiting: Waiting, limit: { readonly count: number; readonly banned: ReadonlySet<number> }): number[] | undefined {
  const { tries } = context;
  if (waiting.ends.length === 0) return [];
  if (disjointRings(waiting) > limit.count) return undefined;
  const banned = new Set(limit.banned);
  for (const germ of shortRing(waiting) ?? waiting.ends) {
    if (banned.has(germ)) continue;
    banned.add(germ);
    tries.left -= 1;
    if (tries.left < 0) return undefined;
    const rest = search(context, afterCut(waiting, germ).waiting, { count: limit.count - 1, banned });
    if (rest) return [germ, ...rest];
  }
  return undefined;
}

function afterCut({ map, apart, ends }: Waiting, germ: number): { readonly waiting: Waiting; readonly opened: number } {
  const next = copyOf(apart);
  const opened = spread(map, next, { cuts: [germ] });
  return { waiting: { map, apart: next, ends: stillWaiting(map, next, ends) }, opened };
}

/** Breaks one short ring after the other, at the end that opens most. */
function greedyCuts(map: SeamMap, apart: Apart, ends: readonly number[]): number[] {
  const germs: number[] = [];
  const state = copyOf(apart);
  const opens = (germ: number): number => spread(map, copyOf(state), { cuts: [germ] });
  for (let rest = ends; rest.length > 0; rest = stillWaiting(map, state, rest)) {
    const choices = (shortRing({ map, apart: state, ends: rest }) ?? rest).map((germ) => ({ germ, opened: opens(germ) }));
    const { germ } = choices.reduce((a, b) => (b.opened > a.opened ? b : a));
    germs.push(germ);
    spread(map, state, { cuts: [germ] });
  }
  return germs;
}

/** Without the cuts that were not needed after all. */
function withoutIdle(map: SeamMap, apart: Apart, { knot, germs }: { readonly knot: readonly number[]; readonly germs: readonly number[] }): readonly number[] {
  return germs.reduce<readonly number[]>((kept, germ) => {
    const rest = kept.filter((each) => each !== germ);
    const state = copyOf(apart);
    spread(map, state, { cuts: rest });
    return knot.every((vertex) => isOpen(state, vertex)) ? rest : kept;
  }, germs);
}

/** Only the rings through the first ends are compared. */
const MOST_STARTS = 24;

/** A short ring of waits that only a cut at one of them can break; undefined when none is near. */
function shortRing({ map, apart, ends }: Waiting): number[] | undefined {
  let best: number[] | undefined;
  for (const start of ends.slice(0, MOST_STARTS)) {
    const ring = ringThrough(start, (germ) => nextWaits(map, apart, germ), best ? best.length - 1 : ends.length);
    if (ring) best = ring;
    if (best && best.length <= 4) return best;
  }
  return best;
}
