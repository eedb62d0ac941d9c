/**
 * cutting.md: what to buy and what to cut, for one size. It is made to be read in a diff: one fact a line, always in the same
 * order, so that a change in the pattern shows as the lines it changes.
 */
import { add, fraction, mul, neg, sign, type Exact } from '../exact/number.ts';
import type { UnitSystem } from '../exact/length.ts';
import { packageSize } from '../cutting/backing.ts';
import { joiningAllowance } from '../cutting/binding.ts';
import type { BorderCut, FabricPlan, Piece, RolePlan, TooWide, Unplanned } from '../cutting/plan.ts';
import type { Fabric, Rules } from '../model/pattern.ts';
import { plain, sections, table } from './markdown.ts';
import { UNTITLED, type BookletQuilt, type BookletSource } from './source.ts';
import { stripLines } from './strip-words.ts';
import { counted, cutNoun, listed, printerFor, type Printer } from './words.ts';

/** The cutting list of one quilt. */
export function cuttingMarkdown(source: BookletSource, quilt: BookletQuilt): string {
  const { pattern, quilts } = source;
  const { plan } = quilt;
  const print = printerFor(pattern.rules.units);
  return sections([
    [`# ${plain(pattern.title ?? UNTITLED)}: cutting`],
    [...sizeLines(quilt, pattern.rules, print), ...dropLines(quilt, print)],
    ...(quilts.length > 1 ? sizeTable(source, quilt, print) : []),
    ...headed('Blocks', blockLines(quilt, pattern.rules, print)),
    ...headed('Before cutting', CAUTIONS),
    ...plan.fabrics.flatMap((fabric) => fabricSection(fabric, plan.pieces, print)),
    ...plan.roles.flatMap((role) => roleSection(role, print)),
    ...plan.unplanned.flatMap((unplanned) => unplannedSection(unplanned, plan.pieces, print)),
    ...headed('Borders', plan.borders.map((border) => borderLine(border, print))),
    ...headed('Backing', backingLines(quilt, print)),
    ...headed('Batting', battingLines(quilt, print)),
    ...headed('Binding', bindingLines(quilt, print, pattern.rules.units)),
    ...headed('Too wide', plan.tooWide.map((each) => tooWideLine(each, print))),
  ]);
}

const CAUTIONS = [
  '- Close the blade of the rotary cutter every time it leaves your hand.',
  '- Cut away from yourself, along a ruler with a guard for the fingers.',
  '- Follow the instructions of the maker of your cutter, mat and ruler.',
  '- Wash the fabric first if it may shrink or run, press it, and trim the selvages.',
];

function headed(title: string, lines: readonly string[]): readonly (readonly string[])[] {
  return lines.length > 0 ? [[`## ${title}`], lines] : [];
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
    boughtOf(plan.backing, print),
  ]);
  return [['## Sizes'], table(['size', 'finished', 'blocks', ...fabrics, 'backing'], rows)];
}

function boughtOf(bought: { readonly buy: Exact } | undefined, print: Printer): string {
  return bought ? print.cloth(bought.buy) : '';
}

function blockLines({ layout }: BookletQuilt, { seam }: Rules, print: Printer): readonly string[] {
  const seams = mul(seam, fraction(2));
  return layout.blocks.map(({ layout: block, name, count }) => {
    const raw = { width: add(block.width, seams), height: add(block.height, seams) };
    return `- ${counted(count, `${name} block`)}: ${print.size(block)} finished, ${print.size(raw)} with seams.`;
  });
}

function title({ name, label }: Fabric): string {
  return label === '' || label === name ? name : `${name}: ${plain(label)}`;
}

function fabricSection(plan: FabricPlan, pieces: readonly Piece[], print: Printer): readonly (readonly string[])[] {
  const { fabric, length, buy } = plan;
  return headed(title(fabric), [
    `- Buy ${print.cloth(buy)}.`,
    `- Usable width: ${print.length(fabric.width)}.`,
    `- Length cut: ${print.length(length)}.`,
    ...stripLines(plan, pieces, print),
  ]);
}

/** An assorted role: what of it is cut from each print, whose own sections stand above. */
function roleSection({ fabric, prints, pieces, buy }: RolePlan, print: Printer): readonly (readonly string[])[] {
  return headed(`${title(fabric)} (assorted)`, [
    `- Buy ${print.cloth(buy)} in all, of ${counted(prints.length, 'print')}.`,
    `- ${counted(pieces, 'piece')}, dealt in turn: ${listed(prints.map((each) => `${each.pieces} of ${each.fabric.name}`))}.`,
  ]);
}

const WHY_UNPLANNED: Readonly<Record<Unplanned['why'], string>> = {
  'fat quarters': 'how many fat quarters it takes is not worked out yet',
  'a piece': 'whether the piece is large enough is not worked out yet',
  strips: 'how many precut strips it takes is not worked out yet',
  squares: 'how many precut squares it takes is not worked out yet',
};

function unplannedSection({ fabric, why }: Unplanned, pieces: readonly Piece[], print: Printer): readonly (readonly string[])[] {
  const own = pieces.filter((piece) => piece.fabric.name === fabric.name);
  return headed(title(fabric), [
    `- Pieces only: ${WHY_UNPLANNED[why]}.`,
    ...own.map((piece) => `- Cut ${counted(piece.cutCount, cutNoun(piece))} ${print.size(piece.cut)}${piece.piecesPerCut > 1 ? `, each ${piece.method}` : ''}, for ${piece.for}.`),
  ]);
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
  const { panels, panelLength, seams, buy, fabric } = backing;
  const sewn = seams === 'none' ? '' : `, ${counted(panels - 1, `${seams} seam`)}`;
  return [
    `- Size: ${print.widthByHeight(backing)}.`,
    `- Cut ${counted(panels, 'panel')} ${print.length(panelLength)} long by width of fabric${sewn}.`,
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
  const made = square ? `${counted(strips, 'square')} ${print.length(square)}, cut into bias strips ${print.length(width)} wide` : `${counted(strips, 'strip')} ${print.length(width)} by width of fabric`;
  return [
    `- Length: ${print.length(length)}, the perimeter and ${print.length(joiningAllowance(units))} for joins and corners.`,
    `- Cut ${made}, from ${fabric.name}.`,
    `- ${double ? 'Double: fold the strip in half lengthwise.' : 'Single.'}`,
    `- Bought by itself: ${print.cloth(buy)}.`,
  ];
}

function tooWideLine({ fabric, for: use, needs }: TooWide, print: Printer): string {
  return `- ${use}: needs a width of ${print.length(needs)}, ${fabric.name} has ${print.length(fabric.width)}.`;
}
