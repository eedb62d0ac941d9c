/**
 * Pieced borders: units drawn as in the top border, repeated along each side and turned round the quilt. With a corner the sides are
 * as long as the inner edges; without one the upright sides are, and top and bottom go over the corners, as strips do. `meet`
 * mirrors each side at its middle. The units must come out even; if not, the spacer that would make them is part of the finding.
 */
import { HALF, TWO, add, ceil, div, floor, fraction, isWhole, mul, sign, sub, sum } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { BlockUse, BorderSpec, CellSpec, TurnBy } from '../model/pattern.ts';
import { layCorners } from './border-plain.ts';
import { NO_BORDER, outerRoom } from './border-plan.ts';
import type { BorderSide, BorderWidths, PlannedBorder } from './border-plan.ts';
import { MOST_PATCHES, countCell } from './count.ts';
import { NO_PIECES, UPRIGHT, fitter, gather, stamp, turnedCell, writtenSize } from './fit.ts';
import type { Room, Size } from './move.ts';
import { commonest, differing } from './setting.ts';
import type { Wanted } from './setting.ts';

type PiecedSpec = Extract<BorderSpec, { kind: 'pieced' }>;

export function planPieced(spec: PiecedSpec, inner: Size): PlannedBorder {
  const units = unitsOf(spec);
  if (!units) return { place: spec.place, widths: NO_BORDER, patches: 0, findings: sizeless(spec), lay: () => ({ pieces: NO_PIECES }) };
  const widths = { top: units.width, sides: units.width };
  const sides = sidesOf(spec, units, inner);
  const corner = spec.corner ? 4 * countCell(spec.corner) : 0;
  const unitPatches = units.cells.reduce((total, { use }) => total + countCell(use), 0);
  return {
    place: spec.place,
    widths,
    patches: corner + 2 * (sides.level.repeats + sides.upright.repeats) * unitPatches,
    findings: [...units.findings, ...doesNotFit(spec, units, inner)],
    lay: (room) => layPieced(spec, units, { ...room, width: inner.width, height: inner.height }),
  };
}

/**
 * The least widths of a spacer, each at least `least`, that bring the border's inner room to whole units; equal ones where equal
 * ones can be. Undefined when the units have no size.
 */
export function fittingWidths(spec: PiecedSpec, room: Size, least: Exact): BorderWidths | undefined {
  const units = unitsOf(spec);
  if (!units) return undefined;
  const step = stepOf(spec, units);
  const { level, upright } = lengthsOf(spec, units, room);
  const spare = (length: Exact): Exact => {
    const whole = mul(fraction(ceil(div(add(length, mul(TWO, least)), step))), step);
    return mul(HALF, sub(whole, length));
  };
  return { top: spare(upright), sides: spare(level) };
}

interface Units {
  readonly cells: readonly { readonly use: BlockUse; readonly along: Exact }[];
  /** All units once. */
  readonly length: Exact;
  /** The width of the border. */
  readonly width: Exact;
  readonly findings: readonly Finding[];
}

function unitsOf(spec: PiecedSpec): Units | undefined {
  const cells = spec.units.flatMap((use) => {
    const size = writtenSize(use);
    return size && sign(size.width) > 0 && sign(size.height) > 0 ? [{ use, along: size.width, across: size.height }] : [];
  });
  const heights = cells.map(({ use, across }): Wanted => ({ size: across, place: use.place }));
  const width = commonest(heights);
  if (!width || cells.length < spec.units.length) return undefined;
  return { cells, length: sum(cells.map((cell) => cell.along)), width: width.size, findings: differing(heights, width, 'the height is') };
}

function sizeless(spec: PiecedSpec): Finding[] {
  return spec.units
    .filter((use) => !use.block.size)
    .map((use): Finding => ({ rule: 'wrong-argument', place: use.place, problem: `\`${use.block.name}\` needs a size to be a unit of a border` }));
}

/** What a side must be a multiple of. */
function stepOf({ meet }: PiecedSpec, { length }: Units): Exact {
  return meet ? mul(TWO, length) : length;
}

/** The lengths of top and bottom, and of the sides. */
function lengthsOf(spec: PiecedSpec, { width }: Units, inner: Size): { readonly level: Exact; readonly upright: Exact } {
  return { level: spec.corner ? inner.width : add(inner.width, mul(TWO, width)), upright: inner.height };
}

interface Side {
  readonly length: Exact;
  /** How often all units stand in it. */
  readonly repeats: number;
}

function sidesOf(spec: PiecedSpec, units: Units, inner: Size): { readonly level: Side; readonly upright: Side } {
  const { level, upright } = lengthsOf(spec, units, inner);
  const side = (length: Exact): Side => {
    const repeats = floor(div(length, units.length));
    return { length, repeats: repeats > BigInt(MOST_PATCHES) ? Number.MAX_SAFE_INTEGER : Number(repeats) };
  };
  return { level: side(level), upright: side(upright) };
}

