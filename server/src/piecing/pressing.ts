/**
 * Which way to press every seam of a quilt. Each distinct block is pressed the same way wherever it stands; the seams of the setting
 * each have their own. As few crossings as possible fail to nest (proven, see `press-solve.ts`), then as many seams as possible go to
 * the darker fabric, or away from a pieced part towards a plain one. Points with eight seam ends or more are pressed open. Seams of
 * squares that are sewn on corners lie to the corner, which is folded over them.
 */
import type { Point } from '../exact/point.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { Methods } from '../model/pattern.ts';
import { lightness } from '../text/colour.ts';
import { cornerSides } from './corner-seams.ts';
import { methodsAt } from './methods-at.ts';
import { meetingsOf } from './press-quilt.ts';
import type { BulkyMeeting, PressedPlan, SeamPair } from './press-quilt.ts';
import { blockSeamPoints, seamPoints } from './press-points.ts';
import type { Pressed } from './press-points.ts';
import { solvePressing } from './press-solve.ts';
import { blockOutline } from './setting.ts';
import type { Setting } from './setting.ts';
import type { BlockToMake } from './unit-parts.ts';
import type { Units } from './units.ts';

/** As seen from `from` to `to` of the stretch. */
export type PressSide = 'left' | 'right' | 'open';

export interface PressedSeams {
  /** Undefined for the setting. */
  readonly layout: BlockLayout | undefined;
  /** For each seam of the plan, by its number, the side of each of its stretches. */
  readonly sides: readonly (readonly PressSide[])[];
  /** Likewise, why. */
  readonly reasons: readonly (readonly PressReason[])[];
}

/**
 * `said`: the author asks for it; `bulky`: too many seams meet; `dark`: the darker fabric lies there; `plain`: away from a pieced
 * part; `nests`: so that crossings lock; `free`: either side would do; `corner`: as it is made, a corner folded over the seam.
 */
export type PressReason = 'said' | 'bulky' | 'dark' | 'plain' | 'nests' | 'free' | 'corner';

export interface Pressing {
  readonly blocks: readonly PressedSeams[];
  readonly setting: PressedSeams | undefined;
  /** Crossings in the whole quilt where the allowances lie to opposite sides. */
  readonly nested: number;
  /** Seams in the whole quilt that are pressed open. */
  readonly open: number;
  /** Crossings that cannot nest; what they are, kind by kind. */
  readonly conflicts: number;
  readonly named: readonly Conflict[];
  /** True when no way of pressing leaves fewer conflicts. */
  readonly proven: boolean;
  /** Where blocks meet in points with too many seam ends. */
  readonly bulky: readonly BulkyMeeting[];
}

export interface Conflict {
  /** How many there are in the quilt. */
  readonly count: number;
  /** One of them: in the coordinates of `layout`, or of the quilt. */
  readonly at: Point;
  readonly layout: BlockLayout | undefined;
  /** The blocks whose seams meet there; undefined for a seam of the setting. */
  readonly between: readonly [BlockLayout | undefined, BlockLayout | undefined];
}

type Way = NonNullable<Methods['press']>['way'];

export interface PressTask {
  readonly blocks: readonly BlockToMake[];
  readonly setting: Setting | undefined;
  /** Of these blocks: how they are made settles the side of some seams. */
  readonly units: Units;
  /** Of the pattern; what a block says comes before them. */
  readonly methods: Methods;
}

export function pressingOf({ blocks, setting, units, methods }: PressTask): Pressing {
  const plans: PressedPlan[] = [];
  let first = 0;
  const add = (plan: Omit<PressedPlan, 'first'>): void => {
    plans.push({ ...plan, first });
    first += plan.points.pressed.length;
  };
  for (const block of blocks) {
    const { layout, count, assembled } = block;
    const corners = cornerSides(block, units);
    const wayOf = ({ stretch }: Pressed): Way => methodsAt(layout, [...stretch.left, ...stretch.right], methods).press?.way ?? 'nested';
    add({ layout, count, points: blockSeamPoints(assembled.plan, blockOutline(layout)), wayOf, corners });
  }
  if (setting?.assembled) add({ layout: undefined, count: 1, points: seamPoints(setting.assembled.plan, []), wayOf: () => methods.press?.way ?? 'nested', corners: new Map() });
  return pressed(plans, setting);
}

