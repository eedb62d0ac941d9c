/** Parts of a block while it is taken apart, last seam first: what is still sewn, and which seams can come out next. */
import { pieceAt, vertexOf } from './map.ts';
import type { SeamMap } from './map.ts';
import { isOpen, runFrom } from './order.ts';
import type { Apart, Run } from './order.ts';

/** The state of a block that is being taken apart. Its arrays only ever gain. */
export interface Undoing {
  readonly map: SeamMap;
  readonly apart: Apart;
  /** 1 for vertices on the outside or on a seam that is out. */
  readonly edge: Uint8Array;
  /** 1 for pieces that are out. */
  readonly gone: Uint8Array;
  /** For a piece of which half is out, the germ at the end that is; else −1. */
  readonly half: Int32Array;
  /** For each patch the number of the last region it was found in: while a region is looked at, its patches carry its number. */
  readonly owner: Int32Array;
  readonly regions: { count: number };
}

/** A part: its patches, and the pieces sewn between them. */
export interface Region {
  readonly number: number;
  readonly patches: readonly number[];
  readonly pieces: readonly number[];
}

export function startUndoing(map: SeamMap, apart: Apart): Undoing {
  return {
    map,
    apart,
    edge: Uint8Array.from(map.outer),
    gone: new Uint8Array(map.pieces.length),
    half: new Int32Array(map.pieces.length).fill(-1),
    owner: new Int32Array(map.around.length).fill(-1),
    regions: { count: 0 },
  };
}

/** Every seam of the region that runs from one open end to another, once. */
export function runsIn({ map, apart }: Undoing, region: Region): Run[] {
  const runs: Run[] = [];
  for (const piece of region.pieces) {
    for (const germ of [2 * piece, 2 * piece + 1]) {
      if (!isOpen(apart, vertexOf(map, germ))) continue;
      const run = runFrom(map, apart, germ);
      if (run.end === 'open' && germ < endOf(run)) runs.push(run);
    }
  }
  return runs;
}

/** The germ where a run ends. */
export function endOf(run: Run): number {
  return (run.germs.at(-1) ?? 0) ^ 1;
}

export function startOf(run: Run): number {
  return run.germs[0] ?? 0;
}

/** True when both ends of a run lie on the outside of the part. */
export function isChord({ map, edge }: Undoing, run: Run): boolean {
  return edge[vertexOf(map, startOf(run))] === 1 && edge[vertexOf(map, endOf(run))] === 1;
}

/** Takes a seam out. Of a piece that is cut beside one of its ends, only the far half goes. */
export function takeOut(state: Undoing, run: Run): void {
  const { map, apart, edge, gone, half } = state;
  for (const germ of run.germs) {
    const piece = germ >> 1;
    const cutEnd = [germ, germ ^ 1].find((each) => apart.cut[each] === 1 && half[piece] === -1 && !isOpen(apart, vertexOf(map, each)) && !run.inner.includes(vertexOf(map, each)));
    if (cutEnd === undefined) gone[piece] = 1;
    else half[piece] = cutEnd ^ 1;
    for (const each of [germ, germ ^ 1]) if (each !== cutEnd) edge[vertexOf(map, each)] = 1;
  }
  for (const vertex of run.inner) apart.open[vertex] = 1;
}

/** The parts a region falls into, in the order of their first patches; `gone` may be tried out on a copy. */
export function partsOf(state: Undoing, region: Region): Region[] {
  const { map, gone, owner } = state;
  const first = (state.regions.count += 1);
  for (const patch of region.patches) owner[patch] = -1;
  const patches: number[][] = [];
  for (const start of region.patches) {
    if (owner[start] !== -1) continue;
    const part = [start];
    const number = first + patches.length;
    owner[start] = number;
    for (const patch of part) {
      for (const piece of map.around[patch] ?? []) {
        if (gone[piece] === 1) continue;
        const other = across(map, piece, patch);
        if (owner[other] !== -1) continue;
        owner[other] = number;
        part.push(other);
      }
    }
    patches.push(part);
  }
  state.regions.count += patches.length;
  const pieces: number[][] = patches.map(() => []);
  for (const piece of region.pieces) if (gone[piece] === 0) pieces[(owner[pieceAt(map, piece).left] ?? first) - first]?.push(piece);
  return patches.map((part, i) => ({ number: first + i, patches: part.sort((a, b) => a - b), pieces: pieces[i] ?? [] }));
}

/** Makes a region the one that is looked at. */
export function lookAt({ owner }: Undoing, region: Region): void {
  for (const patch of region.patches) owner[patch] = region.number;
}

export function isInside({ owner }: Undoing, region: Region, patch: number): boolean {
  return owner[patch] === region.number;
}

/** The patch on the other side of a piece, or −1. */
export function across(map: SeamMap, piece: number, patch: number): number {
  const { left, right } = pieceAt(map, piece);
  return left === patch ? right : left;
}
