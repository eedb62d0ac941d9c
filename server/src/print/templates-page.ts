/** A page for shapes at true size: a running head, the room in the middle, and below it the two squares that are measured. In points. */
import { POINTS_PER_INCH, artifact, element, mark, newPage, widthOf, write, type Element, type PageSize, type Pdf, type WriteOptions } from './pdf.ts';
import { drawOutline } from './picture.ts';
import { INK, QUIET } from './styles.ts';
import type { TemplateWords } from './templates-words.ts';

/** Sides of the two squares, to a thousandth of a point, as lines are drawn. */
export const INCH = POINTS_PER_INCH;
export const FIVE_CENTIMETRES = Math.round((50 / 25.4) * POINTS_PER_INCH * 1000) / 1000;

/** Printers leave half an inch blank at most. */
const MARGIN = 36;
const HEAD = 22;
const BAND = FIVE_CENTIMETRES + 22;

export interface Room {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where shapes are drawn. */
export function roomOn({ width, height }: PageSize): Room {
  return { x: MARGIN, y: MARGIN + HEAD, width: width - 2 * MARGIN, height: height - 2 * MARGIN - HEAD - BAND };
}

/** The corner to the right of the squares and the advice, for a small map. */
export function mapRoomOn({ width, height }: PageSize): Room {
  return { x: width - MARGIN - 100, y: height - MARGIN - FIVE_CENTIMETRES, width: 100, height: FIVE_CENTIMETRES - 14 };
}

export interface PageFrame {
  readonly words: TemplateWords;
  readonly title: string;
  readonly number: number;
  readonly count: number;
  /** Lines beside the squares. */
  readonly advice: readonly string[];
  /** How wide they may be. */
  readonly adviceWidth?: number;
}

/** Opens a page and draws what stands on each of them. */
export function openPage(pdf: Pdf, parent: Element, frame: PageFrame): void {
  newPage(pdf);
  const { width, height } = pdf.page;
  const { words, title, number, count, advice } = frame;
  const page = words.page(number, count);
  const head = (): void => write(pdf, fitted(pdf, `${title} · ${words.head}`, width - 2 * MARGIN - 80, { size: 9 }), MARGIN, MARGIN + 8, { size: 9, colour: QUIET });
  if (number === 1) mark(element(pdf, parent, 'H1'), head);
  artifact(pdf, () => {
    if (number > 1) head();
    write(pdf, page, width - MARGIN - widthOf(pdf, page, { size: 9 }), MARGIN + 8, { size: 9, colour: QUIET });
  });
  const bottom = Math.floor(height - MARGIN);
  mark(element(pdf, parent, 'Figure', { alt: words.gauges }), () => {
    square(pdf, MARGIN, bottom - FIVE_CENTIMETRES, FIVE_CENTIMETRES, words.centimetres);
    square(pdf, MARGIN + FIVE_CENTIMETRES + 14, bottom - INCH, INCH, words.inch);
  });
  const x = MARGIN + FIVE_CENTIMETRES + 14;
  const beside = x + INCH + 14;
  const lines = advice.flatMap((line) => wrapped(pdf, line, frame.adviceWidth ?? width - MARGIN - beside, { size: 8.5 }));
  mark(element(pdf, parent, 'P'), () => lines.forEach((line, i) => write(pdf, line, beside, bottom - FIVE_CENTIMETRES + 10 + i * 11.5, { size: 8.5, colour: INK })));
}

function square(pdf: Pdf, x: number, y: number, side: number, name: string): void {
  drawOutline(pdf, { points: [x, y, x + side, y, x + side, y + side, x, y + side] }, [1, 0, 0, 1, 0, 0], { stroke: '#000000', width: 0.5 });
  write(pdf, name, x + side / 2 - widthOf(pdf, name, { size: 8 }) / 2, y + side / 2 + 3, { size: 8 });
}

/** In lines no wider than that, broken between words. */
export function wrapped(pdf: Pdf, text: string, width: number, options: WriteOptions): readonly string[] {
  return text.split(' ').reduce<readonly string[]>((lines, word) => {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    return last === undefined || widthOf(pdf, longer, options) > width ? [...lines, fitted(pdf, word, width, options)] : [...lines.slice(0, -1), longer];
  }, []);
}

/** Cut off with dots where it is too wide. */
export function fitted(pdf: Pdf, text: string, width: number, options: WriteOptions): string {
  if (widthOf(pdf, text, options) <= width) return text;
  let kept = Array.from(text);
  while (kept.length > 0 && widthOf(pdf, `${kept.join('')}…`, options) > width) kept = kept.slice(0, -1);
  return `${kept.join('')}…`;
}
