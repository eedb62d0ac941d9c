/** Sections of blocks that are sewn on paper as figures: mirrored, their patches numbered in the order of sewing, with the seam allowance. */
import { toNumber, abs, key } from '../exact/number.ts';
import { backwards } from '../exact/polygon.ts';
import { determinant } from '../exact/transform.ts';
import { pieceLabel } from '../cutting/labels.ts';
import { extentOf } from '../cutting/template-extent.ts';
import { cutOutline, type PlaneShape } from '../cutting/template-outline.ts';
import type { BlockLayout, Placement, QuiltLayout } from '../geometry/layout.ts';
import { foundationOf, isOnPaper, type Foundation, type FoundationPlan, type FoundationSection, type FoundationStep } from '../piecing/foundation.ts';
import { groupedBy } from '../text/grouped.ts';
import { POINTS_PER_INCH, widthOf } from './pdf.ts';
import { middleOf } from './templates-middle.ts';
import { outline, text, type Figure, type Pen } from './templates-pen.ts';
import type { TemplateWords } from './templates-words.ts';

/** A block at the size it is set in. */
interface OnPaper {
  readonly layout: BlockLayout;
  readonly name: string;
  readonly count: number;
  /** From the layout's own units to inches. */
  readonly growth: number;
}

/** `seam` in inches. */
export function foundationFigures(layout: QuiltLayout, seam: number, words: TemplateWords): readonly Figure[] {
  return blocksIn(layout).flatMap((block) => {
    const plan = foundationOf(block.layout);
    return plan.kind === 'foundation' && isOnPaper(block.layout) ? sectionFigures(block, plan.foundation, seam, words) : [];
  });
}

/** Why blocks that ask for it are not sewn on paper, a sentence each. */
export function notOnPaper(layout: QuiltLayout, words: TemplateWords): readonly string[] {
  return layout.blocks.flatMap(({ layout: block, name }) => {
    const plan = foundationOf(block);
    return block.instance.foundation && plan.kind === 'none' && plan.why !== 'unsound' ? words.notOnPaper(name, whyNot(plan, words)) : [];
  });
}

function whyNot(plan: Extract<FoundationPlan, { readonly kind: 'none' }>, { why }: TemplateWords): string {
  switch (plan.why) {
    case 'curve':
      return why.curve;
    case 'inner corner':
      return why.innerCorner;
    case 'too many':
      return why.tooMany(plan.patches.length, plan.most);
    case 'no line':
      return why.noLine(plan.patches.length);
    case 'unsound':
      return '';
  }
}

function blocksIn({ placements, blocks }: QuiltLayout): readonly OnPaper[] {
  const names = new Map(blocks.map(({ layout, name }) => [layout.key, name]));
  const bySize = groupedBy(placements, ({ block, transform }: Placement) => `${block.key} ${key(abs(determinant(transform)))}`);
  return [...bySize.values()].flatMap((placed) => {
    const [first] = placed;
    if (!first) return [];
    const { block, transform } = first;
    return [{ layout: block, name: names.get(block.key) ?? block.instance.name, count: placed.length, growth: Math.sqrt(toNumber(abs(determinant(transform)))) }];
  });
}

function sectionFigures(block: OnPaper, { sections, joins }: Foundation, seam: number, words: TemplateWords): readonly Figure[] {
  const names = sections.map((_, i) => pieceLabel(i));
  const named = (some: readonly number[]): readonly string[] => some.map((i) => names[i] ?? '');
  const sewnAfter = (made: number): readonly string[] => {
    const due = joins.filter(({ after }) => after === made).map(({ parts: [one, other] }) => words.joined(named(one), named(other)));
    return due.length > 0 ? [words.joins(due)] : [];
  };
  return sections.map((section, i) => {
    const letter = names[i] ?? '';
    const name = words.section(block.name, sections.length > 1 ? letter : undefined);
    const sheet = mirrored(section.outline, block);
    const cut = cutOutline(sheet, seam);
    return {
      name,
      lines: [words.copies(block.count), `${words.order} ${section.steps.map((step, k) => `${letter}${k + 1} ${pieceOf(step, block, words)}`).join(', ')}.`, ...sewnAfter(i + 1)],
      alt: words.sectionAlt(name),
      extent: extentOf(cut),
      outline: cut,
      advice: [...words.printing.slice(0, 2), ...words.onPaper],
      draw: (pen) => drawSection(pen, { block, section, letter, sheet, cut, words }),
    };
  });
}

/** The fabric of a patch, or the letters of the sections it is. */
function pieceOf({ patch, sections = [] }: FoundationStep, { layout }: OnPaper, words: TemplateWords): string {
  return patch === undefined ? words.listed(sections.map(pieceLabel)) : (layout.patches[patch]?.fabric.name ?? '');
}

/** As it is printed: left and right exchanged, wound clockwise again. */
function mirrored(points: FoundationSection['outline'], { layout, growth }: OnPaper): PlaneShape {
  const width = toNumber(layout.width);
  return { points: backwards(points).flatMap(({ x, y }) => [(width - toNumber(x)) * growth, toNumber(y) * growth]) };
}

interface Drawn {
  readonly block: OnPaper;
  readonly section: FoundationSection;
  readonly letter: string;
  readonly sheet: PlaneShape;
  readonly cut: PlaneShape;
  readonly words: TemplateWords;
}

function drawSection(pen: Pen, { block, section, letter, sheet, cut, words }: Drawn): void {
  outline(pen, cut, { stroke: '#000000', width: 0.6, dash: [4, 2.5] });
  for (const step of section.steps) outline(pen, mirrored(step.outline, block), { stroke: '#000000', width: 0.75 });
  outline(pen, sheet, { stroke: '#000000', width: 1.1 });
  section.steps.forEach((step, i) => drawNumber(pen, mirrored(step.outline, block), { number: `${letter}${i + 1}`, fabric: pieceOf(step, block, words) }));
}

/** The number, and the fabric below it where there is room. */
function drawNumber(pen: Pen, shape: PlaneShape, { number, fabric }: { readonly number: string; readonly fabric: string }): void {
  const { x, y, radius } = middleOf(shape);
  const room = radius * POINTS_PER_INCH;
  const size = Math.min(14, room * 0.9, (room * 1.7) / widthOf(pen.pdf, number, { font: 'bold', size: 1 }));
  const small = Math.min(9, (room * 1.6) / widthOf(pen.pdf, fabric, { size: 1 }));
  const isNamed = small >= 5 && room >= 11;
  text(pen, number, x, y, { font: 'bold', size: Math.max(3, isNamed ? Math.min(size, room * 0.8) : size), below: isNamed ? -small * 0.55 : 0 });
  if (isNamed) text(pen, fabric, x, y, { size: small, below: size * 0.55 });
}
