/**
 * cutting.md: what to buy and what to cut, for one size. It is made to be read in a diff: one fact a line, always in the same
 * order, so that a change in the pattern shows as the lines it changes.
 */
import { add, fraction, mul, neg, sign, type Exact } from '../exact/number.ts';
import { packageSize } from '../cutting/backing.ts';
import { joiningAllowance } from '../cutting/binding.ts';
import { pieceLabel } from '../cutting/labels.ts';
import type { BorderCut, FabricPlan, Piece, TooWide } from '../cutting/plan.ts';
import { stripLength } from '../cutting/stock.ts';
import type { Rules } from '../model/pattern.ts';
import { boughtText } from './bought.ts';
import { fabricSection, headed, roleSection } from './cutting-fabrics.ts';
import { plain, sections, table } from './markdown.ts';
import type { BookletQuilt, BookletSource } from './source.ts';
import { useWords, type Telling } from './strip-words.ts';
import { cutNoun, printerFor } from './words.ts';
import { cuttingWordsOf } from './words/languages.ts';

export interface CuttingOptions {
  /** The files that its fabrics' cutting layouts are drawn in, in the order of the plan. */
  readonly drawings?: readonly string[];
}

/** The cutting list of one quilt. */
export function cuttingMarkdown(source: BookletSource, quilt: BookletQuilt, { drawings = [] }: CuttingOptions = {}): string {
  const { pattern, quilts } = source;
  const { plan } = quilt;
  const words = cuttingWordsOf(pattern.language);
  const { heads } = words;
  const { units } = pattern.rules;
  const telling: Telling = { words, print: printerFor(units, words.voice), units };
  return sections([
    [`# ${words.title(plain(pattern.title ?? words.untitled))}`],
    [...sizeLines(quilt, pattern.rules, telling), ...dropLines(quilt, telling)],
    ...(quilts.length > 1 ? sizeTable(source, quilt, telling) : []),
    ...colourwayTable(source, telling),
    ...headed(heads.blocks, blockLines(quilt, pattern.rules, telling)),
    ...headed(heads.before, [...words.cautions, ...words.table(pattern.rules.layers ?? 1)].map((line) => `- ${line}`)),
    ...plan.fabrics.flatMap((fabric, i) => fabricSection(fabric, { pieces: plan.pieces, telling, ...(drawings[i] === undefined ? {} : { drawing: `\`${drawings[i]}\`` }) })),
    ...plan.roles.flatMap((role) => roleSection(role, telling)),
    ...headed(heads.borders, plan.borders.map((border) => borderLine(border, telling))),
    ...headed(heads.backing, backingLines(quilt, telling)),
    ...headed(heads.batting, battingLines(quilt, telling)),
    ...headed(heads.binding, bindingLines(quilt, telling)),
    ...headed(heads.sleeve, sleeveLines(quilt, telling)),
    ...headed(heads.tooWide, plan.tooWide.map((each) => tooWideLine(each, telling))),
    ...headed(heads.labels, labelLines(plan.pieces, telling)),
  ]);
}

/** A letter for each kind of piece, as in the drawings: sort the pieces by it as they are cut. */
function labelLines(pieces: readonly Piece[], { words, print }: Telling): readonly string[] {
  return pieces.map((piece, i) => `- ${words.label(pieceLabel(i), piece.fabric.name, words.cut(piece.cutCount, cutNoun(piece), print.size(piece.cut)), useWords(piece, 'label', words))}`);
}

function sizeLines({ name, layout }: BookletQuilt, { seam, roundUp }: Rules, { words, print }: Telling): readonly string[] {
  return [`- ${words.size(name, print.widthByHeight(layout))}`, `- ${words.seams(print.length(seam), print.length(roundUp))}`];
}

/** How the quilt hangs over the bed it is for. */
function dropLines({ plan: { drop } }: BookletQuilt, telling: Telling): readonly string[] {
  if (!drop) return [];
  const { bed, mattress, sides, foot } = drop;
  const { words, print } = telling;
  return [`- ${words.drop(bed.replaceAll('_', ' '), print.widthByHeight(mattress), hang(sides, 'sides', telling), hang(foot, 'foot', telling))}`];
}

function hang(drop: Exact, where: 'sides' | 'foot', { words, print }: Telling): string {
  return sign(drop) < 0 ? words.shows(print.length(neg(drop)), where) : words.hangs(print.length(drop), where);
}

