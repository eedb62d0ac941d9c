/** What one sees of a scene at a point, in doubles. */
import { hit } from '../../../server/src/drawing/outline.ts';
import type { Scene, SceneShape } from '../../../server/src/drawing/scene.ts';
import { documentOf } from '../../../server/src/text/document.ts';

const [LINE] = documentOf('looks', '').lines;

/** The topmost shape at a point, by the parts of the scene's sides; of placed blocks too. */
export function shapeAt(scene: Scene | undefined, x: number, y: number): SceneShape | undefined {
  if (!scene || !LINE) return undefined;
  const line = LINE;
  const shapes: SceneShape[] = [];
  const numbered = (shape: SceneShape): SceneShape => ({ ...shape, source: shapes.push(shape) - 1, within: [] });
  const items = scene.items.map((item) => (item.kind === 'shape' ? numbered(item) : { ...item, source: -1 }));
  const blocks = scene.blocks.map((block) => ({ ...block, shapes: block.shapes.map(numbered) }));
  const sources = shapes.map((_, index) => ({ line, from: index, to: index }));
  const [found] = hit({ ...scene, items, blocks, sources }, x * scene.width, y * scene.height);
  return found && shapes[found.from];
}

export function colourAt(scene: Scene | undefined, x: number, y: number): string | undefined {
  return shapeAt(scene, x, y)?.fill;
}
