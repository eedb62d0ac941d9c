/**
 * Straight settings, `straight A by B` and `grid … by …`: columns and rows, with sashing between them. The columns of a straight
 * setting are as wide as their blocks, which must agree; those of a grid as wide as it says.
 */
import { ONE, ZERO, add, mul, sub, sum } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { toInches } from '../exact/length.ts';
import type { Finding } from '../model/finding.ts';
import type { GridLine, Setting } from '../model/pattern.ts';
import { placeIn } from '../text/place.ts';
import { MOST_PATCHES } from './count.ts';
import { NO_PIECES, UPRIGHT, fitter, gather, stamp } from './fit.ts';
import type { FitOptions, Pieces } from './fit.ts';
import type { GridCell } from './join.ts';
import { divideLines } from './lines.ts';
import { sashedBoard } from './sashing.ts';
import type { Board, Sashed } from './sashing.ts';
import { commonest, countCells, differing, oncePerPlace, wantedSizes, withoutSize } from './setting.ts';
import type { Measured, QuiltContext, Wanted } from './setting.ts';
import { tileOf } from './tile.ts';
import type { Tile } from './tile.ts';
import { written } from './written.ts';

type Counted = Extract<Setting, { kind: 'straight' | 'on_point' }>;
type Lined = Extract<Setting, { kind: 'grid' }>;

/** `straight A by B` */
export function measureStraight(context: QuiltContext, setting: Counted): Measured {
  const { across, down } = setting;
  if (across * down > MOST_PATCHES) return tooMany(setting, across * down);
  const tile = context.spec.tile && tileOf(context.spec.tile);
  const cells = tile?.fill(across, down) ?? [];
  const columns = sidesOf(cells, across, 'width');
  const rows = sidesOf(cells, down, 'height');
  const unknown = columns.common && rows.common ? undefined : withoutSize(cells, tile ? (context.spec.tile?.place ?? setting.place) : setting.place);
  const fallback = unknown?.size ?? { width: ONE, height: ONE };
  const board: Board = {
    columns: columns.sizes.map((size) => size ?? columns.common ?? fallback.width),
    rows: rows.sizes.map((size) => size ?? rows.common ?? fallback.height),
    cells: cells.filter((cell) => cell.row + cell.rows <= down && cell.column + cell.columns <= across),
  };
  const differ = oncePerPlace([...columns.findings, ...rows.findings]);
  return measuredBoard(context, setting, board, {
    sizesChecked: 'before',
    findings: [...tileFindings(context, setting, tile), ...(tile ? (unknown?.findings ?? []) : []), ...differ, ...cutOff(cells, board)],
  });
}

/** `grid COLUMNS by ROWS`, in lengths */
export function measureGrid(context: QuiltContext, setting: Lined): Measured {
  if (setting.columns.length * setting.rows.length > MOST_PATCHES) return tooMany(setting, setting.columns.length * setting.rows.length);
  const tile = context.spec.tile && tileOf(context.spec.tile);
  const [columns, rows] = [quiltLines(context, setting.columns, 'the columns'), quiltLines(context, setting.rows, 'the rows')];
  const cells = tile?.fill(columns.sizes.length, rows.sizes.length) ?? [];
  const inside = cells.filter((cell) => cell.row + cell.rows <= rows.sizes.length && cell.column + cell.columns <= columns.sizes.length);
  const board: Board = { columns: columns.sizes, rows: rows.sizes, cells: inside };
  return measuredBoard(context, setting, board, {
    sizesChecked: 'here',
    findings: [...tileFindings(context, setting, tile), ...columns.findings, ...rows.findings, ...cutOff(cells, board)],
  });
}

/** Of a setting with too many places only the count is told; the caller reports it. */
export function tooMany(setting: Setting, patches: number): Measured {
  return { width: ONE, height: ONE, place: setting.place, patches, findings: [], lay: () => NO_PIECES };
}

/** What is wrong with the tile itself, or that there is none. */
export function tileFindings(context: QuiltContext, setting: Setting, tile: Tile | undefined): Finding[] {
  const { spec } = context;
  if (tile) return [...tile.findings, ...symmetryFindings(setting, tile)];
  const [there] = written(spec, 'place', 'junk');
  if (there && (there.node.kind === 'junk' || (there.body?.statements.length ?? 0) > 0)) return [];
  const problem = 'nothing is placed yet: `place { … }` says which blocks the setting repeats';
  return [{ rule: 'wrong-argument', place: there ? placeIn(there.line, there.node.word) : setting.place, problem }];
}

function symmetryFindings(setting: Setting, { symmetry, joined }: Tile): Finding[] {
  if (!symmetry) return [];
  const problem = symmetryProblem(setting, symmetry.times);
  const joins: Finding[] = joined ? [{ rule: 'wrong-argument', place: joined.place, problem: 'cells of a tile that is turned or mirrored cannot be joined' }] : [];
  return problem ? [...joins, { rule: 'wrong-argument', place: symmetry.place, problem }] : joins;
}

