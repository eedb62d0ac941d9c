/** Cells of a row with their names resolved. */
import { ONE } from '../exact/number.ts';
import type { Cell, Part, Statement } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import { at, onLine } from './context.ts';
import { positiveNumber } from './measures.ts';
import type { CellRow, CellSpec } from './pattern.ts';
import { ofKind } from './statements.ts';
import { useOf, type Builder } from './uses.ts';

/** The rows of cells among the statements. */
export function rowsOf(builder: Builder, statements: readonly Statement[]): readonly CellRow[] {
  return ofKind(statements, 'row_of_cells').map(({ node, line }) => {
    const here = onLine(builder, line);
    return { cells: node.cells.map((cell) => cellSpec(here, cell)), place: placeIn(line, node) };
  });
}

/** A cell with its names resolved; one that cannot be resolved is `bad` and has been reported. */
export function cellSpec(builder: Builder, cell: Cell): CellSpec {
  const place = at(builder, cell);
  switch (cell.kind) {
    case 'reference':
      return useOf(builder, cell) ?? { kind: 'bad', place };
    case 'split':
      return { kind: 'split', seam: cell.seam, parts: cell.parts.map((part) => partSpec(builder, part)), seams: cell.seams.map((seam) => at(builder, seam)), place };
    case 'group': {
      const inner = cellSpec(builder, cell.inner);
      return cell.turns.length === 0 ? inner : { kind: 'turned', inner, turns: cell.turns.map((turn) => turn.by), place };
    }
    case 'goes_on':
      return { kind: 'goes_on', direction: cell.direction, place };
    case 'bad':
      return { kind: 'bad', place };
  }
}

function partSpec(builder: Builder, { cell, weight }: Part): Extract<CellSpec, { kind: 'split' }>['parts'][number] {
  return { cell: cellSpec(builder, cell), weight: (weight && positiveNumber(builder, weight, 'a weight')) ?? ONE };
}
