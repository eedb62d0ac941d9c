/**
 * Which blocks stand within which, from their texts alone: rings (a block within itself, however far round) and levels. A block
 * always makes everything it mentions, so a ring in the texts is a ring in the quilt.
 */
import type { Statement } from '../syntax/tree.ts';
import type { BlockDefinition, Meaning, Nesting, Obstacle } from './pattern.ts';

/** The most levels of blocks within blocks. */
export const MOST_LEVELS = 64;

/** What a block is made of: the definitions it mentions, those of other files with the levels known there. */
export type Inside = (definition: BlockDefinition) => readonly BlockDefinition[];

/** The blocks a definition mentions, by the names of its file. */
export function insideBy(names: ReadonlyMap<string, Meaning>): Inside {
  return (definition) =>
    [...(definition.mentions ?? [])].flatMap((name) => {
      const meaning = names.get(name);
      return meaning?.kind === 'block' ? [meaning.definition] : [];
    });
}

/** Rings and levels of the definitions of a file; `foreign` knows the levels of blocks from other files. */
export function nestingOf(definitions: readonly BlockDefinition[], find: Inside, foreign: (definition: BlockDefinition) => number): Nesting {
  const found = new Map(definitions.map((definition) => [definition, find(definition)]));
  const inside: Inside = (definition) => found.get(definition) ?? [];
  const own = new Map(definitions.map((definition) => [definition.statement as Statement, definition]));
  const rings = new Map<Statement, number>();
  const levels = new Map<Statement, number>();
  const levelOf = (definition: BlockDefinition): number => {
    const level = levels.get(definition.statement) ?? (own.has(definition.statement) ? 0 : foreign(definition));
    levels.set(definition.statement, level);
    return level;
  };
  for (const [number, group] of groups(own, inside).entries()) {
    const isRing = group.length > 1 || group.some((one) => inside(one).some(({ statement }) => statement === one.statement));
    if (isRing) for (const { statement } of group) rings.set(statement, number);
    for (const definition of group) {
      const below = inside(definition)
        .filter(({ statement }) => !isRing || rings.get(statement) !== number)
        .map(levelOf)
        .filter((level) => level < MOST_LEVELS);
      levels.set(definition.statement, below.reduce((most, level) => (level > most ? level : most), 0) + 1);
    }
  }
  return { rings, levels };
}

/** The nesting of an older version with statements that have taken the place of others but hold the same blocks. */
export function nestingWith({ rings, levels }: Nesting, replaced: ReadonlyMap<Statement, Statement>): Nesting {
  const renewed = <V>(map: ReadonlyMap<Statement, V>): ReadonlyMap<Statement, V> => {
    const fresh = new Map(map);
    for (const [before, now] of replaced) {
      const value = fresh.get(before);
      fresh.delete(before);
      if (value !== undefined) fresh.set(now, value);
    }
    return fresh;
  };
  return { rings: renewed(rings), levels: renewed(levels) };
}

/** What keeps `inner` from standing in `outer`; undefined when nothing does. */
export function obstacle(nesting: Nesting, outer: BlockDefinition, inner: BlockDefinition, inside: Inside): Obstacle | undefined {
  const ring = nesting.rings.get(outer.statement);
  if (ring !== undefined && nesting.rings.get(inner.statement) === ring) {
    return { kind: 'ring', chain: [outer.name, ...wayBack(nesting, inner, outer, inside)] };
  }
  return (nesting.levels.get(inner.statement) ?? 1) >= MOST_LEVELS ? { kind: 'deep' } : undefined;
}

/** The shortest way through the ring, by names, both ends included. */
function wayBack({ rings }: Nesting, from: BlockDefinition, to: BlockDefinition, inside: Inside): readonly string[] {
  const ways: { readonly at: BlockDefinition; readonly names: readonly string[] }[] = [{ at: from, names: [from.name] }];
  const seen = new Set<Statement>([from.statement]);
  for (const { at, names } of ways) {
    if (at.statement === to.statement) return names;
    for (const next of inside(at)) {
      if (seen.has(next.statement) || rings.get(next.statement) !== rings.get(to.statement)) continue;
      seen.add(next.statement);
      ways.push({ at: next, names: [...names, next.name] });
    }
  }
  return [from.name, to.name];
}

interface Visit {
  readonly definition: BlockDefinition;
  readonly number: number;
  low: number;
  readonly next: BlockDefinition[];
}

/** Strongly connected groups, each after those it stands on (Tarjan 1972), in loops: texts may nest thousands deep. */
function groups(own: ReadonlyMap<Statement, BlockDefinition>, inside: Inside): readonly (readonly BlockDefinition[])[] {
  const found: (readonly BlockDefinition[])[] = [];
  const visits = new Map<Statement, Visit>();
  const open = new Set<Statement>();
  const begin = (definition: BlockDefinition): Visit => {
    const next = inside(definition).filter(({ statement }) => own.has(statement)).reverse();
    const visit = { definition, number: visits.size, low: visits.size, next };
    visits.set(definition.statement, visit);
    open.add(definition.statement);
    return visit;
  };
  for (const start of own.values()) {
    const way = visits.has(start.statement) ? [] : [begin(start)];
    for (let top = way.at(-1); top; top = way.at(-1)) {
      const next = top.next.pop();
      const seen = next && visits.get(next.statement);
      if (next && !seen) way.push(begin(next));
      else if (seen && open.has(seen.definition.statement)) top.low = least(top.low, seen.number);
      else if (!next) {
        way.pop();
        const below = way.at(-1);
        if (below) below.low = least(below.low, top.low);
        if (top.low === top.number) found.push(close(open, visits, top));
      }
    }
  }
  return found;
}

/** Takes a finished group off the open ones: everything opened since its first member. */
function close(open: Set<Statement>, visits: ReadonlyMap<Statement, Visit>, first: Visit): readonly BlockDefinition[] {
  const group: BlockDefinition[] = [];
  for (const statement of [...open].slice([...open].indexOf(first.definition.statement))) {
    open.delete(statement);
    const visit = visits.get(statement);
    if (visit) group.push(visit.definition);
  }
  return group;
}

function least(a: number, b: number): number {
  return b < a ? b : a;
}