/** The tile touches the centre, which is a corner of places only when their count is even. */
function symmetryProblem(setting: Setting, times: number): string | undefined {
  if (times !== 2 && times !== 4) return 'a setting is turned or mirrored 2 or 4 times';
  if (setting.kind === 'rows') return undefined;
  const [across, down] = setting.kind === 'grid' ? [setting.columns.length, setting.rows.length] : [setting.across, setting.down];
  const odd = across % 2 === 1 || (times === 4 && down % 2 === 1);
  return odd ? `${times === 4 ? `${across} by ${down}` : `${across} across`} has no corner in the middle: a tile that is turned or mirrored needs even counts` : undefined;
}

interface Sides {
  /** Undefined where nothing in the column or row has a size. */
  readonly sizes: readonly (Exact | undefined)[];
  readonly common: Exact | undefined;
  readonly findings: readonly Finding[];
}

/** The widths of the columns, or the heights of the rows, as their blocks have them. */
function sidesOf(cells: readonly GridCell[], count: number, side: 'width' | 'height'): Sides {
  const lines = Array.from({ length: count }, (): GridCell[] => []);
  for (const cell of cells) {
    if (side === 'width' && cell.columns === 1) lines[cell.column]?.push(cell);
    if (side === 'height' && cell.rows === 1) lines[cell.row]?.push(cell);
  }
  const wanted = lines.map((line) => wantedSizes(line, side));
  const chosen = wanted.map(commonest);
  const what = side === 'width' ? 'the width is' : 'the height is';
  return {
    sizes: chosen.map((each) => each?.size),
    common: commonest(chosen.filter((each): each is Wanted => each !== undefined))?.size,
    findings: wanted.flatMap((each, i) => {
      const expected = chosen[i];
      return expected ? differing(each, expected, what) : [];
    }),
  };
}

/** Joined cells that reach past the last column or row. */
function cutOff(cells: readonly GridCell[], board: Board): Finding[] {
  const cut = cells.filter((cell) => cell.row + cell.rows > board.rows.length || cell.column + cell.columns > board.columns.length);
  return oncePerPlace(cut.map(({ cell }): Finding => ({ rule: 'wrong-argument', place: cell.place, problem: 'the joined cells reach past the edge of the setting' })));
}

/** Lengths; a plain number counts in the pattern's units. */
function quiltLines({ rules }: QuiltContext, lines: readonly GridLine[], what: string): { readonly sizes: readonly Exact[]; readonly findings: readonly Finding[] } {
  const rest = lines.find((line) => line.kind === 'rest');
  const unit = toInches(ONE, rules.units === 'centimetres' ? 'cm' : 'in');
  const lengths = lines.map((line): GridLine => (line.kind === 'proportion' ? { ...line, kind: 'length', value: mul(line.value, unit) } : line));
  const total = sum(lengths.map((line) => (line.kind === 'rest' ? ONE : line.value)));
  const problem = 'a quilt has no size that would leave a `rest`: write a length';
  const findings: Finding[] = rest ? [{ rule: 'wrong-argument', place: rest.place, problem }] : [];
  const divided = divideLines(lengths, total, { what });
  return { sizes: divided.sizes, findings: [...findings, ...divided.findings] };
}

interface BoardOptions extends Pick<FitOptions, 'sizesChecked'> {
  readonly findings: readonly Finding[];
}

function measuredBoard(context: QuiltContext, setting: Setting, board: Board, options: BoardOptions): Measured {
  const sashed = sashedBoard(context.spec.sashing, board);
  return {
    width: sashed.width,
    height: sashed.height,
    place: setting.place,
    patches: countCells(board.cells) + sashed.patches,
    findings: [...options.findings, ...sashed.findings],
    lay: (x, y) => gather([layCells(board, sashed, { x, y, sizesChecked: options.sizesChecked }), sashed.lay(x, y)]),
  };
}

function layCells(board: Board, sashed: Sashed, at: { readonly x: Exact; readonly y: Exact } & Pick<FitOptions, 'sizesChecked'>): Pieces {
  const single = fitter({ pose: UPRIGHT, sizesChecked: at.sizesChecked });
  const spanning = fitter({ pose: UPRIGHT, sizesChecked: 'here' });
  const lefts = sashed.columns.map((span) => add(at.x, span.from));
  const tops = sashed.rows.map((span) => add(at.y, span.from));
  const stamped = board.cells.map(({ cell, row, column, rows, columns }) => {
    const [right, bottom] = [sashed.columns[column + columns - 1]?.to ?? ZERO, sashed.rows[row + rows - 1]?.to ?? ZERO];
    const room = { width: sub(right, sashed.columns[column]?.from ?? ZERO), height: sub(bottom, sashed.rows[row]?.from ?? ZERO) };
    const { fit } = rows * columns > 1 ? spanning : single;
    return stamp(fit(cell, room), { x: lefts[column] ?? ZERO, y: tops[row] ?? ZERO, row, column, part: 'place', place: cell.place });
  });
  return gather([...stamped, { findings: [...single.findings(), ...spanning.findings()] }]);
}
