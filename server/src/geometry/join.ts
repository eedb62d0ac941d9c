/** Rows of cells with `<` and `^` taken in: which cells are one, and the rectangle of columns and rows each covers. */
import type { Finding } from '../model/finding.ts';
import type { CellRow, CellSpec } from '../model/pattern.ts';

/** A cell and the columns and rows it covers, counted from 0. */
export interface GridCell {
  readonly cell: CellSpec;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/**
 * The cells in reading order. A joined cell is the one it goes on from, over a larger rectangle, whatever it holds; where the
 * shape is no rectangle (or there is nothing to go on from), that is a finding and each cell stands by itself.
 */
export function joinCells(rows: readonly CellRow[]): { readonly cells: readonly GridCell[]; readonly findings: readonly Finding[] } {
  const origins = originsOf(rows);
  const members = new Map<CellSpec, GridCell[]>();
  const findings: Finding[] = [];
  rows.forEach((line, row) => {
    line.cells.forEach((written, column) => {
      const cell = origins[row]?.[column];
      if (cell) members.set(cell, [...(members.get(cell) ?? []), { cell, row, column, rows: 1, columns: 1 }]);
      else findings.push(nothingToGoOnFrom(written));
    });
  });
  const cells = [...members.values()].flatMap((group) => {
    const whole = rectangleOf(group);
    if (whole) return [whole];
    findings.push(noRectangle(rows, group));
    return group;
  });
  return { cells: cells.sort((a, b) => a.row - b.row || a.column - b.column), findings };
}

/** For each place the cell that fills it; undefined where a cell goes on from nothing. */
function originsOf(rows: readonly CellRow[]): (CellSpec | undefined)[][] {
  const origins: (CellSpec | undefined)[][] = [];
  rows.forEach((line, row) => {
    const found: (CellSpec | undefined)[] = [];
    line.cells.forEach((cell, column) => {
      if (cell.kind !== 'goes_on') found.push(uniqueCell(cell));
      else found.push(cell.direction === 'left' ? found[column - 1] : origins[row - 1]?.[column]);
    });
    origins.push(found);
  });
  return origins;
}

/** A copy: a cell object may stand in several places, and each is a cell of its own. */
function uniqueCell(cell: CellSpec): CellSpec {
  return { ...cell };
}

function rectangleOf(group: readonly GridCell[]): GridCell | undefined {
  const first = group[0];
  if (!first) return undefined;
  const left = least(group.map((each) => each.column));
  const rows = most(group.map((each) => each.row)) - first.row + 1;
  const columns = most(group.map((each) => each.column)) - left + 1;
  return rows * columns === group.length ? { cell: first.cell, row: first.row, column: left, rows, columns } : undefined;
}

function least(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => (b < a ? b : a));
}

function most(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => (b > a ? b : a));
}

function noRectangle(rows: readonly CellRow[], group: readonly GridCell[]): Finding {
  const last = group.at(-1);
  const place = (last && rows[last.row]?.cells[last.column]?.place) ?? group[0]?.cell.place;
  if (!place) throw new RangeError('A group without cells.');
  return { rule: 'wrong-argument', place, problem: 'the joined cells are no rectangle' };
}

function nothingToGoOnFrom(cell: CellSpec): Finding {
  const above = cell.kind === 'goes_on' && cell.direction === 'above';
  return { rule: 'wrong-argument', place: cell.place, problem: `there is no cell ${above ? 'above' : 'to the left'} that could go on here` };
}
