/** The same drawing in other colours: a colourway, greys, bare lines. */
import type { Scene, SceneShape } from '../../drawing/scene.ts';

/** Every shape in the colour that its fabric gets; sources, places and seams stay. */
export function recoloured(scene: Scene, colourOf: (fabric: string, colour: string) => string): Scene {
  const shape = (each: SceneShape): SceneShape => ({ ...each, fill: colourOf(each.fabric, each.fill) });
  return {
    ...scene,
    blocks: scene.blocks.map((block) => ({ ...block, shapes: block.shapes.map(shape) })),
    items: scene.items.map((item) => (item.kind === 'shape' ? shape(item) : item)),
  };
}
