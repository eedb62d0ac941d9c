/** What waits for what where sewing gets stuck: seams whose ends stand in the middle of others, and the knots they make. */
import { isOpen, runFrom } from './order.ts';
import type { Apart } from './order.ts';
import { vertexOf } from './map.ts';
import type { SeamMap } from './map.ts';

/**
 * Whole vertices in knots: those of a knot hang together, and wait for none but each other and knots before it. Vertices wait for
 * each other when a seam through the one ends at the other, or runs through both.
 */
export function knotsIn(map: SeamMap, apart: Apart, vertices: readonly number[] = [...apart.open.keys()]): number[][] {
  const whole = vertices.filter((vertex) => !isOpen(apart, vertex) && (map.germs[vertex]?.length ?? 0) > 0);
  return strongParts(whole, new Map(whole.map((vertex) => [vertex, verticesNeeded(map, apart, vertex)])));
}

/** The ends that wait in a knot, as germs at whole vertices where their seams end. */
export function waitingEnds(map: SeamMap, apart: Apart, knot: readonly number[]): number[] {
  return stillWaiting(map, apart, knot.flatMap((vertex) => (map.germs[vertex] ?? []).filter((germ) => map.partner[germ] === -1)));
}

/** Those of them that still wait, and whose seams run through something that waits with them. */
export function stillWaiting(map: SeamMap, apart: Apart, ends: readonly number[]): number[] {
  return ends.filter((germ) => !isOpen(apart, vertexOf(map, germ)) && apart.cut[germ] === 0 && runFrom(map, apart, germ).inner.length > 0);
}

/**
 * The ends the seam across a waiting end waits with, where only that seam can open the vertex and nothing can open it between: a
 * ring of these can be broken by a cut alone.
 */
export function nextWaits(map: SeamMap, apart: Apart, end: number): number[] {
  const ways = waysThrough(map, vertexOf(map, end));
  if (ways.length !== 2) return [];
  return ways.flatMap((germ) => {
    const run = runFrom(map, apart, germ);
    const last = (run.germs.at(-1) ?? germ) ^ 1;
    return run.end === 'blocked' && run.inner.every((vertex) => waysThrough(map, vertex).length === 2) ? [last] : [];
  });
}

/** The two ways along each seam that runs through a vertex. */
function waysThrough(map: SeamMap, vertex: number): number[] {
  return (map.germs[vertex] ?? []).filter((germ) => map.partner[germ] !== -1);
}

/** All vertices of the seams through a vertex, and those their ends wait at. */
function verticesNeeded(map: SeamMap, apart: Apart, vertex: number): number[] {
  return waysThrough(map, vertex).flatMap((germ) => {
    const run = runFrom(map, apart, germ);
    const last = (run.germs.at(-1) ?? germ) ^ 1;
    return run.end === 'blocked' ? [...run.inner, vertexOf(map, last)] : run.inner;
  });
}

/** Strongly connected parts, each after those it leads to (Tarjan, SIAM J. Comput. 1 (1972) 146). */
function strongParts(vertices: readonly number[], needs: ReadonlyMap<number, readonly number[]>): number[][] {
  const index = new Map<number, number>();
  const low = new Map<number, number>();
  const done = new Set<number>();
  const path: number[] = [];
  const parts: number[][] = [];
  const work: { readonly vertex: number; readonly rest: Iterator<number, undefined> }[] = [];
  const enter = (vertex: number): void => {
    low.set(vertex, index.size);
    index.set(vertex, index.size);
    path.push(vertex);
    work.push({ vertex, rest: (needs.get(vertex) ?? [])[Symbol.iterator]() });
  };
  const lower = (vertex: number, to: number): void => {
    if (to < (low.get(vertex) ?? 0)) low.set(vertex, to);
  };
  const leave = (vertex: number): void => {
    work.pop();
    const above = work.at(-1);
    if (above) lower(above.vertex, low.get(vertex) ?? 0);
    if (low.get(vertex) !== index.get(vertex)) return;
    const part = path.splice(path.lastIndexOf(vertex));
    for (const each of part) done.add(each);
    parts.push(part);
  };
  for (const start of vertices) {
    if (!index.has(start)) enter(start);
    for (let top = work.at(-1); top; top = work.at(-1)) {
      const step = top.rest.next();
      if (step.done === true) leave(top.vertex);
      else if (!index.has(step.value)) enter(step.value);
      else if (!done.has(step.value)) lower(top.vertex, index.get(step.value) ?? 0);
    }
  }
  return parts;
}
