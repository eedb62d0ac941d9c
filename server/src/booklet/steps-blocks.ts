/** The steps for units and blocks. */
import { cuttingInBlock } from '../cutting/methods.ts';
import type { Patch } from '../geometry/layout.ts';
import type { Rules } from '../model/pattern.ts';
import type { Assembly } from '../piecing/plan.ts';
import type { PressedSeams } from '../piecing/pressing.ts';
import type { QuiltSewing } from '../piecing/sewing.ts';
import type { Unit } from '../piecing/units.ts';
import { plain } from './markdown.ts';
import { madeUnit, methodLines } from './steps-methods.ts';
import type { BlockSteps, SewnBlock, StepsPlan } from './steps-plan.ts';
import { sewLines, type Bench } from './steps-sew.ts';
import { pressedLine } from './steps-turns.ts';
import { TEXTS } from './steps-texts.ts';
import { hasEars, hasPoints, patchName, rawSize } from './steps-units.ts';
import { listed, type Printer } from './words.ts';

export interface BlockWords {
  readonly sewing: QuiltSewing;
  readonly plan: StepsPlan;
  readonly rules: Rules;
  readonly print: Printer;
}

/** A heading and its numbered lines. */
export interface Chapter {
  readonly title: string;
  /** 2 or 3. */
  readonly level: number;
  readonly lines: readonly string[];
}

/** The units of a block that come up in it first, then the block. */
export function blockChapters(block: BlockSteps, words: BlockWords): readonly Chapter[] {
  const { sewn, whole, units } = block;
  const names = sewn.map(({ name }) => plain(name));
  const title = TEXTS.blockTitle(listed(names), sewn.reduce((total, { count }) => total + count, 0));
  if (!whole) return [{ title, level: 2, lines: [pieceLine(sewn[0], words)] }];
  const own = words.plan.apart.has(whole.number) ? [TEXTS.isUnit(names[0] ?? '', unitLabel(whole, words))] : wholeLines(block, whole, words);
  if (units.length === 0) return [{ title, level: 2, lines: own }];
  return [{ title, level: 2, lines: [] }, ...units.map((unit) => unitChapter(unit, words)), { title: listed(names), level: 3, lines: own }];
}

/** Only what is sewn to what, the lines of a unit with its label before the first. */
export function blockSewing({ whole, units }: BlockSteps, words: BlockWords): readonly string[] {
  const labelled = units.flatMap((unit) => {
    const [first, ...rest] = sewUnit(unit, words);
    return first === undefined ? [] : [`${TEXTS.unitTitle(`Unit ${words.plan.apart.get(unit.number) ?? 0}`, unit.name, unit.count)}. ${first}`, ...rest];
  });
  return whole && !words.plan.apart.has(whole.number) ? [...labelled, ...sewUnit(whole, words)] : labelled;
}

function pieceLine({ name, layout, gaveUp }: SewnBlock, { rules, print }: BlockWords): string {
  const [patch] = layout.patches;
  return gaveUp || !patch || layout.patches.length > 1 ? TEXTS.noPlan(plain(name)) : TEXTS.plainBlock(plain(name), patchName(patch, cuttingInBlock(layout, 0, rules), print));
}

function unitLabel({ number }: Unit, { plan }: BlockWords): string {
  return `unit ${plan.apart.get(number) ?? 0}`;
}

function unitChapter(unit: Unit, words: BlockWords): Chapter {
  const number = words.plan.apart.get(unit.number) ?? 0;
  return {
    title: TEXTS.unitTitle(`Unit ${number}`, unit.name, unit.count),
    level: 3,
    lines: [TEXTS.picture(`steps/unit-${number}.svg`), ...sharedLines(unit, words), ...sewUnit(unit, words), ...checkLines(unit, words)],
  };
}

function wholeLines({ number }: BlockSteps, whole: Unit, words: BlockWords): readonly string[] {
  return [TEXTS.picture(`steps/block-${number}.svg`), ...sewUnit(whole, words), ...checkLines(whole, words)];
}

function sewUnit(unit: Unit, words: BlockWords): readonly string[] {
  const bench = benchOf(unit, words);
  return methodLines(unit, bench, words) ?? sewLines(unit.part, bench);
}

/** The patches that are sewn in the lines of a unit, those of units that lie ready left out. */
function ownPatches(part: Assembly, unit: Unit, words: BlockWords): readonly number[] {
  if (part.kind === 'patch') return [part.patch];
  if (partName(part, unit, words) !== undefined) return [];
  return part.kind === 'join' ? part.parts.flatMap((each) => ownPatches(each, unit, words)) : ownPatches(part.part, unit, words);
}

/** How many of a unit go into which block, where there is more than one. */
function sharedLines({ uses }: Unit, { sewing }: BlockWords): readonly string[] {
  const shares = uses.flatMap(({ layout, times }) => {
    const block = sewing.blocks.find((each) => each.layout === layout);
    return block ? [`${block.count * times} for ${plain(block.name)}`] : [];
  });
  return shares.length > 1 ? [TEXTS.shares(listed(shares))] : [];
}

function benchOf(unit: Unit, words: BlockWords): Bench {
  const { sewing, rules, print } = words;
  const { patches } = unit.layout;
  const patchAt = (index: number): Patch | undefined => patches[index];
  const pressed = pressedLine(unit, sewing);
  return {
    sides: sidesOf(unit, sewing),
    clothOf: (index) => plain(patchAt(index)?.fabric.name ?? ''),
    outlineOf: (index) => patchAt(index)?.outline ?? [],
    nameOf: (part) => partName(part, unit, words),
    seam: print.length(rules.seam),
    nests: sewing.pressing.conflicts === 0 && rules.methods.press === undefined && unit.layout.instance.methods.press === undefined,
    ...(pressed === undefined ? {} : { pressed }),
  };
}

export function sidesOf({ layout }: Pick<Unit, 'layout'>, { pressing }: QuiltSewing): PressedSeams['sides'] {
  return pressing.blocks.find((block) => block.layout === layout)?.sides ?? [];
}

function partName(part: Assembly, unit: Unit, words: BlockWords): string | undefined {
  const { sewing, plan, rules, print } = words;
  if (part.kind === 'patch') {
    const patch = unit.layout.patches[part.patch];
    return patch ? patchName(patch, cuttingInBlock(unit.layout, part.patch, rules), print) : undefined;
  }
  const number = sewing.units.numbers.get(part) ?? -1;
  return number !== unit.number && plan.apart.has(number) ? `unit ${plan.apart.get(number) ?? 0}` : undefined;
}

function checkLines(unit: Unit, words: BlockWords): readonly string[] {
  const { rules, print } = words;
  const { size, layout, part } = unit;
  return [
    ...(madeUnit(unit, rules) !== 'corners' && hasEars(layout, ownPatches(part, unit, words)) ? [TEXTS.ears] : []),
    ...(size ? [TEXTS.measure(print.widthByHeight(rawSize(size, rules.seam)), unit.count)] : []),
    ...(hasPoints(unit) ? [TEXTS.points(print.length(rules.seam))] : []),
  ];
}
