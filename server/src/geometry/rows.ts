/**
 * Quilts of rows: each row repeats its cells to fill the width, from the left; a plain row is one strip. A row that does not come
 * out even is a finding that names the spacer which would make it, and stands in the middle.
 */
import { HALF, ONE, ZERO, add, div, floor, fraction, isZero, less, mul, sign, sub, sum } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { CellRow, CellSpec, QuiltRow, Setting } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';
import { MOST_PATCHES } from './count.ts';
import { UPRIGHT, fitter, gather, stamp, turnedCell, writtenSize } from './fit.ts';
import type { Pieces } from './fit.ts';
import { joinCells } from './join.ts';
import type { GridCell } from './join.ts';
import { cornersOf } from './move.ts';
import { commonest, countCells, differing, oncePerPlace, wantedSizes, withoutSize } from './setting.ts';
import type { Measured, QuiltContext } from './setting.ts';
import { written } from './written.ts';

type RowsSetting = Extract<Setting, { kind: 'rows' }>;

export function measureRows({ spec }: QuiltContext, setting: RowsSetting): Measured {
  const rows = setting.rows.map((row, index) => measureRow(row, index, setting));
  const { sashing } = spec;
  const refuse = (place: Place, problem: string): Finding => ({ rule: 'wrong-argument', place, problem });
  const findings = [
    ...(sashing ? [refuse(sashing.place, 'a quilt of rows has no sashing: `row LEN FABRIC` is a strip between rows')] : []),
    ...(rows.length > 0 || written(spec, 'row', 'junk').length > 0 ? [] : [refuse(setting.place, 'nothing is placed yet: `row …` adds a row')]),
  ];
  return {
    width: setting.width,
    height: rows.length === 0 ? ONE : sum(rows.map((row) => row.height)),
    place: setting.place,
    patches: rows.reduce((total, row) => total + row.patches, 0),
    findings: [...rows.flatMap((row) => row.findings), ...findings],
    lay: (x, y) => layRows(rows, x, y),
  };
}

interface MeasuredRow {
  readonly height: Exact;
  readonly patches: number;
  readonly findings: readonly Finding[];
  readonly lay: (x: Exact, y: Exact) => Pieces;
}

function layRows(rows: readonly MeasuredRow[], x: Exact, y: Exact): Pieces {
  let top = y;
  const pieces = rows.map((row) => {
    const laid = row.lay(x, top);
    top = add(top, row.height);
    return laid;
  });
  return gather(pieces);
}

function measureRow(row: QuiltRow, index: number, setting: RowsSetting): MeasuredRow {
  return row.kind === 'plain' ? plainRow(row, setting) : cellRow(row, index, setting);
}

function plainRow({ height, fabric, place }: Extract<QuiltRow, { kind: 'plain' }>, { width }: RowsSetting): MeasuredRow {
  if (sign(height) <= 0) {
    return { height: ZERO, patches: 0, findings: [{ rule: 'empty-patch', place, why: 'the height of this row is zero' }], lay: () => gather([]) };
  }
  const lay = (x: Exact, y: Exact): Pieces =>
    gather([{ patches: [{ fabric, outline: cornersOf({ x, y, width, height }), role: 'plain', place }] }]);
  return { height, patches: 1, findings: [], lay };
}

/** One of the repeated cells with its room. */
interface RowCell {
  readonly cell: CellSpec;
  readonly width: Exact;
}

function cellRow(row: CellRow & { readonly kind: 'cells' }, index: number, setting: RowsSetting): MeasuredRow {
  const { cells, findings } = joinCells([row]);
  const heights = wantedSizes(cells.map(simple), 'height');
  const height = commonest(heights);
  const widths = wantedSizes(cells.map(simple), 'width');
  const unknown = height ? undefined : withoutSize(cells, row.place);
  const room = { height: height?.size ?? ONE, width: commonest(widths)?.size ?? height?.size ?? ONE };
  const units = cells.map(simple).map(({ cell, columns }): RowCell => ({ cell, width: writtenSize(cell)?.width ?? mul(fraction(columns), room.width) }));
  const filled = fill(units, setting.width);
  const all = [...findings, ...(unknown?.findings ?? []), ...(height ? oncePerPlace(differing(heights, height, 'the height is')) : [])];
  return {
    height: room.height,
    patches: filled.count > MOST_PATCHES ? filled.count : countCells(filled.cells.map(({ cell }) => ({ cell, row: 0, column: 0, rows: 1, columns: 1 }))),
    findings: [...all, ...(isZero(filled.left) ? [] : [doesNotFill(row, setting, filled)])],
    lay: (x, y) => layRow(filled, { x, y, height: room.height, index }),
  };
}

function simple(each: GridCell): GridCell {
  return { ...each, cell: turnedCell(each.cell) };
}

interface Filled {
  readonly cells: readonly RowCell[];
  readonly count: number;
  /** The width of all cells once. */
  readonly unit: Exact;
  /** What is left of the width, shared by both ends. */
  readonly left: Exact;
}

/** As many whole cells, in turn, as the width holds. */
function fill(units: readonly RowCell[], width: Exact): Filled {
  const unit = sum(units.map((each) => each.width));
  if (sign(unit) <= 0 || sign(width) <= 0) return { cells: [], count: 0, unit, left: width };
  const repeats = floor(div(width, unit));
  const count = repeats > BigInt(MOST_PATCHES) ? Number.MAX_SAFE_INTEGER : Number(repeats) * units.length;
  if (count > MOST_PATCHES) return { cells: [], count, unit, left: ZERO };
  const cells = Array.from({ length: Number(repeats) }, () => units).flat();
  let left = sub(width, mul(fraction(repeats), unit));
  for (const each of units) {
    if (less(left, each.width)) break;
    cells.push(each);
    left = sub(left, each.width);
  }
  return { cells, count: cells.length, unit, left };
}

function doesNotFill(row: CellRow, setting: RowsSetting, { unit, left, count }: Filled): Finding {
  const spacer = count > 0 ? { spacer: mul(HALF, left) } : {};
  return { rule: 'border-does-not-fit', place: row.place, side: setting.width, unit, what: 'a run of these cells', ...spacer };
}

function layRow(filled: Filled, at: { x: Exact; y: Exact; height: Exact; index: number }): Pieces {
  const { fit, findings } = fitter({ pose: UPRIGHT, sizesChecked: 'before' });
  let x = add(at.x, mul(HALF, filled.left));
  const stamped = filled.cells.map(({ cell, width }, column) => {
    const here = x;
    x = add(x, width);
    return stamp(fit(cell, { width, height: at.height }), { x: here, y: at.y, row: at.index, column, part: 'row', place: cell.place });
  });
  return gather([...stamped, { findings: findings() }]);
}
