/** The steps that join blocks to rows and rows to the quilt, and sew on the borders. */
import { toInches } from '../exact/length.ts';
import { add, equals, fraction, less, max, mul, TWO, type Exact } from '../exact/number.ts';
import type { Measure, Piece } from '../cutting/plan.ts';
import { cuttingOf } from '../cutting/shape.ts';
import { lengthBetween } from '../cutting/sides.ts';
import type { BorderLayout } from '../geometry/layout.ts';
import type { Rules } from '../model/pattern.ts';
import { patchesIn, type Assembly } from '../piecing/plan.ts';
import { centreOf, type SettingPart } from '../piecing/setting.ts';
import type { QuiltSewing } from '../piecing/sewing.ts';
import { plain } from './markdown.ts';
import type { BookletQuilt } from './source.ts';
import type { Chapter } from './steps-blocks.ts';
import { pressLine, short } from './steps-press.ts';
import { sewLines, type Bench } from './steps-sew.ts';
import { TEXTS } from './steps-texts.ts';
import { firstGo, patchName, rawSize } from './steps-units.ts';
import { inOrder, runOf } from './steps-words.ts';
import { listed, type Printer } from './words.ts';

export interface SettingWords {
  readonly quilt: BookletQuilt;
  readonly sewing: QuiltSewing;
  readonly rules: Rules;
  readonly print: Printer;
}

export const ROWS_DRAWING = 'steps/rows.svg';

/** Nothing when the setting has no plan. */
export function settingChapters(words: SettingWords): readonly Chapter[] {
  const { quilt, rules, print } = words;
  const { layout } = quilt;
  const measure = TEXTS.topMeasures(print.widthByHeight(rawSize(layout.centre, rules.seam)));
  const done = TEXTS.topDone(print.widthByHeight(layout), print.widthByHeight(rawSize(layout, rules.seam)));
  const middle = [...middleLines(words), ...trianglesLines(words), ...(layout.borders.length > 0 ? [measure] : [done])];
  const borders = borderChapters(words);
  return [{ title: TEXTS.quiltTop, level: 2, lines: middle }, ...borders.map((chapter, i) => (i + 1 < borders.length ? chapter : { ...chapter, lines: [...chapter.lines, done] }))];
}

function middleLines(words: SettingWords): readonly string[] {
  const { setting, pressing } = words.sewing;
  const centre = centreOf(setting);
  if (!centre) return [];
  const bench = settingBench(words);
  if (patchesIn(centre).length === 1) return [TEXTS.single(bench.nameOf(centre) ?? '')];
  const rows = centre.kind === 'join' && runOf(centre.seams) !== 'across' ? centre.parts : [centre];
  const isDiagonal = words.quilt.layout.spec.setting?.kind === 'on_point';
  const atCentre = new Set(patchesIn(centre));
  const conflicts = pressing.named.filter(({ layout }) => layout === undefined).reduce((total, { count }) => total + count, 0);
  return [
    TEXTS.setOut(ROWS_DRAWING),
    ...(isDiagonal ? [TEXTS.diagonal] : []),
    ...(hasTriangles(setting.parts, atCentre) ? [TEXTS.triangles] : []),
    ...rowLines(rows, bench),
    ...(rows.length > 1 && centre.kind === 'join' ? [isDiagonal ? TEXTS.joinDiagonal : TEXTS.joinTop, TEXTS.match, ...(conflicts === 0 && bench.nests ? [TEXTS.nest] : []), TEXTS.halves, ...longLines(words, atCentre), pressLine(centre, rows.map(() => ''), runOf(centre.seams), bench)] : []),
    ...(conflicts > 0 ? [TEXTS.cannotNest(conflicts)] : []),
  ];
}

/** Seams longer than this creep when they are not pinned: 60" or 150 cm. Common practice, no source. */
function longest({ units }: Rules): Exact {
  return units === 'inches' ? fraction(60) : toInches(fraction(150), 'cm');
}

