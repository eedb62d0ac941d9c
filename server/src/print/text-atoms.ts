/** Paragraphs, headings, lists and cautions as atoms. The first two lines of a paragraph stay together, and the last two. */
import type { Book } from '../booklet/book/book.ts';
import { holderIn, type Column, type Holder } from './column.ts';
import { stacked, type Atom } from './flow.ts';
import { linesOf, type Line } from './lines.ts';
import { boxAt, drawOutline } from './picture.ts';
import { artifact, mark, write, type Pdf } from './pdf.ts';
import { runsOf, type Run } from './prose.ts';
import { baselineOf, RULE, STYLES, TINT, type Style } from './styles.ts';

/** A block of the booklet of one kind. */
export type BlockOf<K> = Extract<Book['cover'][number], { readonly kind: K }>;

export function paragraphAtoms(column: Column, runs: readonly Run[], style: Style): readonly Atom[] {
  return lineAtoms(column, runs, style, holderIn(column.pdf, column.holder, style.tag));
}

/** What follows a heading stays with it. */
export function headingAtoms(column: Column, runs: readonly Run[], style: Style, { swatch }: { readonly swatch?: string } = {}): readonly Atom[] {
  const room = swatch === undefined ? 0 : style.size + 5;
  const atoms = lineAtoms({ ...column, x: column.x + room, width: column.width - room }, runs, style, holderIn(column.pdf, column.holder, style.tag));
  return atoms.map((atom, i) => ({ ...atom, glued: true, draw: i > 0 || swatch === undefined ? atom.draw : withSwatch(column, swatch, style, atom) }));
}

function withSwatch({ pdf, x }: Column, swatch: string, style: Style, { draw }: Atom): Atom['draw'] {
  return (y) => {
    drawSwatch(pdf, swatch, { x, y: y + baselineOf(style) - style.size * 0.8, size: style.size * 0.85 });
    draw(y);
  };
}

export function drawSwatch(pdf: Pdf, colour: string, { x, y, size }: { readonly x: number; readonly y: number; readonly size: number }): void {
  artifact(pdf, () => drawOutline(pdf, boxAt(x, y, size, size), undefined, { fill: colour, stroke: '#404040', width: 0.4 }));
}

export function listAtoms(column: Column, ordered: boolean, items: readonly (readonly Run[])[], style: Style = STYLES.item): readonly Atom[] {
  const list = holderIn(column.pdf, column.holder, 'L');
  const indent = ordered && items.length > 9 ? 21 : 16;
  const inner = { ...column, x: column.x + indent, width: column.width - indent };
  return items.flatMap((runs, i) => {
    const item = holderIn(column.pdf, list, 'LI');
    const label = holderIn(column.pdf, item, 'Lbl');
    const body = holderIn(column.pdf, item, 'LBody');
    const marker = ordered ? `${i + 1}.` : '•';
    const atoms = lineAtoms(inner, runs, i === 0 ? { ...style, gap: STYLES.body.gap } : style, body);
    return atoms.map((atom, line): Atom => ({
      ...atom,
      glued: atom.glued || (i === items.length - 2 && line === atoms.length - 1),
      draw: line > 0 ? atom.draw : (y) => {
        mark(label(), () => write(column.pdf, marker, column.x, y + baselineOf(style), style));
        atom.draw(y);
      },
    }));
  });
}

const PADDING = 10;

/** In a box of its own, on one page. */
export function cautionAtom(column: Column, { title, items }: BlockOf<'caution'>): Atom {
  const inner = { ...column, x: column.x + PADDING + 3, width: column.width - 2 * PADDING - 3, holder: holderIn(column.pdf, column.holder, 'Sect') };
  const content = stacked([...headingAtoms(inner, runsOf(title), STYLES.section), ...listAtoms(inner, false, items.map(runsOf))], { gap: 0, glued: false });
  const height = content.height + 2 * PADDING;
  return {
    height,
    gap: 12,
    glued: false,
    draw: (y) => {
      artifact(column.pdf, () => {
        drawOutline(column.pdf, boxAt(column.x, y, column.width, height), undefined, { fill: TINT });
        drawOutline(column.pdf, boxAt(column.x, y, 3, height), undefined, { fill: RULE });
      });
      content.draw(y + PADDING);
    },
  };
}

/** The lines of one element. */
export function lineAtoms({ pdf, x, width }: Column, runs: readonly Run[], style: Style, holder: Holder): readonly Atom[] {
  const lines = linesOf(pdf, runs, { width, size: style.size, font: style.font });
  return lines.map((line, i): Atom => ({
    height: style.leading,
    gap: i === 0 ? style.gap : 0,
    glued: i < lines.length - 1 && (i === 0 || i === lines.length - 2),
    draw: (y) => mark(holder(), () => writeLine(pdf, line, x, y, style)),
  }));
}

export function writeLine(pdf: Pdf, line: Line, x: number, y: number, style: Style): void {
  for (const span of line) write(pdf, span.text, x + span.x, y + baselineOf(style), { font: span.font, size: style.size, colour: style.colour });
}
