/**
 * cutting.md: what to buy and what to cut, for one size. It is made to be read in a diff: one fact a line, always in the same
 * order, so that a change in the pattern shows as the lines it changes.
 */
import { add, fraction, mul, neg, sign, type Exact } from '../exact/number.ts';
import type { UnitSystem } from '../exact/length.ts';
import { packageSize } from '../cutting/backing.ts';
import { joiningAllowance } from '../cutting/binding.ts';
import { pieceLabel } from '../cutting/labels.ts';
import type { BorderCut, FabricPlan, Piece, TooWide } from '../cutting/plan.ts';
import { stripLength } from '../cutting/stock.ts';
import type { Rules } from '../model/pattern.ts';
import { boughtText } from './bought.ts';
import { fabricSection, headed, roleSection } from './cutting-fabrics.ts';
import { plain, sections, table } from './markdown.ts';
import { UNTITLED, type BookletQuilt, type BookletSource } from './source.ts';
import { counted, cutNoun, listed, printerFor, type Printer } from './words.ts';

export interface CuttingOptions {
  /** The files that its fabrics' cutting layouts are drawn in, in the order of the plan. */
  readonly drawings?: readonly string[];
}

/** The cutting list of one quilt. */
export function cuttingMarkdown(source: BookletSource, quilt: BookletQuilt, { drawings = [] }: CuttingOptions = {}): string {
  const { pattern, quilts } = source;
  const { plan } = quilt;
  const print = printerFor(pattern.rules.units);
  return sections([
    [`# ${plain(pattern.title ?? UNTITLED)}: cutting`],
    [...sizeLines(quilt, pattern.rules, print), ...dropLines(quilt, print)],
    ...(quilts.length > 1 ? sizeTable(source, quilt, print) : []),
    ...colourwayTable(source),
    ...headed('Blocks', blockLines(quilt, pattern.rules, print)),
    ...headed('Before cutting', [...CAUTIONS, ...tableLines(pattern.rules)]),
    ...plan.fabrics.flatMap((fabric, i) => fabricSection(fabric, { pieces: plan.pieces, print, units: pattern.rules.units, ...(drawings[i] === undefined ? {} : { drawing: `\`${drawings[i]}\`` }) })),
    ...plan.roles.flatMap((role) => roleSection(role, print)),
    ...headed('Borders', plan.borders.map((border) => borderLine(border, print))),
    ...headed('Backing', backingLines(quilt, print)),
    ...headed('Batting', battingLines(quilt, print)),
    ...headed('Binding', bindingLines(quilt, print, pattern.rules.units)),
    ...headed('Hanging sleeve', sleeveLines(quilt, print)),
    ...headed('Too wide', plan.tooWide.map((each) => tooWideLine(each, print))),
    ...headed('Labels', labelLines(plan.pieces, print)),
  ]);
}

const CAUTIONS = [
  '- Close the blade of the rotary cutter every time it leaves your hand.',
  '- Cut away from yourself, along a ruler with a guard for the fingers.',
  '- Follow the instructions of the maker of your cutter, mat and ruler.',
  '- Wash the fabric first if it may shrink or run, press it, and trim the selvages.',
];

/** What the plan takes for granted at the table. */
function tableLines({ layers = 1 }: Rules): readonly string[] {
  const stack = layers === 1 ? 'Two layers lie under the cutter' : `${layers} folded fabrics lie on one another, ${2 * layers} layers under the cutter`;
  return [
    '- Fold the fabric once, selvage on selvage, and straighten its end with one cut; the spare covers that.',
    `- ${stack}, and cuts are counted so. Open the fold for what is longer than half the width.`,
    '- Cut in the order given: the widest strips first, and from each strip the tallest pieces first.',
  ];
}

/** A letter for each kind of piece, as in the drawings: sort the pieces by it as they are cut. */
function labelLines(pieces: readonly Piece[], print: Printer): readonly string[] {
  return pieces.map((piece, i) => `- ${pieceLabel(i)}: ${piece.fabric.name}, ${counted(piece.cutCount, cutNoun(piece))} ${print.size(piece.cut)}, for ${piece.for}.`);
}

function sizeLines({ name, layout }: BookletQuilt, { seam, roundUp }: Rules, print: Printer): readonly string[] {
  return [
    `- ${name === null ? 'Size' : `Size ${name}`}: ${print.widthByHeight(layout)} finished, without the binding.`,
    `- Seams: ${print.length(seam)}; cut sizes include them and are rounded up to ${print.length(roundUp)}.`,
  ];
}

/** How the quilt hangs over the bed it is for. */
function dropLines({ plan: { drop } }: BookletQuilt, print: Printer): readonly string[] {
  if (!drop) return [];
  const { bed, mattress, sides, foot } = drop;
  return [`- On a ${bed.replaceAll('_', ' ')} (mattress ${print.widthByHeight(mattress)}) ${hang(sides, 'at each side', print)}, ${hang(foot, 'at the foot', print)}, its head at the head of the mattress.`];
}

function hang(drop: Exact, where: string, print: Printer): string {
  return sign(drop) < 0 ? `${print.length(neg(drop))} of the mattress shows ${where}` : `${print.length(drop)} hangs ${where}`;
}

