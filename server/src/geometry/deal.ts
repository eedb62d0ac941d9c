/**
 * Which print of an assorted role each block, or each patch, gets. The prints are dealt in turn: as many of each, but for one more
 * of the first ones where they do not come out even; side by side never two alike where that can be avoided. The same each time.
 *
 * A deal holds numbers of prints beside a layout that knows nothing of them, so a block is still laid out once.
 */
import { ZERO } from '../exact/number.ts';
import { clockwise } from '../exact/polygon.ts';
import type { Polygon } from '../exact/polygon.ts';
import { applyToAll } from '../exact/transform.ts';
import type { Fabric } from '../model/pattern.ts';
import { dealtInTurn } from './deal-turns.ts';
import type { BlockInQuilt, BlockLayout, Patch, Placement, QuiltLayout } from './layout.ts';
import { cornersOf } from './move.ts';
import { neighbours } from './neighbours.ts';
import type { Pair } from './neighbours.ts';

export interface Deal {
  /** For each placement the number of the print of each patch of its block; undefined for other patches, and for other blocks. */
  readonly placements: readonly (Prints | undefined)[];
  /** The number of the print of each patch that is in no block. */
  readonly patches: Prints;
}

export type Prints = readonly (number | undefined)[];

/** Undefined for a quilt without assorted fabrics. Worked out when first asked for. */
export function dealOf(layout: QuiltLayout): Deal | undefined {
  if (!deals.has(layout)) deals.set(layout, deal(layout));
  return deals.get(layout);
}

/** The prints of one block by itself, as it might come out in a quilt; undefined without assorted fabrics. */
export function dealInBlock(block: BlockLayout): Prints | undefined {
  const roles = rolesIn({ blocks: [{ layout: block }], patches: [] });
  if (roles.length === 0) return undefined;
  const prints: (number | undefined)[] = block.patches.map(() => undefined);
  for (const role of roles) {
    const indices = indicesOf(block, role);
    const units = role.assorted?.by === 'block' ? [] : indices.map((index) => block.patches[index]?.outline ?? []);
    const dealt = dealtInTurn(units.length, role.assorted?.prints.length ?? 1, neighbours(units));
    indices.forEach((index, i) => (prints[index] = dealt[i] ?? 0));
  }
  return prints;
}

/** The patch cut from its print. */
export function inPrint(patch: Patch, print: number | undefined): Patch {
  const fabric = print === undefined ? undefined : patch.fabric.assorted?.prints[print];
  return fabric ? { ...patch, fabric } : patch;
}

const deals = new WeakMap<QuiltLayout, Deal | undefined>();

function deal(layout: QuiltLayout): Deal | undefined {
  const roles = rolesIn(layout);
  if (roles.length === 0) return undefined;
  const placements: (number | undefined)[][] = layout.placements.map(() => []);
  const patches: (number | undefined)[] = layout.patches.map(() => undefined);
  for (const role of roles) {
    const units = unitsOf(layout, role);
    const pairs = [...neighbours(units.map(({ outline }) => outline)), ...acrossSashes(layout, units)];
    const prints = dealtInTurn(units.length, role.assorted?.prints.length ?? 1, pairs);
    units.forEach(({ at, patch }, i) => {
      const print = prints[i];
      if (at.kind === 'loose') patches[at.index] = print;
      else for (const index of patch === undefined ? indicesOf(at.placement.block, role) : [patch]) (placements[at.index] ??= [])[index] = print;
    });
  }
  return { placements: placements.map((prints) => (prints.length > 0 ? prints : undefined)), patches };
}

function rolesIn({ blocks, patches }: { readonly blocks: readonly Pick<BlockInQuilt, 'layout'>[]; readonly patches: readonly Patch[] }): readonly Fabric[] {
  const all = [...blocks.flatMap(({ layout }) => layout.patches), ...patches].map(({ fabric }) => fabric);
  return [...new Map(all.filter(({ assorted }) => assorted).map((fabric) => [fabric.name, fabric])).values()];
}

/** What gets one print: a placed block, one patch of it, or a patch in no block. */
interface Unit {
  readonly at: { readonly kind: 'block'; readonly index: number; readonly placement: Placement } | { readonly kind: 'loose'; readonly index: number };
  /** Of the block, when every patch gets its own. */
  readonly patch?: number;
  readonly outline: Polygon;
}

/** In the order of the layout, which is that of reading. */
function unitsOf({ placements, patches }: QuiltLayout, role: Fabric): readonly Unit[] {
  const inBlocks = placements.flatMap((placement, index): Unit[] => {
    const indices = indicesOf(placement.block, role);
    if (indices.length === 0) return [];
    const at = { kind: 'block' as const, index, placement };
    if (role.assorted?.by === 'block') return [{ at, outline: roomOf(placement) }];
    return indices.map((patch) => ({ at, patch, outline: placed(placement.block.patches[patch]?.outline ?? [], placement) }));
  });
  const loose = patches.flatMap((patch, index): Unit[] => (patch.fabric.name === role.name ? [{ at: { kind: 'loose', index }, outline: patch.outline }] : []));
  return [...inBlocks, ...loose];
}

const known = new WeakMap<BlockLayout, Map<string, readonly number[]>>();

/** The patches of a block that are of a role. */
function indicesOf(block: BlockLayout, { name }: Fabric): readonly number[] {
  const ofBlock = known.get(block) ?? new Map<string, readonly number[]>();
  known.set(block, ofBlock);
  const indices = ofBlock.get(name) ?? block.patches.flatMap(({ fabric }, index) => (fabric.name === name ? [index] : []));
  ofBlock.set(name, indices);
  return indices;
}

function roomOf(placement: Placement): Polygon {
  const { width, height } = placement.block;
  return placement.clip ?? placed(cornersOf({ x: ZERO, y: ZERO, width, height }), placement);
}

function placed(outline: Polygon, { transform }: Placement): Polygon {
  return clockwise(applyToAll(outline, transform));
}

/** Blocks on both sides of a sash are side by side too. */
function acrossSashes({ spec, placements }: QuiltLayout, units: readonly Unit[]): readonly Pair[] {
  if (!spec.sashing) return [];
  const isOnPoint = spec.setting?.kind === 'on_point';
  const at = new Map<string, number[]>();
  const spots = units.map(({ at: where }) => (where.kind === 'block' ? spotOf(placements[where.index], isOnPoint) : undefined));
  spots.forEach((spot, i) => spot && at.set(spot.join(), [...(at.get(spot.join()) ?? []), i]));
  return spots.flatMap((spot, i) => (spot ? STEPS[isOnPoint ? 'on point' : 'straight'].flatMap(([x, y]) => at.get([spot[0] + x, spot[1] + y].join()) ?? []).map((other): Pair => [i, other]) : []));
}

const STEPS = { straight: [[1, 0], [0, 1]], 'on point': [[1, 1], [1, -1]] } as const;

/** Places in the setting; on point in halves of the pitch, as the lattice counts them. */
function spotOf(placement: Placement | undefined, isOnPoint: boolean): Pair | undefined {
  if (!placement) return undefined;
  const { row, column, part } = placement;
  if (part === 'edge') return [column, row];
  if (part !== 'place' && part !== 'between') return undefined;
  if (!isOnPoint) return [column, row];
  const first = part === 'place' ? 1 : 2;
  return [2 * column + first, 2 * row + first];
}