/** All sizes side by side, with what each takes of every fabric. */
function sizeTable({ quilts }: BookletSource, shown: BookletQuilt, telling: Telling): readonly (readonly string[])[] {
  const { words, print } = telling;
  const fabrics = [...new Set(quilts.flatMap(({ plan }) => plan.fabrics.map(({ fabric }) => fabric.name)))];
  const rows = quilts.map(({ name, layout, plan }) => [
    name === shown.name ? `**${name ?? ''}**` : (name ?? ''),
    print.widthByHeight(layout),
    `${layout.blocks.reduce((total, { count }) => total + count, 0)}`,
    ...fabrics.map((fabric) => boughtOf(plan.fabrics.find((each) => each.fabric.name === fabric), telling)),
    plan.backing ? print.cloth(plan.backing.buy) : '',
  ]);
  return [[`## ${words.heads.sizes}`], table(words.sizeColumns(fabrics), rows)];
}

/** What the fabrics are in each colourway, so that the table of sizes is a shopping list for all of them. */
function colourwayTable({ pattern: { colorways, fabrics }, quilts }: BookletSource, { words }: Telling): readonly (readonly string[])[] {
  const used = new Set(quilts.flatMap(({ plan }) => plan.fabrics.map(({ fabric }) => fabric.name)));
  if (colorways.length === 0) return [];
  const rows = [...fabrics.values()].filter(({ name }) => used.has(name)).map(({ name, label }) => [name, plain(label), ...colorways.map(({ colours }) => plain(colours.get(name)?.label ?? label))]);
  return [[`## ${words.heads.colourways}`], table(words.colourColumns(colorways.map(({ name }) => name)), rows)];
}

function boughtOf(plan: FabricPlan | undefined, { words, print }: Telling): string {
  return plan ? boughtText(plan, print, words) : '';
}

function blockLines({ layout }: BookletQuilt, { seam }: Rules, { words, print }: Telling): readonly string[] {
  const seams = mul(seam, fraction(2));
  return layout.blocks.map(({ layout: block, name, count }) => {
    const raw = { width: add(block.width, seams), height: add(block.height, seams) };
    return `- ${words.block(count, name, print.size(block), print.size(raw))}`;
  });
}

function borderLine({ number, fabric, corners, lengthwise, strips, width }: BorderCut, { words, print }: Telling): string {
  const cut = words.listed(strips.map((strip) => words.of(strip.count, print.widthByHeight({ width: strip.width, height: strip.length }))));
  return `- ${words.border({ number, fabric: fabric.name, width: print.length(width), corners, lengthwise, strips: cut })}`;
}

function backingLines({ plan: { backing } }: BookletQuilt, { words, print }: Telling): readonly string[] {
  if (!backing) return [];
  const { panels, panelLength, seams, buy, fabric, clothWidth } = backing;
  return [
    `- ${words.measure(print.widthByHeight(backing))}`,
    `- ${words.panels(panels, print.length(panelLength), print.length(clothWidth), seams)}`,
    `- ${words.backingBuy(print.cloth(buy), fabric?.name)}`,
  ];
}

function battingLines({ plan: { batting } }: BookletQuilt, { words, print }: Telling): readonly string[] {
  if (!batting) return [];
  return [`- ${words.measure(print.widthByHeight(batting))}`, `- ${words.package(batting.package, packageSize(batting.package))}`];
}

function bindingLines({ plan: { binding } }: BookletQuilt, { words, print, units }: Telling): readonly string[] {
  if (!binding) return [];
  const { fabric, width, double, square, strips, length, buy } = binding;
  const isSold = fabric.source.kind === 'yardage';
  const made = square ? words.bindingSquares(strips, print.length(square), print.length(width), fabric.name) : words.bindingStrips(strips, print.length(width), isSold ? undefined : print.length(stripLength(fabric)), fabric.name);
  return [
    `- ${words.bindingLength(print.length(length), print.length(joiningAllowance(units)))}`,
    `- ${made}`,
    `- ${double ? words.double : words.single}`,
    ...(isSold ? [`- ${words.bindingBuy(print.cloth(buy))}`] : []),
  ];
}

function sleeveLines({ plan: { sleeve } }: BookletQuilt, { words, print }: Telling): readonly string[] {
  if (!sleeve) return [];
  const { fabric, cut, strips } = sleeve;
  return [`- ${words.sleeve(print.length(cut.width), print.length(cut.height), strips, fabric.name)}`, `- ${words.sleeveSew}`];
}

function tooWideLine({ fabric, for: use, needs, cloth }: TooWide, { words, print }: Telling): string {
  const part = words.use(use, 'label');
  if (cloth) return `- ${words.tooLarge(part, print.widthByHeight(cloth.needs), cloth.kind, fabric.name, print.widthByHeight(cloth.has))}`;
  return `- ${words.tooWide(part, print.length(needs), fabric.name, print.length(fabric.width))}`;
}
