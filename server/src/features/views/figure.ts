/**
 * Figure and ground: the darkest value there is makes the figure, the rest is the ground; patches of the figure that share a seam,
 * however short, are one shape. Each distinct block is looked at once; in the quilt only what lies on the rims of blocks is compared.
 */
import { determinantSign, applyTo } from '../../exact/transform.ts';
import { edgesOf, type Edge } from '../../exact/polygon.ts';
import type { BlockLayout, Placement, QuiltLayout } from '../../geometry/layout.ts';
import { neighboursAlong, type Pair } from '../../geometry/neighbours.ts';
import { patchesIn } from '../../geometry/walk.ts';
import type { Fabric } from '../../model/pattern.ts';
import { valueOf, type ColourValue } from '../../text/colour.ts';
import { seamsInBlock, type BlockSeams } from './seams.ts';

/** As the author said, else by the colour. */
export function valueOfFabric({ value, colour }: Pick<Fabric, 'value' | 'colour'>): ColourValue {
  return value ?? valueOf(colour);
}

/** The value of the figure; undefined where all is of one value. */
export function figureValue(fabrics: readonly Fabric[]): ColourValue | undefined {
  const values = new Set(fabrics.map(valueOfFabric));
  return values.size < 2 ? undefined : values.has('dark') ? 'dark' : 'medium';
}

/** How many shapes the patches of a value make in a block. */
export function shapesInBlock(layout: BlockLayout, value: ColourValue): number {
  return componentsOf(layout, value).count;
}

/** How many they make in the whole quilt, borders included. */
export function shapesInQuilt(layout: QuiltLayout, value: ColourValue): number {
  const edges: (Edge & { readonly of: number })[] = [];
  let count = 0;
  for (const placement of layout.placements) {
    if (placement.clip) {
      for (const { patch, outline } of patchesIn(placement)) {
        if (valueOfFabric(patch.fabric) === value) edges.push(...edgesOf(outline).map((edge) => ({ ...edge, of: count })));
        if (valueOfFabric(patch.fabric) === value) count += 1;
      }
      continue;
    }
    const own = componentsOf(placement.block, value);
    edges.push(...own.rim.map(({ of, from, to }) => ({ of: of + count, ...moved({ from, to }, placement) })));
    count += own.count;
  }
  for (const patch of layout.patches) {
    if (valueOfFabric(patch.fabric) !== value) continue;
    edges.push(...edgesOf(patch.outline).map((edge) => ({ ...edge, of: count })));
    count += 1;
  }
  return joined(count, neighboursAlong(edges)).count;
}

interface Components {
  readonly count: number;
  /** Each stretch of the block's rim that a component has, walked so that it lies to the right. */
  readonly rim: readonly (Edge & { readonly of: number })[];
}

const known = new WeakMap<BlockSeams, Map<ColourValue, Components>>();

function componentsOf(layout: BlockLayout, value: ColourValue): Components {
  const seams = seamsInBlock(layout);
  const byValue = known.get(seams) ?? new Map<ColourValue, Components>();
  known.set(seams, byValue);
  const found = byValue.get(value) ?? findComponents(layout, seams, value);
  byValue.set(value, found);
  return found;
}

function findComponents({ patches }: BlockLayout, { seen, seams, rim }: BlockSeams, value: ColourValue): Components {
  const isFigure = seen.map(({ patch }) => patches[patch] !== undefined && valueOfFabric(patches[patch].fabric) === value);
  const pairs = seams.map(({ sides }) => sides).filter(([a, b]) => isFigure[a] === true && isFigure[b] === true);
  const { numbers } = joined(seen.length, pairs);
  const figure = new Map([...new Set(numbers.filter((_, index) => isFigure[index]))].map((number, index) => [number, index]));
  return {
    count: figure.size,
    rim: rim.flatMap(({ side, from, to }) => {
      const of = isFigure[side] === true ? figure.get(numbers[side] ?? -1) : undefined;
      return of === undefined ? [] : [{ of, from, to }];
    }),
  };
}

/** A mirrored block runs the other way round. */
function moved({ from, to }: Edge, { transform }: Placement): Edge {
  const [a, b] = [applyTo(from, transform), applyTo(to, transform)];
  return determinantSign(transform) < 0 ? { from: b, to: a } : { from: a, to: b };
}

/** Numbers in groups: for each the least number of its group, and how many groups there are. */
function joined(count: number, pairs: readonly Pair[]): { readonly numbers: readonly number[]; readonly count: number } {
  const heads = Array.from({ length: count }, (_, index) => index);
  const headOf = (index: number): number => {
    let head = index;
    while (heads[head] !== head) head = heads[head] ?? head;
    for (let at = index; heads[at] !== head; ) [heads[at], at] = [head, heads[at] ?? head];
    return head;
  };
  for (const [a, b] of pairs) {
    const [one, other] = [headOf(a), headOf(b)];
    heads[Math.max(one, other)] = Math.min(one, other);
  }
  const numbers = heads.map((_, index) => headOf(index));
  return { numbers, count: new Set(numbers).size };
}
