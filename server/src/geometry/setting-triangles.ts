/**
 * Side and corner setting triangles. With a float they reach past the blocks: the seams between the diagonal rows run on to the
 * edge, so that all but two of them lose a tip to the row before. Where a block is the edge, it is set whole and cut along the edge.
 */
import { ZERO, add, fraction, isZero, neg, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import { withoutStraightCorners } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import type { BlockUse, FabricUse } from '../model/pattern.ts';
import { cutTo } from './clip.ts';
import { fitter, gather, stamp } from './fit.ts';
import type { Pieces } from './fit.ts';
import { latticePoint, latticeRoom, onPoint } from './lattice.ts';
import type { Lattice } from './lattice.ts';
import type { Patch } from './layout.ts';
import { cornersOf } from './move.ts';
import { oncePerPlace } from './setting.ts';

export interface EdgeFillings {
  readonly sides: FabricUse | BlockUse;
  /** Undefined for `corners none`. */
  readonly corners: FabricUse | BlockUse | undefined;
}

/** In the lattice's coordinates. */
export function layEdges(lattice: Lattice, fillings: EdgeFillings): Pieces {
  const sides = fillEdges(lattice, fillings.sides, { role: 'side_triangle', at: sidePlaces(lattice) });
  if (!fillings.corners) return sides;
  const corners = fillEdges(lattice, fillings.corners, { role: 'corner_triangle', at: cornerPlaces(lattice) });
  return { ...gather([sides, corners]), findings: oncePerPlace([...sides.findings, ...corners.findings]) };
}

/** A place that the edge cuts: its centre in half pitches, and the triangle that is left of it. */
interface EdgePlace {
  readonly i: number;
  readonly j: number;
  readonly outline: Polygon;
}

interface EdgeKind {
  readonly role: 'side_triangle' | 'corner_triangle';
  readonly at: readonly EdgePlace[];
}

function fillEdges(lattice: Lattice, filling: FabricUse | BlockUse, { role, at }: EdgeKind): Pieces {
  if (filling.kind === 'block') return cutBlocks(lattice, filling, at);
  const patches = at.map((place): Patch => ({ fabric: filling.fabric, outline: place.outline, role, place: filling.place }));
  return gather([{ patches }]);
}

/** The whole block at each place, with the outline it is cut to. */
function cutBlocks(lattice: Lattice, use: BlockUse, at: readonly EdgePlace[]): Pieces {
  const room = { width: lattice.block, height: lattice.block };
  const { fit, findings } = fitter({ pose: onPoint(room), sizesChecked: 'here' });
  const edge = cornersOf(latticeRoom(lattice));
  const stamped = at.map(({ i, j, outline }) => {
    const { x, y } = latticePoint(lattice, fraction(i), fraction(j));
    const { placements } = stamp(fit(use, room), { x, y, row: j, column: i, part: 'edge', place: use.place });
    return { placements: placements.map((placement) => ({ ...placement, clip: cutTo(outline, edge)[0] ?? outline })) };
  });
  return gather([...stamped, { findings: findings() }]);
}

function sidePlaces(lattice: Lattice): EdgePlace[] {
  const { across, down } = lattice;
  const inner = (count: number): number[] => Array.from({ length: count - 1 }, (_, i) => 2 * i + 2);
  const top = inner(across).map((i): EdgePlace => ({ i, j: 0, outline: topOutline(lattice, i) }));
  const left = inner(down).map((j): EdgePlace => ({ i: 0, j, outline: leftOutline(lattice, j) }));
  return [...top, ...left, ...opposite(lattice, left), ...opposite(lattice, top)];
}

function cornerPlaces(lattice: Lattice): EdgePlace[] {
  const { across } = lattice;
  const topLeft: EdgePlace = { i: 0, j: 0, outline: rowEndCorner(lattice) };
  const topRight: EdgePlace = { i: 2 * across, j: 0, outline: lastCorner(lattice) };
  return [topLeft, topRight, ...opposite(lattice, [topRight]), ...opposite(lattice, [topLeft])];
}

/** The same places after half a turn of the whole. */
function opposite(lattice: Lattice, places: readonly EdgePlace[]): EdgePlace[] {
  const { width, height, across, down } = lattice;
  return places.map(({ i, j, outline }) => ({
    i: 2 * across - i,
    j: 2 * down - j,
    outline: outline.map(({ x, y }) => ({ x: sub(width, x), y: sub(height, y) })),
  }));
}

/** At the upper left end of a row that begins at the top. */
function topOutline(lattice: Lattice, i: number): Polygon {
  const { float, reach } = lattice;
  const { x } = latticePoint(lattice, fraction(i), ZERO);
  const [left, right] = [sub(x, reach), add(x, reach)];
  return tidy(float, [at(left, ZERO, float), at(right, ZERO, float), { x: right, y: ZERO }, { x, y: reach }]);
}

/** At the upper left end of a row that begins at the left. */
function leftOutline(lattice: Lattice, j: number): Polygon {
  const { float, reach } = lattice;
  const { y } = latticePoint(lattice, ZERO, fraction(j));
  const [top, bottom] = [sub(y, reach), add(y, reach)];
  return tidy(float, [at(ZERO, top, float), { x: reach, y }, { x: ZERO, y: bottom }, at(ZERO, bottom, float)]);
}

/** The upper left corner, sewn to the end of a row. */
function rowEndCorner({ float, reach }: Lattice): Polygon {
  const edge = neg(float);
  return tidy(float, [
    { x: edge, y: edge },
    at(reach, ZERO, float),
    { x: reach, y: ZERO },
    { x: ZERO, y: reach },
    at(ZERO, reach, float),
  ]);
}

/** The upper right corner, sewn to a whole row at the end. */
function lastCorner({ width, float, reach }: Lattice): Polygon {
  const right = add(width, float);
  const leg = add(reach, float);
  return [
    { x: right, y: neg(float) },
    { x: right, y: leg },
    { x: sub(width, leg), y: neg(float) },
  ];
}

/** Up along the row, against its direction, by the float. */
function at(x: Exact, y: Exact, float: Exact): Point {
  return { x: sub(x, float), y: sub(y, float) };
}

function tidy(float: Exact, outline: Polygon): Polygon {
  return isZero(float) ? withoutStraightCorners(outline) : outline;
}