function pressed(plans: readonly PressedPlan[], setting: Setting | undefined): Pressing {
  const open = plans.flatMap(opened);
  const { pairs, bulky } = meetingsOf(plans, setting);
  for (const { over } of bulky) open[over] = true;
  const close = pairs.filter(({ a, b }) => open[a] !== true && open[b] !== true);
  const wish = plans.flatMap((plan) => plan.points.pressed.map((each) => (each.as === each.number ? wishOf(plan, each, setting) : 0)));
  const settled = plans.flatMap((plan) => plan.points.pressed.map((each): 0 | 1 | undefined => settledSide(plan, each, wish[plan.first + each.as] ?? 0)));
  const { sides, proven } = solvePressing({ settled, wish, pairs: close });
  const isNested = ({ a, b, differ }: SeamPair): boolean => (sides[a] !== sides[b]) === differ;
  const conflicts = close.filter((pair) => !isNested(pair));
  const sideOf = (plan: PressedPlan, each: Pressed): PressSide => {
    const seam = plan.first + each.as;
    return open[seam] === true ? 'open' : sides[seam] === 1 ? 'left' : 'right';
  };
  const meeting = new Set(close.flatMap(({ a, b }) => [a, b]));
  const reasonOf = (plan: PressedPlan, each: Pressed): PressReason => {
    const seam = plan.first + each.as;
    if (open[seam] === true) return plan.wayOf(each) === 'open' ? 'said' : 'bulky';
    if (sideWished(wish[seam] ?? 0) === sides[seam]) return isByPieced(plan, plan.points.pressed[each.as] ?? each, setting) ? 'plain' : 'dark';
    if (plan.corners.has(each.seam.number)) return 'corner';
    return meeting.has(seam) ? 'nests' : 'free';
  };
  const seams = plans.map((plan) => ({ layout: plan.layout, sides: bySeam(plan, (each) => sideOf(plan, each)), reasons: bySeam(plan, (each) => reasonOf(plan, each)) }));
  return {
    blocks: seams.filter((each) => each.layout !== undefined),
    setting: seams.find((each) => each.layout === undefined),
    nested: weigh(close.filter(isNested)),
    open: plans.reduce((sum, plan) => sum + plan.count * plan.points.pressed.filter((each) => each.as === each.number && sideOf(plan, each) === 'open').length, 0),
    conflicts: weigh(conflicts),
    named: conflicts.map(({ weight, at, layout, between }) => ({ count: weight, at, layout, between })),
    proven,
    bulky,
  };
}

function opened({ wayOf, points }: PressedPlan): boolean[] {
  const over = new Set(points.bulky.flatMap((point) => point.over.map((each) => each.as)));
  return points.pressed.map((each) => wayOf(each) === 'open' || over.has(each.as));
}

function bySeam<T>({ points }: PressedPlan, of: (each: Pressed) => T): T[][] {
  const all: T[][] = [];
  for (const each of points.pressed) (all[each.seam.number] ??= []).push(of(each));
  return all;
}

/** What leaves no choice: how it is made, or what is said. */
function settledSide({ corners, wayOf }: PressedPlan, each: Pressed, wish: number): 0 | 1 | undefined {
  const corner = corners.get(each.seam.number);
  if (corner !== undefined) return corner === 'left' ? 1 : 0;
  return wayOf(each) === 'to_dark' ? sideWished(wish) : undefined;
}

function weigh(pairs: readonly SeamPair[]): number {
  return pairs.reduce((sum, { weight }) => sum + weight, 0);
}

function sideWished(wish: number): 0 | 1 | undefined {
  return wish === 0 ? undefined : wish > 0 ? 1 : 0;
}

/** How many seams would rather go left: those with the darker fabric there; in the setting those with a plain part there. */
function wishOf(plan: PressedPlan, { stretch }: Pressed, setting: Setting | undefined): number {
  const lightOf = (part: number): number | undefined => {
    if (plan.layout) return lightness(plan.layout.patches[part]?.fabric.colour ?? '');
    const patch = setting?.parts[part]?.patch;
    // A pieced block is as if lighter than any cloth: seams go away from it.
    return patch ? lightness(patch.fabric.colour) : PIECED;
  };
  const [left, right] = [mean(stretch.left.map(lightOf)), mean(stretch.right.map(lightOf))];
  if (left === undefined || right === undefined || left === right) return 0;
  const wish = isByPieced(plan, { stretch }, setting) ? MORE * plan.count : plan.count;
  return left < right ? wish : -wish;
}

/** Bulk is worse than a shadow: a seam away from a pieced part counts for two to the darker fabric. */
const MORE = 2;

/** A seam of the setting beside a block. */
function isByPieced({ layout }: PressedPlan, { stretch }: Pick<Pressed, 'stretch'>, setting: Setting | undefined): boolean {
  return !layout && [...stretch.left, ...stretch.right].some((part) => setting?.parts[part]?.placement !== undefined);
}

const PIECED = 1000;

function mean(values: readonly (number | undefined)[]): number | undefined {
  const known = values.filter((value) => value !== undefined);
  return known.length === 0 ? undefined : known.reduce((sum, value) => sum + value, 0) / known.length;
}
