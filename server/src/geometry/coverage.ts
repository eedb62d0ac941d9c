/** Do a block's patches cover it exactly once: the tiling's faults as findings, at the patches and at the block's name. */
import { ZERO, sum } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { BlockInstance } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';
import { arcFindings, straightened } from './bent.ts';
import { outerPlace } from './cell.ts';
import type { Patch } from './layout.ts';
import type { Size } from './move.ts';
import { checkTiling } from './tiling.ts';
import type { TilingFault } from './tiling.ts';
import { hasBrokenLine } from './written.ts';

/** Without its kind of measure, which is the block's. */
type Unmeasured<R extends 'gap' | 'overlap'> = Omit<Extract<Finding, { rule: R }>, 'isLength'>;

type Fault<K extends TilingFault['kind']> = Extract<TilingFault, { kind: K }>;

/**
 * Copies made by symmetry share a place, and a pair of places is reported once. A gap is not reported where something is missing
 * for a reason that is reported already.
 */
export function coverageFindings(instance: BlockInstance, patches: readonly Patch[], size: Size): Finding[] {
  const base = patches.filter((patch) => patch.role !== 'flipped_corner');
  const faults = checkTiling(size, straightened(base));
  const excused = faults.some((fault) => fault.kind === 'empty') || isUnfinished(instance);
  const arcs = arcFindings(base);
  if (arcs.length > 0) return arcs;
  const findings = once(faults.flatMap((fault) => findingOf(instance, base, size, fault)));
  return findings.length > 0 || faults.length === 0 ? findings.filter((finding) => finding.rule !== 'gap' || !excused) : [tooManyFaults(instance)];
}

function tooManyFaults({ definition }: BlockInstance): Finding {
  const problem = 'the patches do not cover the block exactly once, in more places than can be listed';
  return { rule: 'wrong-argument', place: definition.place, problem };
}

/** True when a part of the block could not be read or resolved: what it would have covered is no gap. */
function isUnfinished({ body, definition }: BlockInstance): boolean {
  return (body.kind !== 'empty' && body.incomplete === true) || hasBrokenLine(definition.statement.body);
}

function findingOf(instance: BlockInstance, patches: readonly Patch[], size: Size, fault: TilingFault): Finding[] {
  const isLength = instance.size !== undefined;
  switch (fault.kind) {
    case 'empty':
      return [{ rule: 'empty-patch', place: placeOf(patches, fault.patch), why: REASONS[fault.reason] }];
    case 'gap':
      return [{ ...gapFinding(instance.definition.place, fault), isLength }];
    case 'overlap':
      return [{ ...overlapFinding(patches, fault), isLength }];
    case 'outside':
      return [{ rule: 'outside', place: placeOf(patches, fault.patch), area: fault.area, at: fault.at, width: size.width, height: size.height, isLength }];
    case 'more':
      return [];
  }
}

const REASONS: Readonly<Record<Fault<'empty'>['reason'], string>> = {
  'no area': 'the corners of this patch lie on one line',
  'crosses itself': 'the outline of this patch crosses or touches itself',
  'too few corners': 'a patch has at least three corners',
};

function gapFinding(place: Place, { regions }: Fault<'gap'>): Unmeasured<'gap'> {
  const [first] = regions;
  return {
    rule: 'gap',
    place,
    area: sum(regions.map((region) => region.area)),
    corners: first?.outline ?? [{ x: ZERO, y: ZERO }],
    regions: regions.length,
  };
}

/** At the later of the two in the text. */
function overlapFinding(patches: readonly Patch[], { a, b, area, at }: Fault<'overlap'>): Unmeasured<'overlap'> {
  return { rule: 'overlap', place: placeOf(patches, b), other: placeOf(patches, a), area, at };
}

function placeOf(patches: readonly Patch[], index: number): Place {
  const patch = patches[index];
  if (!patch) throw new RangeError('A fault of no patch.');
  return outerPlace(patch);
}

function once(findings: readonly Finding[]): Finding[] {
  const seen = new Map<Place, { readonly rule: string; readonly other?: Place }[]>();
  return findings.filter((finding) => {
    const other = finding.rule === 'overlap' ? finding.other : undefined;
    const here = seen.get(finding.place) ?? [];
    if (here.some((known) => known.rule === finding.rule && known.other === other)) return false;
    seen.set(finding.place, [...here, { rule: finding.rule, ...(other ? { other } : {}) }]);
    return true;
  });
}
