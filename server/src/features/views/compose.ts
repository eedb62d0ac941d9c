/** Several scenes in one, each moved and scaled evenly: sources and blocks are numbered anew. For looking at; nothing here is measured. */
import { apply, type Matrix } from '../../drawing/matrix.ts';
import type { Scene, SceneBlock, SceneShape, SceneUse } from '../../drawing/scene.ts';
import type { Place } from '../../text/place.ts';
import type { Label } from '../sheet.ts';

export interface Put {
  readonly scene: Scene;
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** A scene of that size with the others in it, in their order. */
export function composed(title: string, size: { readonly width: number; readonly height: number }, puts: readonly Put[]): Scene {
  const blocks: SceneBlock[] = [];
  const items: (SceneUse | SceneShape)[] = [];
  const sources: Place[] = [];
  for (const put of puts) {
    const from = { sources: sources.length, blocks: blocks.length };
    blocks.push(...put.scene.blocks.map((block, index) => ({ ...block, id: `p${from.blocks + index}`, shapes: block.shapes.map((shape) => renumbered(shape, from.sources)) })));
    items.push(...put.scene.items.map((item) => moved(item, put, from)));
    for (const place of put.scene.sources) sources.push(place);
  }
  const labels = puts.flatMap(({ scene, x, y, scale }) => (scene.labels ?? []).map((label) => ({ ...label, x: label.x * scale + x, y: label.y * scale + y, size: label.size * scale })));
  return { ...size, title, blocks, items, sources, ...(labels.length > 0 && { labels }) };
}

/** A block's shapes as one block of a scene, so that it can be used often. */
export function asBlock(scene: Scene, name: string): Scene {
  const shapes = scene.items.filter((item): item is SceneShape => item.kind === 'shape');
  const use: SceneUse = { kind: 'use', block: 0, matrix: [1, 0, 0, 1, 0, 0], source: -1 };
  return { ...scene, blocks: [{ id: 'b0', name, width: scene.width, height: scene.height, shapes }], items: [use] };
}

interface Numbers {
  readonly sources: number;
  readonly blocks: number;
}

function moved(item: SceneUse | SceneShape, { x, y, scale }: Put, from: Numbers): SceneUse | SceneShape {
  const matrix: Matrix = [scale, 0, 0, scale, x, y];
  if (item.kind === 'shape') return renumbered(transformed(item, matrix, scale), from.sources);
  return { kind: 'use', block: item.block + from.blocks, matrix: after(matrix, item.matrix), source: item.source < 0 ? item.source : item.source + from.sources };
}

function transformed(shape: SceneShape, matrix: Matrix, scale: number): SceneShape {
  const points: number[] = [];
  for (let i = 0; i + 1 < shape.points.length; i += 2) points.push(...apply(matrix, shape.points[i] ?? 0, shape.points[i + 1] ?? 0));
  return { ...shape, points, ...(shape.arcs && { arcs: shape.arcs.map((radius) => radius * scale) }) };
}

/** The first matrix after the second. */
export function after([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

function renumbered(shape: SceneShape, by: number): SceneShape {
  return { ...shape, source: shape.source < 0 ? shape.source : shape.source + by, ...(shape.within && { within: shape.within.map((source) => source + by) }) };
}

export interface Cell {
  readonly scene: Scene;
  readonly name: string;
}

export interface Laid {
  readonly scene: Scene;
  /** Of each scene, in inches of the whole. */
  readonly boxes: readonly { readonly x: number; readonly y: number; readonly width: number; readonly height: number }[];
  readonly labels: readonly Label[];
}

export interface Laying {
  /** `fit`: each fills its place; `true`: all to one scale, in inches. */
  readonly scale: 'fit' | 'true';
  readonly columns?: number;
}

/** Of a place that is filled, in inches; between places, and under each for its name, as a part of it. */
const SIDE = 10;
const GAP = 0.12;
const CAPTION = 0.34;

/** Side by side in rows of places as wide as the widest needs, each with its name under it. */
export function sideBySide(title: string, cells: readonly Cell[], { scale, columns = columnsFor(cells.length) }: Laying): Laid {
  const sized = cells.map(({ scene, name }) => {
    const factor = scale === 'true' ? 1 : SIDE / Math.max(scene.width, scene.height);
    return { scene, name, scale: factor, width: scene.width * factor, height: scene.height * factor };
  });
  const side = Math.max(...sized.map(({ width }) => width));
  const longest = Math.max(side, ...sized.map(({ height }) => height));
  const [gap, caption] = [longest * GAP, longest * CAPTION];
  const rows = Array.from({ length: Math.ceil(sized.length / columns) }, (_, row) => sized.slice(row * columns, (row + 1) * columns));
  let top = 0;
  const puts = rows.flatMap((row) => {
    const height = Math.max(...row.map((each) => each.height));
    const start = top;
    top += height + caption;
    return row.map((each, column) => ({ ...each, x: column * (side + gap) + (side - each.width) / 2, y: start + height - each.height }));
  });
  const size = { width: Math.min(columns, sized.length) * (side + gap) - gap, height: top };
  const labels = puts.map(({ name, x, y, width, height }): Label => ({ text: name, x: x + width / 2, y: y + height, room: side + gap * 0.6, tall: caption }));
  return { scene: composed(title, size, puts), boxes: puts.map(({ x, y, width, height }) => ({ x, y, width, height })), labels };
}

/** A little wider than high. */
function columnsFor(count: number): number {
  return Math.max(1, Math.ceil(Math.sqrt(count * 1.2)));
}
