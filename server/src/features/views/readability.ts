/**
 * How well a block reads in grey: the difference of lightness (L*, 0 to 100) across its seams, each seam counted by its length, and
 * how much of all seam length is lost because the difference is too small (the rule `low-contrast`).
 */
import { differenceOf, isLost } from '../../checks/values.ts';
import type { BlockLayout } from '../../geometry/layout.ts';
import type { Fabric } from '../../model/pattern.ts';
import { seamsInBlock } from './seams.ts';

export interface Readability {
  /** The mean difference, from 0 to 100; undefined for a block without seams. */
  readonly difference: number | undefined;
  /** Inches of seam, and of it what is lost. */
  readonly length: number;
  readonly lost: number;
}

/** With other fabrics in place of the block's own where `inPlace` gives them. */
export function readabilityOf(layout: BlockLayout, inPlace: (fabric: Fabric) => Fabric = (fabric) => fabric): Readability {
  const { seen, seams } = seamsInBlock(layout);
  const fabrics = seen.map(({ patch }) => layout.patches[patch]?.fabric).map((fabric) => fabric && inPlace(fabric));
  let [length, lost, weighed] = [0, 0, 0];
  for (const { sides: [left, right], length: own } of seams) {
    const [one, other] = [fabrics[left], fabrics[right]];
    if (!one || !other) continue;
    length += own;
    weighed += own * differenceOf(one, other);
    if (one.name !== other.name && isLost(one, other)) lost += own;
  }
  return { difference: length === 0 ? undefined : weighed / length, length, lost };
}
