/**
 * Borders of plain strips. Butted: the sides first, then top and bottom over the new width. Mitred: seams from inner to outer corner,
 * every strip as long as the outer edge. Squares: strips as long as the inner edge, and something of its own in the corners.
 */
import { sign } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Polygon } from '../exact/polygon.ts';
import type { BorderCorners, BorderSpec } from '../model/pattern.ts';
import { cornerRooms, outerRoom } from './border-plan.ts';
import type { BorderSide, BorderWidths, PlannedBorder } from './border-plan.ts';
import { countCell } from './count.ts';
import { NO_PIECES, UPRIGHT, fitter, gather, stamp, turnedCell } from './fit.ts';
import type { Pieces } from './fit.ts';
import type { BorderLayout, Patch } from './layout.ts';
import { cornersOf } from './move.ts';
import type { Room } from './move.ts';

type PlainSpec = Extract<BorderSpec, { kind: 'plain' | 'to' | 'fit' }>;

export function plainPatches(corners: BorderCorners): number {
  return corners.kind === 'squares' ? 4 + 4 * countCell(corners.filling) : 4;
}

export function layPlainBorder(spec: PlainSpec, widths: BorderWidths, inner: Room): ReturnType<PlannedBorder['lay']> {
  if (sign(widths.top) <= 0 && sign(widths.sides) <= 0) return { pieces: NO_PIECES };
  const strips = stripsOf(spec.corners.kind, widths, inner).filter((strip) => sign(strip.width) > 0);
  const patches = strips.map(({ outline }): Patch => ({ fabric: spec.fabric, outline, role: 'border', place: spec.place }));
  return {
    pieces: gather([{ patches }, spec.corners.kind === 'squares' ? layCorners(spec.corners.filling, widths, inner) : {}]),
    layout: {
      width: sign(widths.top) > 0 ? widths.top : widths.sides,
      fabric: spec.fabric,
      corners: spec.corners.kind,
      lengthwise: spec.lengthwise,
      strips: strips.map(({ side, length, width }) => ({ side, length, width })),
      place: spec.place,
    },
  };
}

interface BorderStrip {
  readonly side: BorderSide;
  readonly length: Exact;
  readonly width: Exact;
  readonly outline: Polygon;
}

function stripsOf(corners: BorderLayout['corners'], widths: BorderWidths, inner: Room): BorderStrip[] {
  const outer = outerRoom(inner, widths);
  const rooms = cornerRooms(inner, widths);
  const [topLeft, topRight, bottomRight, bottomLeft] = rooms;
  if (!topLeft || !topRight || !bottomRight || !bottomLeft) return [];
  const wide = corners === 'butted' ? outer : inner;
  if (corners === 'mitred' && sign(widths.top) > 0 && sign(widths.sides) > 0) return mitredStrips(inner, outer, widths);
  const level = (side: 'top' | 'bottom', y: Exact): BorderStrip => {
    const room = { x: wide.x, y, width: wide.width, height: widths.top };
    return { side, length: wide.width, width: widths.top, outline: cornersOf(room) };
  };
  const upright = (side: 'left' | 'right', x: Exact): BorderStrip => {
    const room = { x, y: inner.y, width: widths.sides, height: inner.height };
    return { side, length: inner.height, width: widths.sides, outline: cornersOf(room) };
  };
  return [level('top', topLeft.y), upright('right', topRight.x), level('bottom', bottomRight.y), upright('left', topLeft.x)];
}

/** Trapezoids between the corners of the inner and the outer room. */
function mitredStrips(inner: Room, outer: Room, widths: BorderWidths): BorderStrip[] {
  const [from, to] = [cornersOf(inner), cornersOf(outer)];
  const sides: readonly BorderSide[] = ['top', 'right', 'bottom', 'left'];
  return sides.map((side, i) => {
    const next = (i + 1) % 4;
    const level = side === 'top' || side === 'bottom';
    const outline = [to[i], to[next], from[next], from[i]].filter((corner) => corner !== undefined);
    return { side, length: level ? outer.width : outer.height, width: level ? widths.top : widths.sides, outline };
  });
}

/** Drawn as in the upper left corner, and turned round the quilt. */
export function layCorners(filling: Parameters<typeof turnedCell>[0], widths: BorderWidths, inner: Room): Pieces {
  if (sign(widths.top) <= 0 || sign(widths.sides) <= 0) return NO_PIECES;
  const { fit, findings } = fitter({ pose: UPRIGHT, sizesChecked: 'here', role: 'border_corner' });
  const stamped = cornerRooms(inner, widths).map((room, column) =>
    stamp(fit(turnedCell(filling, room.turns), room), { x: room.x, y: room.y, row: 0, column, part: 'border', place: filling.place }),
  );
  return gather([...stamped, { findings: findings().slice(0, 1) }]);
}
