/** Layouts as scenes: exact numbers become doubles here, and every shape keeps the index of the text that makes it. */
import { toNumber } from '../exact/number.ts';
import type { Transform } from '../exact/transform.ts';
import type { BlockLayout, Patch, QuiltLayout } from '../geometry/layout.ts';
import type { Line } from '../text/document.ts';
import type { Place } from '../text/place.ts';
import type { Matrix } from './matrix.ts';
import type { Scene, SceneBlock, SceneShape, SceneUse } from './scene.ts';

/** The finished top: placed blocks first, then what belongs to no block. */
export function sceneOfQuilt(layout: QuiltLayout): Scene {
  const sources = new Sources();
  const numbers = new Map<string, number>();
  const blocks: SceneBlock[] = [];
  const numberOf = (block: BlockLayout): number => {
    const known = numbers.get(block.key);
    if (known !== undefined) return known;
    numbers.set(block.key, blocks.length);
    return blocks.push(sceneBlock(block, `b${blocks.length}`, sources)) - 1;
  };
  const uses = layout.placements.map(
    ({ block, transform, place }): SceneUse => ({ kind: 'use', block: numberOf(block), matrix: matrixOf(transform), source: sources.indexOf(place) }),
  );
  const shapes = layout.patches.map((patch) => sceneShape(patch, sources));
  return { ...sizeOf(layout), title: layout.spec.size?.name ?? 'quilt', blocks, items: [...uses, ...shapes], sources: sources.places };
}

/** One block by itself, in its own measures. */
export function sceneOfBlock(layout: BlockLayout): Scene {
  const sources = new Sources();
  const items = layout.patches.map((patch) => sceneShape(patch, sources));
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

function sceneBlock(layout: BlockLayout, id: string, sources: Sources): SceneBlock {
  return { id, name: layout.instance.name, ...sizeOf(layout), shapes: layout.patches.map((patch) => sceneShape(patch, sources)) };
}

function sceneShape(patch: Patch, sources: Sources): SceneShape {
  const within = patch.within ?? [];
  return {
    kind: 'shape',
    points: patch.outline.flatMap((corner) => [toNumber(corner.x), toNumber(corner.y)]),
    ...(patch.arcs?.some((arc) => arc) && { arcs: patch.outline.map((_, index) => arcAt(patch, index)) }),
    fill: patch.fabric.colour,
    fabric: patch.fabric.name,
    source: sources.indexOf(patch.place),
    ...(within.length > 0 && { within: within.map((place) => sources.indexOf(place)) }),
    // A corner of an outer block lies over the corners of the blocks in it.
    ...(patch.role === 'flipped_corner' && { over: DEEPEST + 1 - Math.min(within.length, DEEPEST) }),
  };
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
