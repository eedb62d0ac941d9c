/**
 * The strips one fabric is cut into: across the usable width first, then each strip into segments, a segment perhaps into
 * pieces one above the other. First fit, the tallest strips first, for several ways to lay the pieces that may lie either way;
 * the shortest plan wins. What is left of a strip takes smaller pieces where that saves a strip.
 */
import { compare, div, floor, fraction, less, mul, sub, sum, type Exact } from '../exact/number.ts';
import type { Laid, Way } from './bound.ts';
import type { Piece, Strip, Subcut } from './plan.ts';

/** A kind of piece with the ways it fits the fabric. */
export interface Lot extends Laid {
  /** An index into the plan's pieces. */
  readonly piece: number;
  readonly ways: readonly LotWay[];
}

export interface LotWay extends Way {
  readonly turned: boolean;
}

/** The ways a piece fits fabric of a width; none when it is too wide both ways. */
export function waysOf(piece: Piece, width: Exact): readonly LotWay[] {
  const { cut, lie } = piece;
  const along = { across: cut.width, down: cut.height, turned: false };
  const across = { across: cut.height, down: cut.width, turned: true };
  const isSquare = compare(cut.width, cut.height) === 0;
  const ways = lie === 'along' || (isSquare && lie === undefined) ? [along] : lie === 'across' ? [across] : [across, along];
  return ways.filter((way) => !less(width, way.across));
}

/** The strips for all lots, the widest first. */
export function planStrips(lots: readonly Lot[], width: Exact): readonly Strip[] {
  const [first, ...rest] = startingWays(lots, width).flatMap((ways) => FILLS.map((fill) => attempt(lots, ways, fill, width)));
  if (!first) return [];
  const best = rest.reduce((least, plan) => (less(plan.length, least.length) ? plan : least), first);
  return improved(best, lots, width).kinds.map(({ down, count, cuts }) => ({ width: down, count, subcuts: cuts }));
}

/** The length a number of strips takes along the selvage. */
export function lengthOf(strips: readonly { readonly width: Exact; readonly count: number }[]): Exact {
  return sum(strips.map((strip) => mul(strip.width, fraction(strip.count))));
}

/** `saving`: leftovers are used where that saves a strip. `always`: wherever a piece fits. */
type Fill = 'saving' | 'always';

const FILLS: readonly Fill[] = ['saving', 'always'];

/** Strips of one kind while they are planned. */
interface Kind {
  readonly down: Exact;
  readonly left: Exact;
  readonly count: number;
  readonly cuts: readonly Subcut[];
}

interface Attempt {
  /** For each lot, an index into its ways. */
  readonly ways: readonly number[];
  readonly fill: Fill;
  readonly kinds: readonly Kind[];
  readonly length: Exact;
}

/** Each lot by itself at its best; then all low strips, then all tall ones. */
function startingWays(lots: readonly Lot[], width: Exact): readonly (readonly number[])[] {
  if (lots.length === 0) return [];
  const alone = lots.map(({ ways, count }) => (ways[1] && ways[0] && less(aloneLength(ways[1], count, width), aloneLength(ways[0], count, width)) ? 1 : 0));
  if (lots.every(({ ways }) => ways.length < 2)) return [alone];
  return [alone, lots.map(() => 0), lots.map(({ ways }) => ways.length - 1)];
}

function aloneLength(way: Way, count: number, width: Exact): Exact {
  return mul(way.down, fraction(ceilDivide(count, fitting(width, way.across))));
}

/** With this many kinds of piece that may lie either way, turning them one by one is no longer tried. */
const MOST_TO_TURN = 24;

/** Turns one lot at a time while that makes the plan shorter. */
function improved(start: Attempt, lots: readonly Lot[], width: Exact): Attempt {
  const turnable = lots.flatMap(({ ways }, i) => (ways.length > 1 ? [i] : []));
  if (turnable.length > MOST_TO_TURN) return start;
  let best = start;
  for (const i of turnable) {
    const ways = best.ways.map((way, each) => (each === i ? 1 - way : way));
    const other = attempt(lots, ways, best.fill, width);
    if (less(other.length, best.length)) best = other;
  }
  return best;
}

