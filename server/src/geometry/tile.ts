/**
 * Which cell stands where in a setting: the tile's rows repeat to fill it. Under `turned` and `mirrored` the tile is the upper left
 * quarter (left half for 2): its last cell touches the centre, and it repeats outward from there, as far as the setting goes.
 */
import type { Finding } from '../model/finding.ts';
import type { CellSpec, Symmetry, TileSpec, TurnBy } from '../model/pattern.ts';
import { turnedCell } from './fit.ts';
import { commonLength, rowLengthFindings } from './grid.ts';
import { joinCells } from './join.ts';
import type { GridCell } from './join.ts';

export interface Tile {
  /** The cells of a setting in reading order, each with what it covers. Joined cells may reach past the last row or column. */
  readonly fill: (across: number, down: number) => readonly GridCell[];
  readonly findings: readonly Finding[];
  readonly symmetry?: Symmetry;
  /** Joined cells, if any. */
  readonly joined?: CellSpec;
}

/** Undefined when there is no cell to repeat. */
export function tileOf(spec: TileSpec): Tile | undefined {
  const columns = commonLength(spec.rows);
  if (columns === 0) return undefined;
  const { cells, findings } = joinCells(spec.rows.map((row) => ({ ...row, cells: row.cells.slice(0, columns) })));
  const simple = cells.map((each) => ({ ...each, cell: turnedCell(each.cell) }));
  const joined = simple.find((each) => each.rows * each.columns > 1)?.cell;
  const rows = spec.rows.length;
  return {
    fill: spec.symmetry ? symmetrical(simple, { rows, columns }, spec.symmetry) : repeating(simple, { rows, columns }),
    findings: [...rowLengthFindings(spec.rows, columns), ...findings],
    ...(spec.symmetry ? { symmetry: spec.symmetry } : {}),
    ...(joined ? { joined } : {}),
  };
}

interface Counts {
  readonly rows: number;
  readonly columns: number;
}

function repeating(cells: readonly GridCell[], tile: Counts): Tile['fill'] {
  const at = lookup(cells);
  return (across, down) =>
    everyPlace(across, down, (row, column) => {
      const found = at(row % tile.rows, column % tile.columns);
      return found && { ...found, row, column };
    });
}

function symmetrical(cells: readonly GridCell[], tile: Counts, symmetry: Symmetry): Tile['fill'] {
  const at = lookup(cells);
  const turned = turnedOnce();
  return (across, down) => {
    const source = sourceIn(symmetry, across, down);
    return everyPlace(across, down, (row, column) => {
      const { fromCentre, fromMiddle, turns } = source(row, column);
      const found = at(lastOf(tile.rows, fromMiddle, symmetry), tile.columns - 1 - (fromCentre % tile.columns));
      return found && { cell: turned(found.cell, turns), row, column, rows: 1, columns: 1 };
    });
  };
}

/** With two parts the rows run down from the top; with four they run up from the middle. */
function lastOf(rows: number, fromMiddle: number, { times }: Symmetry): number {
  return times === 2 ? fromMiddle % rows : rows - 1 - (fromMiddle % rows);
}

interface Source {
  /** Columns to the left of the centre line, from 0. */
  readonly fromCentre: number;
  /** Rows up from the middle line, from 0; with two parts, rows down from the top. */
  readonly fromMiddle: number;
  readonly turns: readonly TurnBy[];
}

/** The place in the part as written that a place of the setting is turned or mirrored from. */
function sourceIn({ kind, times }: Symmetry, across: number, down: number): (row: number, column: number) => Source {
  const [halfAcross, halfDown] = [half(across), half(down)];
  return (row, column) => {
    const right = column >= halfAcross;
    const low = row >= halfDown;
    const fromCentre = right ? column - (across - halfAcross) : halfAcross - 1 - column;
    const fromMiddle = low ? row - (down - halfDown) : halfDown - 1 - row;
    if (times === 2) return twoParts(kind, right, { fromCentre, row, down });
    if (kind === 'mirrored') return { fromCentre, fromMiddle, turns: right ? (low ? ['mirror', 'flip'] : ['mirror']) : low ? ['flip'] : [] };
    if (right === low) return { fromCentre, fromMiddle, turns: right ? ['180'] : [] };
    return { fromCentre: fromMiddle, fromMiddle: fromCentre, turns: right ? ['90'] : ['270'] };
  };
}

function twoParts(kind: Symmetry['kind'], right: boolean, at: { fromCentre: number; row: number; down: number }): Source {
  if (!right) return { fromCentre: at.fromCentre, fromMiddle: at.row, turns: [] };
  if (kind === 'mirrored') return { fromCentre: at.fromCentre, fromMiddle: at.row, turns: ['mirror'] };
  return { fromCentre: at.fromCentre, fromMiddle: at.down - 1 - at.row, turns: ['180'] };
}

/** Of an odd count, the middle belongs to the first half. */
function half(count: number): number {
  return (count + (count % 2)) / 2;
}

/** Each cell in each turn as one object, so that it is fitted once. */
function turnedOnce(): (cell: CellSpec, turns: readonly TurnBy[]) => CellSpec {
  const known = new Map<CellSpec, Map<string, CellSpec>>();
  return (cell, turns) => {
    const ofCell = known.get(cell) ?? new Map<string, CellSpec>();
    known.set(cell, ofCell);
    const turned = ofCell.get(turns.join()) ?? turnedCell(cell, turns);
    ofCell.set(turns.join(), turned);
    return turned;
  };
}

function lookup(cells: readonly GridCell[]): (row: number, column: number) => GridCell | undefined {
  const rows: (GridCell | undefined)[][] = [];
  for (const cell of cells) (rows[cell.row] ??= [])[cell.column] = cell;
  return (row, column) => rows[row]?.[column];
}

function everyPlace(across: number, down: number, cellAt: (row: number, column: number) => GridCell | undefined): GridCell[] {
  const cells: GridCell[] = [];
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      const cell = cellAt(row, column);
      if (cell) cells.push(cell);
    }
  }
  return cells;
}
