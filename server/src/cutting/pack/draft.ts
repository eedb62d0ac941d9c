/** A plan while it is sought: patterns and how often each is cut; and what it comes to. */
import { columnOf, type Column } from './column.ts';
import { groupsOf, widthOf } from './options.ts';
import type { Load } from './fill.ts';
import type { Problem } from './problem.ts';
import { countersOf } from './counters.ts';
import type { Counters, Sheet, Strip, Subcut } from './types.ts';

export interface Draft {
  readonly parts: readonly Copies[];
  readonly total: number;
}

export interface Copies {
  readonly column: Column;
  readonly copies: number;
}

export function draftOf({ sources }: Problem, parts: readonly Copies[]): Draft {
  const filled = parts.filter(({ column }) => column.takes.length > 0);
  return { parts: filled, total: filled.reduce((total, { column, copies }) => total + copies * (sources[column.source]?.cost ?? 0), 0) };
}

/** The pattern from the cheapest source that holds it, its strips no higher than they must be. */
export function settled({ sources }: Problem, column: Column): Column {
  const [load] = column.loads;
  const source = sources[column.source];
  if (!source || !load) return column;
  if (source.sheet) return columnOf(column.source, column.loads.map(({ kind, takes }) => ({ kind: lowest(source.strips, takes) ?? kind, takes })));
  const best = sources.findLastIndex(({ strips: [kind] }) => kind !== undefined && spareRoom({ kind, takes: load.takes }) >= 0);
  const kind = sources[best]?.strips[0];
  return kind && best !== column.source ? columnOf(best, [{ kind, takes: load.takes }]) : column;
}

function lowest(kinds: readonly Load['kind'][], takes: Load['takes']): Load['kind'] | undefined {
  return kinds.findLast((kind) => spareRoom({ kind, takes }) >= 0);
}

/** In steps of the strip's grid; below 0 when the takes do not fit. */
export function spareRoom({ kind, takes }: Load): number {
  let left = kind.room;
  for (const { item, pieces } of takes) {
    const option = kind.options[item];
    left -= option ? widthOf(option, pieces) : Number.MAX_SAFE_INTEGER;
    if (left < 0) return left;
  }
  return left;
}

export interface Written {
  readonly strips: readonly Strip[];
  readonly sheets: readonly Sheet[];
  readonly counters: Counters;
}

/** The draft as it is read at the table: the highest strips first, in a strip the tallest pieces first. */
export function written(problem: Problem, { parts }: Draft): Written {
  const inOrder = together(parts).sort((a, b) => height(b) - height(a) || b.copies - a.copies || (a.column.key < b.column.key ? -1 : 1));
  const cut = inOrder.map(({ column, copies }) => ({ column, copies, strips: gathered(column.loads.map((load) => ({ height: load.kind.height, count: 1, subcuts: subcutsOf(problem, load) }))) }));
  const strips = gathered(cut.flatMap(({ copies, strips: each }) => each.map((strip) => ({ ...strip, count: strip.count * copies }))));
  const sheets = problem.cloth.kind === 'sheets' ? cut.map(({ column, copies, strips: each }) => ({ count: copies, ...(problem.sources[column.source]?.sheet?.turned ? { turned: true as const } : {}), strips: each })) : [];
  return { strips, sheets, counters: countersOf(strips, problem) };
}

function together(parts: readonly Copies[]): Copies[] {
  const merged = new Map<string, Copies>();
  for (const { column, copies } of parts) merged.set(column.key, { column, copies: copies + (merged.get(column.key)?.copies ?? 0) });
  return [...merged.values()];
}

function height({ column }: Copies): number {
  return Math.max(...column.loads.map(({ kind }) => kind.height));
}

function gathered(strips: readonly Strip[]): readonly Strip[] {
  const alike = new Map<string, Strip>();
  for (const strip of strips) {
    const key = JSON.stringify([strip.height, strip.subcuts]);
    alike.set(key, { ...strip, count: strip.count + (alike.get(key)?.count ?? 0) });
  }
  return [...alike.values()].sort((a, b) => b.height - a.height);
}

function subcutsOf({ items }: Problem, { kind, takes }: Load): readonly Subcut[] {
  const groups = takes.flatMap(({ item, pieces }) => {
    const option = kind.options[item];
    return option ? groupsOf(option, pieces, kind.height).map((group) => ({ ...group, piece: items[item]?.demand ?? 0 })) : [];
  });
  groups.sort((a, b) => b.way.down - a.way.down || b.way.across - a.way.across || a.piece - b.piece);
  return groups.map(({ way, pieces, piece }) => ({
    piece,
    count: pieces,
    ...(way.turned ? { turned: true as const } : {}),
    ...(way.stack > 1 && pieces > 1 ? { stacked: Math.min(way.stack, pieces) } : {}),
  }));
}

/** Below 0 when the first is better: less cloth, then fewer strip widths, cuts, ruler changes. */
export function comparePlans(a: Draft & { readonly counters: Counters }, b: Draft & { readonly counters: Counters }): number {
  return a.total - b.total || compareCounters(a.counters, b.counters);
}

export function compareCounters(a: Counters, b: Counters): number {
  return a.widths - b.widths || a.cuts - b.cuts || a.rulerChanges - b.rulerChanges;
}
