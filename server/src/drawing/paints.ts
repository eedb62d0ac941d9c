/** Shapes that are filled alike become one path: a quilt of thousands of patches is drawn with a few. */
import type { SceneShape } from './scene.ts';

export interface Paint {
  readonly fill: string;
  readonly outlines: readonly string[];
}

/** One paint a colour, in the order of its first shape; what lies over other shapes comes after them. */
export function paintsOf(shapes: readonly SceneShape[], outlineOf: (shape: SceneShape) => string): Paint[] {
  const layers = new Map<number, Map<string, string[]>>();
  for (const shape of shapes) {
    const layer = layers.get(shape.over ?? 0) ?? new Map<string, string[]>();
    layers.set(shape.over ?? 0, layer);
    const outlines = layer.get(shape.fill) ?? [];
    layer.set(shape.fill, outlines);
    outlines.push(outlineOf(shape));
  }
  return [...layers].sort(([a], [b]) => a - b).flatMap(([, layer]) => [...layer].map(([fill, outlines]) => ({ fill, outlines })));
}