/** All sizes side by side, with what each takes of every fabric. */
function sizeTable({ quilts }: BookletSource, shown: BookletQuilt, print: Printer): readonly (readonly string[])[] {
  const fabrics = [...new Set(quilts.flatMap(({ plan }) => plan.fabrics.map(({ fabric }) => fabric.name)))];
  const rows = quilts.map(({ name, layout, plan }) => [
    name === shown.name ? `**${name ?? ''}**` : (name ?? ''),
    print.widthByHeight(layout),
    `${layout.blocks.reduce((total, { count }) => total + count, 0)}`,
    ...fabrics.map((fabric) => boughtOf(plan.fabrics.find((each) => each.fabric.name === fabric), print)),
    plan.backing ? print.cloth(plan.backing.buy) : '',
  ]);
  return [['## Sizes'], table(['size', 'finished', 'blocks', ...fabrics, 'backing'], rows)];
}

/** What the fabrics are in each colourway, so that the table of sizes is a shopping list for all of them. */
function colourwayTable({ pattern: { colorways, fabrics }, quilts }: BookletSource): readonly (readonly string[])[] {
  const used = new Set(quilts.flatMap(({ plan }) => plan.fabrics.map(({ fabric }) => fabric.name)));
  if (colorways.length === 0) return [];
  const rows = [...fabrics.values()].filter(({ name }) => used.has(name)).map(({ name, label }) => [name, plain(label), ...colorways.map(({ colours }) => plain(colours.get(name)?.label ?? label))]);
  return [['## Colourways'], table(['fabric', 'as declared', ...colorways.map(({ name }) => name)], rows)];
}

function boughtOf(plan: FabricPlan | undefined, print: Printer): string {
  return plan ? boughtText(plan, print) : '';
}

function blockLines({ layout }: BookletQuilt, { seam }: Rules, print: Printer): readonly string[] {
  const seams = mul(seam, fraction(2));
  return layout.blocks.map(({ layout: block, name, count }) => {
    const raw = { width: add(block.width, seams), height: add(block.height, seams) };
    return `- ${counted(count, `${name} block`)}: ${print.size(block)} finished, ${print.size(raw)} with seams.`;
  });
}

const CORNERS: Readonly<Record<BorderCut['corners'], string>> = {
  butted: 'butted corners',
  mitred: 'mitred corners',
  squares: 'corner squares',
  pieced: 'pieced',
};

function borderLine({ number, fabric, corners, lengthwise, strips, width }: BorderCut, print: Printer): string {
  const cut = listed(strips.map((strip) => `${strip.count} of ${print.widthByHeight({ width: strip.width, height: strip.length })}`));
  return `- Border ${number}: ${fabric.name}, ${print.length(width)} finished, ${CORNERS[corners]}${lengthwise ? ', cut along the selvage' : ''}: ${cut}.`;
}

function backingLines({ plan: { backing } }: BookletQuilt, print: Printer): readonly string[] {
  if (!backing) return [];
  const { panels, panelLength, seams, buy, fabric, clothWidth } = backing;
  const sewn = seams === 'none' ? '' : `, ${counted(panels - 1, `${seams} seam`)}`;
  return [
    `- Size: ${print.widthByHeight(backing)}.`,
    `- Cut ${counted(panels, 'panel')} ${print.length(panelLength)} long by width of fabric (${print.length(clothWidth)} usable)${sewn}.`,
    `- Buy ${print.cloth(buy)}${fabric ? ` of ${fabric.name}, besides what is cut from it above` : ''}.`,
  ];
}

function battingLines({ plan: { batting } }: BookletQuilt, print: Printer): readonly string[] {
  if (!batting) return [];
  const size = packageSize(batting.package);
  return [`- Size: ${print.widthByHeight(batting)}.`, `- Package: ${batting.package}${size === undefined ? '' : ` (${size})`}.`];
}

function bindingLines({ plan: { binding } }: BookletQuilt, print: Printer, units: UnitSystem): readonly string[] {
  if (!binding) return [];
  const { fabric, width, double, square, strips, length, buy } = binding;
  const isSold = fabric.source.kind === 'yardage';
  const made = square ? `${counted(strips, 'square')} ${print.length(square)}, cut into bias strips ${print.length(width)} wide` : `${counted(strips, 'strip')} ${print.length(width)} by ${isSold ? 'width of fabric' : print.length(stripLength(fabric))}`;
  return [
    `- Length: ${print.length(length)}, the perimeter and ${print.length(joiningAllowance(units))} for joins and corners.`,
    `- Cut ${made}, from ${fabric.name}.`,
    `- ${double ? 'Double: fold the strip in half lengthwise.' : 'Single.'}`,
    ...(isSold ? [`- Bought by itself: ${print.cloth(buy)}.`] : []),
  ];
}

function sleeveLines({ plan: { sleeve } }: BookletQuilt, print: Printer): readonly string[] {
  if (!sleeve) return [];
  const { fabric, cut, strips } = sleeve;
  const joined = strips > 1 ? ', joined end to end' : '';
  return [`- ${print.length(cut.width)} by ${print.length(cut.height)}, from ${counted(strips, 'strip')} of ${fabric.name}${joined}.`, '- Hem the short ends, fold it lengthwise wrong sides together, and sew it under the top edge of the back.'];
}

function tooWideLine({ fabric, for: use, needs, cloth }: TooWide, print: Printer): string {
  if (cloth) return `- ${use}: needs ${print.widthByHeight(cloth.needs)}, a ${cloth.kind} of ${fabric.name} is ${print.widthByHeight(cloth.has)}.`;
  return `- ${use}: needs a width of ${print.length(needs)}, ${fabric.name} has ${print.length(fabric.width)}.`;
}
