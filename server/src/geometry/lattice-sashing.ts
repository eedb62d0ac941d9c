/**
 * Sashing on point: short strips between the places of a diagonal row; between the rows long ones, which the edges cut at 45°, or
 * short ones with cornerstones, which the edges cut in half. `outer` is a straight frame around the whole.
 */
import { HALF, ONE, SQRT2, ZERO, add, fraction, isZero, mul, neg, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Polygon } from '../exact/polygon.ts';
import type { CellSpec, FabricUse } from '../model/pattern.ts';
import { cutAlong, cutTo } from './clip.ts';
import { UPRIGHT, fitter, gather, stamp } from './fit.ts';
import type { Pieces, Station } from './fit.ts';
import { latticePoint, latticeRoom, onPoint } from './lattice.ts';
import type { Lattice } from './lattice.ts';
import type { Patch } from './layout.ts';
import { cornersOf } from './move.ts';
import type { Room, Size } from './move.ts';
import type { Strips } from './sashing.ts';

/** In the lattice's coordinates. Long strips are of one fabric. */
export function layLatticeSashing(lattice: Lattice, strips: Strips): Pieces {
  const short = layShort(lattice, strips.upright, { room: { width: strips.width, height: lattice.block }, down: 1 });
  if (!strips.cornerstone) return gather([short, layLong(lattice, strips.upright)]);
  const level = layShort(lattice, strips.level, { room: { width: lattice.block, height: strips.width }, down: -1 });
  return gather([short, level, layCrossings(lattice, strips.cornerstone), isZero(lattice.float) ? {} : layTails(lattice, strips)]);
}

/** How many patches `layLatticeSashing` makes when every strip is one. */
export function countLatticeSashing({ across, down, float }: Lattice, strips: Strips): { readonly strips: number; readonly cornerstones: number } {
  const inRows = 2 * across * down;
  if (!strips.cornerstone) return { strips: inRows + across + down, cornerstones: 0 };
  const tails = isZero(float) ? 0 : 2 * (across + down);
  return { strips: 2 * inRows + tails, cornerstones: inRows + across + down };
}

/** The straight frame around a room, which lies inside it. */
export function layFrame(room: Room, strips: Strips): Pieces {
  const { width } = strips;
  const [left, top] = [sub(room.x, width), sub(room.y, width)];
  const [right, bottom] = [add(room.x, room.width), add(room.y, room.height)];
  const upright = { width, height: room.height };
  const sashes = fitter({ pose: UPRIGHT, sizesChecked: 'here', role: 'sash' });
  const squares = fitter({ pose: UPRIGHT, sizesChecked: 'here', role: 'cornerstone' });
  const sash = (cell: CellSpec, size: Size, x: Exact, y: Exact): Partial<Pieces> =>
    stamp(sashes.fit(cell, size), { x, y, row: 0, column: 0, part: 'sashing', place: cell.place });
  const sides = [sash(strips.upright, upright, left, room.y), sash(strips.upright, upright, right, room.y)];
  const { cornerstone } = strips;
  if (!cornerstone) {
    const level = { width: add(room.width, add(width, width)), height: width };
    return gather([...sides, sash(strips.level, level, left, top), sash(strips.level, level, left, bottom), { findings: sashes.findings() }]);
  }
  const level = { width: room.width, height: width };
  const corners = [left, right].flatMap((x) =>
    [top, bottom].map((y) =>
      stamp(squares.fit(cornerstone, { width, height: width }), { x, y, row: 0, column: 0, part: 'cornerstone', place: cornerstone.place }),
    ),
  );
  const ends = [sash(strips.level, level, room.x, top), sash(strips.level, level, room.x, bottom)];
  return gather([...sides, ...ends, ...corners, { findings: [...sashes.findings(), ...squares.findings()] }]);
}

interface ShortStrips {
  readonly room: Size;
  /** 1: between the places of a row, which runs down; −1: between two rows. */
  readonly down: 1 | -1;
}

/** Between each place and the next one to the right, down or up. */
function layShort(lattice: Lattice, cell: CellSpec, { room, down }: ShortStrips): Pieces {
  const { fit, findings } = fitter({ pose: onPoint(room), sizesChecked: 'here', role: 'sash' });
  const stamped: Partial<Pieces>[] = [];
  for (let j = 0; j <= 2 * lattice.down; j += 1) {
    if (j + down < 0 || j + down > 2 * lattice.down) continue;
    for (let i = j % 2; i < 2 * lattice.across; i += 2) {
      const { x, y } = latticePoint(lattice, fraction(2 * i + 1, 2), fraction(2 * j + down, 2));
      stamped.push(stamp(fit(cell, room), { x, y, row: j, column: i, part: 'sashing', place: cell.place }));
    }
  }
  return gather([...stamped, { findings: findings() }]);
}

