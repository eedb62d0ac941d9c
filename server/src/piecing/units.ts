/**
 * The units of a quilt: sub-assemblies that are the same up to turning, and made in the same way, are one unit, counted over the
 * whole quilt. A mirror image is another unit. Parts that differ at a glance are never compared closely.
 */
import { shapeKey } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { Methods } from '../model/pattern.ts';
import { groupedBy } from '../text/grouped.ts';
import { allSteps, mapSteps } from '../text/steps.ts';
import type { Steps } from '../text/steps.ts';
import { makingKey } from './making.ts';
import type { Making } from './making.ts';
import type { UnitName } from './names.ts';
import type { Measure } from './outline.ts';
import type { Assembly } from './plan.ts';
import { madeParts } from './unit-parts.ts';
import type { BlockToMake, MadePart } from './unit-parts.ts';

export interface Unit {
  readonly number: number;
  /** As the trade calls it, where it has a name. */
  readonly name: UnitName | undefined;
  /** How it is made, where that is said or usual; else piece by piece. */
  readonly made?: Making;
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
  /** In all of them. */
  readonly count: number;
}

/** Equal parts together: other units, or patches by the first that is met. */
export type UnitPart = { readonly kind: 'unit'; readonly unit: number; readonly count: number } | { readonly kind: 'patch'; readonly patch: number; readonly count: number };

export interface Units {
  readonly units: readonly Unit[];
  /** The number of the unit that a part of a plan is; patches are none. */
  readonly numbers: ReadonlyMap<Assembly, number>;
}

/** In the order they can be made in: a unit comes after those it is sewn from. `methods` are those of the pattern. */
export function unitsOf(blocks: readonly BlockToMake[], methods: Methods = {}): Units {
  return allSteps(unitSteps(blocks, methods));
}

/** The same step by step. */
export function* unitSteps(blocks: readonly BlockToMake[], methods: Methods): Steps<Units> {
  const parts = yield* madeParts(blocks, methods);
  const kinds = new Map<string, Kind>();
  const numbers = new Map<Assembly, number>();
  const waysIn = new Map<Assembly, readonly string[]>();
  for (const part of parts) {
    const inside = piecesOf(part.own.node).flatMap((piece) => waysIn.get(piece) ?? []);
    const ways = part.making ? [...inside, `${part.shape.number} ${makingKey(part.making)}`].sort() : inside;
    waysIn.set(part.own.node, ways);
    const name = `${part.shape.number}: ${ways.join()}`;
    const kind = kinds.get(name) ?? { number: kinds.size, first: part, all: [] };
    kinds.set(name, kind);
    kind.all.push(part);
    for (const node of part.own.nodes) numbers.set(node, kind.number);
    yield undefined;
  }
  return { units: yield* mapSteps(kinds.values(), (kind) => unitOf(kind, numbers)), numbers };
}

/** Parts that are the same up to turning and are made in the same way, with all that is in them. */
interface Kind {
  readonly number: number;
  readonly first: MadePart;
  readonly all: MadePart[];
}

function unitOf({ number, first, all }: Kind, numbers: ReadonlyMap<Assembly, number>): Unit {
  const { own } = first;
  const uses = [...groupedBy(all, (each) => each.block)].map(([{ layout, count }, here]) => ({ layout, times: here.length, count: here.length * count }));
  return {
    number,
    name: first.shape.name,
    ...(first.making ? { made: first.making } : {}),
    is: all.every((each) => each.own.isBlock) ? 'block' : 'unit',
    layout: first.block.layout,
    part: own.node,
    patches: own.patches,
    outline: own.outline,
    size: own.sides,
    count: uses.reduce((sum, use) => sum + use.count, 0),
    uses,
    parts: sewnFrom(first, numbers),
  };
}

/** The parts of a node, equal ones counted: units by their number, patches by fabric and shape. */
function sewnFrom({ block: { layout }, own: { node: whole, patches }, making }: MadePart, numbers: ReadonlyMap<Assembly, number>): UnitPart[] {
  const counted = new Map<string, UnitPart>();
  const isOfPatches = making !== undefined && making.way !== 'singles';
  for (const node of isOfPatches ? patches.map((patch): Assembly => ({ kind: 'patch', patch })) : piecesOf(whole)) {
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
