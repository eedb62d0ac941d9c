/** Units that are made in a way of their own: several at a time, with corner squares, from strip sets. */
import type { Cutting } from '../cutting/shape.ts';
import { fraction, mul } from '../exact/number.ts';
import type { Way } from '../piecing/making.ts';
import type { Assembly } from '../piecing/plan.ts';
import type { Unit } from '../piecing/units.ts';
import { groupedBy } from '../text/grouped.ts';
import { pressLine } from './steps-press.ts';
import type { Bench } from './steps-sew.ts';
import { TEXTS } from './steps-texts.ts';
import { inOrder, runOf } from './steps-words.ts';
import type { Printer } from './words.ts';

/** How a unit is made, where that is a way of its own; single pieces sewn one by one are none. */
export function wayOfUnit({ made }: Pick<Unit, 'made'>): Exclude<Way, 'singles'> | undefined {
  return made === undefined || made.way === 'singles' ? undefined : made.way;
}

/** The lines to make all units of the kind; undefined for those that are sewn as any part is. */
export function methodLines(unit: Unit, bench: Bench, { print, cuttings }: Pick<Context, 'print' | 'cuttings'>): readonly string[] | undefined {
  const way = wayOfUnit(unit);
  return way && LINES[way]({ unit, bench, print, cuttings });
}

interface Context {
  readonly unit: Unit;
  readonly bench: Bench;
  readonly print: Printer;
  /** Of the unit's patches. */
  readonly cuttings: readonly (Cutting | undefined)[];
}

const LINES: Readonly<Record<Exclude<Way, 'singles'>, (context: Context) => readonly string[]>> = {
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
  if (unit.name === 'flying goose') {
    const { body, wing } = bodyAndWing(unit, cuttings, bench);
    return TEXTS.gooseCorners(body, wing, bench.seam);
  }
  const isCorner = (patch: number): boolean => unit.layout.patches[patch]?.outline.length === 3;
  const corners = groupedBy(unit.patches.filter(isCorner).map((patch) => nameOf(patch, bench)), (name) => name);
  const base = unit.patches.find((patch) => !isCorner(patch)) ?? -1;
  return [TEXTS.begin(nameOf(base, bench)), ...[...corners].flatMap(([name, all]) => TEXTS.flip(name, all.length, bench.seam))];
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
  const perSet = cutting.piecesPerCut;
  const [whole, rest] = [Math.floor(count / perSet), count % perSet];
  const short = print.length(mul(cutting.segment, fraction(rest)));
  const way = TEXTS.row[run === 'other' ? 'aslant' : run];
  return [
    whole === 0 ? TEXTS.shortSet(short, way, inOrder(names)) : TEXTS.stripSets(whole, way, inOrder(names)),
    ...(whole > 0 && rest > 0 ? [TEXTS.oneMoreSet(short)] : []),
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
  const made = Math.ceil(count / size) * size;
  return made === count ? [] : [TEXTS.over(made, count)];
}
