/** From text to shapes and back: outlines of what a text makes, and the texts that make what lies at a point. */
import type { Place } from '../text/place.ts';
import { apply, inverse, type Matrix } from './matrix.ts';
import { boxOutline, pathOf } from './path.ts';
import { straightened } from './straightened.ts';
import type { Scene, SceneBlock, SceneShape } from './scene.ts';

/**
 * SVG path data, in inches, round every placed shape whose text matches: the patch's own cell or one that it lies in.
 * Where the text is the cell of a whole placed block, round the block. Empty when nothing matches.
 */
export function outlineOf(scene: Scene, sourceFilter: (place: Place) => boolean): string {
  const matches = scene.sources.map(sourceFilter);
  const wanted = (shape: SceneShape): boolean => matches[shape.source] === true || (shape.within ?? []).some((source) => matches[source]);
  const inBlocks = scene.blocks.map((block) => block.shapes.filter(wanted));
  return scene.items
    .map((item) => {
      if (item.kind === 'shape') return wanted(item) ? pathOf(item) : '';
      const block = scene.blocks[item.block];
      if (block && matches[item.source]) return pathOf(boxOutline(block.width, block.height), item.matrix);
      return (inBlocks[item.block] ?? []).map((shape) => pathOf(shape, item.matrix)).join('');
    })
    .join('');
}

/**
 * The texts that make what lies at a point (inches): the patch's own cell first, then the cells it lies in from the
 * inside out, the placed block's cell last. Empty outside the picture.
 */
export function hit(scene: Scene, x: number, y: number): Place[] {
  let gap: Place[] = [];
  for (const item of scene.items.toReversed()) {
    if (item.kind === 'shape') {
      if (isInside(item, x, y)) return placesOf(scene, sourcesOf(item));
      continue;
    }
    const block = scene.blocks[item.block];
    const sources = block && hitBlock(block, item.matrix, x, y);
    if (sources && sources.length > 0) return placesOf(scene, [...sources, item.source]);
    // Where blocks lie over each other (cut to wedges, say), the one below may have a shape there.
    if (sources && gap.length === 0) gap = placesOf(scene, [item.source]);
  }
  return gap;
}

/** The sources of the shape at a point of a placed block: none in a gap, undefined outside the block. */
function hitBlock(block: SceneBlock, matrix: Matrix, x: number, y: number): readonly number[] | undefined {
  const back = inverse(matrix);
  if (!back) return undefined;
  const [ownX, ownY] = apply(back, x, y);
  if (ownX < 0 || ownY < 0 || ownX > block.width || ownY > block.height) return undefined;
  const topmost = block.shapes
    .filter((shape) => isInside(shape, ownX, ownY))
    .reduce<SceneShape | undefined>((top, shape) => (top && (top.over ?? 0) > (shape.over ?? 0) ? top : shape), undefined);
  return topmost ? sourcesOf(topmost) : [];
}

function sourcesOf(shape: SceneShape): readonly number[] {
  return [shape.source, ...(shape.within ?? []).toReversed()];
}

function placesOf(scene: Scene, sources: readonly number[]): Place[] {
  return [...new Set(sources)].map((source) => scene.sources[source]).filter((place) => place !== undefined);
}

/** Even-odd, with arcs as short straight pieces. */
function isInside(shape: SceneShape, x: number, y: number): boolean {
  const corners = shape.arcs ? straightened(shape.points, shape.arcs) : shape.points;
  let inside = false;
  for (let to = 0, from = corners.length - 2; to < corners.length; from = to, to += 2) {
    const [fromX = 0, fromY = 0, toX = 0, toY = 0] = [corners[from], corners[from + 1], corners[to], corners[to + 1]];
    if (fromY > y !== toY > y && x < fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX)) inside = !inside;
  }
  return inside;
}
