/** What every kind of border answers: its widths, known before it is laid, and then its pieces around a room. */
import type { Exact } from '../exact/number.ts';
import { TWO, ZERO, add, mul, sub } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { TurnBy } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';
import type { Pieces } from './fit.ts';
import type { BorderLayout } from './layout.ts';
import type { Room, Size } from './move.ts';

/** `top` is the width at top and bottom. */
export interface BorderWidths {
  readonly top: Exact;
  readonly sides: Exact;
}

export interface PlannedBorder {
  readonly place: Place;
  readonly widths: BorderWidths;
  readonly patches: number;
  readonly findings: readonly Finding[];
  /** Around the room of what lies inside; no layout where there is no border after all. */
  readonly lay: (inner: Room) => { readonly pieces: Pieces; readonly layout?: BorderLayout };
}

export type BorderSide = BorderLayout['strips'][number]['side'];

/** The room with its border. */
export function outerRoom(inner: Room, { top, sides }: BorderWidths): Room {
  return {
    x: sub(inner.x, sides),
    y: sub(inner.y, top),
    width: add(inner.width, mul(TWO, sides)),
    height: add(inner.height, mul(TWO, top)),
  };
}

/** The four corners of a border, each with the turn from the upper left one, as a border is drawn at the top and turned round. */
export function cornerRooms(inner: Room, { top, sides }: BorderWidths): (Room & { readonly turns: readonly TurnBy[] })[] {
  const outer = outerRoom(inner, { top, sides });
  const [right, bottom] = [add(inner.x, inner.width), add(inner.y, inner.height)];
  const size: Size = { width: sides, height: top };
  return [
    { x: outer.x, y: outer.y, ...size, turns: [] },
    { x: right, y: outer.y, ...size, turns: ['90'] },
    { x: right, y: bottom, ...size, turns: ['180'] },
    { x: outer.x, y: bottom, ...size, turns: ['270'] },
  ];
}

export const NO_BORDER = { top: ZERO, sides: ZERO };
