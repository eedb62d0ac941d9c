/**
 * Grid blocks: rows of cells between the lines of a grid. Under `turned` and `mirrored` the rows are a part of the block (the left
 * half, or the upper left quarter), and `grid` may give the lines of the part or of the whole. Such a block tiles by construction.
 */
import { HALF, ZERO, equals, fraction, mul, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { CellRow, GridBody, GridLine, Symmetry, TurnBy } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';
import { layCell, together } from './cell.ts';
import type { CellContext, Laid } from './cell.ts';
import { joinCells } from './join.ts';
import type { GridCell } from './join.ts';
import type { Patch } from './layout.ts';
import { divideLines, edgesFrom, equalParts, isSymmetric, naturalLength } from './lines.ts';
import type { Lines } from './lines.ts';
import { chain, movePatch, plainly, turnBox } from './move.ts';
import type { Room, Size } from './move.ts';
import { translate } from '../exact/transform.ts';

export interface GridContext extends CellContext {
  /** Where the block's size was written. */
  readonly sizePlace?: Place;
}

/** The patches of a grid body in a block of the given size. */
export function layGrid(context: GridContext, body: GridBody, size: Size): Laid {
  const part = partOf(body.symmetry, size);
  const shape = shapeOf(body);
  const columns = linesOf(context, body.columns, { count: shape.columns, part: part.room.width, folded: part.across, what: 'the columns' });
  const rows = linesOf(context, body.rows, { count: shape.rows, part: part.room.height, folded: part.down, what: 'the rows' });
  const joined = joinCells(body.content);
  const rooms = roomsOf(joined.cells, columns.sizes, rows.sizes);
  const laid = together(rooms.map(({ cell, room }) => layCell(context, cell, room)));
  return {
    patches: part.copies.flatMap((copy) => laid.patches.map(copy)),
    findings: [...part.findings, ...columns.findings, ...rows.findings, ...rowFindings(body, shape), ...joined.findings, ...laid.findings],
  };
}

/** The size of a block in the units of its grid: the sums of its lines, cells counting as one. */
export function naturalGridSize(body: GridBody): Size {
  const shape = shapeOf(body);
  const folds = foldsOf(body.symmetry);
  return {
    width: naturalSide(body.columns, shape.columns, folds.across),
    height: naturalSide(body.rows, shape.rows, folds.down),
  };
}

/** The number of cells that most rows have, or the first of equals; 0 without rows. */
export function commonLength(rows: readonly CellRow[]): number {
  const counts = new Map<number, number>();
  for (const row of rows) counts.set(row.cells.length, (counts.get(row.cells.length) ?? 0) + 1);
  return [...counts].reduce((best, each) => (each[1] > best[1] ? each : best), [0, 0])[0] ?? 0;
}

/** Rows with another number of cells than expected. */
export function rowLengthFindings(rows: readonly CellRow[], expected: number, related?: Place): Finding[] {
  const example = related ?? rows.find((row) => row.cells.length === expected)?.place;
  return rows
    .filter((row) => row.cells.length !== expected)
    .map((row): Finding => ({
      rule: 'row-length',
      place: row.place,
      found: row.cells.length,
      expected,
      of: 'cells',
      ...(example ? { related: example, ...(related ? {} : { relatedMessage: `a row of ${expected}` }) } : {}),
    }));
}

// ---------------------------------------------------------------------------------------------- how many cells

interface GridShape {
  /** Of the part that the rows give. */
  readonly columns: number;
  readonly rows: number;
}

/** What `grid` says, halved where it gives the whole block's lines; without it, what the rows themselves have. */
function shapeOf(body: GridBody): GridShape {
  const folds = foldsOf(body.symmetry);
  const common = commonLength(body.content);
  return {
    columns: expectedCount(body.columns?.length, common, folds.across),
    rows: expectedCount(body.rows?.length, body.content.length, folds.down),
  };
}

function expectedCount(lines: number | undefined, written: number, folded: boolean): number {
  if (lines === undefined || lines === 0) return written;
  return folded && lines !== written && lines % 2 === 0 ? lines / 2 : lines;
}

/** Of a body that is not whole only the rows are judged, by each other: lines or rows of its grid may be missing. */
function rowFindings(body: GridBody, shape: GridShape): Finding[] {
  if (body.incomplete) return rowLengthFindings(body.content, commonLength(body.content));
  const related = body.columns ? body.gridPlace : undefined;
  return [...rowLengthFindings(body.content, shape.columns, related), ...rowCountFindings(body, shape.rows)];
}

/** Too many rows are reported at the first one that is too many, too few at the grid. */
function rowCountFindings(body: GridBody, expected: number): Finding[] {
  const found = body.content.length;
  const extra = body.content[expected];
  const place = extra?.place ?? body.gridPlace ?? body.content.at(-1)?.place;
  if (found === expected || !place) return [];
  return [{ rule: 'row-length', place, found, expected, of: 'rows', ...(extra && body.gridPlace ? { related: body.gridPlace } : {}) }];
}

// ---------------------------------------------------------------------------------------------- lines

interface LinesWanted {
  readonly count: number;
  readonly part: Exact;
  readonly folded: boolean;
  readonly what: string;
}

/** The sizes of the part's columns or rows. Lines of the whole block must read the same from both ends. */
function linesOf(context: GridContext, lines: readonly GridLine[] | undefined, wanted: LinesWanted): Lines {
  if (!lines || lines.length === 0) return { sizes: equalParts(wanted.count, wanted.part), findings: [] };
  const related = context.sizePlace ? { what: wanted.what, related: context.sizePlace } : { what: wanted.what };
  if (!wanted.folded || lines.length === wanted.count) return divideLines(lines, wanted.part, related);
  const whole = divideLines(lines, mul(fraction(2), wanted.part), related);
  const place = lines[0]?.place;
  if (isSymmetric(whole.sizes) || !place) return { sizes: whole.sizes.slice(0, wanted.count), findings: whole.findings };
  const problem = `${wanted.what} of a block that is turned or mirrored read the same from both ends`;
  return { sizes: whole.sizes.slice(0, wanted.count), findings: [...whole.findings, { rule: 'wrong-argument', place, problem }] };
}

function naturalSide(lines: readonly GridLine[] | undefined, count: number, folded: boolean): Exact {
  const length = lines && lines.length > 0 ? naturalLength(lines) : fraction(count);
  return folded && (!lines || lines.length === count) ? mul(fraction(2), length) : length;
}

interface FilledRoom {
  readonly cell: GridCell['cell'];
  readonly room: Room;
}

function roomsOf(cells: readonly GridCell[], columns: readonly Exact[], rows: readonly Exact[]): FilledRoom[] {
  const [xs, ys] = [edgesFrom(ZERO, columns), edgesFrom(ZERO, rows)];
  return cells.flatMap(({ cell, row, column, ...span }) => {
    const [x, right, y, bottom] = [xs[column], xs[column + span.columns], ys[row], ys[row + span.rows]];
    return x && right && y && bottom ? [{ cell, room: { x, y, width: sub(right, x), height: sub(bottom, y) } }] : [];
  });
}

// ---------------------------------------------------------------------------------------------- symmetry

interface Part {
  readonly room: Size;
  /** The part is half the block in this direction. */
  readonly across: boolean;
  readonly down: boolean;
  readonly copies: readonly ((patch: Patch) => Patch)[];
  readonly findings: readonly Finding[];
}

function foldsOf(symmetry: Symmetry | undefined): { readonly across: boolean; readonly down: boolean } {
  return { across: symmetry !== undefined, down: symmetry !== undefined && symmetry.times !== 2 };
}

function partOf(symmetry: Symmetry | undefined, size: Size): Part {
  const folds = foldsOf(symmetry);
  const room = { width: folds.across ? mul(HALF, size.width) : size.width, height: folds.down ? mul(HALF, size.height) : size.height };
  if (!symmetry) return { room, ...folds, copies: [(patch) => patch], findings: [] };
  const problem = problemOf(symmetry, size);
  const copies = turnsOf(problem ? { kind: 'mirrored', times: folds.down ? 4 : 2 } : symmetry).map((turns) => copier(turns, room, size));
  return { room, ...folds, copies, findings: problem ? [{ rule: 'wrong-argument', place: symmetry.place, problem }] : [] };
}

function problemOf(symmetry: Symmetry, size: Size): string | undefined {
  if (symmetry.times !== 2 && symmetry.times !== 4) return 'a grid is turned or mirrored 2 or 4 times';
  const square = equals(size.width, size.height);
  return symmetry.kind === 'turned' && symmetry.times === 4 && !square ? 'only a square block can be turned 4 times' : undefined;
}

/** The turns of each copy; the first is the part itself. */
function turnsOf({ kind, times }: Pick<Symmetry, 'kind' | 'times'>): readonly (readonly TurnBy[])[] {
  if (kind === 'turned') return times === 4 ? [[], ['90'], ['180'], ['270']] : [[], ['180']];
  return times === 4 ? [[], ['mirror'], ['mirror', 'flip'], ['flip']] : [[], ['mirror']];
}

/** Moves a patch of the part to where the turned block has it. */
function copier(turns: readonly TurnBy[], part: Size, whole: Size): (patch: Patch) => Patch {
  if (turns.length === 0) return (patch) => patch;
  const inPlace = turnBox(turns, part);
  const farRight = turns.includes('90') || turns.includes('180') || turns.includes('mirror');
  const farDown = turns.includes('180') || turns.includes('270') || turns.includes('flip');
  const dx = farRight ? sub(whole.width, inPlace.width) : ZERO;
  const dy = farDown ? sub(whole.height, inPlace.height) : ZERO;
  const motion = chain(plainly(translate(dx, dy)), inPlace.motion);
  return (patch) => movePatch(patch, motion);
}
