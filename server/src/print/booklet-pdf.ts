/** booklet.pdf: every chapter's blocks laid into pages, with running heads, contents when it is long, bookmarks and links. */
import type { Block, Book, BookChapter } from '../booklet/book/book.ts';
import { blockAtoms } from './block-atoms.ts';
import { holderIn, type Column } from './column.ts';
import { heightOf, placeAll, type Atom, type Placed, type Room, type Stream } from './flow.ts';
import { figureAtom } from './figure-atoms.ts';
import { drawLine } from './picture.ts';
import { artifact, closePdf, destination, element, link, mark, newPage, openPdf, PAPER, widthOf, write, type FontFiles, type Pdf } from './pdf.ts';
import { plainText, runsOf } from './prose.ts';
import { baselineOf, INK, QUIET, RULE, STYLES } from './styles.ts';
import { headingAtoms } from './text-atoms.ts';

const MARGIN = 54;
/** More pages than this have a table of contents. */
const LONG = 8;

/** The same bytes for the same book and fonts. */
export function bookletPdf(book: Book, fonts: FontFiles): Uint8Array {
  const pdf = openPdf({ title: book.title, language: book.language, ...(book.by !== undefined && { author: book.by }), page: PAPER[book.paper], fonts });
  const room: Room = { top: MARGIN + 12, bottom: pdf.page.height - MARGIN - 12 };
  const marks: Mark[] = [];
  const column = { pdf, x: MARGIN, width: pdf.page.width - 2 * MARGIN, height: room.bottom - room.top };
  const streams = [coverStream(book, column), ...book.chapters.map((chapter, i) => chapterStream(chapter, column, { book, marks, number: i }))];
  const short = placeAll(streams, room);
  const isLong = pagesIn(short) > LONG;
  const placed = isLong ? placeAll(withContents(streams, book, { column, pages: [], marks: [] }), room) : short;
  const pages = firstPages(placed, isLong ? 2 : 1);
  const final = isLong ? placeAll(withContents(streams, book, { column, pages, marks }), room) : short;
  draw(pdf, book, { placed: final, before: isLong ? 2 : 1, marks });
  return closePdf(pdf);
}

/** A place that a bookmark leads to. */
interface Mark {
  readonly title: string;
  readonly level: 1 | 2;
  readonly chapter: number;
  page: number;
}

type Sheet = Omit<Column, 'holder'>;

function coverStream(book: Book, sheet: Sheet): Stream {
  const column = { ...sheet, holder: holderIn(sheet.pdf, () => sheet.pdf.root, 'Sect') };
  const words = book.cover.map((block) => (block.kind === 'figure' ? [] : blockAtoms(column, block)));
  const room = sheet.height - heightOf(words.flat()) - 2 * STYLES.chapter.gap;
  const least = sheet.height * LEAST_COVER;
  return { begins: 'page', atoms: book.cover.flatMap((block, i) => (block.kind === 'figure' ? [figureAtom(column, block, Math.max(room, least))] : (words[i] ?? []))) };
}

/** Of the height of a page: the picture on the cover gives way to long texts down to this. */
const LEAST_COVER = 0.4;

function chapterStream(chapter: BookChapter, sheet: Sheet, { book, marks, number }: { readonly book: Book; readonly marks: Mark[]; readonly number: number }): Stream {
  const { pdf } = sheet;
  const holder = holderIn(pdf, () => pdf.root, 'Sect', { title: chapter.title, ...(chapter.language !== undefined && chapter.language !== book.language && { language: chapter.language }) });
  const column = { ...sheet, holder };
  const title = headingAtoms({ ...column, holder }, runsOf(chapter.title), STYLES.chapter);
  const blocks = chapter.blocks.map((block, i) => keptWith(chapter.blocks[i + 1], block, marked(blockAtoms(column, block), block, { marks, number, pdf })));
  return { begins: chapter.begins, atoms: [...withMark(title, { title: chapter.title, level: 1, chapter: number, page: 0 }, { marks, pdf, id: chapter.id }), ...blocks.flat()] };
}

/** A sentence before a figure or a table leads to it, and stays with it. */
function keptWith(next: Block | undefined, { kind }: Block, atoms: readonly Atom[]): readonly Atom[] {
  const leads = kind === 'paragraph' && (next?.kind === 'figure' || next?.kind === 'table' || next?.kind === 'figures');
  return leads ? atoms.map((atom) => ({ ...atom, glued: true })) : atoms;
}

/** Headings of parts are bookmarks too. */
function marked(atoms: readonly Atom[], block: Block, { marks, number, pdf }: { readonly marks: Mark[]; readonly number: number; readonly pdf: Pdf }): readonly Atom[] {
  return block.kind === 'heading' && block.level === 2 ? withMark(atoms, { title: plainText(block.text), level: 2, chapter: number, page: 0 }, { marks, pdf }) : atoms;
}