/** Between the rows, from edge to edge. */
function layLong(lattice: Lattice, cell: CellSpec): Pieces {
  if (cell.kind !== 'fabric') return gather([]);
  const inside = cornersOf(latticeRoom(lattice));
  const half = mul(mul(HALF, SQRT2), lattice.sash);
  const patches: Patch[] = [];
  for (let k = 1 - 2 * lattice.down; k < 2 * lattice.across; k += 2) {
    const middle = mul(fraction(k), lattice.step);
    for (const outline of diagonal(inside, sub(middle, half), add(middle, half))) patches.push(sashPatch(cell, outline));
  }
  return gather([{ patches }]);
}

function sashPatch({ fabric, place }: FabricUse, outline: Polygon): Patch {
  return { fabric, outline, role: 'sash', place };
}

/** What of a polygon lies where least ≤ x − y ≤ most. */
function diagonal(polygon: Polygon, least: Exact, most: Exact): Polygon[] {
  const through = (c: Exact, far: Exact): { x: Exact; y: Exact } => ({ x: add(c, far), y: far });
  return cutAlong(polygon, through(most, ZERO), through(most, ONE)).flatMap((part) => cutAlong(part, through(least, ONE), through(least, ZERO)));
}

/** Cornerstones where the sashes cross; those at the edge are cut in half. */
function layCrossings(lattice: Lattice, cell: CellSpec): Pieces {
  const room = { width: lattice.sash, height: lattice.sash };
  const { fit, findings } = fitter({ pose: onPoint(room), sizesChecked: 'here', role: 'cornerstone' });
  const inside = cornersOf(latticeRoom(lattice));
  const stamped: Partial<Pieces>[] = [];
  for (let j = 0; j <= 2 * lattice.down; j += 1) {
    for (let i = 1 - (j % 2); i <= 2 * lattice.across; i += 2) {
      const { x, y } = latticePoint(lattice, fraction(i), fraction(j));
      const whole = stamp(fit(cell, room), { x, y, row: j, column: i, part: 'cornerstone', place: cell.place });
      const onEdge = i === 0 || j === 0 || i === 2 * lattice.across || j === 2 * lattice.down;
      stamped.push(onEdge ? cutPieces(whole, inside, squareAt(room.width, { x, y })) : whole);
    }
  }
  return gather([...stamped, { findings: findings() }]);
}

/** With a float the strips between the rows run on from the last cornerstone to the edge. */
function layTails(lattice: Lattice, { upright }: Strips): Pieces {
  if (upright.kind !== 'fabric') return gather([]);
  const inside = cornersOf(latticeRoom(lattice));
  const half = mul(mul(HALF, SQRT2), lattice.sash);
  const ends = edgeCrossings(lattice).flatMap(({ i, j }) => {
    const { x, y } = latticePoint(lattice, fraction(i), fraction(j));
    const [along, middle] = [add(x, y), sub(x, y)];
    const band = diagonal(inside, sub(middle, half), add(middle, half));
    const first = i === 0 || j === 0;
    return band.flatMap((part) => (first ? beyond(part, sub(along, half), 'before') : beyond(part, add(along, half), 'after')));
  });
  return gather([{ patches: ends.map((outline) => sashPatch(upright, outline)) }]);
}

function edgeCrossings({ across, down }: Lattice): { readonly i: number; readonly j: number }[] {
  const level = Array.from({ length: across }, (_, n) => [{ i: 2 * n + 1, j: 0 }, { i: 2 * n + 1, j: 2 * down }]);
  const upright = Array.from({ length: down }, (_, n) => [{ i: 0, j: 2 * n + 1 }, { i: 2 * across, j: 2 * n + 1 }]);
  return [...level, ...upright].flat();
}

/** What of a polygon lies where x + y is at most (before), or at least (after), a value. */
function beyond(polygon: Polygon, value: Exact, side: 'before' | 'after'): Polygon[] {
  const [from, to] = [{ x: value, y: ZERO }, { x: add(value, ONE), y: neg(ONE) }];
  return side === 'after' ? cutAlong(polygon, from, to) : cutAlong(polygon, to, from);
}

/** Patches cut to a region; placed blocks with the outline they are cut to. */
function cutPieces(pieces: Omit<Pieces, 'findings'>, region: Polygon, outline: Polygon): Partial<Pieces> {
  const clip = cutTo(outline, region)[0] ?? outline;
  return {
    placements: pieces.placements.map((placement) => ({ ...placement, clip })),
    patches: pieces.patches.flatMap((patch) => cutTo(patch.outline, region).map((part): Patch => ({ ...patch, outline: part }))),
  };
}

/** A square on point about a centre, clockwise from the top. */
function squareAt(side: Exact, { x, y }: Pick<Station, 'x' | 'y'>): Polygon {
  const reach = mul(mul(HALF, SQRT2), side);
  return [
    { x, y: sub(y, reach) },
    { x: add(x, reach), y },
    { x, y: add(y, reach) },
    { x: sub(x, reach), y },
  ];
}