function longLines({ sewing: { setting }, rules, print }: SettingWords, parts: ReadonlySet<number>): readonly string[] {
  const inside = (setting.assembled?.plan.seams ?? []).flatMap(({ stretches }) => stretches).filter(({ left, right }) => [...left, ...right].every((part) => parts.has(part)));
  const lengths = inside.map((stretch) => lengthBetween(stretch.from, stretch.to));
  const most = max(fraction(0), ...lengths);
  return less(longest(rules), most) ? [TEXTS.longSeams(print.length(most))] : [];
}

/** Rows that are sewn alike are told together. */
function rowLines(rows: readonly Assembly[], bench: Bench): readonly string[] {
  const kinds = new Map<string, { readonly numbers: number[]; readonly lines: (name: string) => readonly string[] }>();
  rows.forEach((row, i) => {
    if (row.kind === 'patch') return;
    const lines = (name: string): readonly string[] => (row.kind === 'join' && isSimple(row, bench) ? simpleRow(row, bench, name) : sewLines(row, bench, name));
    const key = lines('').join('\n');
    const known = kinds.get(key);
    if (known) known.numbers.push(i + 1);
    else kinds.set(key, { numbers: [i + 1], lines });
  });
  return [...kinds.values()].flatMap(({ numbers, lines }) => lines(numbers.length === 1 ? `row ${numbers[0] ?? 1}` : `rows ${listed(numbers.map(String))}`));
}

function isSimple(row: Assembly, bench: Bench): boolean {
  return row.kind === 'join' && row.parts.every((part) => bench.nameOf(part) !== undefined);
}

/** On point too a row runs from end to end: its parts lie beside each other along it. */
function simpleRow(row: Extract<Assembly, { kind: 'join' }>, bench: Bench, name: string): readonly string[] {
  const names = row.parts.map((part) => bench.nameOf(part) ?? '');
  const run = runOf(row.seams);
  return [TEXTS.sewNamedRow(name, TEXTS.row[run === 'other' ? 'aslant' : run], inOrder(names)), pressLine(row, names, run, bench)];
}

/** What the words for the setting are taken from. */
export function settingBench({ quilt, sewing, rules, print }: SettingWords): Bench {
  const { parts } = sewing.setting;
  const names = new Map(quilt.layout.blocks.map(({ layout, name }) => [layout, plain(name)]));
  const nameOf = (part: SettingPart | undefined): string => partName(part, names, { rules, print });
  return {
    sides: sewing.pressing.setting?.sides ?? [],
    clothOf: (index) => short(nameOf(parts[index])),
    outlineOf: () => [],
    nameOf: (part) => (part.kind === 'patch' ? nameOf(parts[part.patch]) : undefined),
    seam: print.length(rules.seam),
    setIn: [],
    lengthOf: (stretch) => print.length(firstGo(stretch, rules)),
    nests: rules.methods.press === undefined && sewing.pressing.conflicts === 0,
  };
}

