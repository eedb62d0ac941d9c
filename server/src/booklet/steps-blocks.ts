/** The steps for units and blocks. */
import { cuttingInBlock } from '../cutting/methods.ts';
import { sign } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import type { Cutting } from '../cutting/shape.ts';
import type { Patch } from '../geometry/layout.ts';
import type { Rules } from '../model/pattern.ts';
import { isOnPaper } from '../piecing/foundation.ts';
import type { Assembly } from '../piecing/plan.ts';
import type { PressedSeams } from '../piecing/pressing.ts';
import type { QuiltSewing } from '../piecing/sewing.ts';
import type { Unit } from '../piecing/units.ts';
import { plain } from './markdown.ts';
import { methodLines, wayOfUnit } from './steps-methods.ts';
import type { BlockSteps, SewnBlock, StepsPlan } from './steps-plan.ts';
import { sewLines, type Bench } from './steps-sew.ts';
import { paperLines } from './steps-paper.ts';
import { pressedLine } from './steps-turns.ts';
import { TEXTS } from './steps-texts.ts';
import { firstGo, hasBiasOutside, hasEars, hasPoints, patchName, rawSize } from './steps-units.ts';
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
  if (isOnPaper(sewn[0].layout)) return [{ title, level: 2, lines: paperLines(sewn[0], words) }];
  if (!whole) return [{ title, level: 2, lines: [pieceLine(sewn[0], words)] }];
  const own = words.plan.apart.has(whole.number) ? [TEXTS.isUnit(names[0] ?? '', unitLabel(whole, words))] : wholeLines(block, whole, words);
  if (units.length === 0) return [{ title, level: 2, lines: own }];
  return [{ title, level: 2, lines: [] }, ...units.map((unit) => unitChapter(unit, words)), { title: listed(names), level: 3, lines: own }];
}

/** Only what is sewn to what, the lines of a unit with its label before the first. */
export function blockSewing({ whole, units }: BlockSteps, words: BlockWords): readonly string[] {
  const labelled = units.flatMap((unit) => {
    const [first, ...rest] = sewUnit(unit, words);
    return first === undefined ? [] : [`${unitTitle(unit, words.plan.apart.get(unit.number) ?? 0)}. ${first}`, ...rest];
  });
  return whole && !words.plan.apart.has(whole.number) ? [...labelled, ...sewUnit(whole, words)] : labelled;
}

function pieceLine({ name, layout, gaveUp }: SewnBlock, words: BlockWords): string {
  const [patch] = layout.patches;
  return gaveUp || !patch || layout.patches.length > 1 ? TEXTS.noPlan(plain(name)) : TEXTS.plainBlock(plain(name), patchName(patch, cutOf({ layout }, 0, words), words.print));
}

function unitLabel({ number }: Unit, { plan }: BlockWords): string {
  return `unit ${plan.apart.get(number) ?? 0}`;
}

/** With the way it is made, where that is one of its own. */
function unitTitle(unit: Unit, number: number): string {
  const way = wayOfUnit(unit);
  const name = unit.name === undefined || way === undefined ? unit.name : TEXTS.madeSo(unit.name, way);
  return TEXTS.unitTitle(`Unit ${number}`, name, unit.count);
}

function unitChapter(unit: Unit, words: BlockWords): Chapter {
  const number = words.plan.apart.get(unit.number) ?? 0;
  return {
    title: unitTitle(unit, number),
    level: 3,
    lines: [TEXTS.picture(`steps/unit-${number}.svg`), ...sharedLines(unit, words), ...sewUnit(unit, words), ...checkLines(unit, words)],
  };
}

function wholeLines({ number }: BlockSteps, whole: Unit, words: BlockWords): readonly string[] {
  return [TEXTS.picture(`steps/block-${number}.svg`), ...sewUnit(whole, words), ...checkLines(whole, words)];
}

function sewUnit(unit: Unit, words: BlockWords): readonly string[] {
  const bench = benchOf(unit, words);
  const cuttings = unit.patches.map((patch) => cutOf(unit, patch, words));
  return methodLines(unit, bench, { print: words.print, cuttings }) ?? sewLines(unit.part, bench);
}

function cutOf({ layout }: Pick<Unit, 'layout'>, patch: number, { sewing, rules }: BlockWords): Cutting | undefined {
  return cuttingInBlock(layout, patch, rules, sewing.layout);
}

/** The patches that are sewn in the lines of a unit, those of units that lie ready left out. */
function ownPatches(part: Assembly, unit: Unit, words: BlockWords): readonly number[] {
  if (part.kind === 'patch') return [part.patch];
  if (partName(part, unit, words) !== undefined) return [];
  return part.kind === 'join' ? part.parts.flatMap((each) => ownPatches(each, unit, words)) : ownPatches(part.part, unit, words);
}

/** How many of a unit go into which block, where there is more than one. */
function sharedLines({ uses }: Unit, { sewing }: BlockWords): readonly string[] {
  const shares = uses.flatMap(({ layout, count }) => {
    const block = sewing.blocks.find((each) => each.layout === layout);
    return block ? [`${count} for ${plain(block.name)}`] : [];
  });
  return shares.length > 1 ? [TEXTS.shares(listed(shares))] : [];
}

/** What the words for a unit are taken from. */
export function benchOf(unit: Unit, words: BlockWords): Bench {
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
    setIn: setInCorners(unit, sewing),
    lengthOf: (stretch) => print.length(firstGo(stretch, rules)),
    nests: sewing.pressing.conflicts === 0 && rules.methods.press === undefined && unit.layout.instance.methods.press === undefined,
    ...(pressed === undefined ? {} : { pressed }),
  };
}

function setInCorners({ layout }: Pick<Unit, 'layout'>, { blocks }: QuiltSewing): readonly Point[] {
  return blocks.find((block) => block.layout === layout)?.assembled?.plan.seams.flatMap(({ corners }) => corners) ?? [];
}

export function sidesOf({ layout }: Pick<Unit, 'layout'>, { pressing }: QuiltSewing): PressedSeams['sides'] {
  return pressing.blocks.find((block) => block.layout === layout)?.sides ?? [];
}

function partName(part: Assembly, unit: Unit, words: BlockWords): string | undefined {
  const { sewing, plan, print } = words;
  if (part.kind === 'patch') {
    const patch = unit.layout.patches[part.patch];
    return patch ? patchName(patch, cutOf(unit, part.patch, words), print) : undefined;
  }
  const number = sewing.units.numbers.get(part) ?? -1;
  return number !== unit.number && plan.apart.has(number) ? `unit ${plan.apart.get(number) ?? 0}` : undefined;
}

function checkLines(unit: Unit, words: BlockWords): readonly string[] {
  const { rules, print } = words;
  const { size, layout, part, made } = unit;
  const raw = size && print.widthByHeight(rawSize(size, rules.seam));
  const isTrimmed = made !== undefined && made.way !== 'corners' && sign(made.trim) > 0;
  return [
    ...(wayOfUnit(unit) !== 'corners' && !isTrimmed && hasEars(layout, ownPatches(part, unit, words)) ? [TEXTS.ears] : []),
    ...(raw === undefined ? [] : [isTrimmed ? TEXTS.trimTo(raw) : TEXTS.measure(raw, unit.count)]),
    ...(hasBiasOutside(unit) ? [TEXTS.bias] : []),
    ...(hasPoints(unit) ? [TEXTS.points(print.length(rules.seam))] : []),
  ];
}
