/**
 * Sewing a block on paper. A section is sewn on one sheet: its patches are added one after another, each along one straight line that
 * parts it from everything before it. Sections are then joined by straight seams. Since the block is convex, so is what stands at every
 * step, and a patch can come last exactly where one line parts it from the rest. Taking such a patch off hinders no other: a patch that
 * one line parts from a convex part is parted by that line from every smaller one. So a section has an order whenever taking patches
 * off, in any order, ends with a single one. Where it ends with more, those are made of sections and are the first piece of the sheet, or
 * the whole is joined from sections: whichever takes fewest (`foundation-sections.ts`). All exact.
 */
import { orientation } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { edgesOf } from '../exact/polygon.ts';
import type { Edge, Polygon } from '../exact/polygon.ts';
import { cutAlong } from '../geometry/clip.ts';
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import { findSections, type SectionTree, type Sides } from './foundation-sections.ts';
import { Headings } from './pieces.ts';
import { overlaysOf } from './overlays.ts';
import { blockOutline } from './setting.ts';

export interface Foundation {
  readonly sections: readonly FoundationSection[];
  /** In the order they are sewn. */
  readonly joins: readonly SectionJoin[];
  /** False when the search for fewer sections was given up. */
  readonly proven: boolean;
}

export interface FoundationSection {
  /** Convex, clockwise, finished, as the block is seen from the front. */
  readonly outline: Polygon;
  /** In the order of sewing. */
  readonly steps: readonly FoundationStep[];
}

export interface FoundationStep {
  /** Into the patches of the layout; absent for sections that were joined before, which can only be the first piece of a sheet. */
  readonly patch?: number;
  readonly sections?: readonly number[];
  /** What is seen of it: of a base patch, what the corners that are flipped over it leave. */
  readonly outline: Polygon;
  /** The line it is sewn along, from edge to edge of what stands then; absent for the first patch. */
  readonly seam?: Edge;
}

/** Two parts sewn along a straight line; each is a section by its index, or sections joined before. */
export interface SectionJoin {
  readonly parts: readonly [readonly number[], readonly number[]];
  readonly seam: Edge;
  /** How many sections are made before it is sewn. */
  readonly after: number;
}

/** `no line`: no straight line runs across these patches. */
export type WhyNot =
  | { readonly why: 'curve' | 'inner corner'; readonly patches: readonly number[] }
  | { readonly why: 'no line'; readonly patches: readonly number[] }
  | { readonly why: 'too many'; readonly patches: readonly number[]; readonly most: number }
  | { readonly why: 'unsound' };

export type FoundationPlan = { readonly kind: 'foundation'; readonly foundation: Foundation } | ({ readonly kind: 'none' } & WhyNot);

/** More patches than that are not looked at: the search grows with their square, and nobody sews so many on paper. */
const MOST_PATCHES = 500;

const known = new WeakMap<BlockLayout, FoundationPlan>();

/** How a block is sewn on paper, or why it cannot be. Worked out once for each layout. */
export function foundationOf(layout: BlockLayout): FoundationPlan {
  const plan = known.get(layout) ?? planFoundation(layout);
  known.set(layout, plan);
  return plan;
}

/** Whether a block is sewn on paper: it asks for it, and can be. */
export function isOnPaper(layout: BlockLayout): boolean {
  return layout.instance.foundation && foundationOf(layout).kind === 'foundation';
}

function planFoundation(layout: BlockLayout): FoundationPlan {
  if (layout.findings.length > 0 || layout.instance.findings.length > 0 || layout.patches.length === 0) return { kind: 'none', why: 'unsound' };
  if (layout.patches.length > MOST_PATCHES) return { kind: 'none', why: 'too many', patches: [...layout.patches.keys()], most: MOST_PATCHES };
  const curved = [...layout.patches.keys()].filter((i) => layout.patches[i]?.arcs?.some((radius) => radius !== undefined));
  if (curved.length > 0) return { kind: 'none', why: 'curve', patches: curved };
  const { seen, bent } = patchesSeen(layout.patches);
  if (bent.length > 0) return { kind: 'none', why: 'inner corner', patches: bent };
  const lines = linesThrough(seen);
  const found = findSections(lines.map((line) => sidesOf(line, seen)), seen.length);
  if (found.kind === 'none') return { kind: 'none', why: 'no line', patches: found.stuck.map((i) => seen[i]?.patch ?? 0) };
  return { kind: 'foundation', foundation: { ...realise({ seen, lines }, found.tree, blockOutline(layout)), proven: found.proven } };
}

