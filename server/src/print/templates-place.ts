/** Where shapes go on pages: in rows where they fit, over several sheets that overlap where they are larger than a page. In points. */
import type { Room } from './templates-page.ts';
import { OVERLAP } from './templates-pen.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** What is placed: a figure at true size with lines of text below it. */
export interface Placeable extends Size {
  /** Of the text, at the width of the figure or a little more. */
  readonly captionWidth: number;
  readonly captionHeight: number;
  /** Whether anything of it lies in a part of it, in its own measures. */
  readonly isIn: (left: number, top: number, width: number, height: number) => boolean;
}

/** One page: what stands whole on it, or one sheet of a larger figure. */
export type PageOf<T> = { readonly kind: 'whole'; readonly items: readonly Placed<T>[] } | ({ readonly kind: 'sheet'; readonly item: T } & SheetPart);

export interface Placed<T> {
  readonly item: T;
  readonly x: number;
  readonly y: number;
  /** A quarter turn, clockwise. */
  readonly isTurned: boolean;
}

/** A window on a figure. */
export interface SheetPart {
  readonly isTurned: boolean;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
  /** Of the sheets of the figure, from 0; those that would be blank are not printed. */
  readonly number: number;
  readonly count: number;
  /** By row and column, row after row; undefined for a blank one. */
  readonly numbers: readonly (number | undefined)[];
  /** Of the window within the (turned) figure. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const BETWEEN = 14;

export function placeOnPages<T extends Placeable>(items: readonly T[], room: Room): readonly PageOf<T>[] {
  const whole = items.flatMap((item) => fitting(item, room) ?? []);
  const large = items.filter((item) => !fitting(item, room));
  return [...shelves(whole, room), ...large.flatMap((item) => sheetsOf(item, room))];
}

interface Fitting<T> extends Size {
  readonly item: T;
  readonly isTurned: boolean;
}

/** Upright where it fits so. */
function fitting<T extends Placeable>(item: T, room: Size): Fitting<T> | undefined {
  const fits = (width: number, height: number): boolean => Math.max(width, item.captionWidth) <= room.width && height + item.captionHeight <= room.height;
  if (fits(item.width, item.height)) return { item, isTurned: false, width: Math.max(item.width, item.captionWidth), height: item.height + item.captionHeight };
  return fits(item.height, item.width) ? { item, isTurned: true, width: Math.max(item.height, item.captionWidth), height: item.width + item.captionHeight } : undefined;
}

interface Shelf {
  readonly page: number;
  readonly y: number;
  readonly height: number;
  /** Taken so far. */
  x: number;
}

/** The highest first, each on the first shelf that has room; on every page those of the same height in their order. */
function shelves<T>(fittings: readonly Fitting<T>[], room: Room): readonly PageOf<T>[] {
  const pages: { readonly kind: 'whole'; readonly items: Placed<T>[]; bottom: number }[] = [];
  const all: Shelf[] = [];
  for (const { item, isTurned, width, height } of [...fittings].sort((a, b) => b.height - a.height)) {
    const shelf = all.find((each) => each.x + width <= room.width) ?? newShelf(height);
    pages[shelf.page]?.items.push({ item, x: room.x + shelf.x, y: room.y + shelf.y, isTurned });
    shelf.x += width + BETWEEN;
  }
  return pages.map(({ kind, items }) => ({ kind, items }));

  function newShelf(height: number): Shelf {
    let page = pages.findIndex(({ bottom }) => bottom + height <= room.height);
    if (page < 0) page = pages.push({ kind: 'whole', items: [], bottom: 0 }) - 1;
    const y = pages[page]?.bottom ?? 0;
    const shelf = { page, y, height, x: 0 };
    all.push(shelf);
    const open = pages[page];
    if (open) open.bottom = y + height + BETWEEN;
    return shelf;
  }
}

/** Upright or turned, whichever takes fewer sheets; the caption stands on each. */
function sheetsOf<T extends Placeable>(item: T, room: Room): readonly PageOf<T>[] {
  const window = { width: room.width, height: room.height - item.captionHeight };
  const counts = ({ width, height }: Size): Size => ({ width: stepsFor(width, window.width), height: stepsFor(height, window.height) });
  const [upright, turned] = [counts(item), counts({ width: item.height, height: item.width })];
  const isTurned = turned.width * turned.height < upright.width * upright.height;
  const { width: columns, height: rows } = isTurned ? turned : upright;
  const [stepX, stepY] = [window.width - OVERLAP, window.height - OVERLAP];
  const isPrinted = (left: number, top: number): boolean =>
    isTurned ? item.isIn(top, item.height - left - window.width, window.height, window.width) : item.isIn(left, top, window.width, window.height);
  let count = 0;
  const numbers = Array.from({ length: rows * columns }, (_, i) => (isPrinted((i % columns) * stepX, Math.floor(i / columns) * stepY) ? count++ : undefined));
  return numbers.flatMap((number, i): PageOf<T>[] => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    return number === undefined ? [] : [{ kind: 'sheet', item, isTurned, row, column, rows, columns, number, count, numbers, left: column * stepX, top: row * stepY, ...window }];
  });
}

function stepsFor(length: number, window: number): number {
  return Math.max(1, Math.ceil((length - OVERLAP) / (window - OVERLAP)));
}