function attempt(lots: readonly Lot[], ways: readonly number[], fill: Fill, width: Exact): Attempt {
  const laid = lots.flatMap((lot, i) => {
    const way = lot.ways[ways[i] ?? 0];
    return way ? [{ piece: lot.piece, count: lot.count, ...way }] : [];
  });
  laid.sort((a, b) => compare(b.down, a.down) || compare(b.across, a.across) || a.piece - b.piece);
  const kinds = laid.reduce<readonly Kind[]>((done, lot) => withLot(done, lot, fill, width), []);
  return { ways, fill, kinds, length: lengthOf(kinds.map(({ down, count }) => ({ width: down, count }))) };
}

interface LaidLot extends LotWay {
  readonly piece: number;
  readonly count: number;
}

function withLot(kinds: readonly Kind[], lot: LaidLot, fill: Fill, width: Exact): readonly Kind[] {
  const perStrip = fitting(width, lot.across);
  const room = kinds.reduce((total, kind) => total + kind.count * roomIn(kind, lot).pieces, 0);
  const inside = fill === 'always' ? smaller(room, lot.count) : savingCount(lot.count, perStrip, room);
  const own = lot.count - inside;
  const full = Math.floor(own / perStrip);
  const last = own % perStrip;
  return [
    ...filled(kinds, lot, inside),
    ...(full > 0 ? [ownKind(lot, full, perStrip, width)] : []),
    ...(last > 0 ? [ownKind(lot, 1, last, width)] : []),
  ];
}

/** How many pieces to put in leftovers so that each strip less is worth it. */
function savingCount(count: number, perStrip: number, room: number): number {
  if (room >= count) return count;
  const inside = count - perStrip * ceilDivide(count - room, perStrip);
  return inside > 0 ? inside : 0;
}

/** Puts `inside` pieces into what is left of the strips, the lowest strips first. */
function filled(kinds: readonly Kind[], lot: LaidLot, inside: number): readonly Kind[] {
  let rest = inside;
  const done: Kind[] = [];
  for (const kind of [...kinds].reverse()) {
    const { pieces, rows } = roomIn(kind, lot);
    const here = smaller(rest, pieces * kind.count);
    rest -= here;
    done.push(...(here > 0 ? split(kind, lot, { here, pieces, rows }) : [kind]).reverse());
  }
  return done.reverse();
}

/** The kind as strips that are filled, one that is filled in part, and strips left as they are. */
function split(kind: Kind, lot: LaidLot, { here, pieces, rows }: { here: number; pieces: number; rows: number }): Kind[] {
  const full = Math.floor(here / pieces);
  const last = here % pieces;
  const untouched = kind.count - full - (last > 0 ? 1 : 0);
  return [
    ...(full > 0 ? [withCut({ ...kind, count: full }, lot, pieces, rows)] : []),
    ...(last > 0 ? [withCut({ ...kind, count: 1 }, lot, last, rows)] : []),
    ...(untouched > 0 ? [{ ...kind, count: untouched }] : []),
  ];
}

function withCut(kind: Kind, lot: LaidLot, count: number, rows: number): Kind {
  const cut: Subcut = { piece: lot.piece, count, ...(lot.turned ? { turned: true as const } : {}), ...(rows > 1 && count > 1 ? { stacked: smaller(rows, count) } : {}) };
  const segments = ceilDivide(count, cut.stacked ?? 1);
  return { ...kind, left: sub(kind.left, mul(lot.across, fraction(segments))), cuts: [...kind.cuts, cut] };
}

function ownKind(lot: LaidLot, count: number, perStrip: number, width: Exact): Kind {
  return withCut({ down: lot.down, left: width, count, cuts: [] }, lot, perStrip, 1);
}

function roomIn(kind: Kind, lot: LaidLot): { readonly pieces: number; readonly rows: number } {
  if (less(kind.left, lot.across)) return { pieces: 0, rows: 1 };
  const rows = fitting(kind.down, lot.down);
  return { pieces: rows * fitting(kind.left, lot.across), rows };
}

function fitting(room: Exact, size: Exact): number {
  return Number(floor(div(room, size)));
}

function ceilDivide(count: number, by: number): number {
  return Math.ceil(count / by);
}

function smaller(a: number, b: number): number {
  return a < b ? a : b;
}
