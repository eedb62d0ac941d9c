/**
 * How a quilt is sewn, all in all: the plan of every block and of the setting, the units to make, which way to press, and what a
 * maker should be told. Worked out once for each layout.
 */
import type { BlockLayout, QuiltLayout } from '../geometry/layout.ts';
import type { Finding } from '../model/finding.ts';
import type { Methods, Rules } from '../model/pattern.ts';
import { allSteps, mapSteps } from '../text/steps.ts';
import type { Steps } from '../text/steps.ts';
import { assemble } from './assembly.ts';
import type { Assembled } from './assembly.ts';
import { blockFindings, settingFindings } from './findings.ts';
import type { SewingPlan } from './plan.ts';
import { pressingOf } from './pressing.ts';
import type { Pressing } from './pressing.ts';
import { settingOf } from './setting.ts';
import type { Setting } from './setting.ts';
import { methodsKey } from './methods-at.ts';
import { isOnPaper } from './foundation.ts';
import { unitSteps } from './units.ts';
import type { BlockToMake } from './unit-parts.ts';
import type { Units } from './units.ts';

export interface BlockSewing {
  readonly layout: BlockLayout;
  /** Undefined when the patches do not tile the block (then the layout has findings), and when working it out was given up. */
  readonly assembled: Assembled | undefined;
  /** True when the block tiles, and is so deep or so tangled that no plan was worked out. */
  readonly gaveUp: boolean;
  /** `set-in-seam`, `partial-seam` and `bulky-point`, each once at its place in the text. */
  readonly findings: readonly Finding[];
}

export interface QuiltSewing {
  readonly layout: QuiltLayout;
  /** In the order of the layout; `name` as the outputs call it. */
  readonly blocks: readonly (BlockSewing & { readonly name: string; readonly count: number })[];
  readonly setting: Setting;
  readonly units: Units;
  readonly pressing: Pressing;
  readonly seams: SeamCounts;
  /** Of the blocks and the setting. */
  readonly findings: readonly Finding[];
}

/** Over the whole quilt. */
export interface SeamCounts {
  /** A seam sewn in two goes is one. */
  readonly count: number;
  /** Corners that are set in. */
  readonly setIn: number;
  /** Seams sewn in two goes. */
  readonly partial: number;
  readonly pressing: { readonly nested: number; readonly open: number; readonly conflicts: number };
}

const blocks = new WeakMap<BlockLayout, BlockSewing>();

export function sewingOfBlock(layout: BlockLayout): BlockSewing {
  const known = blocks.get(layout) ?? sewBlock(layout);
  blocks.set(layout, known);
  return known;
}

export interface SettingSewing {
  readonly setting: Setting;
  readonly findings: readonly Finding[];
}

const settings = new WeakMap<QuiltLayout, SettingSewing>();

export function settingSewing(layout: QuiltLayout): SettingSewing {
  const known = settings.get(layout) ?? sewSetting(layout);
  settings.set(layout, known);
  return known;
}

const quilts = new WeakMap<QuiltLayout, Map<string, QuiltSewing>>();

/** Of the rules only `method` and `press` matter. */
export function sewingOf(layout: QuiltLayout, { methods }: Pick<Rules, 'methods'>): QuiltSewing {
  return remembered(quilts, layout, methods, () => sewQuilt(layout, methods));
}

const units = new WeakMap<QuiltLayout, Map<string, Units>>();

/** The units of a quilt alone, which take no pressing. */
export function unitsOfQuilt(layout: QuiltLayout, methods: Methods): Units {
  return allSteps(unitStepsOfQuilt(layout, methods));
}

/** The same step by step, if that was not done before. */
export function* unitStepsOfQuilt(layout: QuiltLayout, methods: Methods): Steps<Units> {
  const known = units.get(layout) ?? new Map<string, Units>();
  units.set(layout, known);
  const name = methodsKey(methods);
  const found = known.get(name) ?? (yield* workOutUnits(layout, methods));
  known.set(name, found);
  return found;
}

function* workOutUnits(layout: QuiltLayout, methods: Methods): Steps<Units> {
  const blocks = yield* mapSteps(layout.blocks, ({ layout: block, count }) => (isOnPaper(block) ? [] : toMake(block, count)));
  return yield* unitSteps(blocks.flat(), methods);
}

/** A block as one of the quilt's; nothing where no plan was worked out. */
function toMake(layout: BlockLayout, count: number): readonly BlockToMake[] {
  const { assembled } = sewingOfBlock(layout);
  return assembled ? [{ layout, count, assembled }] : [];
}

function remembered<T>(memo: WeakMap<QuiltLayout, Map<string, T>>, layout: QuiltLayout, methods: Methods, make: () => T): T {
  const known = memo.get(layout) ?? new Map<string, T>();
  memo.set(layout, known);
  const name = methodsKey(methods);
  const found = known.get(name) ?? make();
  known.set(name, found);
  return found;
}

function sewBlock(layout: BlockLayout): BlockSewing {
  const assembled = assemble(layout.patches);
  const gaveUp = !assembled && layout.patches.length > 0 && layout.findings.length === 0;
  return { layout, assembled, gaveUp, findings: assembled ? blockFindings(layout, assembled) : [] };
}

function sewSetting(layout: QuiltLayout): SettingSewing {
  const setting = settingOf(layout);
  return { setting, findings: settingFindings(setting) };
}

function sewQuilt(layout: QuiltLayout, methods: Methods): QuiltSewing {
  const sewn = layout.blocks.map((block) => ({ ...sewingOfBlock(block.layout), name: block.name, count: block.count }));
  const made = layout.blocks.flatMap((block) => toMake(block.layout, block.count));
  const { setting, findings: told } = settingSewing(layout);
  // On paper each seam is pressed towards the piece just sewn on: nothing is to be chosen there.
  const units = unitsOfQuilt(layout, methods);
  const pressing = pressingOf({ blocks: made.filter((block) => !isOnPaper(block.layout)), setting, units, methods });
  const findings = [...sewn.flatMap((block) => block.findings), ...told];
  return { layout, blocks: sewn, setting, units, pressing, seams: countSeams(made, setting, pressing), findings };
}

function countSeams(made: readonly { readonly count: number; readonly assembled: Assembled }[], setting: Setting, { nested, open, conflicts }: Pressing): SeamCounts {
  const plans = [...made.map(({ count, assembled }) => ({ count, plan: assembled.plan })), ...(setting.assembled ? [{ count: 1, plan: setting.assembled.plan }] : [])];
  const total = (of: (plan: SewingPlan) => number): number => plans.reduce((sum, { count, plan }) => sum + count * of(plan), 0);
  return {
    count: total((plan) => plan.seams.filter((seam) => seam.kind !== 'finish' || seam.stop === undefined).length),
    setIn: total((plan) => plan.setIn),
    partial: total((plan) => plan.partial),
    pressing: { nested, open, conflicts },
  };
}
