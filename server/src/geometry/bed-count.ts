/**
 * How many blocks cover a bed: `size queen for queen_bed`. The least count, across and down, whose top with all its borders is as
 * wide as the mattress and a drop on both sides, and as long as the mattress and a drop at the foot.
 */
import { TWO, add, less, mul, type Exact } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { QuiltSpec, Rules, Setting } from '../model/pattern.ts';
import { BEDS, leastDrop } from '../model/sizes.ts';
import { planBorders } from './borders.ts';
import { measureSetting } from './measure.ts';
import type { Size } from './move.ts';

type Counted = Extract<Setting, { kind: 'straight' | 'on_point' }>;

/** Past this many blocks to a side a count is given up: the top does not grow with it. */
const MOST_TO_A_SIDE = 256;

/** Blocks in the other direction, for whatever a tile repeats. */
const ENOUGH = 64;

/** The quilt with its count where it is not written; as it is where it is, or where the count cannot matter. */
export function coveringBed(spec: QuiltSpec, rules: Rules): { readonly spec: QuiltSpec; readonly findings: readonly Finding[] } {
  const { setting, size } = spec;
  const bed = size?.covers && size.bed !== undefined ? BEDS.get(size.bed) : undefined;
  if (!size?.bed || !bed || !setting || !('across' in setting)) return { spec, findings: [] };
  const drop = leastDrop(size.bed);
  const step = spec.tile?.symmetry ? 2 : 1;
  const across = leastCount({ step, usual: setting.across, wanted: add(bed.width, mul(TWO, drop)) }, (count) => sizeWith(spec, rules, { ...setting, across: count, down: few(setting.down) }).width);
  const down = leastCount({ step, usual: setting.down, wanted: add(bed.length, drop) }, (count) => sizeWith(spec, rules, { ...setting, across: few(setting.across), down: count }).height);
  if (across === undefined || down === undefined) {
    const problem = 'no count of blocks makes the top cover this bed: write `A by B` before `for`';
    return { spec, findings: [{ rule: 'wrong-argument', place: size.place, problem }] };
  }
  return { spec: { ...spec, size: { ...size, across, down }, setting: { ...setting, across, down } }, findings: [] };
}

interface CountWanted {
  readonly step: number;
  readonly usual: number;
  readonly wanted: Exact;
}

/** The other direction does not change this one, so that a part of it tells as much as all. */
function few(count: number): number {
  return count > ENOUGH ? ENOUGH : count;
}

/** The size of the top with another count of blocks. */
function sizeWith(spec: QuiltSpec, rules: Rules, setting: Counted): Size {
  const counted = { ...spec, setting };
  return planBorders(counted, measureSetting({ spec: counted, rules }), rules);
}

/** The least multiple of `step` whose length reaches `wanted`; `usual` where the length is the same for all. Undefined when none does. */
function leastCount({ step, usual, wanted }: CountWanted, lengthOf: (count: number) => Exact): number | undefined {
  const reaches = (steps: number): boolean => !less(lengthOf(steps * step), wanted);
  if (reaches(1)) return less(lengthOf(step), lengthOf(2 * step)) ? step : usual;
  let [short, enough] = [1, 2];
  while (!reaches(enough)) {
    [short, enough] = [enough, enough * 2];
    if (enough * step > MOST_TO_A_SIDE) return undefined;
  }
  while (enough - short > 1) {
    const middle = (short + enough) >> 1;
    if (reaches(middle)) enough = middle;
    else short = middle;
  }
  return enough * step;
}
