/**
 * How a block is sewn: straight seams from edge to edge wherever there is an order that needs nothing else, the fewest corners
 * set in and then the fewest seams sewn partway where there is none; rows as long, and units as few, as that allows.
 */
import { kindsOf, reader } from './canonical.ts';
import type { Coloured, Reading } from './canonical.ts';
import { draftOf } from './draft.ts';
import { mapOf } from './map.ts';
import type { SeamMap } from './map.ts';
import { overlaysOf } from './overlays.ts';
import type { SewingPlan } from './plan.ts';
import { planOf } from './realise.ts';
import type { Patch } from '../geometry/layout.ts';
import type { Place } from '../text/place.ts';

export interface Assembled {
  /** Of the base patches: corners that are flipped lie over them. */
  readonly map: SeamMap;
  readonly shapes: readonly Coloured[];
  /** The patch of the layout that a shape of the map is. */
  readonly names: readonly number[];
  /** What a shape looks like at a glance, and parts closely (`canonical.ts`). */
  readonly kinds: readonly number[];
  readonly read: (shapes: readonly number[]) => Reading;
  readonly plan: SewingPlan;
}

export interface AssemblyOptions {
  /** `across`: rows run from left to right wherever they can, as a setting is sewn; parts that look alike need not be sewn alike. */
  readonly rows: 'longest' | 'across';
  /** For each patch what it lies in, outermost first, by number: kept whole where that costs nothing. Its nested blocks unless given. */
  readonly nests?: readonly (readonly number[])[];
}

/** A patch, or a part of a quilt, as far as its sewing goes. */
export interface Sewable extends Pick<Patch, 'outline' | 'arcs' | 'role' | 'within'> {
  readonly fabric: { readonly name: string };
}

/** Undefined when the patches do not tile an area, when there are none, and when drafting is given up (`draft.ts`). */
export function assemble(patches: readonly Sewable[], options: AssemblyOptions = { rows: 'longest' }): Assembled | undefined {
  const { names, overlays } = overlaysOf(patches);
  const bases = names.flatMap((name) => patches[name] ?? []);
  const map = bases.length === 0 ? undefined : mapOf(bases);
  if (!map || !isOnePiece(map)) return undefined;
  const shapes = bases.map(coloured);
  const over = shapes.map((): Coloured[] => []);
  for (const overlay of overlays) {
    const corner = patches[overlay.patch];
    const [base] = overlay.over;
    if (corner && base !== undefined) over[base]?.push(coloured(corner));
  }
  const dressed = shapes.map((shape, i) => ({ ...shape, over: over[i] ?? [] }));
  const kinds = kindsOf(dressed);
  const read = reader(map, dressed, kinds);
  const alike = options.rows === 'across' ? { kinds } : { kinds, read };
  const drafted = draftOf(map, { ...alike, nests: options.nests ?? nestsOf(bases), rows: options.rows });
  return drafted && { map, shapes: dressed, names, kinds, read, plan: planOf(map, drafted, { names, overlays }) };
}

function coloured({ outline, arcs, fabric }: Sewable): Coloured {
  return { outline, ...(arcs ? { arcs } : {}), fabric: fabric.name, over: [] };
}

/** True when every patch hangs together with the first. */
function isOnePiece(map: SeamMap): boolean {
  const reached = new Set([0]);
  for (const shape of reached) {
    for (const piece of map.around[shape] ?? []) {
      const { left, right } = map.pieces[piece] ?? { left: -1, right: -1 };
      for (const other of [left, right]) if (other >= 0) reached.add(other);
    }
  }
  return reached.size === map.around.length;
}

/** Nested blocks by number: patches of one copy stand together, so a new number begins wherever the way in changes. */
function nestsOf(patches: readonly Sewable[]): number[][] {
  let count = 0;
  let [way, numbers]: [readonly Place[], readonly number[]] = [[], []];
  return patches.map(({ within }) => {
    const next = within ?? [];
    const same = next.findIndex((place, i) => way[i] !== place || numbers[i] === undefined);
    const kept = same < 0 ? next.length : same;
    numbers = next.map((_, i) => (i < kept ? (numbers[i] ?? 0) : (count += 1)));
    way = next;
    return [...numbers];
  });
}