function withMark(atoms: readonly Atom[], made: Mark, { marks, pdf, id }: { readonly marks: Mark[]; readonly pdf: Pdf; readonly id?: string }): readonly Atom[] {
  return atoms.map((atom, i) => (i > 0 ? atom : {
    ...atom,
    draw: (y) => {
      marks.push({ ...made, page: pageNumber(pdf) });
      if (id !== undefined) destination(pdf, id, Math.max(0, y - 10));
      atom.draw(y);
    },
  }));
}

/** From 0. */
function pageNumber({ doc }: Pdf): number {
  const { start, count } = doc.bufferedPageRange();
  return start + count - 1;
}

function pagesIn(placed: readonly Placed[]): number {
  return (placed.at(-1)?.page ?? 0) + 1;
}

/** The page each chapter begins on, from 0; the first streams are no chapters. */
function firstPages(placed: readonly Placed[], before: number): readonly number[] {
  const first: number[] = [];
  for (const { page, stream } of placed) if (stream >= before) first[stream - before] ??= page;
  return first;
}

function withContents(streams: readonly Stream[], book: Book, options: { readonly column: Sheet; readonly pages: readonly number[]; readonly marks: readonly Mark[] }): readonly Stream[] {
  const [cover, ...chapters] = streams;
  return [...(cover ? [cover] : []), contentsStream(book, options), ...chapters];
}

function contentsStream({ chapters, furniture }: Book, { column, pages }: { readonly column: Sheet; readonly pages: readonly number[] }): Stream {
  const { pdf } = column;
  const holder = holderIn(pdf, () => pdf.root, 'TOC', { title: furniture.contents });
  const heading = headingAtoms({ ...column, holder: holderIn(pdf, () => pdf.root, 'Sect') }, runsOf(furniture.contents), STYLES.chapter);
  return { begins: 'page', atoms: [...heading, ...chapters.map((chapter, i) => contentsAtom(chapter, (pages[i] ?? 0) + 1, { ...column, holder }))] };
}

function contentsAtom({ id, title }: BookChapter, page: number, { pdf, x, width, holder }: Column): Atom {
  const style = STYLES.lead;
  return {
    height: style.leading + 6,
    gap: 4,
    glued: false,
    draw: (y) => {
      const item = element(pdf, element(pdf, holder(), 'TOCI'), 'Link');
      const number = `${page}`;
      const right = x + width - widthOf(pdf, number, style);
      artifact(pdf, () => drawLine(pdf, [x + widthOf(pdf, title, style) + 6, y + baselineOf(style), right - 6, y + baselineOf(style)], { stroke: RULE, width: 0.6, dash: [0.6, 3] }));
      mark(item, () => {
        write(pdf, `${title} `, x, y + baselineOf(style), style);
        write(pdf, number, right, y + baselineOf(style), style);
      });
      link(pdf, item, { x, y, width, height: style.leading }, id, title);
    },
  };
}

interface Drawing {
  readonly placed: readonly Placed[];
  /** Streams before the first chapter. */
  readonly before: number;
  readonly marks: readonly Mark[];
}

function draw(pdf: Pdf, book: Book, { placed, before, marks }: Drawing): void {
  const total = pagesIn(placed);
  const last = book.chapters.length - 1;
  for (let page = 0, i = 0; page < total; page += 1) {
    newPage(pdf);
    const stream = placed[i]?.stream ?? 0;
    const chapter = book.chapters[stream - before];
    const head = chapter?.title ?? (stream === 0 ? '' : book.furniture.contents);
    if (page > 0 && stream - before !== last) frame(pdf, book, { head, foot: book.furniture.page(page + 1, total) });
    for (let each = placed[i]; each?.page === page; each = placed[(i += 1)]) each.draw(each.y);
  }
  addBookmarks(pdf, marks);
}

/** The running head and foot. */
function frame(pdf: Pdf, { title, size }: Book, { head, foot }: { readonly head: string; readonly foot: string }): void {
  const { width, height } = pdf.page;
  const style = { ...STYLES.note, colour: QUIET };
  const left = size === undefined ? title : `${title}, ${size}`;
  artifact(pdf, () => {
    write(pdf, left, MARGIN, MARGIN - 8, style);
    write(pdf, head, width - MARGIN - widthOf(pdf, head, style), MARGIN - 8, style);
    drawLine(pdf, [MARGIN, MARGIN - 2, width - MARGIN, MARGIN - 2], { stroke: RULE, width: 0.5 });
    write(pdf, foot, (width - widthOf(pdf, foot, style)) / 2, height - MARGIN + 12, { ...style, colour: INK });
  });
}

function addBookmarks({ doc }: Pdf, marks: readonly Mark[]): void {
  let chapter: PDFKit.PDFOutline | undefined;
  for (const { title, level, page } of marks) {
    const options = { pageNumber: page, fit: true } as unknown as Parameters<PDFKit.PDFOutline['addItem']>[1];
    if (level === 1) chapter = doc.outline.addItem(title, options);
    else chapter?.addItem(title, options);
  }
}
