/**
 * templates.pdf: every shape that no ruler cuts, and the sheets of blocks that are sewn on paper, at true size. On every page stand a
 * square of 1 inch (72 points) and one of 5 centimetres. What is larger than a page is spread over sheets that overlap.
 */
import { toNumber } from '../exact/number.ts';
import { reachesInto } from '../cutting/template-extent.ts';
import { templatesOf } from '../cutting/templates.ts';
import type { QuiltLayout } from '../geometry/layout.ts';
import type { CuttingPlan } from '../cutting/plan.ts';
import type { Pattern } from '../model/pattern.ts';
import { UNTITLED } from '../booklet/source.ts';
import { foundationFigures, notOnPaper } from './foundation.ts';
import { PAPER, POINTS_PER_INCH, closePdf, element, mark, openPdf, widthOf, write, type Element, type FontFiles, type Pdf } from './pdf.ts';
import { mapRoomOn, openPage, roomOn, wrapped } from './templates-page.ts';
import { penAt, type Figure } from './templates-pen.ts';
import { placeOnPages, type PageOf, type Placed, type Placeable } from './templates-place.ts';
import { templateFigure } from './templates-figure.ts';
import { drawSheetMarks, drawSheetMap } from './templates-sheets.ts';
import { templateWords, type TemplateWords } from './templates-words.ts';

export interface TemplateSource {
  readonly pattern: Pattern;
  readonly quilt: { readonly name: string | null; readonly layout: QuiltLayout; readonly plan: Pick<CuttingPlan, 'pieces'> };
  readonly fonts: FontFiles;
}

/** The file; undefined when nothing needs to be printed. */
export function templatesPdf({ pattern, quilt, fonts }: TemplateSource): Uint8Array | undefined {
  const words = templateWords(pattern.language);
  const seam = toNumber(pattern.rules.seam);
  const { layout, plan } = quilt;
  const figures = [...templatesOf(layout, plan, pattern.rules).map((template) => templateFigure(template, seam, words)), ...foundationFigures(layout, seam, words)];
  if (figures.length === 0) return undefined;
  const title = [pattern.title ?? UNTITLED, ...(quilt.name === null ? [] : [quilt.name])].join(', ');
  const pdf = openPdf({ title: words.document(title), language: pattern.language ?? 'en', ...(pattern.by === undefined ? {} : { author: pattern.by }), page: paperOf(pattern), fonts, scaling: 'none' });
  drawPages(pdf, figures, { words, title, notes: notOnPaper(layout, words) });
  return closePdf(pdf);
}

function paperOf({ paper, rules }: Pattern): (typeof PAPER)[keyof typeof PAPER] {
  return PAPER[paper ?? (rules.units === 'inches' ? 'letter' : 'a4')];
}

interface Setup {
  readonly words: TemplateWords;
  readonly title: string;
  /** Said on the first page. */
  readonly notes: readonly string[];
}

/** A figure with its caption broken into lines. */
interface Captioned extends Placeable {
  readonly figure: Figure;
  readonly caption: readonly { readonly text: string; readonly isName: boolean }[];
}

const LEADING = 11.5;

function drawPages(pdf: Pdf, figures: readonly Figure[], { words, title, notes }: Setup): void {
  const room = roomOn(pdf.page);
  const pages = placeOnPages(figures.map((figure) => captioned(pdf, figure, room.width)), room);
  pages.forEach((page, index) => {
    const advice = adviceFor(page.kind === 'sheet' ? [page.item] : page.items.map(({ item }) => item));
    const said = [...(page.kind === 'sheet' ? [...advice.slice(0, 2), words.overlap] : advice), ...(index === 0 ? notes : [])];
    const frame = { words, title, number: index + 1, count: pages.length, advice: said };
    openPage(pdf, pdf.root, page.kind === 'sheet' ? { ...frame, adviceWidth: mapRoomOn(pdf.page).x - room.x - 240 } : frame);
    if (page.kind === 'whole') for (const placed of page.items) drawWhole(pdf, placed);
    else drawSheet(pdf, page, words);
  });
}

/** Each line once. */
function adviceFor(items: readonly Captioned[]): readonly string[] {
  return [...new Set(items.flatMap(({ figure }) => figure.advice))];
}

/** A caption is as wide as its figure, or wide enough to read. */
function captioned(pdf: Pdf, figure: Figure, most: number): Captioned {
  const { left, top, right, bottom } = figure.extent;
  const [width, height] = [(right - left) * POINTS_PER_INCH, (bottom - top) * POINTS_PER_INCH];
  const column = Math.min(most, Math.max(width, 150));
  const name = wrapped(pdf, figure.name, column, NAME).map((text) => ({ text, isName: true }));
  const lines = figure.lines.flatMap((line) => wrapped(pdf, line, column, LINE)).map((text) => ({ text, isName: false }));
  const caption = [...name, ...lines];
  const captionWidth = Math.max(...caption.map(({ text, isName }) => widthOf(pdf, text, isName ? NAME : LINE)));
  const isIn = (x: number, y: number, w: number, h: number): boolean => reachesInto(figure.outline, { left: left + x / POINTS_PER_INCH, top: top + y / POINTS_PER_INCH, right: left + (x + w) / POINTS_PER_INCH, bottom: top + (y + h) / POINTS_PER_INCH });
  return { figure, width, height, isIn, caption, captionWidth, captionHeight: caption.length * LEADING + 8 };
}

const NAME = { font: 'bold', size: 10 } as const;
const LINE = { size: 8.5 } as const;

function drawWhole(pdf: Pdf, { item, x, y, isTurned }: Placed<Captioned>): void {
  const window = { left: 0, top: 0, right: pdf.page.width, bottom: pdf.page.height };
  mark(element(pdf, pdf.root, 'Figure', { alt: item.figure.alt }), () => item.figure.draw(penAt(pdf, item.figure.extent, { x, y, isTurned, window })));
  writeCaption(pdf, item, x, y + (isTurned ? item.width : item.height));
}

function writeCaption(pdf: Pdf, { caption }: Captioned, x: number, y: number): void {
  const holder: Element = element(pdf, pdf.root, 'P');
  mark(holder, () => caption.forEach(({ text, isName }, i) => write(pdf, text, x, y + 4 + (i + 1) * LEADING - 2, isName ? NAME : LINE)));
}

type Sheet = Extract<PageOf<Captioned>, { readonly kind: 'sheet' }>;

/** One window on a large figure, with the marks by which sheets are laid on each other. */
function drawSheet(pdf: Pdf, sheet: Sheet, words: TemplateWords): void {
  const { item, isTurned, left, top, width, height } = sheet;
  const room = roomOn(pdf.page);
  const window = { left: room.x, top: room.y, right: room.x + width, bottom: room.y + height };
  const number = words.sheet(sheet.number + 1, sheet.count);
  mark(element(pdf, pdf.root, 'Figure', { alt: `${item.figure.alt} ${number}` }), () => {
    pdf.doc.addContent(`q ${window.left} ${window.top} ${width} ${height} re W n`);
    item.figure.draw(penAt(pdf, item.figure.extent, { x: room.x - left, y: room.y - top, isTurned, window }));
    pdf.doc.addContent('Q');
    drawSheetMarks(pdf, sheet, room);
  });
  const [name, ...rest] = item.caption;
  writeCaption(pdf, { ...item, caption: [{ text: `${name?.text ?? ''}, ${number}`, isName: true }, ...rest] }, room.x, room.y + height);
  drawSheetMap(pdf, sheet, item.figure, words);
}
