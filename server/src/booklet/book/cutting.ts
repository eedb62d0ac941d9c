/** The cutting of one size: a drawing to scale, the strips and the pieces of every fabric, then borders, backing, batting, binding. */
import { cuttingLayouts } from '../../drawing/cutting-layouts.ts';
import { pieceLabel } from '../../cutting/labels.ts';
import type { BorderCut, Cloth, FabricPlan, Piece, RolePlan, Strip, TooWide } from '../../cutting/plan.ts';
import { cutNoun } from '../words.ts';
import type { Block, BookChapter, Cell, Figure, Table } from './book.ts';
import { boughtText, cell, fabricTitle, type BookContext } from './context.ts';

export function cuttingChapter(context: BookContext): BookChapter {
  const { quilt: { plan }, words: { cutting } } = context;
  return {
    id: 'cutting',
    title: cutting.title,
    begins: 'page',
    blocks: [
      { kind: 'paragraph', text: cutting.intro },
      ...plan.fabrics.flatMap((fabric) => fabricBlocks(fabric, context)),
      ...plan.roles.flatMap((role) => roleBlocks(role, context)),
      ...plan.tooWide.map((each): Block => ({ kind: 'paragraph', text: tooWideText(each, context) })),
      ...borderBlocks(plan.borders, context),
      ...backingBlocks(context),
      ...battingBlocks(context),
      ...bindingBlocks(context),
      ...sleeveBlocks(context),
    ],
  };
}

function tooWideText({ fabric, for: use, needs, cloth }: TooWide, { words: { cutting }, print }: BookContext): string {
  if (cloth) return cutting.tooWide(use, print.widthByHeight(cloth.needs), fabric.name, print.widthByHeight(cloth.has));
  return cutting.tooWide(use, print.length(needs), fabric.name, print.length(fabric.width));
}

function fabricBlocks(plan: FabricPlan, context: BookContext): readonly Block[] {
  const { fabric, length, strips, counted } = plan;
  const { words: { cutting }, print } = context;
  const used = counted ? cutting.each(print.widthByHeight(counted)) : cutting.widthAndLength(print.length(fabric.width), print.length(length));
  return [
    { kind: 'heading', level: 2, text: fabricTitle(fabric), swatch: fabric.colour },
    { kind: 'paragraph', text: `${cutting.buy(boughtText(plan, context))} ${used}` },
    ...layoutFigures(plan, context),
    ...(strips.length > 0 ? [stripTable(plan, context)] : []),
    pieceTable(fabric.name, context),
  ];
}

function layoutFigures(plan: FabricPlan, { source: { pattern }, quilt, words: { cutting, voice } }: BookContext): readonly Block[] {
  return cuttingLayouts(plan, quilt.plan.pieces, pattern.rules.units).map(({ count, scene }): Figure => ({
    kind: 'figure',
    scene: { ...scene, labels: (scene.labels ?? []).map((label) => ({ ...label, text: label.text.replace(/(?<=\d)\.(?=\d)/g, voice.point) })) },
    alt: cutting.layout(plan.fabric.name),
    caption: plan.cloths.length > 1 || count > 1 ? `${cutting.layout(plan.fabric.name)} ${cutting.layoutTimes(count)}` : cutting.layout(plan.fabric.name),
    size: 'large',
  }));
}

/** One row a kind of strip; off the bolt they run from selvage to selvage, or as far along it as the cloth is long. */
function stripTable({ fabric, cloths, counted }: FabricPlan, context: BookContext): Table {
  const { words: { cutting }, print } = context;
  const size = (strip: Strip, { across, down, turned }: Cloth): string => {
    if (turned) return cutting.stripAlong(print.length(strip.width), print.length(down));
    return counted ? print.widthByHeight({ width: strip.width, height: across }) : cutting.stripAcross(print.length(strip.width));
  };
  return {
    kind: 'table',
    title: `${cutting.strips}: ${fabric.name}`,
    head: cutting.stripHead,
    rows: cloths.flatMap((cloth) => cloth.strips.map((strip) => [together(cutting.strip(strip.count * cloth.count)), size(strip, cloth), subcutText(strip, context)].map(cell))),
  };
}

function subcutText({ subcuts }: Strip, { words: { cutting } }: BookContext): string {
  return subcuts.map(({ piece, count, stacked }) => cutting.subcut(count, pieceLabel(piece), stacked ?? 1)).join(', ');
}

function pieceTable(fabric: string, context: BookContext): Table {
  const { quilt: { plan }, words: { cutting } } = context;
  const own = plan.pieces.flatMap((piece, i) => (piece.fabric.name === fabric ? [{ piece, label: pieceLabel(i) }] : []));
  return { kind: 'table', title: `${cutting.pieces}: ${fabric}`, head: cutting.pieceHead, rows: own.map(({ piece, label }) => pieceRow(piece, label, context)) };
}

