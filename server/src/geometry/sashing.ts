/**
 * Sashing between the columns and rows of a board. Without cornerstones there are short strips between the blocks of a row and long
 * ones between the rows; with them all strips are short, and squares lie where they cross. `outer` goes around the board as well.
 */
import { ZERO, add, less, sign, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { BlockUse, CellSpec, FabricUse, SashingSpec } from '../model/pattern.ts';
import { naturalSize, takesUpRest } from './block.ts';
import { countCell } from './count.ts';
import { UPRIGHT, fitter, gather, stamp, turnedCell } from './fit.ts';
import type { Pieces } from './fit.ts';
import type { GridCell } from './join.ts';
import { turnBox } from './move.ts';
import type { Size } from './move.ts';
import { oncePerPlace } from './setting.ts';

/** Columns, rows and what stands in them. */
export interface Board {
  readonly columns: readonly Exact[];
  readonly rows: readonly Exact[];
  readonly cells: readonly GridCell[];
}

export interface Span {
  readonly from: Exact;
  readonly to: Exact;
}

/** The board with room for its sashing. */
export interface Sashed extends Size {
  readonly columns: readonly Span[];
  readonly rows: readonly Span[];
  /** How many patches the sashing has. */
  readonly patches: number;
  readonly findings: readonly Finding[];
  /** The sashing, the board's upper left corner at x, y. */
  readonly lay: (x: Exact, y: Exact) => Pieces;
}

/** Sashing with its width, ready to be laid. */
export interface Strips {
  readonly width: Exact;
  readonly upright: CellSpec;
  /** The same a quarter turn on, for strips from left to right. */
  readonly level: CellSpec;
  readonly cornerstone?: CellSpec;
  readonly outer: boolean;
}

export function sashedBoard(spec: SashingSpec | undefined, board: Board): Sashed {
  const { strips, findings } = stripsOf(spec);
  if (!strips) return bareBoard(board, findings);
  const columns = spread(board.columns, strips);
  const rows = spread(board.rows, strips);
  const width = columns.whole;
  const rooms = stripRooms(strips, { columns, rows, isWithin: withinJoined(board) });
  return {
    width,
    height: rows.whole,
    columns: columns.spans,
    rows: rows.spans,
    patches: rooms.reduce((total, room) => total + countCell(room.cell), 0),
    findings,
    lay: (x, y) => layStrips(rooms, x, y),
  };
}

/** How wide the sashing is and what it is made of; undefined without sashing, or where it has no width. */
export function stripsOf(spec: SashingSpec | undefined): { readonly strips?: Strips; readonly findings: readonly Finding[] } {
  if (!spec) return { findings: [] };
  const width = spec.width ?? widthOf(spec.filling);
  if (!width) return { findings: [noWidth(spec.filling)] };
  if (sign(width) <= 0) return { findings: [{ rule: 'wrong-argument', place: spec.place, problem: 'sashing is wider than zero' }] };
  return {
    strips: {
      width,
      upright: spec.filling,
      level: turnedCell(spec.filling, ['90']),
      outer: spec.outer,
      ...(spec.cornerstones ? { cornerstone: spec.cornerstones } : {}),
    },
    findings: [],
  };
}

function widthOf(filling: FabricUse | BlockUse): Exact | undefined {
  if (filling.kind === 'fabric') return undefined;
  const sized = filling.block.size !== undefined || takesUpRest(filling.block);
  return sized ? turnBox(filling.turns, naturalSize(filling.block)).width : undefined;
}

function noWidth(filling: FabricUse | BlockUse): Finding {
  const problem = filling.kind === 'block' ? `\`${filling.block.name}\` needs a size to be sashing` : 'sashing needs a width';
  return { rule: 'wrong-argument', place: filling.place, problem };
}

function bareBoard(board: Board, findings: readonly Finding[]): Sashed {
  const [columns, rows] = [spread(board.columns), spread(board.rows)];
  return { width: columns.whole, height: rows.whole, columns: columns.spans, rows: rows.spans, patches: 0, findings, lay: () => gather([]) };
}

interface Spread {
  readonly spans: readonly Span[];
  readonly gaps: readonly Span[];
  readonly whole: Exact;
}

/** Sizes one after the other, with gaps as wide as the strips between them and, for `outer`, around them. */
function spread(sizes: readonly Exact[], strips?: Pick<Strips, 'width' | 'outer'>): Spread {
  const spans: Span[] = [];
  const gaps: Span[] = [];
  let from = ZERO;
  const leaveGap = (): void => {
    if (!strips) return;
    gaps.push({ from, to: add(from, strips.width) });
    from = add(from, strips.width);
  };
  sizes.forEach((size, i) => {
    if (i > 0 || strips?.outer) leaveGap();
    spans.push({ from, to: add(from, size) });
    from = add(from, size);
  });
  if (strips?.outer) leaveGap();
  return { spans, gaps, whole: from };
}

interface StripRoom extends Size {
  readonly x: Exact;
  readonly y: Exact;
  readonly cell: CellSpec;
  readonly kind: 'sash' | 'cornerstone';
  readonly row: number;
  readonly column: number;
}

interface SpreadBoard {
  readonly columns: Spread;
  readonly rows: Spread;
  /** True when the places at a row and column, and a row and a column before, are all in one joined cell. */
  readonly isWithin: (row: number, column: number, before: { readonly rows: 0 | 1; readonly columns: 0 | 1 }) => boolean;
}

/** Gap i lies before column or row i, or i + 1 when there is no gap in front of the first. */
function stripRooms(strips: Strips, board: SpreadBoard): StripRoom[] {
  const { columns, rows } = board;
  const first = strips.outer ? 0 : 1;
  const upright = rows.spans.flatMap((span, row) =>
    columns.gaps.flatMap((gap, column): StripRoom[] => {
      if (board.isWithin(row, column + first, { rows: 0, columns: 1 })) return [];
      return [{ x: gap.from, y: span.from, width: strips.width, height: lengthOf(span), cell: strips.upright, kind: 'sash', row, column }];
    }),
  );
  const level = rows.gaps.flatMap((gap, row) => {
    const make = strips.cornerstone ? shortBetween : longBetween;
    return make(strips, board, { gap, row, below: row + first });
  });
  return [...upright, ...level];
}

interface RowGap {
  readonly gap: Span;
  readonly row: number;
  /** The row under the gap. */
  readonly below: number;
}

/** A strip along each column, and a square at each crossing. */
function shortBetween({ width, level, cornerstone, outer }: Strips, board: SpreadBoard, { gap, row, below }: RowGap): StripRoom[] {
  const strips = board.columns.spans.flatMap((span, column): StripRoom[] => {
    if (board.isWithin(below, column, { rows: 1, columns: 0 })) return [];
    return [{ x: span.from, y: gap.from, width: lengthOf(span), height: width, cell: level, kind: 'sash', row, column }];
  });
  const squares = board.columns.gaps.flatMap((crossing, column): StripRoom[] => {
    if (!cornerstone || board.isWithin(below, column + (outer ? 0 : 1), { rows: 1, columns: 1 })) return [];
    return [{ x: crossing.from, y: gap.from, width, height: width, cell: cornerstone, kind: 'cornerstone', row, column }];
  });
  return [...strips, ...squares];
}

/** One strip from edge to edge; joined cells that cross the gap part it. */
function longBetween({ width, level }: Strips, board: SpreadBoard, { gap, row, below }: RowGap): StripRoom[] {
  const strips: StripRoom[] = [];
  let from = ZERO;
  const end = (to: Exact, column: number): void => {
    if (less(from, to)) strips.push({ x: from, y: gap.from, width: sub(to, from), height: width, cell: level, kind: 'sash', row, column });
  };
  board.columns.spans.forEach((span, column) => {
    if (!board.isWithin(below, column, { rows: 1, columns: 0 })) return;
    if (!board.isWithin(below, column, { rows: 1, columns: 1 })) end(span.from, column);
    from = span.to;
  });
  end(board.columns.whole, board.columns.spans.length);
  return strips;
}

function withinJoined({ cells }: Board): SpreadBoard['isWithin'] {
  const at: (GridCell | undefined)[][] = [];
  for (const cell of cells.filter((each) => each.rows * each.columns > 1)) {
    for (let row = cell.row; row < cell.row + cell.rows; row += 1) {
      const line = (at[row] ??= []);
      for (let column = cell.column; column < cell.column + cell.columns; column += 1) line[column] = cell;
    }
  }
  return (row, column, before) => {
    const here = at[row]?.[column];
    return here !== undefined && at[row - before.rows]?.[column - before.columns] === here;
  };
}

function lengthOf({ from, to }: Span): Exact {
  return sub(to, from);
}

function layStrips(rooms: readonly StripRoom[], x: Exact, y: Exact): Pieces {
  const sashes = fitter({ pose: UPRIGHT, sizesChecked: 'here', role: 'sash' });
  const squares = fitter({ pose: UPRIGHT, sizesChecked: 'here', role: 'cornerstone' });
  const stamped = rooms.map((room) => {
    const { fit } = room.kind === 'sash' ? sashes : squares;
    const part = room.kind === 'sash' ? ('sashing' as const) : ('cornerstone' as const);
    const { row, column, cell } = room;
    return stamp(fit(cell, room), { x: add(x, room.x), y: add(y, room.y), row, column, part, place: cell.place });
  });
  return gather([...stamped, { findings: oncePerPlace([...sashes.findings(), ...squares.findings()]) }]);
}
