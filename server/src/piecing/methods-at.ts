/**
 * What is said (`method`, `press`) of patches of a block: by the innermost block that holds all of them and says it, else by the
 * blocks around that, else for the whole pattern.
 */
import { key } from '../exact/number.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import { usesIn } from '../geometry/uses.ts';
import type { BlockInstance, Methods } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';

export function methodsAt(layout: BlockLayout, some: readonly number[], ofPattern: Methods): Methods {
  const { instance } = layout;
  const blocks = saysInside(instance) ? blocksAround(layout, some) : [instance];
  return blocks.reduce((said, block) => ({ ...said, ...block.methods }), ofPattern);
}

/** The blocks that hold all of these patches, the outermost first. */
export function blocksAround({ instance, patches }: BlockLayout, some: readonly number[]): readonly BlockInstance[] {
  const [first = [], ...others] = some.map((patch) => patches[patch]?.within ?? []);
  const end = first.findIndex((place, i) => others.some((way) => way[i] !== place));
  return [instance, ...blocksAlong(instance, end < 0 ? first : first.slice(0, end))];
}

/** Equal for methods that say the same. */
export function methodsKey({ halfSquares, geese, strips, press }: Methods): string {
  const trims = [halfSquares?.trim, geese?.trim].map((trim) => trim && key(trim));
  return [halfSquares?.way, geese?.way, strips?.on, press?.way, ...trims].join(' ');
}

/** The blocks one goes into by these cells, the outermost first. */
export function blocksAlong(outer: BlockInstance, cells: readonly Place[]): readonly BlockInstance[] {
  const blocks: BlockInstance[] = [];
  for (const place of cells) {
    const inner = usesIn(blocks.at(-1) ?? outer).find((use) => use.place === place)?.block;
    if (!inner) break;
    blocks.push(inner);
  }
  return blocks;
}

const known = new WeakMap<BlockInstance, boolean>();

/** Whether a block that stands in this one says anything. */
function saysInside(instance: BlockInstance): boolean {
  const says = known.get(instance) ?? (instance.nested ?? []).some((inner) => Object.keys(inner.methods).length > 0 || saysInside(inner));
  known.set(instance, says);
  return says;
}
