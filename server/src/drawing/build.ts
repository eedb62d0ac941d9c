/** Layouts as scenes: exact numbers become doubles here, and every shape keeps the index of the text that makes it. */
import { toNumber } from '../exact/number.ts';
import type { Transform } from '../exact/transform.ts';
import { dealInBlock, dealOf, inPrint, type Prints } from '../geometry/deal.ts';
import type { BlockLayout, Patch, Placement, QuiltLayout } from '../geometry/layout.ts';
import type { Line } from '../text/document.ts';
import type { Place } from '../text/place.ts';
import { clippedTo } from './clip.ts';
import type { Matrix } from './matrix.ts';
import type { Scene, SceneBlock, SceneShape, SceneUse } from './scene.ts';

/** The finished top: placed blocks first, then what belongs to no block. */
export function sceneOfQuilt(layout: QuiltLayout): Scene {
  return partsOfQuilt(layout).scene;
}

/** The same, and what draws each placement and then each patch of the layout: several shapes for a block that is cut. */
export function partsOfQuilt(layout: QuiltLayout): { readonly scene: Scene; readonly items: readonly (readonly (SceneUse | SceneShape)[])[] } {
  const sources = new Sources();
  const numbers = new Map<string, number>();
  const blocks: SceneBlock[] = [];
  const names = new Map(layout.blocks.map(({ layout: block, name }) => [block.key, name]));
  const deal = dealOf(layout);
  /** A block is drawn once in each of the deals of its prints. */
  const numberOf = (block: BlockLayout, prints: Prints | undefined): number => {
    const dealt = prints ? `${block.key}\n${prints.join()}` : block.key;
    const known = numbers.get(dealt);
    if (known !== undefined) return known;
    numbers.set(dealt, blocks.length);
    return blocks.push({ ...sceneBlock(inPrints(block, prints), `b${blocks.length}`, sources), name: names.get(block.key) ?? block.instance.name }) - 1;
  };
  const uses = layout.placements.map((placement, index): (SceneUse | SceneShape)[] => {
    const prints = deal?.placements[index];
    const { block, transform, place, clip } = placement;
    if (clip) return cutShapes({ ...placement, block: inPrints(block, prints) }, clip, sources);
    return [{ kind: 'use', block: numberOf(block, prints), matrix: matrixOf(transform), source: sources.indexOf(place) }];
  });
  const shapes = layout.patches.map((patch, index) => [sceneShape(inPrint(patch, deal?.patches[index]), sources)]);
  const items = [...uses, ...shapes];
  return { items, scene: { ...sizeOf(layout), title: layout.spec.size?.name ?? 'quilt', blocks, items: items.flat(), sources: sources.places } };
}

/** The block with each patch in the print that was dealt to it. */
function inPrints(block: BlockLayout, prints: Prints | undefined): BlockLayout {
  return prints ? { ...block, patches: block.patches.map((patch, index) => inPrint(patch, prints[index])) } : block;
}

/** What is left of a block that the quilt's edge cuts: shapes of its own, since no other placement looks like it. */
function cutShapes({ block, transform, place }: Placement, clip: NonNullable<Placement['clip']>, sources: Sources): SceneShape[] {
  const around = sources.indexOf(place);
  return block.patches.flatMap((patch) => {
    const shape = sceneShape(patch, sources);
    const points = clippedTo(shape, matrixOf(transform), cornersOf(clip));
    return points.length < 6 ? [] : [{ ...withoutArcs(shape), points, within: [around, ...(shape.within ?? [])] }];
  });
}

function withoutArcs(shape: SceneShape): SceneShape {
  const copy: { -readonly [K in keyof SceneShape]: SceneShape[K] } = { ...shape };
  delete copy.arcs;
  return copy;
}

/** One block by itself, in its own measures. */
export function sceneOfBlock(layout: BlockLayout): Scene {
  const sources = new Sources();
  const items = inPrints(layout, dealInBlock(layout)).patches.map((patch) => sceneShape(patch, sources));
  return { ...sizeOf(layout), title: layout.instance.name, blocks: [], items, sources: sources.places };
}

/** Nested no deeper than this (language.md, section 10). */
const DEEPEST = 64;

/** The places of a scene, each once. */
class Sources {
  readonly places: Place[] = [];
  readonly #known = new Map<Line, Map<string, number>>();
  readonly #lines = new Map<Line, number>();

  indexOf(place: Place): number {
    const onLine = this.#known.get(place.line) ?? new Map<string, number>();
    this.#known.set(place.line, onLine);
    const key = `${place.from} ${place.to} ${place.endLine ? this.#lineNumber(place.endLine) : ''}`;
    const known = onLine.get(key);
    if (known !== undefined) return known;
    onLine.set(key, this.places.length);
    return this.places.push(place) - 1;
  }

  #lineNumber(line: Line): number {
    const known = this.#lines.get(line) ?? this.#lines.size;
    this.#lines.set(line, known);
    return known;
  }
}

function sceneBlock(layout: BlockLayout, id: string, sources: Sources): Omit<SceneBlock, 'name'> {
  return { id, ...sizeOf(layout), shapes: layout.patches.map((patch) => sceneShape(patch, sources)) };
}

function sceneShape(patch: Patch, sources: Sources): SceneShape {
  const within = patch.within ?? [];
  return {
    kind: 'shape',
    points: cornersOf(patch.outline),
    ...(patch.arcs?.some((arc) => arc) && { arcs: patch.outline.map((_, index) => arcAt(patch, index)) }),
    fill: patch.fabric.colour,
    fabric: patch.fabric.name,
    source: sources.indexOf(patch.place),
    ...(within.length > 0 && { within: within.map((place) => sources.indexOf(place)) }),
    // A corner of an outer block lies over the corners of the blocks in it.
    ...(patch.role === 'flipped_corner' && { over: DEEPEST + 1 - Math.min(within.length, DEEPEST) }),
  };
}

function cornersOf(outline: Patch['outline']): number[] {
  return outline.flatMap(({ x, y }) => [toNumber(x), toNumber(y)]);
}

function arcAt(patch: Patch, index: number): number {
  const arc = patch.arcs?.[index];
  return arc ? toNumber(arc) : 0;
}

function matrixOf(t: Transform): Matrix {
  return [toNumber(t.xx), toNumber(t.yx), toNumber(t.xy), toNumber(t.yy), toNumber(t.dx), toNumber(t.dy)];
}

function sizeOf(layout: BlockLayout | QuiltLayout): { readonly width: number; readonly height: number } {
  return { width: toNumber(layout.width), height: toNumber(layout.height) };
}
