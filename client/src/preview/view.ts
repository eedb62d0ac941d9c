/** Where the picture lies in the page, as plain numbers: fitting, zooming about a point, moving. Pixels are CSS pixels. */
import type { View } from './messages.ts';

export interface Extent {
  readonly width: number;
  readonly height: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Pixels an inch, least and most. */
const LEAST = 0.25;
const MOST = 600;
/** Room kept free around a fitted picture, and the least part of a picture that stays in sight. */
const MARGIN = 24;
const IN_SIGHT = 40;

/** The whole picture in the middle of the page, with a margin. */
export function fitted(page: Extent, picture: Extent): View {
  const room = { width: Math.max(page.width - 2 * MARGIN, 1), height: Math.max(page.height - 2 * MARGIN, 1) };
  const scale = within(Math.min(room.width / picture.width, room.height / picture.height), LEAST, MOST);
  return { scale, x: (page.width - picture.width * scale) / 2, y: (page.height - picture.height * scale) / 2 };
}

/** Zoomed by a factor; what lies under `spot` stays there. */
export function zoomed(view: View, factor: number, spot: Spot): View {
  const scale = within(view.scale * factor, LEAST, MOST);
  const by = scale / view.scale;
  return { scale, x: spot.x - (spot.x - view.x) * by, y: spot.y - (spot.y - view.y) * by };
}

/** Moved by pixels, but never out of sight. */
export function moved(view: View, by: Spot, page: Extent, picture: Extent): View {
  return {
    scale: view.scale,
    x: within(view.x + by.x, IN_SIGHT - picture.width * view.scale, page.width - IN_SIGHT),
    y: within(view.y + by.y, IN_SIGHT - picture.height * view.scale, page.height - IN_SIGHT),
  };
}

/** Moved no farther than brings a part of the picture (inches) into sight; the same view where it is in sight already. */
export function inSight(view: View, page: Extent, part: Extent & Spot): View {
  const along = (at: number, from: number, length: number, room: number): number => {
    const [start, end] = [at + from * view.scale, at + (from + length) * view.scale];
    if (start < 0 || end - start > room) return at - start;
    return end > room ? at - (end - room) : at;
  };
  const [x, y] = [along(view.x, part.x, part.width, page.width), along(view.y, part.y, part.height, page.height)];
  return x === view.x && y === view.y ? view : { ...view, x, y };
}

/** The point of the picture, in inches, that lies at a point of the page. */
export function inPicture(view: View, spot: Spot): Spot {
  return { x: (spot.x - view.x) / view.scale, y: (spot.y - view.y) / view.scale };
}

function within(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), Math.max(least, most));
}
