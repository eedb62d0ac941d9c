/** The parts of blocks that can be units: what they look like, what they are called, and how they are made. */
import { key } from '../exact/number.ts';
import { area } from '../exact/polygon.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { Methods } from '../model/pattern.ts';
import { groupedBy } from '../text/grouped.ts';
import { mapSteps } from '../text/steps.ts';
import type { Steps } from '../text/steps.ts';
import type { Assembled } from './assembly.ts';
import { makingKey, saidMaking, usualMaking } from './making.ts';
import type { Makeable, Making } from './making.ts';
import { methodsAt } from './methods-at.ts';
import type { UnitName } from './names.ts';
import { ownParts } from './own-parts.ts';
import type { OwnPart } from './own-parts.ts';
import type { Assembly } from './plan.ts';

export interface BlockToMake {
  readonly layout: BlockLayout;
  readonly count: number;
  readonly assembled: Assembled;
}

/** A part of more than one patch. */
export interface Part {
  readonly block: BlockToMake;
  readonly own: OwnPart;
}

/** What parts look like that are the same up to turning. */
export interface Look {
  readonly number: number;
  readonly first: Part;
  readonly name: UnitName | undefined;
}

export interface LookedAt extends Part {
  readonly shape: Look;
}

export interface MadePart extends LookedAt {
  readonly making: Making | undefined;
}

/** All parts of blocks with how they are made, parts before wholes; without those within a unit that is made in a way of its own. */
export function* madeParts(blocks: readonly BlockToMake[], methods: Methods): Steps<readonly MadePart[]> {
  const parts = yield* lookedAt(blocks);
  const made = yield* mapSteps(parts, (part): Said => ({ part, said: saidMaking(makeable(part), methodsAt(part.block.layout, part.own.patches, methods)) }));
  const alike = groupedBy(made.filter(({ said }) => !said), ({ part }) => part.shape);
  const usual = new Map(yield* mapSteps(alike, ([shape, all]) => [shape, usualOf(all.map(({ part }) => part))] as const));
  yield* keepSquaresTogether(made, usual);
  const within = new Set<Assembly>();
  const kept: MadePart[] = [];
  for (const { part, said } of made.toReversed()) {
    if (within.has(part.own.node)) continue;
    const making = said ?? usual.get(part.shape);
    kept.push({ ...part, making });
    if (making && making.way !== 'singles') for (const inner of partsWithin(part.own.node)) within.add(inner);
  }
  return kept.reverse();
}

/** Every part of more than one patch, parts before wholes, with those that look the same. */
function* lookedAt(blocks: readonly BlockToMake[]): Steps<readonly LookedAt[]> {
  const groups = new Map<string, Look[]>();
  const readings = new Map<string, string>();
  let count = 0;
  const look = (part: Part): LookedAt => {
    const near = groups.get(part.own.print) ?? [];
    groups.set(part.own.print, near);
    let shape = near.find(({ first }) => first.own.reading(readings) === part.own.reading(readings));
    if (!shape) near.push((shape = { number: count++, first: part, name: part.own.name }));
    return { ...part, shape };
  };
  const looked = yield* mapSteps(blocks, (block) => ownParts(block.assembled).map((own) => look({ block, own })));
  return looked.flat();
}

function makeable({ block: { layout }, own, shape }: LookedAt): Makeable {
  return { name: shape.name, layout, part: own.node, outline: shape.name === undefined ? [] : own.outline };
}

/** For parts that are the same up to turning; those on a slant are cut another way. */
function usualOf(parts: readonly LookedAt[]): Making | undefined {
  const counts = [...groupedBy(parts, ({ block }) => block)].map(([{ count }, here]) => count * here.length);
  const ways = parts.map((part) => usualMaking(makeable(part), counts));
  return ways.every((way) => makingKey(way) === makingKey(ways[0])) ? ways[0] : undefined;
}

interface Said {
  readonly part: LookedAt;
  readonly said: Making | undefined;
}

/** Squares of a block that are cut alike are used alike: usual ways go where some of such triangles would be cut apart first, and some not. */
function* keepSquaresTogether(made: readonly Said[], usual: Map<Look, Making | undefined>): Steps<undefined> {
  const isUsual = ({ part, said }: Said): boolean => !said && usual.get(part.shape) !== undefined;
  const blocks = groupedBy(made, ({ part }) => part.block);
  for (let dropped = made.some(isUsual); dropped; ) {
    const looked = yield* mapSteps(blocks, ([{ layout }, parts]) => mixedIn(layout, parts.map((each) => ({ ...each, making: each.said ?? usual.get(each.part.shape) }))));
    const mixed = looked.flat();
    dropped = mixed.length > 0;
    for (const shape of mixed) usual.delete(shape);
  }
  return undefined;
}

/** What usual units of a block look like in which triangles of the same fabric and size lie as elsewhere in it, where those are not made so. */
function mixedIn({ patches }: BlockLayout, parts: readonly (Said & { readonly making: Making | undefined })[]): readonly Look[] {
  const madeBy = new Map<number, (typeof parts)[number]>();
  for (const each of parts) if (each.making && each.making.way !== 'singles') for (const patch of each.part.own.patches) madeBy.set(patch, each);
  const triangles = [...patches.keys()].filter((patch) => patches[patch]?.outline.length === 3 && madeBy.get(patch)?.making?.way !== 'corners');
  const alike = groupedBy(triangles, (patch) => `${patches[patch]?.fabric.name ?? ''} ${key(area(patches[patch]?.outline ?? []))}`);
  return [...alike.values()].flatMap((all) => {
    const ways = new Set(all.map((patch) => madeBy.get(patch)?.making?.way));
    return ways.size < 2 ? [] : all.flatMap((patch) => madeBy.get(patch) ?? []).filter(({ said }) => !said).map(({ part }) => part.shape);
  });
}

/** All that a part is sewn from, and what those are sewn from. */
function partsWithin(part: Assembly): readonly Assembly[] {
  const found: Assembly[] = [];
  const stack = [part];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    const inner = node.kind === 'join' ? node.parts : node.kind === 'patch' ? [] : [node.part];
    found.push(...inner);
    stack.push(...inner);
  }
  return found;
}
