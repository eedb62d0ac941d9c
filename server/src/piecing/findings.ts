/** What a maker should be told about the sewing, as findings at the text that makes it: each place once, with how often. */
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import type { Finding } from '../model/finding.ts';
import type { Place } from '../text/place.ts';
import type { Assembled } from './assembly.ts';
import { patchesIn } from './plan.ts';
import type { Assembly, Seam } from './plan.ts';
import { seamPoints } from './press-points.ts';
import { blockOutline } from './setting.ts';
import type { Setting } from './setting.ts';

/** In the order of the seams; places are those of the block's own text (the cell, for what came in through a nested block). */
export function blockFindings(layout: BlockLayout, { plan }: Assembled): Finding[] {
  const placeOf = (patch: number): Place | undefined => outerPlace(layout.patches[patch]);
  const bulky = seamPoints(plan, blockOutline(layout)).bulky.flatMap(({ at, ends, over }): Finding[] => {
    const patch = over[0]?.stretch.left[0];
    const place = patch === undefined ? undefined : placeOf(patch);
    return place ? [{ rule: 'bulky-point', place, block: layout.instance.name, ends, at, count: 1 }] : [];
  });
  return once([...sewingFindings(plan.assembly, { block: layout.instance.name, placeOf }), ...bulky]);
}

/** Mitred corners are set in because the author asked for them: nothing is said about those. */
export function settingFindings({ parts, assembled }: Setting): Finding[] {
  if (!assembled) return [];
  const isBorder = (part: number): boolean => parts[part]?.patch?.role === 'border';
  const isMitred = (seam: Seam): boolean => seam.stretches.some(({ left, right }) => [...left, ...right].every(isBorder));
  const placeOf = (part: number): Place | undefined => parts[part]?.patch?.place ?? parts[part]?.placement?.place;
  return once(sewingFindings(assembled.plan.assembly, { block: undefined, placeOf, isMeant: isMitred }));
}

interface Told {
  readonly block: string | undefined;
  /** True for seams that need no word. */
  readonly isMeant?: (seam: Seam) => boolean;
  readonly placeOf: (patch: number) => Place | undefined;
}

function sewingFindings(node: Assembly, told: Told): Finding[] {
  switch (node.kind) {
    case 'patch':
      return [];
    case 'join':
      return [...node.parts.flatMap((part) => sewingFindings(part, told)), ...node.seams.flatMap((seam, i) => seamFindings(seam, node.parts[i + 1], told))];
    case 'finish':
      return [...sewingFindings(node.part, told), ...seamFindings(node.seam, undefined, told)];
    case 'flip':
      return sewingFindings(node.part, told);
  }
}

function seamFindings(seam: Seam, added: Assembly | undefined, { block, isMeant, placeOf }: Told): Finding[] {
  if (isMeant?.(seam) === true) return [];
  const [at] = seam.corners;
  const own = added && patchesIn(added).length === 1 ? placeOf(patchesIn(added)[0] ?? -1) : undefined;
  const beside = own ?? besides(seam).map(placeOf).find((place) => place !== undefined);
  if (!beside) return [];
  if (at) return [{ rule: 'set-in-seam', place: beside, block, at, corners: seam.corners.length, count: 1 }];
  const [stretch] = seam.stretches;
  if (seam.kind !== 'partial' || !stretch || !seam.stop) return [];
  const others = [stretch.left, stretch.right].map((side) => placeOf(side[0] ?? -1)).filter((place) => place !== undefined && place !== beside);
  return [{ rule: 'partial-seam', place: beside, ...(others[0] ? { other: others[0] } : {}), block, from: stretch.from, to: stretch.to, stop: seam.stop, count: 1 }];
}

function besides(seam: Seam): number[] {
  return seam.stretches.flatMap(({ left, right }) => [...left, ...right]);
}

/** The cell of the block's own text that a patch comes from. */
function outerPlace(patch: Patch | undefined): Place | undefined {
  return patch?.within?.[0] ?? patch?.place;
}

type Counted = Extract<Finding, { readonly count: number; readonly block: string | undefined }>;

/** Findings of one rule at one place are one, counted. */
function once(findings: readonly Finding[]): Finding[] {
  const kept = new Map<Place, Map<string, Counted>>();
  for (const finding of findings) {
    if (!isCounted(finding)) continue;
    const here = kept.get(finding.place) ?? new Map<string, Counted>();
    kept.set(finding.place, here);
    const known = here.get(finding.rule);
    here.set(finding.rule, known ? { ...known, count: known.count + 1 } : finding);
  }
  return [...kept.values()].flatMap((here) => [...here.values()]);
}

function isCounted(finding: Finding): finding is Counted {
  return finding.rule === 'set-in-seam' || finding.rule === 'partial-seam' || finding.rule === 'bulky-point';
}

