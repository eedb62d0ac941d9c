/**
 * Takes a block apart, last seam first, down to its patches: straight seams while there are any, then seams that pivot at corners
 * that are set in, then seams that were sewn partway. Taking a seam out never hinders another (`order.ts`), so the first choice is
 * never wrong, only more or less pleasant (`choose.ts`).
 */
import { Alikes } from './alike.ts';
import type { AlikeOptions } from './alike.ts';
import { chooseRows } from './choose.ts';
import type { Taste } from './choose.ts';
import { cutsNeeded } from './cuts.ts';
import { foldedSeams } from './fold.ts';
import { pieceAt, vertexOf } from './map.ts';
import type { SeamMap } from './map.ts';
import { isOpen, runFrom, startApart } from './order.ts';
import type { Run } from './order.ts';
import { across, endOf, isChord, isInside, lookAt, partsOf, runsIn, startOf, startUndoing, takeOut } from './region.ts';
import { inOrder } from './row.ts';
import type { Region, Undoing } from './region.ts';

/** The tree without its seams. */
export type Draft =
  | { readonly kind: 'patch'; readonly patch: number }
  | { readonly kind: 'join'; readonly parts: readonly Draft[] }
  | { readonly kind: 'finish'; readonly part: Draft; readonly closing: Closing };

/** A seam that closes something within one part. */
export interface Closing {
  /** The germ each piece is entered by. */
  readonly germs: readonly number[];
  /** The pieces of which only half is sewn here, and the germ at the end that is. */
  readonly half: ReadonlyMap<number, number>;
  /** Vertices that are set in at its ends. */
  readonly corners: readonly number[];
}

export interface Drafted {
  readonly draft: Draft;
  /** 1 for pieces that a `finish` sews. */
  readonly late: Uint8Array;
  /** For a piece that is sewn in two goes, the germ at the end that a `finish` sews; else −1. */
  readonly half: Int32Array;
  readonly proven: boolean;
}

export type DraftOptions = Pick<Taste, 'nests' | 'rows'> & AlikeOptions;

/** Parts within parts beyond this, or work beyond that many patches looked at, and the drafting is given up. */
const MOST_DEPTH = 1000;
const MOST_WORK = 3_000_000;

interface Drafting {
  readonly state: Undoing;
  readonly options: DraftOptions;
  readonly alikes: Alikes<Draft>;
  /** Cuts that are not made yet. */
  readonly cuts: Set<number>;
  readonly late: Uint8Array;
  /** `holes` are those that touch the outside nowhere: then a seam need not part what it runs through. */
  readonly closings: { count: number; holes: number };
  readonly effort: { depth: number; work: number };
}

/** Undefined when it is given up: no block that anybody would sew is so deep or so tangled. */
export function draftOf(map: SeamMap, options: DraftOptions): Drafted | undefined {
  const cuts = cutsNeeded(map);
  if (!cuts) return undefined;
  const state = startUndoing(map, startApart(map));
  const drafting: Drafting = {
    state,
    options,
    alikes: new Alikes(options),
    cuts: new Set(cuts.germs),
    late: new Uint8Array(map.pieces.length),
    closings: { count: 0, holes: 0 },
    effort: { depth: 0, work: 0 },
  };
  const sewn = [...map.pieces.keys()].filter((piece) => pieceAt(map, piece).left >= 0 && pieceAt(map, piece).right >= 0);
  const draft = takeApart(drafting, { number: 0, patches: [...map.around.keys()], pieces: sewn });
  return draft && { draft, late: drafting.late, half: state.half, proven: cuts.proven };
}

function takeApart(drafting: Drafting, region: Region): Draft | undefined {
  const [first] = region.patches;
  if (region.patches.length === 1 && first !== undefined) return { kind: 'patch', patch: first };
  const intact = isIntact(drafting, region);
  const known = intact ? drafting.alikes.find(region.patches) : undefined;
  if (known) return renamed(known.draft, known.patches);
  const { effort } = drafting;
  effort.work += region.patches.length;
  if (effort.depth === MOST_DEPTH || effort.work > MOST_WORK) return undefined;
  effort.depth += 1;
  const draft = split(drafting, region);
  effort.depth -= 1;
  if (intact && draft && isPlain(draft)) drafting.alikes.add(region.patches, draft);
  return draft;
}

/** True unless something that closes later is open within the region. */
function isIntact({ state, late, closings }: Drafting, region: Region): boolean {
  if (closings.count === 0) return true;
  lookAt(state, region);
  return region.patches.every((patch) =>
    (state.map.around[patch] ?? []).every((piece) => (late[piece] === 0 && state.half[piece] === -1) || !isInside(state, region, across(state.map, piece, patch))),
  );
}

