/** What a maker needs: fabric in every size, batting, tools; then what to know and try before the first cut. */
import { fraction, mul, neg, sign, type Exact } from '../../exact/number.ts';
import type { DropPlan } from '../../cutting/plan.ts';
import type { Fabric } from '../../model/pattern.ts';
import type { BookletQuilt } from '../source.ts';
import { testSeam } from '../test-seam.ts';
import type { Block, BookChapter, Cell, Table } from './book.ts';
import { boughtText, cell, fabricTitle, type BookContext } from './context.ts';

export function needChapter(context: BookContext): BookChapter {
  const { source: { pattern }, quilt, words: { need }, print } = context;
  const { rules } = pattern;
  const hasTemplates = quilt.plan.pieces.some(({ shape }) => shape === 'template');
  return {
    id: 'need',
    title: need.title,
    begins: 'page',
    blocks: [
      { kind: 'paragraph', text: need.intro(print.length(usualWidth(context)), `${print.number(mul(rules.spare, fraction(100)))}%`) },
      fabricTable(context),
      ...(quilt.plan.binding ? [{ kind: 'paragraph', text: need.bindingNote, look: 'note' } as const] : []),
      ...dropBlocks(quilt.plan.drop, context),
      { kind: 'heading', level: 2, text: need.tools },
      { kind: 'list', ordered: false, items: need.toolList(print.length(rules.seam), hasTemplates) },
    ],
  };
}

/** The width that most fabrics have. */
function usualWidth({ quilt: { plan } }: BookContext): Exact {
  return plan.fabrics[0]?.fabric.width ?? fraction(40);
}

/** One row a fabric, one column a size. */
function fabricTable(context: BookContext): Table {
  const { source: { quilts }, quilt, words: { need }, print } = context;
  const row = (first: Cell, of: (quilt: BookletQuilt) => string | undefined): readonly Cell[] => [first, ...quilts.map((each) => cell(of(each) ?? ''))];
  const last = quilts.find(({ plan }) => plan.backing)?.plan.backing;
  const binding = quilts.find(({ plan }) => plan.binding)?.plan.binding;
  return {
    kind: 'table',
    title: need.table,
    head: [need.item, ...quilts.map(({ name }) => name ?? need.amount)],
    ...(quilts.length > 1 && { strong: 1 + quilts.findIndex(({ name }) => name === quilt.name) }),
    rows: [
      row(cell(need.finished), ({ layout }) => print.widthByHeight(layout)),
      row(cell(need.blocks), ({ layout }) => `${layout.blocks.reduce((total, { count }) => total + count, 0)}`),
      ...bought(context).map((fabric) => row({ text: labelled(fabric, context), swatch: fabric.colour }, (each) => amountOf(each, fabric, context))),
      ...rolesIn(context).map(({ fabric, prints }) => row(cell(need.assorted(fabricTitle(fabric), prints)), ({ plan }) => clothText(plan.roles.find((each) => each.fabric.name === fabric.name)?.buy, context))),
      ...(last ? [row({ text: need.backing(last.fabric && fabricTitle(last.fabric)), ...(last.fabric && { swatch: last.fabric.colour }) }, ({ plan }) => clothText(plan.backing?.buy, context))] : []),
      ...(quilts.some(({ plan }) => plan.batting) ? [row(cell(need.batting), ({ plan }) => plan.batting && `${print.widthByHeight(plan.batting)}, ${need.package(plan.batting.package)}`)] : []),
      ...(binding ? [row(cell(need.binding(binding.fabric.name)), ({ plan }) => clothText(plan.binding?.buy, context))] : []),
    ],
  };
}

function clothText(length: Exact | undefined, { print }: BookContext): string | undefined {
  return length && print.cloth(length);
}

/** The fabrics of all sizes, each once. */
function bought({ source: { quilts } }: BookContext): readonly Fabric[] {
  const all = quilts.flatMap(({ plan }) => plan.fabrics.map(({ fabric }) => fabric));
  return [...new Map(all.map((fabric) => [fabric.name, fabric])).values()];
}

function labelled(fabric: Fabric, context: BookContext): string {
  const { words: { need }, print } = context;
  const isUsual = print.length(fabric.width) === print.length(usualWidth(context));
  return isUsual ? fabricTitle(fabric) : `${fabricTitle(fabric)}, ${need.usable(print.length(fabric.width))}`;
}

function amountOf({ plan }: BookletQuilt, { name }: Fabric, context: BookContext): string | undefined {
  const planned = plan.fabrics.find(({ fabric }) => fabric.name === name);
  return planned && boughtText(planned, context);
}

function rolesIn({ source: { quilts } }: BookContext): readonly { readonly fabric: Fabric; readonly prints: number }[] {
  const all = quilts.flatMap(({ plan }) => plan.roles.map(({ fabric, prints }) => ({ fabric, prints: prints.length })));
  return [...new Map(all.map((role) => [role.fabric.name, role])).values()];
}

/** How it hangs over the bed that its size is for. */
function dropBlocks(drop: DropPlan | undefined, { words: { need }, print }: BookContext): readonly Block[] {
  if (!drop) return [];
  const hang = (length: Exact, where: 'sides' | 'foot'): string => (sign(length) < 0 ? need.shows(print.length(neg(length)), where) : need.hangs(print.length(length), where));
  const says = [need.drop(drop.bed.replaceAll('_', ' '), print.widthByHeight(drop.mattress)), hang(drop.sides, 'sides'), hang(drop.foot, 'foot')];
  return [{ kind: 'paragraph', text: says.join(' ') }];
}

export function startChapter({ source: { pattern: { rules } }, words: { start }, print }: BookContext): BookChapter {
  const { square, pair } = testSeam(rules);
  const seam = print.length(rules.seam);
  const roundUp = print.length(rules.roundUp);
  return {
    id: 'start',
    title: start.title,
    begins: 'here',
    blocks: [
      { kind: 'caution', title: start.cautions, items: start.cautionLines },
      { kind: 'heading', level: 2, text: start.fabric },
      { kind: 'list', ordered: false, items: start.fabricLines },
      { kind: 'heading', level: 2, text: start.test },
      { kind: 'paragraph', text: start.sizes(seam, roundUp) },
      { kind: 'list', ordered: true, items: start.testLines(print.length(square), seam, print.length(pair)) },
      { kind: 'heading', level: 2, text: start.short },
      { kind: 'table', title: start.short, head: start.shortHead, rows: start.shortRows(seam, roundUp).map((row) => row.map(cell)) },
    ],
  };
}