function pieceRow(piece: Piece, label: string, { words: { cutting }, print }: BookContext): readonly Cell[] {
  const { cut, cutCount, pieces, shape, method } = piece;
  const size = shape === 'strip' && method !== 'plain' ? print.widthByHeight(cut) : print.size(cut);
  return [label, together(cutting.cut(cutCount, cutNoun(piece))), size, thenText(piece, { cutting, print }), together(cutting.have(pieces, shape)), useText(piece, cutting)].map(cell);
}

/** A number stays on the line of its noun. */
function together(text: string): string {
  return text.replace(/^(\d+) /, '$1\u00A0');
}

function useText({ for: use, shared }: Piece, cutting: BookContext['words']['cutting']): string {
  return (shared ?? [use]).map(cutting.for).join(', ');
}

function thenText({ method, cutCount, segment, joined }: Piece, { cutting, print }: { readonly cutting: BookContext['words']['cutting']; readonly print: BookContext['print'] }): string {
  const parts = [
    cutting.then(method, cutCount),
    ...(segment ? [cutting.segment(print.length(segment))] : []),
    ...(joined && joined.length > 0 ? [cutting.joined(joined.map((each) => cutting.joinedPart(each.count, print.length(each.length))).join(', '))] : []),
  ];
  return parts.filter((part) => part !== '').join(', ');
}

function roleBlocks({ fabric, prints, pieces, buy }: RolePlan, { words: { cutting, need }, print }: BookContext): readonly Block[] {
  return [
    { kind: 'heading', level: 2, text: need.assorted(fabricTitle(fabric), prints.length) },
    { kind: 'paragraph', text: `${cutting.buy(print.cloth(buy))} ${cutting.dealt(pieces, prints.map((each) => cutting.print(each.pieces, each.fabric.name)).join(', '))}` },
  ];
}

function borderBlocks(borders: readonly BorderCut[], { words: { cutting }, print }: BookContext): readonly Block[] {
  if (borders.length === 0) return [];
  const strips = (border: BorderCut): string => border.strips.map((strip) => cutting.borderStrip(strip.count, print.widthByHeight({ width: strip.width, height: strip.length }))).join(', ');
  const corners = (border: BorderCut): string => [cutting.corners[border.corners], ...(border.lengthwise ? [cutting.lengthwise] : [])].join(', ');
  return [
    { kind: 'heading', level: 2, text: cutting.borders },
    { kind: 'table', title: cutting.borders, head: cutting.borderHead, rows: borders.map((border) => [`${border.number}`, border.fabric.name, print.length(border.width), corners(border), strips(border)].map(cell)) },
  ];
}

function backingBlocks({ quilt: { plan: { backing } }, words: { cutting }, print }: BookContext): readonly Block[] {
  if (!backing) return [];
  const { panels, panelLength, seams, buy } = backing;
  const joined = seams === 'none' ? [] : [cutting.panelSeams(panels - 1, seams)];
  return [
    { kind: 'heading', level: 2, text: cutting.backing },
    { kind: 'list', ordered: false, items: [cutting.buy(print.cloth(buy)), cutting.panels(panels, print.length(panelLength)), ...joined, cutting.size(print.widthByHeight(backing))] },
  ];
}

function battingBlocks({ quilt: { plan: { batting } }, words: { cutting }, print }: BookContext): readonly Block[] {
  if (!batting) return [];
  return [
    { kind: 'heading', level: 2, text: cutting.batting },
    { kind: 'list', ordered: false, items: [cutting.size(print.widthByHeight(batting)), cutting.package(batting.package)] },
  ];
}

function bindingBlocks({ quilt: { plan: { binding } }, words: { cutting }, print }: BookContext): readonly Block[] {
  if (!binding) return [];
  const { fabric, width, strips, square, length, double, buy } = binding;
  const made = square ? cutting.bindingBias(strips, print.length(square), print.length(width), fabric.name) : cutting.bindingStrips(strips, print.length(width), fabric.name);
  return [
    { kind: 'heading', level: 2, text: cutting.binding },
    { kind: 'list', ordered: false, items: [made, cutting.bindingLength(print.length(length)), double ? cutting.double : cutting.single, cutting.bindingBuy(print.cloth(buy))] },
  ];
}

function sleeveBlocks({ quilt: { plan: { sleeve } }, words: { cutting }, print }: BookContext): readonly Block[] {
  if (!sleeve) return [];
  return [
    { kind: 'heading', level: 2, text: cutting.sleeve },
    { kind: 'paragraph', text: cutting.sleeveCut(print.widthByHeight(sleeve.cut), sleeve.fabric.name, sleeve.strips) },
  ];
}
