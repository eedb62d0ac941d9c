/**
 * What a person does by hand: kind after kind, the highest first, into what is left of the strips cut already, the first that has
 * room, then into new strips of their own (first fit decreasing height: Coffman, Garey, Johnson and Tarjan, "Performance bounds for
 * level-oriented two-dimensional packing algorithms", SIAM Journal on Computing 9, 1980; in sheets: Chung, Garey and Johnson, 1982).
 */
import { columnOf, type Column } from './column.ts';
import { draftOf, settled, spareRoom, type Copies, type Draft } from './draft.ts';
import type { Load } from './fill.ts';
import { piecesIn } from './options.ts';
import type { Problem, StripKind } from './problem.ts';

/** How pieces that may lie two ways are laid: the way that takes less by itself, or all in low strips, or all in high ones. */
export type Habit = 'least' | 'low' | 'high';

/** Adds what is wanted to a draft. */
export function firstFit(problem: Problem, wanted: readonly number[], habit: Habit, begun: readonly Copies[] = []): Draft {
  const open = begun.filter(({ column }) => canHoldMore(problem, column, wanted));
  const boards = open.flatMap(({ column, copies }) => Array.from({ length: Math.min(copies, MOST_OPEN) }, () => boardOf(problem, column)));
  const closed = begun.flatMap((each) => (open.includes(each) ? lessCopies(each, MOST_OPEN) : [each]));
  const own = wanted.flatMap((count, item) => (count > 0 ? [{ item, count, own: ownKind(problem, item, count, habit) }] : []));
  own.sort((a, b) => (b.own?.kind.height ?? 0) - (a.own?.kind.height ?? 0) || a.item - b.item);
  for (const { item, count, own: place } of own) if (place) closed.push(...lay(boards, { item, count, place, problem }));
  const laid = boards.map((board) => ({ column: written(board, problem), copies: 1 }));
  return draftOf(problem, [...closed, ...laid]);
}

function canHoldMore({ sources }: Problem, { source, loads }: Column, wanted: readonly number[]): boolean {
  if (sources[source]?.sheet) return true;
  return loads.some((load) => {
    const left = spareRoom(load);
    return load.kind.options.some((option, item) => option !== undefined && (wanted[item] as number) > 0 && (option.widths[0] as number) <= left);
  });
}

function written({ source, strips, isNew }: Board, problem: Problem): Column {
  const loads = strips.map(({ kind, takes }) => ({ kind, takes: [...takes].sort((a, b) => a.item - b.item) }));
  const column = columnOf(source, loads);
  return isNew ? settled(problem, column) : column;
}

/** A strip or a sheet on the table. */
interface Board {
  readonly source: number;
  readonly strips: Open[];
  /** Height that is not in strips yet; 0 for a strip. */
  height: number;
  readonly isNew: boolean;
}

interface Open {
  readonly kind: StripKind;
  takes: Load['takes'];
  left: number;
}

interface Place {
  readonly source: number;
  readonly kind: StripKind;
}

function boardOf({ sources }: Problem, { source, loads }: Column): Board {
  const used = loads.reduce((total, { kind }) => total + kind.height, 0);
  return { source, strips: loads.map((load) => ({ ...load, left: spareRoom(load) })), height: (sources[source]?.sheet?.height ?? used) - used, isNew: false };
}

/** For each way the lowest strip that takes it; of those the one the habit asks for. */
function ownKind({ sources, items }: Problem, item: number, count: number, habit: Habit): Place | undefined {
  const ways = new Map<string, Place & { readonly alone: number }>();
  sources.forEach(({ strips }, source) => {
    for (const kind of strips) {
      const option = kind.options[item];
      if (!option) continue;
      const alone = kind.height * Math.ceil(count / (option.pieces.at(-1) as number));
      for (const { turned } of option.ways) {
        const name = turned ? 'turned' : 'upright';
        const known = ways.get(name);
        if (!known || known.kind.height > kind.height) ways.set(name, { source, kind, alone });
      }
    }
  });
  const places = [...ways.values()].sort((a, b) => b.kind.height - a.kind.height);
  const least = places.reduce<(typeof places)[number] | undefined>((best, place) => (!best || place.alone < best.alone ? place : best), undefined);
  return items[item] && (habit === 'least' ? least : habit === 'low' ? places.at(-1) : places[0]);
}

/** Strips that need not be kept open for what comes later are returned. */
function lay(boards: Board[], { item, count, place, problem }: { readonly item: number; readonly count: number; readonly place: Place; readonly problem: Problem }): readonly Copies[] {
  let rest = count;
  for (const { strips } of boards) for (const strip of strips) rest -= put(strip, item, rest);
  const pieces = place.kind.options[item]?.pieces.at(-1) ?? 0;
  const full = { column: columnOf(place.source, [{ kind: place.kind, takes: [{ item, pieces }] }]), copies: Math.floor(rest / pieces) };
  const closed = problem.sources[place.source]?.sheet ? [] : lessCopies(full, MOST_OPEN);
  rest -= closed.reduce((total, { copies }) => total + copies * pieces, 0);
  while (rest > 0) rest -= put(newStrip(boards, place, problem), item, rest);
  return closed;
}

/** Strips alike that are kept open. Nobody looks through more of them for a place. */
const MOST_OPEN = 500;

function lessCopies({ column, copies }: Copies, less: number): readonly Copies[] {
  return copies > less ? [{ column, copies: copies - less }] : [];
}

/** How many pieces the strip took. */
function put(strip: Open, item: number, rest: number): number {
  const option = strip.kind.options[item];
  const pieces = option && rest > 0 ? Math.min(rest, piecesIn(option, strip.left)) : 0;
  if (pieces === 0) return 0;
  const before = strip.takes.find((take) => take.item === item)?.pieces ?? 0;
  strip.takes = [...strip.takes.filter((take) => take.item !== item), { item, pieces: before + pieces }];
  strip.left = spareRoom(strip);
  return pieces;
}

function newStrip(boards: Board[], { source, kind }: Place, { sources }: Problem): Open {
  const strip = { kind, takes: [], left: kind.room };
  const board = boards.find((each) => each.source === source && each.height >= kind.height);
  if (board) {
    board.strips.push(strip);
    board.height -= kind.height;
  } else boards.push({ source, strips: [strip], height: (sources[source]?.sheet?.height ?? kind.height) - kind.height, isNew: true });
  return strip;
}
