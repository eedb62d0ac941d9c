/**
 * What a block is called in a quilt: by its plain name where the quilt has it with one set of arguments only, else with them
 * (`Nine(rust)`). Outputs, hovers, step wording and expectations all use this name.
 */
import type { BlockLayout } from './layout.ts';

/** What pieces that are in no block are cut for. The other parts (`sashing`, `border 1`, `binding`) are words that no block can have as its name. */
const PART = 'setting';

/** A name for each of the quilt's distinct blocks, in their order. Two sizes of one block share theirs. */
export function blockNames(blocks: readonly BlockLayout[]): readonly string[] {
  const uses = new Map<object, Set<string>>();
  for (const { instance } of blocks) {
    const known = uses.get(instance.definition) ?? new Set();
    uses.set(instance.definition, known.add(instance.key));
  }
  return blocks.map(({ instance }) => {
    const name = uses.get(instance.definition)?.size === 1 ? instance.definition.name : instance.name;
    return name === PART ? `${name} (block)` : name;
  });
}
