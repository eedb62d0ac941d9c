/** From the draft of a plan to the plan: every join gets its seam, every seam its number, corners that are flipped their place. */
import { comparePoints, onSegment, samePoint } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import type { Draft, Drafted } from './draft.ts';
import { across } from './region.ts';
import { pieceAt, pointAt } from './map.ts';
import type { SeamMap } from './map.ts';
import type { Assembly, Seam, SewingPlan } from './plan.ts';
import { closingSeam, joiningSeam } from './seams.ts';
import type { Marked, Unnumbered } from './seams.ts';

/** A corner laid over the patches named, and the seam that sews it on. */
export interface Overlay {
  readonly patch: number;
  readonly over: readonly number[];
  readonly seam: Unnumbered;
}

interface Realising extends Marked {
  readonly drafted: Drafted;
  /** The patch of the layout that a shape of the map is. */
  readonly names: readonly number[];
  readonly overlays: Set<Overlay>;
  /** For each shape the part of the join in hand it lies in; −1 elsewhere. */
  readonly part: Int32Array;
  readonly seams: Seam[];
}

export function planOf(map: SeamMap, drafted: Drafted, corners: { readonly names: readonly number[]; readonly overlays: readonly Overlay[] }): SewingPlan {
  const realising: Realising = {
    map,
    marks: marksOf(map, corners.overlays),
    drafted,
    names: corners.names,
    overlays: new Set(corners.overlays),
    part: new Int32Array(map.around.length).fill(-1),
    seams: [],
  };
  const { node } = realise(realising, drafted.draft);
  const { seams } = realising;
  const setIn = seams.reduce((sum, seam) => sum + seam.corners.length, 0);
  return { assembly: node, seams, setIn, partial: seams.filter((seam) => seam.kind === 'partial').length, proven: drafted.proven };
}

/** Where seams of flipped corners end on the edges of what they lie over. */
function marksOf(map: SeamMap, overlays: readonly Overlay[]): ReadonlyMap<number, readonly Point[]> {
  const marks = new Map<number, Point[]>();
  for (const { over, seam } of overlays) {
    const ends = seam.stretches.flatMap(({ from, to }) => [from, to]);
    for (const piece of over.flatMap((shape) => map.around[shape] ?? [])) {
      const { a, b, radius } = pieceAt(map, piece);
      const [start, end] = [pointAt(map, a), pointAt(map, b)];
      const inside = ends.filter((p) => radius === undefined && onSegment(p, start, end) && !samePoint(p, start) && !samePoint(p, end));
      const all = [...(marks.get(piece) ?? []), ...inside].sort(comparePoints);
      if (all.length > 0) marks.set(piece, all.filter((p, i) => !samePoint(p, all[i - 1] ?? start)));
    }
  }
  return marks;
}

interface Realised {
  readonly node: Assembly;
  readonly shapes: readonly number[];
}

function realise(context: Realising, draft: Draft): Realised {
  switch (draft.kind) {
    case 'patch':
      return withOverlays(context, { node: { kind: 'patch', patch: nameOf(context, draft.patch) }, shapes: [draft.patch] });
    case 'join':
      return withOverlays(context, joined(context, draft.parts.map((part) => realise(context, part))));
    case 'finish': {
      const { node, shapes } = realise(context, draft.part);
      const seam = numbered(context, named(context, closingSeam(context, draft.closing)));
      return { node: { kind: 'finish', part: node, seam }, shapes };
    }
  }
}

function joined(context: Realising, parts: readonly Realised[]): Realised {
  const { part } = context;
  const shapes = parts.flatMap((each) => each.shapes);
  parts.forEach((each, i) => each.shapes.forEach((shape) => (part[shape] = i)));
  const between = piecesBetween(context, parts);
  for (const shape of shapes) part[shape] = -1;
  const seams = between.slice(1).map((pieces) => numbered(context, named(context, joiningSeam(context, pieces, context.drafted.half))));
  return { node: { kind: 'join', parts: parts.map((each) => each.node), seams }, shapes };
}

/** For each part the pieces that sew it to those before it. The largest part is not walked through: the others know their seams. */
function piecesBetween({ map, part, drafted }: Realising, parts: readonly Realised[]): number[][] {
  const between = parts.map((): number[] => []);
  const largest = parts.reduce((most, each, i) => (each.shapes.length > (parts[most]?.shapes.length ?? 0) ? i : most), 0);
  parts.forEach(({ shapes }, own) => {
    if (own === largest) return;
    for (const shape of shapes) {
      for (const piece of map.around[shape] ?? []) {
        const other = part[across(map, piece, shape)] ?? -1;
        if (other < 0 || other === own || drafted.late[piece] === 1) continue;
        if (other === largest || other < own) between[own > other ? own : other]?.push(piece);
      }
    }
  });
  return between;
}

/** Sews on every corner that lies over this part and over no smaller one. */
function withOverlays(context: Realising, realised: Realised): Realised {
  let { node } = realised;
  for (const overlay of context.overlays) {
    if (!overlay.over.every((shape) => realised.shapes.includes(shape))) continue;
    context.overlays.delete(overlay);
    const seam = numbered(context, { ...overlay.seam, stretches: overlay.seam.stretches.map((stretch) => ({ ...stretch, left: overlay.over.map((shape) => nameOf(context, shape)) })) });
    node = { kind: 'flip', part: node, patch: overlay.patch, seam };
  }
  return { node, shapes: realised.shapes };
}

function numbered(context: Realising, seam: Unnumbered): Seam {
  const full = { number: context.seams.length, ...seam };
  context.seams.push(full);
  return full;
}

function named(context: Realising, seam: Unnumbered): Unnumbered {
  const names = (shapes: readonly number[]): number[] => shapes.map((shape) => nameOf(context, shape));
  return { ...seam, stretches: seam.stretches.map((stretch) => ({ ...stretch, left: names(stretch.left), right: names(stretch.right) })) };
}

function nameOf({ names }: Realising, shape: number): number {
  return names[shape] ?? shape;
}
