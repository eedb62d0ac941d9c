/**
 * Every patch of a quilt as something to cut, with how often it is needed and what for. A block is looked at once however
 * often it is set, in its own axes: its straight grain is the block's, whichever way it is turned in the quilt.
 */
import { abs, equals, fraction, key, mul, type Exact } from '../exact/number.ts';
import { rootUpTo, squareRoot } from '../exact/roots.ts';
import { applyToAll, determinant, scale } from '../exact/transform.ts';
import type { Patch, PatchRole, Placement, QuiltLayout } from '../geometry/layout.ts';
import { dealOf, inPrint, type Prints } from '../geometry/deal.ts';
import { mapSteps, type Steps } from '../text/steps.ts';
import { madePatches, methodCutting, type MadePatches } from './methods.ts';
import { rememberedCutting } from './remembered.ts';
import type { Cutting, CutRules } from './shape.ts';
import { laidAlike } from './template-alike.ts';
import { printedCutting } from './template-cut.ts';

export interface Need {
  /** Of an assorted role, in its print. */
  readonly patch: Patch;
  /** The name of that role. */
  readonly role?: string;
  readonly cutting: Cutting;
  readonly count: number;
  readonly for: string;
  /** Of units that are made together, for whatever blocks. */
  readonly set?: string;
}

/** The needs of a quilt in the order of its blocks, then the setting, the sashing and the borders. Strips of borders are not here. */
export function* needsOf(layout: QuiltLayout, rules: CutRules): Steps<readonly Need[]> {
  const float = layout.spec.float?.width;
  const settingRules = float ? { ...rules, float } : rules;
  return [...(yield* blockNeeds(layout, rules)), ...USES.flatMap((use) => quiltNeeds(layout, settingRules, use))];
}

type Use = 'setting' | 'sashing' | 'border';

const USES: readonly Use[] = ['setting', 'sashing', 'border'];

const USE_OF: Readonly<Record<PatchRole, Use>> = {
  patch: 'setting',
  plain: 'setting',
  side_triangle: 'setting',
  corner_triangle: 'setting',
  flipped_corner: 'setting',
  sash: 'sashing',
  cornerstone: 'sashing',
  border: 'border',
  border_corner: 'border',
};

function* blockNeeds(layout: QuiltLayout, rules: CutRules): Steps<readonly Need[]> {
  const order = new Map(layout.blocks.map((block, i) => [block.layout.key, i]));
  const first = ([placement]: readonly Placement[]): number => (placement && order.get(placement.block.key)) ?? layout.blocks.length;
  const names = new Map(layout.blocks.map(({ layout: block, name }) => [block.key, name]));
  const deal = dealOf(layout);
  const dealt = new Map(deal?.placements.flatMap((prints, i) => (prints && layout.placements[i] ? [[layout.placements[i], prints] as const] : [])));
  const uses = [...placementsBySize(layout).values()].sort((a, b) => first(a) - first(b));
  const made = madePatches(layout, rules.methods ?? {});
  const needs = yield* mapSteps(uses, (placements) => {
    const [placement] = placements;
    return placement ? needsOfBlock(placement, { rules, placements, dealt, made: made.get(placement.block), name: names.get(placement.block.key) ?? placement.block.instance.name }) : [];
  });
  return needs.flat();
}

/** Placements of the same block at the same size. */
function placementsBySize(layout: QuiltLayout): ReadonlyMap<string, readonly Placement[]> {
  const groups = new Map<string, Placement[]>();
  for (const placement of layout.placements) {
    const name = `${placement.block.key} ${key(abs(determinant(placement.transform)))}`;
    const group = groups.get(name);
    if (group) group.push(placement);
    else groups.set(name, [placement]);
  }
  return groups;
}

interface BlockUse {
  readonly rules: CutRules;
  readonly placements: readonly Placement[];
  readonly dealt: ReadonlyMap<Placement, Prints>;
  readonly made: MadePatches | undefined;
  readonly name: string;
}

function needsOfBlock({ block, transform }: Placement, { rules, placements, dealt, made, name }: BlockUse): readonly Need[] {
  const growth = growthOf(abs(determinant(transform)));
  return block.patches.flatMap((original, index): Need[] => {
    const sized = (each: Patch): Patch => (equals(growth, fraction(1)) ? each : grown(each, growth));
    const own = sized(original);
    const printed = printedCutting(block, own, rules);
    const way = printed ? undefined : made?.get(index);
    const chosen = way && methodCutting(own, way, rules);
    if (way && chosen) return [{ patch: own, cutting: chosen, count: placements.length, for: name, ...(way.set === undefined ? {} : { set: way.set }) }];
    const patch = printed ? own : sized(laidAlike(block, index));
    const cutting = printed ?? rememberedCutting(patch, rules);
    if (!cutting) return [];
    if (!patch.fabric.assorted) return [{ patch, cutting, count: placements.length, for: name }];
    const counts = countsOf(placements.map((placement) => dealt.get(placement)?.[index]));
    return [...counts].map(([print, count]) => ({ patch: inPrint(patch, print), role: patch.fabric.name, cutting, count, for: name }));
  });
}

/** How often each print was dealt, the first print first. */
function countsOf(prints: Prints): ReadonlyMap<number | undefined, number> {
  const counts = new Map<number | undefined, number>();
  for (const print of prints) counts.set(print, (counts.get(print) ?? 0) + 1);
  return new Map([...counts].sort(([a = 0], [b = 0]) => a - b));
}

/** How many times longer lengths become, from the growth of areas. */
function growthOf(areas: Exact): Exact {
  return squareRoot(areas) ?? rootUpTo(areas, fraction(1, 2 ** 20));
}

function grown(patch: Patch, by: Exact): Patch {
  const outline = applyToAll(patch.outline, scale(by));
  return patch.arcs ? { ...patch, outline, arcs: patch.arcs.map((radius) => radius && mul(radius, by)) } : { ...patch, outline };
}

function quiltNeeds(layout: QuiltLayout, rules: CutRules, use: Use): readonly Need[] {
  const deal = dealOf(layout);
  return layout.patches.flatMap((patch, index): Need[] => {
    if (USE_OF[patch.role] !== use) return [];
    const border = use === 'border' ? borderNumber(layout, patch) : 0;
    if (patch.role === 'border' && isOfStrips(layout, border)) return [];
    const cutting = rememberedCutting(patch, rules);
    const name = use === 'border' ? (border > 0 ? `border ${border}` : 'border') : use;
    if (!cutting) return [];
    const role = patch.fabric.assorted ? { role: patch.fabric.name } : {};
    return [{ patch: inPrint(patch, deal?.patches[index]), ...role, cutting, count: 1, for: name }];
  });
}

/** Counted from 1, from the inside out; 0 when the patch names no border's line. */
function borderNumber(layout: QuiltLayout, patch: Patch): number {
  return layout.borders.findIndex((border) => border.place.line === patch.place.line) + 1;
}

/** Whether a border's strips are planned from the border itself. */
function isOfStrips(layout: QuiltLayout, number: number): boolean {
  const border = layout.borders[number - 1];
  return border !== undefined && border.corners !== 'pieced' && border.fabric !== undefined;
}