/** Told once, with the spacer border that makes all sides fit; each side is told where none can be worked out. */
function doesNotFit(spec: PiecedSpec, units: Units, inner: Size): Finding[] {
  const step = stepOf(spec, units);
  const { level, upright } = lengthsOf(spec, units, inner);
  const report = (side: Exact, what: string): Finding[] =>
    isWhole(div(side, step)) ? [] : [{ rule: 'border-does-not-fit', place: spec.place, side, unit: step, what }];
  const found = [...report(level, 'at top and bottom a unit'), ...report(upright, 'at the sides a unit')];
  const spacers = fittingWidths(spec, inner, HALF);
  return spacers ? found.slice(0, 1).map((finding) => ({ ...finding, spacers })) : found;
}

// ---------------------------------------------------------------------------------------------- laying

function layPieced(spec: PiecedSpec, units: Units, inner: Room): ReturnType<PlannedBorder['lay']> {
  const widths = { top: units.width, sides: units.width };
  const { fit, findings } = fitter({ pose: UPRIGHT, sizesChecked: 'before' });
  const sides = sidesOf(spec, units, inner);
  const outer = outerRoom(inner, widths);
  const stamped = SIDES.flatMap((side) => {
    const { length, repeats } = side === 'top' || side === 'bottom' ? sides.level : sides.upright;
    return alongSide(spec, units, { side, length, repeats }).map(({ cell, from, along }, column) => {
      const level = side === 'top' || side === 'bottom';
      const room = level ? { width: along, height: units.width } : { width: units.width, height: along };
      const at = startOf(side, { from, along, length, corner: spec.corner !== undefined }, { inner, outer });
      return stamp(fit(cell, room), { ...at, row: 0, column, part: 'border', place: cell.place });
    });
  });
  const corners = spec.corner ? layCorners(spec.corner, widths, inner) : NO_PIECES;
  return {
    pieces: gather([...stamped, corners, { findings: findings() }]),
    layout: {
      width: units.width,
      corners: 'pieced',
      lengthwise: false,
      strips: SIDES.map((side) => ({ side, length: (side === 'top' || side === 'bottom' ? sides.level : sides.upright).length, width: units.width })),
      place: spec.place,
    },
  };
}

const SIDES: readonly BorderSide[] = ['top', 'right', 'bottom', 'left'];
const TURNS: Readonly<Record<BorderSide, readonly TurnBy[]>> = { top: [], right: ['90'], bottom: ['180'], left: ['270'] };

interface UnitAlong {
  /** Turned as it stands there; one object for all that are alike. */
  readonly cell: CellSpec;
  /** From the beginning of the side, which is its left end when it is looked at from inside. */
  readonly from: Exact;
  readonly along: Exact;
}

/** The units of one side as in the top border, in the middle when they do not fill it. */
function alongSide(spec: PiecedSpec, { cells, length }: Units, at: Side & { readonly side: BorderSide }): UnitAlong[] {
  const turned = (...turns: readonly TurnBy[]): Omit<UnitAlong, 'from'>[] =>
    cells.map(({ use, along }) => ({ cell: turnedCell(use, [...turns, ...TURNS[at.side]]), along }));
  const repeats = spec.meet ? at.repeats - (at.repeats % 2) : at.repeats;
  const plain = turned();
  const mirrored = turned('mirror').reverse();
  const row = Array.from({ length: repeats }, (_, i) => (spec.meet && 2 * i >= repeats ? mirrored : plain)).flat();
  let from = mul(HALF, sub(at.length, mul(fraction(repeats), length)));
  return row.map(({ cell, along }) => {
    const here = from;
    from = add(from, along);
    return { cell, from: here, along };
  });
}

interface Along {
  readonly from: Exact;
  readonly along: Exact;
  readonly length: Exact;
  readonly corner: boolean;
}

/** The upper left corner of a unit's room. Top runs to the right, right down, bottom to the left, left up. */
function startOf(side: BorderSide, at: Along, { inner, outer }: { readonly inner: Room; readonly outer: Room }): { readonly x: Exact; readonly y: Exact } {
  const left = at.corner ? inner.x : outer.x;
  const back = sub(sub(at.length, at.from), at.along);
  switch (side) {
    case 'top':
      return { x: add(left, at.from), y: outer.y };
    case 'right':
      return { x: add(inner.x, inner.width), y: add(inner.y, at.from) };
    case 'bottom':
      return { x: add(left, back), y: add(inner.y, inner.height) };
    case 'left':
      return { x: outer.x, y: add(inner.y, back) };
  }
}
