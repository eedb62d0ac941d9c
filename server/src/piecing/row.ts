/** The order in which parts are sewn one to another. */
import { comparePoints } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { pieceAt, pointAt } from './map.ts';
import type { SeamMap } from './map.ts';
import type { Run } from './order.ts';
import { startOf } from './region.ts';
import type { Region, Undoing } from './region.ts';

/**
 * From the left (or upper) end of a row to the other. Where one part is more than all others together, or has more than two
 * neighbours, from it outward: corners onto a middle, borders onto a quilt. The runs part the regions, which are the last looked at.
 */
export function inOrder(state: Undoing, parts: readonly Region[], runs: readonly Run[]): readonly Region[] {
  if (parts.length <= 2) return parts;
  const next = neighboursOf(state, parts, runs);
  const count = (part: Region): number => next.get(part.number)?.length ?? 0;
  const all = parts.reduce((sum, part) => sum + part.patches.length, 0);
  const middle = parts.find((part) => 2 * part.patches.length > all || count(part) > 2);
  const start = middle ?? leftmost(state.map, parts.filter((part) => count(part) === 1)) ?? parts[0];
  const byNumber = new Map(parts.map((part) => [part.number, part]));
  const order = new Set(start ? [start.number] : []);
  for (const number of order) for (const other of [...(next.get(number) ?? [])].sort((a, b) => a - b)) order.add(other);
  return [...order].flatMap((number) => byNumber.get(number) ?? []);
}

function neighboursOf({ map, owner }: Undoing, parts: readonly Region[], runs: readonly Run[]): ReadonlyMap<number, readonly number[]> {
  const next = new Map<number, Set<number>>(parts.map((part) => [part.number, new Set()]));
  for (const run of runs) {
    const { left, right } = pieceAt(map, startOf(run) >> 1);
    const [a, b] = [owner[left] ?? -1, owner[right] ?? -1];
    next.get(a)?.add(b);
    next.get(b)?.add(a);
  }
  return new Map([...next].map(([number, others]) => [number, [...others]]));
}

/** The part that reaches farthest to the left; of those that reach equally far, the upper one. */
function leftmost(map: SeamMap, parts: readonly Region[]): Region | undefined {
  const reach = parts.map((part) => ({ part, at: leftmostPoint(map, part) }));
  return reach.reduce<(typeof reach)[number] | undefined>((best, each) => (!best || comparePoints(each.at, best.at) < 0 ? each : best), undefined)?.part;
}

function leftmostPoint(map: SeamMap, { patches }: Region): Point {
  const points = patches.flatMap((patch) => (map.around[patch] ?? []).map((piece) => pointAt(map, pieceAt(map, piece).a)));
  return points.reduce((a, b) => (comparePoints(b, a) < 0 ? b : a));
}
