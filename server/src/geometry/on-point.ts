/**
 * `on_point A by B`: A by B blocks turned 45° clockwise, (A − 1) by (B − 1) between them, and setting triangles around. Width and
 * height are A and B times the diagonal of block and sash. Sashing lies between all places, those cut by the edge included.
 */
import { ONE, ZERO, add, equals, fraction, isZero, mul, sign } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { CellSpec, QuiltSpec, Setting, TileSpec } from '../model/pattern.ts';
import { MOST_PATCHES, countCell } from './count.ts';
import { fitter, gather, stamp, writtenSize } from './fit.ts';
import type { Pieces } from './fit.ts';
import type { GridCell } from './join.ts';
import { latticeOf, latticePoint, latticeRoom, onPoint } from './lattice.ts';
import type { Lattice } from './lattice.ts';
import { countLatticeSashing, layFrame, layLatticeSashing } from './lattice-sashing.ts';
import type { Placement } from './layout.ts';
import { shiftPatch } from './move.ts';
import { stripsOf } from './sashing.ts';
import type { Strips } from './sashing.ts';
import { layEdges } from './setting-triangles.ts';
import { commonest, countCells, differing, oncePerPlace, wantedSizes, withoutSize } from './setting.ts';
import type { Measured, QuiltContext } from './setting.ts';
import { tileFindings, tooMany } from './straight.ts';
import { tileOf } from './tile.ts';
import { written } from './written.ts';

type Counted = Extract<Setting, { kind: 'straight' | 'on_point' }>;

export function measureOnPoint(context: QuiltContext, setting: Counted): Measured {
  const { across, down } = setting;
  if (2 * across * down > MOST_PATCHES) return tooMany(setting, across * down + (across - 1) * (down - 1));
  const { spec } = context;
  const places = placesOf(context, setting);
  const cells = [...places.place, ...places.between];
  const side = sideOf(cells, spec, setting);
  const sashing = sashingOf(spec);
  const float = floatOf(spec);
  const lattice = latticeOf({ across, down }, side.block, { sash: sashing.strips?.width ?? ZERO, float: float.width });
  const frame = sashing.strips?.outer ? sashing.strips.width : ZERO;
  const around = mul(fraction(2), add(float.width, frame));
  return {
    width: add(lattice.width, around),
    height: add(lattice.height, around),
    place: setting.place,
    patches: countCells(cells) + countEdges(spec, lattice) + countSashing(lattice, sashing.strips),
    findings: [...places.findings, ...(cells.length > 0 ? side.findings : []), ...sashing.findings, ...float.findings, ...edgeFindings(spec, setting)],
    lay: (x, y) => shifted(layLattice({ spec, lattice, places, ...sashing }), add(x, add(float.width, frame)), add(y, add(float.width, frame))),
  };
}

// ---------------------------------------------------------------------------------------------- places

interface Places {
  readonly place: readonly GridCell[];
  readonly between: readonly GridCell[];
  readonly findings: readonly Finding[];
}

/** Without a tile of their own, the places between count rows and columns of the same tile from its start. */
function placesOf(context: QuiltContext, setting: Counted): Places {
  const { tile: main, between } = context.spec;
  const [across, down] = [setting.across - 1, setting.down - 1];
  const tile = main && tileOf(main);
  const goesOn = written(context.spec, 'between').length === 0;
  const second = between ? tileOf(between) : goesOn ? tile : undefined;
  const own = between && across * down > 0 ? tileFindings({ ...context, spec: { ...context.spec, tile: between } }, { ...setting, across, down }, second) : [];
  const joined = [tile?.joined, between ? second?.joined : undefined].filter((cell) => cell !== undefined);
  return {
    place: tile?.fill(setting.across, setting.down) ?? [],
    between: second?.fill(across, down) ?? [],
    findings: [...tileFindings(context, setting, tile), ...own, ...joined.map(noJoining)],
  };
}

function noJoining({ place }: CellSpec): Finding {
  return { rule: 'wrong-argument', place, problem: 'cells cannot be joined on point' };
}

/** The side that most blocks have; all must have it, both ways. */
function sideOf(cells: readonly GridCell[], spec: QuiltSpec, setting: Counted): { readonly block: Exact; readonly findings: readonly Finding[] } {
  const expected = commonest(wantedSizes(cells, 'width'));
  if (!expected) {
    const unknown = withoutSize(cells, placeOf(spec.tile) ?? setting.place);
    return { block: unknown.size.width, findings: unknown.findings };
  }
  const problem = 'a block set on point is square';
  const oblong = cells
    .filter(({ cell }) => isOblong(cell))
    .map(({ cell }): Finding => ({ rule: 'wrong-argument', place: cell.place, problem }));
  const differ = differing(wantedSizes(cells, 'width'), expected, 'the size is');
  return sign(expected.size) > 0 ? { block: expected.size, findings: oncePerPlace([...oblong, ...differ]) } : { block: ONE, findings: [] };
}