interface Seen {
  readonly patch: number;
  readonly outline: Polygon;
}

/** The patches as they are seen from the front; `bent` are those that flipped corners leave in several parts. */
function patchesSeen(patches: readonly Patch[]): { readonly seen: readonly Seen[]; readonly bent: readonly number[] } {
  const { names, overlays } = overlaysOf(patches);
  const bent: number[] = [];
  const bases = names.flatMap((patch, base): Seen[] => {
    const parts = overlays
      .filter(({ over }) => over.includes(base))
      .flatMap(({ seam }) => seam.stretches)
      .reduce<Polygon[]>((left, { from, to }) => left.flatMap((part) => cutAlong(part, to, from)), [patches[patch]?.outline ?? []]);
    if (parts.length > 1) bent.push(patch);
    return parts.map((outline) => ({ patch, outline }));
  });
  const corners = overlays.map(({ patch }): Seen => ({ patch, outline: patches[patch]?.outline ?? [] }));
  return { seen: [...bases, ...corners], bent };
}

/** Every line that an edge lies on, once. */
function linesThrough(seen: readonly Seen[]): readonly Edge[] {
  const headings = new Headings();
  const lines = new Map<string, Edge>();
  for (const edge of seen.flatMap(({ outline }) => edgesOf(outline))) {
    const { name } = headings.lineOf(edge.from, edge.to);
    if (!lines.has(name)) lines.set(name, edge);
  }
  return [...lines.values()];
}

/** Of each patch: the side of the line that it lies on, 0 where the line runs through it. */
function sidesOf({ from, to }: Edge, seen: readonly Seen[]): Sides {
  return Int8Array.from(seen, ({ outline }) => {
    let side = 0;
    for (const corner of outline) {
      const turn = orientation(from, to, corner);
      if (turn !== 0 && turn === -side) return 0;
      if (turn !== 0) side = turn;
    }
    return side;
  });
}

interface Realising {
  readonly seen: readonly Seen[];
  readonly lines: readonly Edge[];
}

interface Realised {
  readonly sections: readonly FoundationSection[];
  readonly joins: readonly SectionJoin[];
}

/** Gives the sections their outlines, the joins and steps their lines. */
function realise(context: Realising, tree: SectionTree, whole: Polygon): Realised {
  const sections: FoundationSection[] = [];
  const joins: SectionJoin[] = [];
  const visit = (node: SectionTree, outline: Polygon): readonly number[] => {
    if (node.kind === 'section') {
      const { steps, rest } = stepsOf(context, node.order, outline);
      const core = node.core && visit(node.core, rest);
      return [...(core ?? []), sections.push({ outline, steps: core ? [{ sections: core, outline: rest }, ...steps] : steps }) - 1];
    }
    const line = context.lines[node.line];
    if (!line) return [];
    const [right, left] = halves(outline, line);
    const parts = [visit(node.right, right), visit(node.left, left)] as const;
    joins.push({ parts, seam: chordOf(right, line), after: sections.length });
    return parts.flat();
  };
  visit(tree, whole);
  return { sections, joins };
}

/** The last patch is cut off first, which leaves the outline the one before it is cut off from; `rest` is what all are added to. */
function stepsOf({ seen, lines }: Realising, order: SectionOrder, outline: Polygon): { readonly steps: readonly FoundationStep[]; readonly rest: Polygon } {
  const steps: FoundationStep[] = [];
  let rest = outline;
  for (const { patch, line, side } of order.toReversed()) {
    const own = seen[patch];
    if (!own) continue;
    const along = line === undefined ? undefined : lines[line];
    const [right, left] = along ? halves(rest, along) : [rest, rest];
    steps.push({ ...own, ...(along ? { seam: chordOf(right, along) } : {}) });
    rest = side > 0 ? left : right;
  }
  return { steps: steps.reverse(), rest };
}

type SectionOrder = Extract<SectionTree, { readonly kind: 'section' }>['order'];

/** To the right and to the left of a line that runs across a convex outline. */
function halves(outline: Polygon, { from, to }: Edge): readonly [Polygon, Polygon] {
  return [cutAlong(outline, from, to)[0] ?? outline, cutAlong(outline, to, from)[0] ?? outline];
}

/** The part of the line that is an edge of the outline beside it. */
function chordOf(outline: Polygon, line: Edge): Edge {
  const isOn = (p: Point): boolean => orientation(line.from, line.to, p) === 0;
  return edgesOf(outline).find(({ from, to }) => isOn(from) && isOn(to)) ?? line;
}
