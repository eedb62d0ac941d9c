/** The blocks of a file as they can be looked at: one that must be given fabrics stands there in greys. */
import { sceneOfBlock } from '../drawing/build.ts';
import { layoutBlock } from '../geometry/block.ts';
import { sampleInstance } from '../model/instantiate.ts';
import type { BlockView, Snapshot } from '../snapshot.ts';

const made = new WeakMap<Snapshot, readonly BlockView[]>();

/** In the order of the text. Those that need a number or a block, which nothing can stand in for, are left out. */
export function blocksOf(snapshot: Snapshot): readonly BlockView[] {
  const views = made.get(snapshot) ?? make(snapshot);
  made.set(snapshot, views);
  return views;
}

function make({ pattern, blocks }: Snapshot): readonly BlockView[] {
  const own = [...pattern.blocks.values()].filter(({ origin }) => origin === 'file');
  return own.flatMap((definition): BlockView[] => {
    const view = blocks.find((block) => block.definition === definition);
    const instance = view ? undefined : sampleInstance(pattern, definition);
    if (!instance) return view ? [view] : [];
    const layout = layoutBlock(instance);
    return [{ definition, layout, scene: sceneOfBlock(layout) }];
  });
}