function placeOf(tile: TileSpec | undefined): TileSpec['place'] | undefined {
  return tile?.place;
}

function isOblong(cell: CellSpec): boolean {
  const size = writtenSize(cell);
  return size !== undefined && !equals(size.width, size.height);
}

// ---------------------------------------------------------------------------------------------- sashing, float, edges

interface SashingOnPoint {
  readonly strips?: Strips;
  readonly findings: readonly Finding[];
}

/** Long strips are cut at the edge, which a block is not. */
function sashingOf({ sashing }: QuiltSpec): SashingOnPoint {
  const found = stripsOf(sashing);
  if (!sashing || sashing.filling.kind === 'fabric' || sashing.cornerstones) return found;
  const problem = 'on point a block can be sashing only with cornerstones: without them long strips are cut at the edge';
  return { findings: [...found.findings, { rule: 'wrong-argument', place: sashing.place, problem }] };
}

function floatOf(spec: QuiltSpec): { readonly width: Exact; readonly findings: readonly Finding[] } {
  const { float } = spec;
  if (!float) return { width: ZERO, findings: [] };
  const without = (finding: Finding): { readonly width: Exact; readonly findings: readonly Finding[] } => ({ width: ZERO, findings: [finding] });
  if (sign(float.width) < 0) return without({ rule: 'wrong-argument', place: float.place, problem: 'a float is not less than zero' });
  if (isZero(float.width)) return { width: ZERO, findings: [] };
  const blocks = [spec.edges?.filling, spec.cornerFilling?.filling].some((filling) => filling !== undefined && filling !== 'none' && filling.kind === 'block');
  if (!blocks) return { width: float.width, findings: [] };
  const problem = 'blocks that the edge cuts cannot be larger: a float needs setting triangles of a fabric';
  return without({ rule: 'wrong-argument', place: float.place, problem });
}

function edgeFindings(spec: QuiltSpec, setting: Counted): Finding[] {
  if (spec.edges || written(spec, 'edges', 'junk').length > 0) return [];
  return [{ rule: 'wrong-argument', place: setting.place, problem: 'a quilt on point needs `edges FABRIC` for its setting triangles' }];
}

function countEdges({ edges, cornerFilling }: QuiltSpec, { across, down }: Lattice): number {
  if (!edges) return 0;
  const corner = cornerFilling?.filling ?? edges.filling;
  return 2 * (across + down - 2) * countCell(edges.filling) + (corner === 'none' ? 0 : 4 * countCell(corner));
}

function countSashing(lattice: Lattice, strips: Strips | undefined): number {
  if (!strips) return 0;
  const counts = countLatticeSashing(lattice, strips);
  return counts.strips * countCell(strips.upright) + counts.cornerstones * (strips.cornerstone ? countCell(strips.cornerstone) : 0);
}

// ---------------------------------------------------------------------------------------------- laying

interface OnPoint extends SashingOnPoint {
  readonly spec: QuiltSpec;
  readonly lattice: Lattice;
  readonly places: Places;
}

function layLattice({ spec, lattice, places, strips }: OnPoint): Pieces {
  const { edges, cornerFilling } = spec;
  const corners = cornerFilling?.filling ?? edges?.filling;
  return gather([
    layPlaces(lattice, places),
    edges ? layEdges(lattice, { sides: edges.filling, corners: corners === 'none' ? undefined : corners }) : {},
    strips ? layLatticeSashing(lattice, strips) : {},
    strips?.outer ? layFrame(latticeRoom(lattice), strips) : {},
  ]);
}

function layPlaces(lattice: Lattice, { place, between }: Places): Pieces {
  const room = { width: lattice.block, height: lattice.block };
  const { fit, findings } = fitter({ pose: onPoint(room), sizesChecked: 'before' });
  const set = (cells: readonly GridCell[], part: 'place' | 'between'): Partial<Pieces>[] =>
    cells.map(({ cell, row, column }) => {
      const first = part === 'place' ? 1 : 2;
      const { x, y } = latticePoint(lattice, fraction(2 * column + first), fraction(2 * row + first));
      return stamp(fit(cell, room), { x, y, row, column, part, place: cell.place });
    });
  return gather([...set(place, 'place'), ...set(between, 'between'), { findings: findings() }]);
}

/** From the lattice's coordinates to the quilt's. */
function shifted(pieces: Pieces, dx: Exact, dy: Exact): Pieces {
  const move = (placement: Placement): Placement => ({
    ...placement,
    transform: { ...placement.transform, dx: add(placement.transform.dx, dx), dy: add(placement.transform.dy, dy) },
    ...(placement.clip ? { clip: placement.clip.map(({ x, y }) => ({ x: add(x, dx), y: add(y, dy) })) } : {}),
  });
  return { ...pieces, placements: pieces.placements.map(move), patches: pieces.patches.map((patch) => shiftPatch(patch, dx, dy)) };
}