function split(drafting: Drafting, region: Region): Draft | undefined {
  const { state, options } = drafting;
  const runs = runsIn(state, region);
  const taste = { ...options, distinct: (rows: readonly Run[]) => distinctParts(drafting, region, rows) };
  const rows = chooseRows(state, region, runs.filter((run) => isChord(state, run)), taste);
  const chosen = drafting.closings.holes > 0 ? rows.slice(0, 1) : rows;
  const seam = chosen.length > 0 ? chosen : foldedSeams(state, runs);
  if (seam.length > 0) return comeApart(drafting, region, seam);
  const loose = runs.find((run) => run.inner.length > 0) ?? cutRun(drafting, region);
  if (loose) return comeApart(drafting, region, [loose]);
  return split(drafting, openAll(drafting, region));
}

/** Takes the runs out; what they part is joined by them, or they close something within the region. */
function comeApart(drafting: Drafting, region: Region, runs: readonly Run[]): Draft | undefined {
  const { state, late, closings } = drafting;
  const closing = runs.map((run) => closingBy(state, run));
  for (const run of runs) takeOut(state, run);
  const parts = inOrder(state, partsOf(state, region), runs);
  const [rest] = parts;
  if (parts.length > 1 || !rest) return joinOf(drafting, parts);
  for (const { germs, half, touches } of closing) {
    closings.count += 1;
    if (!touches) closings.holes += 1;
    for (const germ of germs) if (!half.has(germ >> 1)) late[germ >> 1] = 1;
  }
  return closing.reduce<Draft | undefined>((part, each) => part && { kind: 'finish', part, closing: each }, takeApart(drafting, rest));
}

function joinOf(drafting: Drafting, regions: readonly Region[]): Draft | undefined {
  const parts: Draft[] = [];
  for (const region of regions) {
    const part = takeApart(drafting, region);
    if (!part) return undefined;
    parts.push(part);
  }
  return { kind: 'join', parts };
}

/** What a run closes if it parts nothing, seen before it is taken out. */
function closingBy({ map, apart, edge }: Undoing, run: Run): Closing & { readonly touches: boolean } {
  const ends = [startOf(run), endOf(run)];
  const halves = ends.filter((germ) => apart.cut[germ] === 1 && !isOpen(apart, vertexOf(map, germ)));
  const vertices = ends.filter((germ) => !halves.includes(germ)).map((germ) => vertexOf(map, germ));
  return {
    germs: run.germs,
    half: new Map(halves.map((germ) => [germ >> 1, germ ^ 1])),
    corners: vertices.filter((vertex) => edge[vertex] === 0),
    touches: vertices.some((vertex) => edge[vertex] === 1),
  };
}

/** A seam of the region that comes out once it is cut beside the end that waits; the cut is made. */
function cutRun({ state, cuts }: Drafting, region: Region): Run | undefined {
  const { map, apart } = state;
  lookAt(state, region);
  const made: number[] = [];
  for (const germ of cuts) {
    if (!isInside(state, region, pieceAt(map, germ >> 1).left) || isOpen(apart, vertexOf(map, germ))) continue;
    apart.cut[germ] = 1;
    made.push(germ);
    const usable = made.find((each) => runFrom(map, apart, each).end !== 'blocked');
    if (usable === undefined) continue;
    const run = runFrom(map, apart, usable);
    for (const each of made) {
      if (each === usable || each === endOf(run)) cuts.delete(each);
      else apart.cut[each] = 0;
    }
    return run;
  }
  return undefined;
}

/** Never needed where cuts were found; keeps a block in the plan whatever happens: its corners are set in. */
function openAll({ state }: Drafting, region: Region): Region {
  for (const piece of region.pieces) {
    const { a, b } = pieceAt(state.map, piece);
    state.apart.open[a] = state.apart.open[b] = 1;
  }
  return region;
}

/** Taken out on a copy of what is gone; nothing else is asked. */
function distinctParts({ state, alikes }: Drafting, region: Region, runs: readonly Run[]): number {
  const gone = state.gone.slice();
  for (const run of runs) for (const germ of run.germs) gone[germ >> 1] = 1;
  return new Set(partsOf({ ...state, gone }, region).map((part) => alikes.printOf(part.patches))).size;
}

function isPlain(draft: Draft): boolean {
  return draft.kind === 'patch' || (draft.kind === 'join' && draft.parts.every(isPlain));
}

function renamed(draft: Draft, patches: ReadonlyMap<number, number>): Draft {
  switch (draft.kind) {
    case 'patch':
      return { kind: 'patch', patch: patches.get(draft.patch) ?? draft.patch };
    case 'join':
      return { kind: 'join', parts: draft.parts.map((part) => renamed(part, patches)) };
    case 'finish':
      return draft;
  }
}
