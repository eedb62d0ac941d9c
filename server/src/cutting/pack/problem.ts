/**
 * From demand and cloth to what the search works on: items with the ways they may lie, kinds of strip with what fits them, and
 * sources, each the thing one more of which is paid for: a strip of one height, or a sheet cut one way.
 */
import { optionFor, type Option, type Steps, type Way } from './options.ts';
import type { Cloth, Demand } from './types.ts';

export interface Problem {
  readonly cloth: Cloth;
  readonly items: readonly Item[];
  readonly counts: readonly number[];
  readonly sources: readonly Source[];
  /** Indices of demands that fit no source. */
  readonly tooLarge: readonly number[];
}

export interface Item {
  /** An index into the demand. */
  readonly demand: number;
  readonly size: Demand;
}

/** A strip of one height (`strips` holds it alone), or a sheet in which strips of several heights share a height. */
export interface Source {
  readonly cost: number;
  readonly strips: readonly StripKind[];
  readonly sheet?: { readonly height: number; readonly turned: boolean };
}

export interface StripKind {
  readonly height: number;
  /** Along the strip, in steps of the widths' common divisor. */
  readonly room: number;
  /** For each item, if it fits. */
  readonly options: readonly (Option | undefined)[];
}

/** Throws a RangeError on a measure or a count that is no positive whole number: rounding is the caller's. */
export function problemOf(demand: readonly Demand[], cloth: Cloth): Problem {
  guard(demand, cloth);
  const wanted = demand.map((size, index) => ({ demand: index, size })).filter(({ size }) => size.count > 0);
  const fits = wanted.filter(({ size }) => framesOf(cloth).some((frame) => waysOf(size, frame).length > 0));
  const items = fits.sort((a, b) => longer(b.size) - longer(a.size) || shorter(b.size) - shorter(a.size) || a.demand - b.demand);
  return {
    cloth,
    items,
    counts: items.map(({ size }) => size.count),
    sources: framesOf(cloth).flatMap((frame) => sourcesOf(cloth, frame, items)),
    tooLarge: wanted.filter((item) => !fits.includes(item)).map((item) => item.demand),
  };
}

function guard(demand: readonly Demand[], cloth: Cloth): void {
  const heights = cloth.kind === 'strips' ? cloth.heights : cloth.kind === 'sheets' ? [cloth.height] : [];
  const measures = [...demand.flatMap(({ width, height }) => [width, height]), cloth.width, ...heights];
  if (measures.some((each) => !Number.isSafeInteger(each) || each <= 0)) throw new RangeError('a measure is no positive whole number of steps');
  if (demand.some(({ count }) => !Number.isSafeInteger(count) || count < 0)) throw new RangeError('a count is no whole number');
}

/** Cloth as the strips see it. */
interface Frame {
  readonly width: number;
  /** The highest strip there is. */
  readonly height: number;
  readonly turned: boolean;
}

function framesOf(cloth: Cloth): readonly Frame[] {
  if (cloth.kind === 'length') return [{ width: cloth.width, height: Number.MAX_SAFE_INTEGER, turned: false }];
  if (cloth.kind === 'strips') return [{ width: cloth.width, height: Math.max(0, ...cloth.heights), turned: false }];
  const { width, height, eitherWay } = cloth;
  const turned = { width: height, height: width, turned: true };
  return [{ width, height, turned: false }, ...(eitherWay && width !== height ? [turned] : [])];
}

/** In a turned sheet a piece that may not turn lies turned to the strip. */
function waysOf({ width, height, mayTurn }: Demand, frame: Frame): readonly Way[] {
  const upright = { across: width, down: height, turned: false };
  const level = { across: height, down: width, turned: true };
  const ways = mayTurn ? (width === height ? [upright] : [upright, level]) : [frame.turned ? level : upright];
  return ways.filter(({ across, down }) => across <= frame.width && down <= frame.height);
}

function sourcesOf(cloth: Cloth, frame: Frame, items: readonly Item[]): readonly Source[] {
  const ways = items.map(({ size }) => waysOf(size, frame));
  const found = cloth.kind === 'strips' ? cloth.heights : ways.flatMap((each) => each.map(({ down }) => down));
  const heights = [...new Set(found)].sort((a, b) => b - a);
  const grid = ways.flat().reduce((divisor, { across }) => commonDivisor(divisor, across), 0);
  const room = grid > 0 ? Math.floor(frame.width / grid) : 0;
  const asked = items.map(({ size: { count } }, i): { readonly count: number; readonly ways: readonly Way[]; readonly known: Steps } => ({ count, ways: ways[i] ?? [], known: new Map() }));
  const strips = heights.map((height) => ({ height, room, options: asked.map((each) => optionFor(each.ways, each.count, { height, room, grid }, each.known)) }));
  const useful = strips.filter(({ options }) => options.some(Boolean));
  if (cloth.kind === 'sheets') return useful.length > 0 ? [{ cost: 1, strips: useful, sheet: { height: frame.height, turned: frame.turned } }] : [];
  return useful.map((strip) => ({ cost: strip.height, strips: [strip] }));
}

export function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

function longer({ width, height }: Demand): number {
  return Math.max(width, height);
}

function shorter({ width, height }: Demand): number {
  return Math.min(width, height);
}
