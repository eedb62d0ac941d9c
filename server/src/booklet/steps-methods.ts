/** Units that are made in a way the author chose: several at a time, with corner squares, from strip sets. */
import { cuttingInBlock, madePatches, type Making } from '../cutting/methods.ts';
import type { Cutting } from '../cutting/shape.ts';
import type { Rules } from '../model/pattern.ts';
import type { Assembly } from '../piecing/plan.ts';
import type { Unit } from '../piecing/units.ts';
import { pressLine } from './steps-press.ts';
import type { Bench } from './steps-sew.ts';
import { TEXTS } from './steps-texts.ts';
import { inOrder, runOf } from './steps-words.ts';
import type { Printer } from './words.ts';

/** How a unit is made, where that is a way of its own; single pieces sewn one by one are none. */
export function madeUnit({ name, layout, part, patches }: Unit, rules: Rules): Making | undefined {
  const made = madePatches(layout, rules.methods).get(patches[0] ?? -1);
  if (!made || made.making === 'singles') return undefined;
  if (made.making === 'strip sets') return part.kind === 'join' && part.parts.every((each) => each.kind === 'patch') ? made.making : undefined;
  return name === 'half-square triangle' || name === 'flying goose' ? made.making : undefined;
}

/** The lines to make all units of the kind; undefined for those that are sewn as any part is. */
export function methodLines(unit: Unit, bench: Bench, { rules, print }: { readonly rules: Rules; readonly print: Printer }): readonly string[] | undefined {
  const making = madeUnit(unit, rules);
  if (!making) return undefined;
  return LINES[making]?.({ unit, bench, print, cuttings: unit.patches.map((patch) => cuttingInBlock(unit.layout, patch, rules)) });
}

interface Context {
  readonly unit: Unit;
  readonly bench: Bench;
  readonly print: Printer;
  /** Of the unit's patches. */
  readonly cuttings: readonly (Cutting | undefined)[];
}

const LINES: Readonly<Partial<Record<Making, (context: Context) => readonly string[]>>> = {
  'two at a time': (context) => pairedLines(context, 2),
  'eight at a time': (context) => pairedLines(context, 8),
  'four at a time': gooseLines,
  corners: cornerLines,
  'strip sets': stripLines,
};

function pairedLines({ unit, bench }: Context, size: 2 | 8): readonly string[] {
  const [a = '', b = ''] = unit.patches.map((patch) => nameOf(patch, bench));
  const lines = size === 2 ? TEXTS.twoAtOnce(bench.seam) : TEXTS.eightAtOnce(bench.seam);
  return [TEXTS.pairSquares(a, b, Math.ceil(unit.count / size)), ...lines, ...ownPress(unit.part, bench), ...overLine(unit.count, size)];
}

function gooseLines({ unit, bench, cuttings }: Context): readonly string[] {
  const { body, wing } = bodyAndWing(unit, cuttings, bench);
  return [...TEXTS.fourAtOnce(body, wing, Math.ceil(unit.count / 4), bench.seam), ...overLine(unit.count, 4)];
}

function cornerLines({ unit, bench, cuttings }: Context): readonly string[] {
  const { body, wing } = bodyAndWing(unit, cuttings, bench);
  return TEXTS.gooseCorners(body, wing, bench.seam);
}

function bodyAndWing({ patches }: Unit, cuttings: readonly (Cutting | undefined)[], bench: Bench): { readonly body: string; readonly wing: string } {
  const body = patches.findIndex((_, i) => cuttings[i]?.shape === 'rectangle' || cuttings[i]?.shape === 'quarter-square triangle');
  const wings = patches.filter((_, i) => i !== body).map((patch) => nameOf(patch, bench));
  return { body: nameOf(patches[body] ?? -1, bench), wing: [...new Set(wings)].join(' and ') };
}

function stripLines({ unit, bench, print, cuttings }: Context): readonly string[] {
  const { part, count } = unit;
  const [cutting] = cuttings;
  if (part.kind !== 'join' || !cutting?.segment) return [];
  const names = part.parts.map((each) => bench.nameOf(each) ?? '');
  const run = runOf(part.seams);
  const perSet = Math.min(...cuttings.map((each) => each?.piecesPerCut ?? 1));
  return [
    TEXTS.stripSets(Math.ceil(count / perSet), TEXTS.row[run === 'other' ? 'aslant' : run], inOrder(names)),
    ...ownPress(part, bench),
    TEXTS.segments(count, print.length(cutting.segment)),
  ];
}

function ownPress(part: Assembly, bench: Bench): readonly string[] {
  if (bench.pressed !== undefined) return [bench.pressed];
  return part.kind === 'join' ? [pressLine(part, part.parts.map((each) => bench.nameOf(each) ?? ''), runOf(part.seams), bench)] : [];
}

function nameOf(patch: number, bench: Bench): string {
  return bench.nameOf({ kind: 'patch', patch }) ?? '';
}

function overLine(count: number, size: number): readonly string[] {
  const over = Math.ceil(count / size) * size - count;
  return over === 0 ? [] : [TEXTS.over(over)];
}
