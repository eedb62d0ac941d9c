/** Rings of waits, each of which a cut must break, and how many of them share nothing: a lower bound for the number of cuts. */
import type { SeamMap } from './map.ts';
import type { Apart } from './order.ts';
import { nextWaits } from './waits.ts';

/** Ends that wait, in some state. */
export interface Waiting {
  readonly map: SeamMap;
  readonly apart: Apart;
  readonly ends: readonly number[];
}

type Next = (germ: number) => readonly number[];

/** A shortest ring of at most `longest` waits through one of them. */
export function ringThrough(start: number, next: Next, longest: number, first: readonly number[] = next(start)): number[] | undefined {
  if (first.includes(start)) return [start];
  const before = new Map<number, number>(first.map((germ) => [germ, start]));
  let level = [...before.keys()];
  for (let length = 2; length <= longest && level.length > 0; length += 1) {
    const deeper: number[] = [];
    for (const germ of level) {
      for (const other of next(germ)) {
        if (other === start) return wayBack(before, germ, start);
        if (before.has(other)) continue;
        before.set(other, germ);
        deeper.push(other);
      }
    }
    level = deeper;
  }
  return undefined;
}

function wayBack(before: ReadonlyMap<number, number>, last: number, start: number): number[] {
  const ring = [last];
  for (let germ = last; germ !== start; ) {
    germ = before.get(germ) ?? start;
    ring.push(germ);
  }
  return ring.reverse();
}

/** Rings longer than this are looked for only where there is no shorter one. */
const SHORT = 8;

/** Where something waits, at least 1. */
export function disjointRings({ map, apart, ends }: Waiting): number {
  const known = new Map<number, readonly number[]>();
  const next = (germ: number): readonly number[] => {
    const waits = known.get(germ) ?? nextWaits(map, apart, germ);
    known.set(germ, waits);
    return waits;
  };
  const short = ringsOf(ends, next, SHORT);
  const rings = short.length > 0 ? short : ringsOf(ends.slice(0, 1), next, ends.length);
  return ends.length === 0 ? 0 : atLeastOne(leastEntangled(rings));
}

function ringsOf(ends: readonly number[], next: Next, longest: number): (readonly number[])[] {
  const rings = new Map<string, readonly number[]>();
  for (const start of ends) {
    for (const first of next(start)) {
      const ring = ringThrough(start, next, longest, [first]);
      if (ring) rings.set([...ring].sort((a, b) => a - b).join(' '), ring);
    }
  }
  return [...rings.values()];
}

/** Takes one ring after the other, always one that fewest others share waits with, and drops those others. */
function leastEntangled(rings: readonly (readonly number[])[]): number {
  const at = new Map<number, Set<number>>();
  rings.forEach((ring, i) => ring.forEach((germ) => at.set(germ, (at.get(germ) ?? new Set()).add(i))));
  const left = new Set(rings.keys());
  const others = (i: number): Set<number> => new Set((rings[i] ?? []).flatMap((germ) => [...(at.get(germ) ?? [])].filter((j) => j !== i && left.has(j))));
  const entangled = new Map([...left].map((i) => [i, others(i).size]));
  let count = 0;
  while (left.size > 0) {
    const [first = -1] = left;
    const best = [...left].reduce((a, b) => ((entangled.get(b) ?? 0) < (entangled.get(a) ?? 0) ? b : a), first);
    const dropped = others(best);
    count += 1;
    for (const i of [best, ...dropped]) left.delete(i);
    for (const i of dropped) for (const j of others(i)) entangled.set(j, (entangled.get(j) ?? 1) - 1);
  }
  return count;
}

function atLeastOne(count: number): number {
  return count < 1 ? 1 : count;
}
