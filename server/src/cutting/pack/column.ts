/** A cutting pattern: one more of a source and what is cut from it. */
import { fillStrip, type Filling, type Load, type Prices, type Take } from './fill.ts';
import type { Problem, Source } from './problem.ts';
import type { Work } from './work.ts';

export interface Column {
  /** An index into the problem's sources. */
  readonly source: number;
  readonly loads: readonly Load[];
  /** All loads together. */
  readonly takes: readonly Take[];
  /** Equal for equal patterns whose takes are in the order of the items. */
  readonly key: string;
}

export function columnOf(source: number, loads: readonly Load[]): Column {
  const [first, ...rest] = loads;
  let key: string | undefined;
  return {
    source,
    loads,
    takes: rest.length === 0 ? (first?.takes ?? []) : summed(loads.flatMap(({ takes }) => takes)),
    get key() {
      return (key ??= keyOf(source, loads));
    },
  };
}

function summed(takes: readonly Take[]): readonly Take[] {
  const sums = new Map<number, number>();
  for (const { item, pieces } of takes) sums.set(item, (sums.get(item) ?? 0) + pieces);
  return [...sums].map(([item, pieces]) => ({ item, pieces })).sort((a, b) => a.item - b.item);
}

function keyOf(source: number, loads: readonly Load[]): string {
  let key = `${source}`;
  for (const { kind, takes } of loads) {
    key += `/${kind.height}`;
    for (const { item, pieces } of takes) key += ` ${item}x${pieces}`;
  }
  return key;
}

/** The pattern with no more than is wanted, load by load; undefined when nothing is left of it. */
export function clipped(column: Column, wanted: readonly number[]): Column | undefined {
  if (column.takes.every(({ item, pieces }) => pieces <= (wanted[item] as number))) return column;
  const left = [...wanted];
  const loads = column.loads.flatMap(({ kind, takes }) => {
    const kept = takes.map(({ item, pieces }) => ({ item, pieces: Math.min(pieces, left[item] as number) })).filter(({ pieces }) => pieces > 0);
    for (const { item, pieces } of kept) left[item] = (left[item] as number) - pieces;
    return kept.length > 0 ? [{ kind, takes: kept }] : [];
  });
  return loads.length > 0 ? columnOf(column.source, loads) : undefined;
}

/** How often the pattern can be cut before something is cut in vain. */
export function copiesWithin(column: Column, wanted: readonly number[]): number {
  return column.takes.reduce((least, { item, pieces }) => Math.min(least, Math.floor((wanted[item] as number) / pieces)), Number.MAX_SAFE_INTEGER);
}

export function without(wanted: readonly number[], { takes }: { readonly takes: readonly Take[] }, copies: number): readonly number[] {
  const left = [...wanted];
  for (const { item, pieces } of takes) left[item] = (left[item] as number) - copies * pieces;
  return left;
}

/** For each item its own pattern, as full of it as it can be, from the source that is cheapest for one piece. */
export function plainColumns({ sources, items }: Problem, wanted: readonly number[]): readonly Column[] {
  return items.flatMap((_, item) => {
    const ways = sources.flatMap((source, index) => source.strips.flatMap((kind) => plainLoad(source, index, kind, item, wanted)));
    const [first, ...rest] = ways;
    return first && (wanted[item] as number) > 0 ? [rest.reduce((best, way) => (way.each < best.each ? way : best), first).column] : [];
  });
}

function plainLoad(source: Source, index: number, kind: Source['strips'][number], item: number, wanted: readonly number[]): readonly { readonly column: Column; readonly each: number }[] {
  const option = kind.options[item];
  if (!option) return [];
  const pieces = Math.min(option.pieces.at(-1) as number, wanted[item] as number);
  const share = source.sheet ? kind.height : source.cost;
  return [{ column: columnOf(index, [{ kind, takes: [{ item, pieces }] }]), each: share / pieces }];
}

/** A filling as it can be cut: strip after strip takes what is then still wanted, and rest of a sheet is filled as well as it can be. */
export function realised(source: Source, filling: Filling, prices: Prices, work: Work): readonly Load[] {
  if (!source.sheet) return filling.loads;
  let wanted = prices.wanted;
  let height = source.sheet.height;
  const loads: Load[] = [];
  const cut = (kind: Load['kind']): boolean => {
    const { takes } = fillStrip(kind, { ...prices, wanted }, work);
    if (takes.length === 0) return false;
    loads.push({ kind, takes });
    wanted = without(wanted, { takes }, 1);
    height -= kind.height;
    return true;
  };
  for (const { kind } of filling.loads) cut(kind);
  for (const kind of source.strips) while (kind.height <= height && cut(kind));
  return loads;
}

