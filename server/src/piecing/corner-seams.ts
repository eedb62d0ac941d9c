/**
 * Seams whose side follows from how a unit is made: a square that is sewn on a corner is folded over its seam, so that the allowance
 * lies under the corner (common practice, no source).
 */
import { less } from '../exact/number.ts';
import { area } from '../exact/polygon.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import { patchesIn } from './plan.ts';
import type { Assembly, Seam } from './plan.ts';
import type { BlockToMake } from './unit-parts.ts';
import type { Units } from './units.ts';

/** The side of the corner by the number of the seam, for every seam of a block that sews a square on a corner. */
export function cornerSides({ layout, assembled }: Pick<BlockToMake, 'layout' | 'assembled'>, { units, numbers }: Units): ReadonlyMap<number, 'left' | 'right'> {
  const sides = new Map<number, 'left' | 'right'>();
  const lay = (seam: Seam, middle: number | undefined): void => {
    const isLeft = seam.stretches.some(({ right }) => middle !== undefined && right.includes(middle));
    sides.set(seam.number, isLeft ? 'left' : 'right');
  };
  const stack: { readonly node: Assembly; readonly middle: number | undefined }[] = [{ node: assembled.plan.assembly, middle: undefined }];
  for (let top = stack.pop(); top !== undefined; top = stack.pop()) {
    const { node } = top;
    const middle = top.middle ?? (units[numbers.get(node) ?? -1]?.made?.way === 'corners' ? largestIn(layout, node) : undefined);
    if (node.kind === 'join' && middle !== undefined) for (const seam of node.seams) lay(seam, middle);
    // The corner of a flip lies to the right of its seam.
    if (node.kind === 'flip') lay(node.seam, undefined);
    for (const inner of node.kind === 'join' ? node.parts : node.kind === 'patch' ? [] : [node.part]) stack.push({ node: inner, middle });
  }
  return sides;
}

/** What the corners are sewn on: the body of a goose, the middle of a snowball. */
function largestIn({ patches }: BlockLayout, part: Assembly): number | undefined {
  const outlineOf = (patch: number | undefined): BlockLayout['patches'][number]['outline'] => patches[patch ?? -1]?.outline ?? [];
  const [first, ...others] = patchesIn(part);
  return others.reduce((largest, patch) => (less(area(outlineOf(largest)), area(outlineOf(patch))) ? patch : largest), first);
}
