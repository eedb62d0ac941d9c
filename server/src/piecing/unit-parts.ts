/** The parts of blocks that can be units: what they look like, what they are called, and how they are made. */
import { key } from '../exact/number.ts';
import { area } from '../exact/polygon.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { Methods } from '../model/pattern.ts';
import { groupedBy } from '../text/grouped.ts';
import type { Assembled } from './assembly.ts';
import { printOf } from './canonical.ts';
import type { Coloured } from './canonical.ts';
import { makingKey, saidMaking, usualMaking } from './making.ts';
import type { Makeable, Making } from './making.ts';
import { methodsAt } from './methods-at.ts';
import { unitName } from './names.ts';
import type { UnitName } from './names.ts';
import { outlineAround, visibleShapes } from './outline.ts';
import { patchesIn } from './plan.ts';
import type { Assembly } from './plan.ts';

export interface BlockToMake {
  readonly layout: BlockLayout;
  readonly count: number;
  readonly assembled: Assembled;
}

/** A part of more than one patch. */
export interface Part {
  readonly block: BlockToMake;
  /** The part; within it what it was before corners were flipped onto it and seams finished. */
  readonly nodes: readonly Assembly[];
  readonly node: Assembly;
  readonly shapes: readonly number[];
  readonly print: string;
  readonly isBlock: boolean;
  /** Read closely, once asked for. */
  reading?: string;
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
export function madeParts(blocks: readonly BlockToMake[], methods: Methods): readonly MadePart[] {
  const made = lookedAt(blocks.flatMap(partsOfBlock)).map((part) => ({ part, said: saidMaking(makeable(part), methodsAt(part.block.layout, patchesIn(part.node), methods)) }));
  const usual = new Map([...groupedBy(made.filter(({ said }) => !said), ({ part }) => part.shape)].map(([shape, all]) => [shape, usualOf(all.map(({ part }) => part))]));
  keepSquaresTogether(made, usual);
  const within = new Set<Assembly>();
  const kept: MadePart[] = [];
  for (const { part, said } of made.toReversed()) {
    if (within.has(part.node)) continue;
    const making = said ?? usual.get(part.shape);
    kept.push({ ...part, making });
    if (making && making.way !== 'singles') for (const inner of partsWithin(part.node)) within.add(inner);
  }
  return kept.reverse();
}

/** Every part of more than one patch, parts before wholes. */
function partsOfBlock(block: BlockToMake): Part[] {
  const { plan, names, kinds } = block.assembled;
  const shapeOf = new Map(names.map((name, shape) => [name, shape]));
  const found: Part[] = [];
  const visit = (node: Assembly, above: readonly Assembly[]): void => {
    if (node.kind === 'finish' || node.kind === 'flip') return visit(node.part, [...above, node]);
    if (node.kind === 'join') node.parts.forEach((part) => visit(part, []));
    if (node.kind === 'patch' && above.length === 0) return;
    const shapes = patchesIn(node).flatMap((patch) => shapeOf.get(patch) ?? []);
    const nodes = [...above, node];
    found.push({ block, nodes, node: nodes[0] ?? node, shapes, print: printOf(kinds, shapes), isBlock: false });
  };
  visit(plan.assembly, []);
  return found.map((part, i) => (i === found.length - 1 ? { ...part, isBlock: true } : part));
}

function lookedAt(parts: readonly Part[]): readonly LookedAt[] {
  const groups = new Map<string, Look[]>();
  let count = 0;
  return parts.map((part) => {
    const near = groups.get(part.print) ?? [];
    groups.set(part.print, near);
    let shape = near.find(({ first }) => readingOf(first) === readingOf(part));
    if (!shape) near.push((shape = { number: count++, first: part, name: nameOf(part) }));
    return { ...part, shape };
  });
}

function readingOf(part: Part): string {
  part.reading ??= part.block.assembled.read(part.shapes).key;
  return part.reading;
}

function nameOf({ block: { assembled }, shapes }: Part): UnitName | undefined {
  if (shapes.length > MOST_NAMED) return undefined;
  return unitName(outlineAround(assembled.map, shapes), shapes.flatMap((shape) => visibleShapes(assembled.shapes[shape] ?? NOTHING)));
}

function makeable({ block: { layout, assembled }, node, shape, shapes }: LookedAt): Makeable {
  return { name: shape.name, layout, part: node, outline: shape.name === undefined ? [] : outlineAround(assembled.map, shapes) };
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
function keepSquaresTogether(made: readonly Said[], usual: Map<Look, Making | undefined>): void {
  const isUsual = ({ part, said }: Said): boolean => !said && usual.get(part.shape) !== undefined;
  const blocks = groupedBy(made, ({ part }) => part.block);
  for (let dropped = made.some(isUsual); dropped; ) {
    const mixed = [...blocks].flatMap(([{ layout }, parts]) => mixedIn(layout, parts.map((each) => ({ ...each, making: each.said ?? usual.get(each.part.shape) }))));
    dropped = mixed.length > 0;
    for (const shape of mixed) usual.delete(shape);
  }
}

/** What usual units of a block look like in which triangles of the same fabric and size lie as elsewhere in it, where those are not made so. */
function mixedIn({ patches }: BlockLayout, parts: readonly (Said & { readonly making: Making | undefined })[]): readonly Look[] {
  const madeBy = new Map<number, (typeof parts)[number]>();
  for (const each of parts) if (each.making && each.making.way !== 'singles') for (const patch of patchesIn(each.part.node)) madeBy.set(patch, each);
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

/** Units of more patches have no name of their own. */
const MOST_NAMED = 36;

const NOTHING: Coloured = { outline: [], fabric: '', over: [] };
