/**
 * Which seams can be sewn last, and what must be left open where none can.
 *
 * Sewing is read backwards: a whole vertex comes apart cleanly only along a seam that runs straight through it, in one go from one
 * open end to another. An end is open at the outside, at a vertex that came apart before, at a corner that is set in (no seam runs
 * straight through it, so it asks for nothing) and where a seam is cut, that is, sewn partway first. Taking a seam out never
 * hinders another, so what can come apart at all does not depend on the order: `spread` finds it, vertex by vertex.
 */
import { vertexOf } from './map.ts';
import type { SeamMap } from './map.ts';

/** What has come apart: vertices, and the germs that are cut. Both only ever gain. */
export interface Apart {
  /** 1 for each open vertex. */
  readonly open: Uint8Array;
  /** 1 for each germ that ends at a whole vertex and is left open beside it. */
  readonly cut: Uint8Array;
}

/** A seam followed from a germ to where it ends. */
export interface Run {
  /** The germ each piece is entered by; the last piece's other end is where the run ends. */
  readonly germs: readonly number[];
  /** The whole vertices it runs through. */
  readonly inner: readonly number[];
  readonly end: 'open' | 'cut' | 'blocked';
}

/** A vertex is open from the start when it lies on the outside or no seam runs through it. */
export function startApart(map: SeamMap): Apart {
  const open = Uint8Array.from(map.outer);
  map.germs.forEach((here, vertex) => {
    if (here.every((germ) => map.partner[germ] === -1)) open[vertex] = 1;
  });
  return { open, cut: new Uint8Array(2 * map.pieces.length) };
}

export function runFrom(map: SeamMap, { open, cut }: Apart, start: number): Run {
  const germs: number[] = [];
  const inner: number[] = [];
  for (let germ = start; ; ) {
    germs.push(germ);
    const far = germ ^ 1;
    const vertex = vertexOf(map, far);
    if (open[vertex] === 1) return { germs, inner, end: 'open' };
    const next = map.partner[far] ?? -1;
    if (next < 0) return { germs, inner, end: cut[far] === 1 ? 'cut' : 'blocked' };
    inner.push(vertex);
    germ = next;
  }
}

/** Opens every vertex that comes apart once `fresh` vertices are open and `cuts` made, and says how many. Changes `apart`. */
export function spread(map: SeamMap, apart: Apart, fresh: { readonly vertices?: readonly number[]; readonly cuts?: readonly number[] }): number {
  const stack = [...(fresh.vertices ?? [])];
  let opened = 0;
  const follow = (germ: number): void => {
    const run = runFrom(map, apart, germ);
    if (run.end === 'blocked') return;
    for (const vertex of run.inner) apart.open[vertex] = 1;
    stack.push(...run.inner);
    opened += run.inner.length;
  };
  for (const germ of fresh.cuts ?? []) apart.cut[germ] = 1;
  for (const germ of fresh.cuts ?? []) if (!isOpen(apart, vertexOf(map, germ))) follow(germ);
  for (let vertex = stack.pop(); vertex !== undefined; vertex = stack.pop()) map.germs[vertex]?.forEach(follow);
  return opened;
}

export function copyOf({ open, cut }: Apart): Apart {
  return { open: open.slice(), cut: cut.slice() };
}

export function isOpen(apart: Apart, vertex: number): boolean {
  return apart.open[vertex] === 1;
}
