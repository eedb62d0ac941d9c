/** Figures as atoms: one below the text, several beside each other, or one beside what is done. */
import type { Figure, FigureSize, List } from '../booklet/book/book.ts';
import { holderIn, type Column } from './column.ts';
import { heightOf, stacked, type Atom } from './flow.ts';
import { drawScene } from './picture.ts';
import { mark } from './pdf.ts';
import { runsOf } from './prose.ts';
import { STYLES } from './styles.ts';
import { listAtoms, paragraphAtoms } from './text-atoms.ts';

/** Of the width of the text, and of the height of a page. */
const SIZES: Readonly<Record<FigureSize, { readonly width: number; readonly height: number }>> = {
  page: { width: 1, height: 0.86 },
  cover: { width: 1, height: 0.7 },
  large: { width: 0.9, height: 0.34 },
  middle: { width: 0.62, height: 0.42 },
  small: { width: 0.25, height: 0.2 },
};

const BETWEEN = 16;

/** With its caption, on one page; no higher than `most`, in points, where that is given. */
export function figureAtom(column: Column, figure: Figure, most = Infinity): Atom {
  const { width, height } = SIZES[figure.size];
  return drawn(column, figure, { width: column.width * width, height: Math.min(most, column.height * height) });
}

/** As many in a row as have room; those of a row stay together. */
export function figuresAtoms(column: Column, figures: readonly Figure[]): readonly Atom[] {
  const inRow = figures[0]?.size === 'small' ? 4 : 2;
  const width = (column.width - (inRow - 1) * BETWEEN) / inRow;
  return Array.from({ length: Math.ceil(figures.length / inRow) }, (_, row): Atom => {
    const atoms = figures.slice(row * inRow, (row + 1) * inRow).map((figure, i) => {
      const own = { ...column, x: column.x + i * (width + BETWEEN), width };
      return drawn(own, figure, { width, height: column.height * SIZES[figure.size].height });
    });
    return beside(atoms, 10);
  });
}

/** The list beside its picture where both fit on half a page, else below it. */
export function stepAtoms(column: Column, figure: Figure, list: List): readonly Atom[] {
  const width = column.width * SIZES.small.width;
  const picture = drawn({ ...column, width }, figure, { width, height: column.height * SIZES.small.height });
  const narrow = { ...column, x: column.x + width + BETWEEN, width: column.width - width - BETWEEN };
  const text = listAtoms(narrow, list.ordered, list.items.map(runsOf));
  if (heightOf(text) <= column.height / 2) return [beside([picture, stacked(text, { gap: 0, glued: false })], 8)];
  return [{ ...picture, glued: true }, ...listAtoms(column, list.ordered, list.items.map(runsOf))];
}

function beside(atoms: readonly Atom[], gap: number): Atom {
  return { gap, glued: false, height: Math.max(...atoms.map(({ height }) => height)), draw: (y) => atoms.forEach((atom) => atom.draw(y)) };
}

function drawn(column: Column, { scene, alt, caption, look }: Figure, most: { readonly width: number; readonly height: number }): Atom {
  const { pdf, x } = column;
  const scale = Math.min(most.width / Math.max(scene.width, SMALLEST), most.height / Math.max(scene.height, SMALLEST));
  const height = scene.height * scale;
  const holder = holderIn(pdf, column.holder, 'Figure', { alt });
  const words = caption === undefined ? [] : paragraphAtoms(column, runsOf(caption), STYLES.caption);
  const ink = look === 'line' ? { seam: 0.6, seamColour: '#000000' } : {};
  const picture: Atom = { height, gap: 10, glued: words.length > 0, draw: (y) => mark(holder(), () => drawScene(pdf, scene, { x, y, scale }, ink)) };
  return stacked([picture, ...words], { gap: 10, glued: false });
}

/** Of a scene, in its units: nothing is divided by less. */
const SMALLEST = 1e-6;
