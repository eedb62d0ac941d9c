/** A template as a figure: cutting line, seam line, dots at the corners, notches, grain arrow, letters. */
import { cosAndSin, extentOf } from '../cutting/template-extent.ts';
import { markAt } from '../cutting/template-marks.ts';
import { sidesOf } from '../cutting/template-outline.ts';
import type { Template, TemplateUse } from '../cutting/templates.ts';
import { groupedBy } from '../text/grouped.ts';
import { POINTS_PER_INCH, widthOf } from './pdf.ts';
import { middleOf, type Middle } from './templates-middle.ts';
import { dot, line, outline, text, type Figure, type Pen } from './templates-pen.ts';
import type { TemplateWords } from './templates-words.ts';

/** `seam` in inches. */
export function templateFigure(template: Template, seam: number, words: TemplateWords): Figure {
  const name = words.template(template.letters);
  return {
    name,
    lines: useLines(template.uses, words),
    alt: words.templateAlt(name),
    extent: extentOf(template.cut),
    outline: template.cut,
    advice: words.printing,
    draw: (pen) => drawTemplate(pen, template, seam),
  };
}

/** A line for each fabric of a block, its turned pieces with the others. */
function useLines(uses: readonly TemplateUse[], words: TemplateWords): readonly string[] {
  return [...groupedBy(uses, (use) => `${use.for}: ${use.fabric.name}`)].map(([what, all]) => {
    const count = (some: readonly TemplateUse[]): number => some.reduce((sum, { pieces }) => sum + pieces, 0);
    const label = all[0]?.fabric.label ?? '';
    const fabric = label === '' || label === all[0]?.fabric.name ? what : `${what} (${label})`;
    return `${fabric}, ${words.cut(count(all), count(all.filter(({ isTurnedOver }) => isTurnedOver)))}`;
  });
}

function drawTemplate(pen: Pen, template: Template, seam: number): void {
  const { shape, cut, marks, letters, grain } = template;
  outline(pen, cut, { stroke: '#000000', width: 0.75 });
  outline(pen, shape, { stroke: '#000000', width: 0.5, dash: [4, 2.5] });
  const sides = sidesOf(shape);
  for (const { from } of sides) dot(pen, from.x, from.y, 1.3);
  for (const { side, along } of marks) {
    const on = sides[side];
    if (!on) continue;
    const { at, out } = markAt(on, along);
    line(pen, [at.x, at.y, at.x + out.x * seam, at.y + out.y * seam], { stroke: '#000000', width: 0.6 });
  }
  const middle = middleOf(shape);
  drawGrain(pen, middle, grain);
  drawLetters(pen, middle, { grain, letters });
}

/** Shares of the room in the middle: the letters to one side of the arrow. */
const ARROW = 0.45;
const LETTERS = -0.3;

function drawGrain(pen: Pen, { x, y, radius }: Middle, grain: number): void {
  const [cos, sin] = cosAndSin(grain);
  const half = Math.min(1, radius * 0.8);
  const head = Math.min(0.09, half / 3);
  const at = (across: number, up: number): readonly [number, number] => [x + (ARROW * radius + across) * cos + up * sin, y + (ARROW * radius + across) * sin - up * cos];
  const ink = { stroke: '#000000', width: 0.6 };
  line(pen, [...at(0, half), ...at(0, -half)], ink);
  for (const end of [half, -half]) line(pen, [...at(-head / 2, end - Math.sign(end) * head), ...at(0, end), ...at(head / 2, end - Math.sign(end) * head)], ink);
}

function drawLetters(pen: Pen, { x, y, radius }: Middle, { grain, letters }: { readonly grain: number; readonly letters: readonly string[] }): void {
  const [cos, sin] = cosAndSin(grain);
  const said = letters.length > 3 ? `${letters.slice(0, 2).join(', ')} …` : letters.join(', ');
  const room = radius * POINTS_PER_INCH;
  const wide = widthOf(pen.pdf, said, { font: 'bold', size: 1 });
  const size = Math.min(18, room * 0.7, (room * 1.1) / wide);
  if (size >= 4) text(pen, said, x + LETTERS * radius * cos, y + LETTERS * radius * sin, { font: 'bold', size });
}