function partName(part: SettingPart | undefined, names: ReadonlyMap<unknown, string>, { rules, print }: Pick<SettingWords, 'rules' | 'print'>): string {
  if (part?.placement) return names.get(part.placement.block) ?? plain(part.placement.block.instance.name);
  if (!part?.patch) return '';
  const cloth = plain(part.patch.fabric.name);
  const { role } = part.patch;
  if (role === 'side_triangle') return `${cloth} side triangle`;
  if (role === 'corner_triangle') return `${cloth} corner triangle`;
  const name = patchName(part.patch, cuttingOf(part.patch, rules), print);
  if (role === 'sash') return name.replace(/ (square|rectangle|strip|shape) \(/, ' sash (');
  return role === 'cornerstone' ? name.replace(/ (square|rectangle) \(/, ' cornerstone (') : name;
}

function hasTriangles(parts: readonly SettingPart[], at: ReadonlySet<number>): boolean {
  return parts.some(({ patch }, i) => at.has(i) && (patch?.role === 'side_triangle' || patch?.role === 'corner_triangle'));
}

function trianglesLines({ sewing: { setting }, rules, print }: SettingWords): readonly string[] {
  const all = new Set(setting.parts.keys());
  return hasTriangles(setting.parts, all) ? [TEXTS.trianglesTrim(print.length(rules.seam))] : [];
}

function borderChapters(words: SettingWords): readonly Chapter[] {
  const { quilt: { layout } } = words;
  let room: Measure = layout.centre;
  return layout.borders.map((border, i) => {
    const inner = room;
    room = grown(inner, border);
    return { title: TEXTS.borderTitle(i + 1), level: 3, lines: borderLines(border, { number: i + 1, inner, words }) };
  });
}

function grown({ width, height }: Measure, border: BorderLayout): Measure {
  const wide = (side: string): Exact => border.strips.find((strip) => strip.side === side)?.width ?? fraction(0);
  return { width: add(width, add(wide('left'), wide('right'))), height: add(height, add(wide('top'), wide('bottom'))) };
}

interface BorderContext {
  readonly number: number;
  /** The quilt before it. */
  readonly inner: Measure;
  readonly words: SettingWords;
}

function borderLines(border: BorderLayout, { number, inner, words }: BorderContext): readonly string[] {
  const { quilt: { plan }, rules, print } = words;
  const cut = plan.borders.find((each) => each.number === number);
  if (!border.fabric || !cut || border.corners === 'pieced') return [TEXTS.borderPieced, TEXTS.borderPress];
  const cloth = plain(border.fabric.name);
  const joined = plan.pieces.some((piece) => isJoined(piece, number)) ? [TEXTS.borderJoin] : [];
  if (border.corners === 'mitred') {
    const strips = cut.strips.map(({ width, length, count }) => TEXTS.borderStrips(print.widthByHeight({ width, height: length }), count, cloth));
    return [...joined, ...strips, ...TEXTS.borderMitred(print.length(rules.seam)), TEXTS.borderPress];
  }
  const [uprights, levels] = [stripsAt(border, ['left', 'right']), stripsAt(border, ['top', 'bottom'])];
  const size = (strip: Strip): string => print.widthByHeight(cutSize(strip, border, words));
  const sides = uprights[0] ? [TEXTS.borderSides(uprights.length, cloth, size(uprights[0])), TEXTS.borderSew('to the sides'), TEXTS.borderPress] : [];
  const ends = levels[0] ? [TEXTS.borderEnds(levels.length, cloth, size(levels[0])), ...(border.corners === 'squares' ? [TEXTS.borderSquares] : []), TEXTS.borderSew('to top and bottom'), TEXTS.borderPress] : [];
  const sidesFirst = border.corners === 'squares' || !uprights[0] || equals(uprights[0].length, inner.height);
  return [TEXTS.through, ...joined, ...(sidesFirst ? [...sides, ...ends] : [...ends, ...sides])];
}

type Strip = BorderLayout['strips'][number];

function stripsAt({ strips }: BorderLayout, sides: readonly Strip['side'][]): readonly Strip[] {
  return strips.filter(({ side }) => sides.includes(side));
}

/** As the cutting plan has it. */
function cutSize(strip: Strip, border: BorderLayout, { quilt: { plan, layout }, rules }: SettingWords): Measure {
  const number = layout.borders.indexOf(border) + 1;
  const exact = { width: add(strip.width, mul(TWO, rules.seam)), height: add(strip.length, mul(TWO, rules.seam)) };
  const cuts = plan.borders.find((each) => each.number === number)?.strips ?? [];
  const found = cuts.find(({ width, length }) => isJustOver(width, exact.width, rules) && isJustOver(length, exact.height, rules));
  return found ? { width: found.width, height: found.length } : exact;
}

/** Rounded up to the ruler from it. */
function isJustOver(cut: Exact, exact: Exact, { roundUp }: Rules): boolean {
  return !less(cut, exact) && less(cut, add(exact, roundUp));
}

function isJoined({ for: use, method }: Piece, number: number): boolean {
  return use === `border ${number}` && method === 'from strips joined';
}
