/** Which block a view of one block shows: the one that the cursor is in or at, else the one shown before, else the quilt's first. */
import { sceneOfBlock } from '../../drawing/build.ts';
import type { Scene } from '../../drawing/scene.ts';
import type { BlockLayout } from '../../geometry/layout.ts';
import type { BlockDefinition } from '../../model/pattern.ts';
import type { Snapshot } from '../../snapshot.ts';
import { blocksOf } from '../blocks.ts';
import { blockAround, isSameTarget, occurrenceAt } from '../names.ts';
import { chosen } from '../picture.ts';
import { under } from '../under.ts';
import type { ViewChoice } from './view.ts';

export interface LookedAt {
  /** As the quilt's outputs call it where it stands in the quilt, else as it is declared. */
  readonly name: string;
  readonly layout: BlockLayout;
  readonly scene: Scene;
  /** How many the quilt has. */
  readonly count: number;
}

/** Undefined when there is no block that could be drawn. */
export function lookedAt(snapshot: Snapshot, choice: ViewChoice): LookedAt | undefined {
  const all = candidates(snapshot, choice);
  const here = choice.position && definitionAt(snapshot, choice);
  return (
    (here && all.find(({ layout }) => layout.instance.definition.statement === here.statement)) ??
    all.find(({ name }) => name === choice.block) ??
    all[0]
  );
}

/** Those of the quilt first, then those of the file that it does not have. */
function candidates(snapshot: Snapshot, choice: ViewChoice): readonly LookedAt[] {
  const placed = (chosen(snapshot, choice)?.layout.blocks ?? []).filter(({ layout }) => isThere(layout));
  const known = new Set(placed.map(({ layout }) => layout.instance.definition.statement));
  const others = blocksOf(snapshot).filter(({ definition, layout }) => !known.has(definition.statement) && isThere(layout));
  return [
    ...placed.map(({ layout, name, count }) => ({ name, layout, count, scene: sceneFor(layout) })),
    ...others.map(({ definition, layout, scene }) => ({ name: definition.name, layout, scene, count: 0 })),
  ];
}

function isThere(layout: BlockLayout): boolean {
  return layout.patches.length > 0;
}

const scenes = new WeakMap<BlockLayout, Scene>();

function sceneFor(layout: BlockLayout): Scene {
  const scene = scenes.get(layout) ?? sceneOfBlock(layout);
  scenes.set(layout, scene);
  return scene;
}

/** A block's name under the cursor, else the block around it. */
function definitionAt(snapshot: Snapshot, { position }: ViewChoice): BlockDefinition | undefined {
  if (!position) return undefined;
  const definitions = [...snapshot.pattern.blocks.values()];
  const around = under(snapshot.tree, position)?.statement;
  const block = around && blockAround(around);
  const named = block ? undefined : occurrenceAt(snapshot, position)?.target;
  return definitions.find((each) => (block ? each.statement === block : named?.kind === 'block' && isSameTarget(named, { kind: 'block', name: each.name, place: each.place })));
}
