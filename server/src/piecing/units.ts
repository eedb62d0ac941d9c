/**
 * The units of a quilt: sub-assemblies that are the same up to turning are one unit, counted over the whole quilt. A mirror image
 * is another unit. Parts that differ at a glance are never compared closely.
 */
import { shapeKey } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { Assembled } from './assembly.ts';
import { printOf } from './canonical.ts';
import type { Coloured } from './canonical.ts';
import { groupedBy } from '../text/grouped.ts';
import { unitName } from './names.ts';
import type { UnitName } from './names.ts';
import { outlineAround, sidesOf, visibleShapes } from './outline.ts';
import type { Measure } from './outline.ts';
import { patchesIn } from './plan.ts';
import type { Assembly } from './plan.ts';

export interface Unit {
  readonly number: number;
  /** As the trade calls it, where it has a name. */
  readonly name: UnitName | undefined;
  /** `block` when it is a whole one. */
  readonly is: 'unit' | 'block';
  /** Where it is met first: the block, the part of its plan, and its patches there. */
  readonly layout: BlockLayout;
  readonly part: Assembly;
  readonly patches: readonly number[];
  readonly outline: Polygon;
  /** Finished, as it lies there; undefined unless it is a rectangle. */
  readonly size: Measure | undefined;
  /** How many are made for the quilt. */
  readonly count: number;
  readonly uses: readonly UnitUse[];
  /** What one is sewn from, in the order of sewing. */
  readonly parts: readonly UnitPart[];
}

export interface UnitUse {
  readonly layout: BlockLayout;
  /** In each of these blocks. */
  readonly times: number;
}

/** Equal parts together: other units, or patches by the first that is met. */
export type UnitPart = { readonly kind: 'unit'; readonly unit: number; readonly count: number } | { readonly kind: 'patch'; readonly patch: number; readonly count: number };

export interface BlockToMake {
  readonly layout: BlockLayout;
  readonly count: number;
  readonly assembled: Assembled;
}

export interface Units {
  readonly units: readonly Unit[];
  /** The number of the unit that a part of a plan is; patches are none. */
  readonly numbers: ReadonlyMap<Assembly, number>;
}

/** In the order they can be made in: a unit comes after those it is sewn from. */
export function unitsOf(blocks: readonly BlockToMake[]): Units {
  const groups = new Map<string, Kind[]>();
  const numbers = new Map<Assembly, number>();
  const kinds: Kind[] = [];
  for (const part of blocks.flatMap(partsOfBlock)) {
    const near = groups.get(part.print) ?? [];
    groups.set(part.print, near);
    let kind = near.find(({ first }) => readingOf(first) === readingOf(part));
    if (!kind) {
      kind = { number: kinds.length, first: part, all: [] };
      near.push(kind);
      kinds.push(kind);
    }
    kind.all.push(part);
    for (const node of part.nodes) numbers.set(node, kind.number);
  }
  return { units: kinds.map((kind) => unitOf(kind, numbers)), numbers };
}

interface Kind {
  readonly number: number;
  readonly first: Part;
  readonly all: Part[];
}

interface Part {
  readonly block: BlockToMake;
  /** The part; within it what it was before corners were flipped onto it and seams finished. */
  readonly nodes: readonly Assembly[];
  readonly shapes: readonly number[];
  readonly print: string;
  readonly isBlock: boolean;
  /** Read closely, once asked for. */
  reading?: string;
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
    found.push({ block, nodes: [...above, node], shapes, print: printOf(kinds, shapes), isBlock: false });
  };
  visit(plan.assembly, []);
  return found.map((part, i) => (i === found.length - 1 ? { ...part, isBlock: true } : part));
}

function readingOf(part: Part): string {
  part.reading ??= part.block.assembled.read(part.shapes).key;
  return part.reading;
}

function unitOf({ number, first, all }: Kind, numbers: ReadonlyMap<Assembly, number>): Unit {
  const [part] = first.nodes;
  const { map, shapes, plan } = first.block.assembled;
  const outline = outlineAround(map, first.shapes);
  const uses = [...groupedBy(all, (each) => each.block)].map(([{ layout, count }, here]) => ({ layout, times: here.length, count }));
  return {
    number,
    name: first.shapes.length > MOST_NAMED ? undefined : unitName(outline, first.shapes.flatMap((shape) => visibleShapes(shapes[shape] ?? NOTHING))),
    is: all.every((each) => each.isBlock) ? 'block' : 'unit',
    layout: first.block.layout,
    part: part ?? plan.assembly,
    patches: patchesIn(part ?? plan.assembly),
    outline,
    size: sidesOf(outline),
    count: uses.reduce((sum, use) => sum + use.times * use.count, 0),
    uses: uses.map(({ layout, times }) => ({ layout, times })),
    parts: sewnFrom(first.block, part ?? plan.assembly, numbers),
  };
}

/** Units of more patches have no name of their own. */
const MOST_NAMED = 36;

const NOTHING: Coloured = { outline: [], fabric: '', over: [] };

/** The parts of a node, equal ones counted: units by their number, patches by fabric and shape. */
function sewnFrom({ layout }: BlockToMake, part: Assembly, numbers: ReadonlyMap<Assembly, number>): UnitPart[] {
  const counted = new Map<string, UnitPart>();
  for (const node of piecesOf(part)) {
    const unit = numbers.get(node);
    const patch = node.kind === 'patch' ? layout.patches[node.patch] : undefined;
    const name = unit === undefined && patch ? `${patch.role} ${patch.fabric.name} ${shapeKey(patch.outline, { mirror: 'different' })}` : `unit ${unit ?? -1}`;
    const one: UnitPart = unit === undefined && node.kind === 'patch' ? { kind: 'patch', patch: node.patch, count: 0 } : { kind: 'unit', unit: unit ?? -1, count: 0 };
    const known = counted.get(name) ?? one;
    counted.set(name, { ...known, count: known.count + 1 });
  }
  return [...counted.values()];
}

function piecesOf(part: Assembly): Assembly[] {
  switch (part.kind) {
    case 'patch':
      return [part];
    case 'join':
      return [...part.parts];
    case 'finish':
      return piecesOf(part.part);
    case 'flip':
      return [...piecesOf(part.part), { kind: 'patch', patch: part.patch }];
  }
}
