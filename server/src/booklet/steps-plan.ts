/** What the steps of a quilt tell in which order: its blocks, before each the units that come up in it first. */
import type { BlockInstance } from '../model/pattern.ts';
import type { QuiltSewing } from '../piecing/sewing.ts';
import type { Unit } from '../piecing/units.ts';
import { wayOfUnit } from './steps-methods.ts';
import { apartUnits } from './steps-units.ts';

export interface StepsPlan {
  readonly blocks: readonly BlockSteps[];
  /** The numbers of units that are made by themselves, by the numbers of `Units`. */
  readonly apart: ReadonlyMap<number, number>;
}

export interface BlockSteps {
  /** Counted from 1. */
  readonly number: number;
  /** Blocks that are the same but for a turn are made together. */
  readonly sewn: readonly [SewnBlock, ...SewnBlock[]];
  /** The whole block; undefined when it is one patch, or when no plan was worked out. */
  readonly whole: Unit | undefined;
  /** To make before it. */
  readonly units: readonly Unit[];
}

export type SewnBlock = QuiltSewing['blocks'][number];

export function stepsPlan({ blocks, units: { units, numbers } }: QuiltSewing): StepsPlan {
  const apart = apartUnits(units, (unit) => wayOfUnit(unit) !== undefined);
  const wholeOf = ({ assembled }: SewnBlock): Unit | undefined => units[(assembled && numbers.get(assembled.plan.assembly)) ?? -1];
  const groups: { sewn: [SewnBlock, ...SewnBlock[]]; whole: Unit | undefined }[] = [];
  for (const block of blocks) {
    const whole = wholeOf(block);
    const known = whole && groups.find((group) => group.whole === whole);
    if (known) known.sewn.push(block);
    else groups.push({ sewn: [block], whole });
  }
  return {
    apart,
    blocks: groups.map((group, i) => ({
      ...group,
      number: i + 1,
      units: units.filter((unit) => apart.has(unit.number) && unit !== group.whole && group.sewn.some(({ layout }) => layout === unit.layout)),
    })),
  };
}

/** A block and all that stand in it, each once. */
export function instancesIn(root: BlockInstance): ReadonlySet<BlockInstance> {
  const all = new Set([root]);
  for (const instance of all) for (const inner of instance.nested ?? []) all.add(inner);
  return all;
}
