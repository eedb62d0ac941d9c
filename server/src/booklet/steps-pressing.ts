/** The pressing plan in words: a table of every kind of seam with its side and the reason, and the crossings that cannot nest. */
import type { Exact } from '../exact/number.ts';
import { patchesIn, type Assembly, type Join, type Seam } from '../piecing/plan.ts';
import type { PressedSeams, PressReason } from '../piecing/pressing.ts';
import { centreOf } from '../piecing/setting.ts';
import type { QuiltSewing } from '../piecing/sewing.ts';
import type { Unit } from '../piecing/units.ts';
import { groupedBy } from '../text/grouped.ts';
import { plain } from './markdown.ts';
import { benchOf, type BlockWords } from './steps-blocks.ts';
import { clothTowards, short, sideOfSeam, wayWords } from './steps-press.ts';
import { partNames, placed, type Bench } from './steps-sew.ts';
import { ROWS_DRAWING, settingBench, type SettingWords } from './steps-setting.ts';
import { TEXTS } from './steps-texts.ts';
import { pressedWays } from './steps-turns.ts';
import { runOf, sideOf } from './steps-words.ts';
import { listed } from './words.ts';

export interface PressTable {
  readonly head: readonly string[];
  /** As many cells as the head has. */
  readonly rows: readonly (readonly string[])[];
}

export type PressWords = BlockWords & SettingWords;

/** Every kind of seam of the blocks and the setting once, borders aside. */
export function pressTable(words: PressWords): PressTable {
  const { plan, sewing } = words;
  const blocks = plan.blocks.flatMap(({ sewn, whole, units }) => {
    const labelled = units.map((unit) => [unit, `Unit ${plan.apart.get(unit.number) ?? 0}`] as const);
    const own = whole && !plan.apart.has(whole.number) ? [[whole, listed(sewn.map(({ name }) => plain(name)))] as const] : [];
    return [...labelled, ...own].flatMap(([unit, label]) => unitRows(unit, label, words));
  });
  return { head: TEXTS.pressTable, rows: [...blocks, ...settingRows(words, sewing)].map(({ where, seam, press, why, count }) => [where, seam, press, why, `${count}`]) };
}

/** What is said before the table. */
export function pressLines({ sewing: { pressing, blocks, setting }, print }: PressWords): readonly string[] {
  const { nested, open, conflicts, named, proven } = pressing;
  const names = new Map<unknown, string>(blocks.map(({ layout, name }) => [layout, plain(name)]));
  const at = ({ x, y }: { readonly x: Exact; readonly y: Exact }): string => TEXTS.at(print.length(x), print.length(y));
  const places = named.map(({ count, at: point, layout, between }) => {
    const parts = [...new Set(between.map((each) => (each ? (names.get(each) ?? '') : TEXTS.rowsName.toLowerCase())))];
    return TEXTS.conflict(count, layout ? TEXTS.conflictInBlock(names.get(layout) ?? '', at(point)) : TEXTS.conflictBetween(parts.length === 1 ? `two ${parts[0] ?? ''}` : listed(parts), count, at(point)));
  });
  const intro = nested + open + conflicts === 0 && !setting.assembled ? [] : TEXTS.pressingIntro(nested, open);
  return [...intro, ...(conflicts > 0 ? [TEXTS.conflicts(conflicts, proven), ...places] : [])];
}

/** The drawings with an arrow for every seam: those of blocks with units, and of the rows. */
export function pressPictures({ plan, sewing: { setting } }: PressWords): readonly string[] {
  const centre = centreOf(setting);
  return [
    ...plan.blocks.filter(hasPressDrawing).map(({ number, sewn }) => TEXTS.pressPicture(listed(sewn.map(({ name }) => plain(name))), pressDrawing(number))),
    ...(centre && patchesIn(centre).length > 1 ? [TEXTS.pressPicture(TEXTS.rowsName, ROWS_DRAWING)] : []),
  ];
}

export function pressDrawing(block: number): string {
  return `steps/press-${block}.svg`;
}

/** Blocks without units of their own show every arrow as they are drawn apart. */
export function hasPressDrawing({ whole, units }: BlockWords['plan']['blocks'][number]): boolean {
  return whole !== undefined && units.length > 0;
}

interface Row {
  readonly where: string;
  readonly seam: string;
  readonly press: string;
  readonly why: string;
  readonly count: number;
}

function unitRows(unit: Unit, label: string, words: BlockWords): readonly Row[] {
  const bench = benchOf(unit, words);
  const pressed = words.sewing.pressing.blocks.find(({ layout }) => layout === unit.layout);
  const ways = pressedWays(unit, words.sewing);
  const rows = joinsIn(unit.part, bench).flatMap((join) => joinRows(join, bench, pressed).map((row) => (ways !== undefined && join === outermost(unit.part) ? turned(row, ways) : row)));
  return merged(rows.map((row) => ({ ...row, where: label, count: unit.count })));
}

function turned(row: Row, ways: string): Row {
  return { ...row, press: ways === 'as drawn' ? TEXTS.eachItsWay : ways, why: TEXTS.why.turned };
}

function outermost(part: Assembly): Assembly {
  return part.kind === 'finish' || part.kind === 'flip' ? outermost(part.part) : part;
}

/** The joins of a part that are sewn there: not those within what has a name. */
function joinsIn(part: Assembly, bench: Bench): readonly Join[] {
  if (part.kind === 'patch') return [];
  if (part.kind !== 'join') return joinsIn(part.part, bench);
  return [...part.parts.filter((each) => bench.nameOf(each) === undefined).flatMap((each) => joinsIn(each, bench)), part];
}

function joinRows(join: Join, bench: Bench, pressed: PressedSeams | undefined): readonly Row[] {
  const names = partNames(join, bench).map((name) => (name === '' ? TEXTS.sewnBefore : short(name)));
  const isRow = placed(join).run !== 'other';
  return join.seams.map((seam, i) => {
    const one = i > 0 && !isRow ? TEXTS.sewnBefore : (names[i] ?? '');
    const two = names[i + 1] ?? '';
    const { press, why } = wayAndWhy(seam, bench, pressed);
    const goal = partTowards(join, i, [one, two], bench);
    return { where: '', seam: TEXTS.seamBetween(one, two), press: goal === undefined ? press : TEXTS.towards(goal), why, count: 1 };
  });
}

/** The part that a seam goes to, where one of the two is no single piece and their names tell them apart. */
function partTowards({ parts, seams }: Join, index: number, [one, two]: readonly [string, string], bench: Bench): string | undefined {
  const [seam, added, before] = [seams[index], parts[index + 1], parts[index]];
  const [stretch] = seam?.stretches ?? [];
  const side = seam && sideOfSeam(seam, bench.sides);
  if (!stretch || !added || side === undefined || side === 'open' || one === two || (added.kind === 'patch' && before?.kind === 'patch')) return undefined;
  return sideOf(added, stretch) === side ? two : one;
}

function wayAndWhy(seam: Seam, bench: Bench, pressed: PressedSeams | undefined): Pick<Row, 'press' | 'why'> {
  const side = sideOfSeam(seam, bench.sides);
  const [stretch] = seam.stretches;
  if (side === undefined || !stretch) return { press: TEXTS.why.mixed, why: reasonWords(seam, pressed) };
  const cloth = clothTowards(stretch, side, bench.clothOf);
  const press = side === 'open' ? 'open' : cloth === undefined ? wayWords(stretch, side) : TEXTS.towards(cloth);
  return { press, why: reasonWords(seam, pressed) };
}

function reasonWords({ number }: Seam, pressed: PressedSeams | undefined): string {
  const reasons: readonly PressReason[] = pressed?.reasons[number] ?? [];
  return [...new Set(reasons)].map((reason) => TEXTS.why[reason]).join(', ');
}

function settingRows(words: SettingWords, { setting, pressing }: QuiltSewing): readonly Row[] {
  const centre = centreOf(setting);
  if (!centre) return [];
  const bench = settingBench(words);
  const pressed = pressing.setting;
  if (centre.kind !== 'join' || runOf(centre.seams) === 'across' || runOf(centre.seams) === 'other') {
    return merged(joinsIn(centre, bench).flatMap((join) => joinRows(join, bench, pressed)).map((row) => ({ ...row, where: TEXTS.rowsName })));
  }
  const rows = centre.parts.map((part, i) => ({ number: i + 1, rows: merged(joinsIn(part, bench).flatMap((join) => joinRows(join, bench, pressed))) }));
  const alike = [...groupedBy(rows, (row) => JSON.stringify(row.rows)).values()];
  const inRows = alike.flatMap((same) => (same[0]?.rows ?? []).map((row) => ({ ...row, where: same.length === 1 ? `row ${same[0]?.number ?? 1}` : `rows ${listed(same.map(({ number }) => `${number}`))}`, count: row.count * same.length })));
  return [...inRows, ...rowSeams(centre, bench, pressed)];
}

/** Neighbouring seams between rows that are pressed alike are one row of the table. */
function rowSeams({ seams }: Join, bench: Bench, pressed: PressedSeams | undefined): readonly Row[] {
  const runs: { first: number; last: number; press: string; why: string }[] = [];
  seams.forEach((seam, i) => {
    const { press, why } = wayAndWhy(seam, { ...bench, clothOf: () => '' }, pressed);
    const open = runs.at(-1);
    if (open?.press === press && open.why === why) open.last = i + 2;
    else runs.push({ first: i + 1, last: i + 2, press, why });
  });
  return runs.map(({ first, last, press, why }) => ({ where: TEXTS.betweenRows, seam: TEXTS.rowsTo(first, last), press, why, count: last - first }));
}

/** Rows that say the same are one, counted. */
function merged(rows: readonly Row[]): readonly Row[] {
  return [...groupedBy(rows, ({ where, seam, press, why }) => JSON.stringify([where, seam, press, why])).values()].map((same) => ({
    ...(same[0] as Row),
    count: same.reduce((sum, { count }) => sum + count, 0),
  }));
}
