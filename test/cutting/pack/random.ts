/** Quilts at random, the same for the same seed. */
import type { Cloth, Demand } from '../../../server/src/cutting/pack/types.ts';

export type Random = (below: number) => number;

/** xorshift32 (Marsaglia, 2003). */
export function randomOf(seed: number): Random {
  let state = (seed * 2654435761) >>> 0 || 1;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state % below;
  };
}

/** A few kinds, in steps so coarse that all patterns can be listed. */
export function smallCase(random: Random): { readonly demand: readonly Demand[]; readonly width: number } {
  const width = 16 + random(16);
  const kinds = 2 + random(4);
  const demand = Array.from({ length: kinds }, () => ({ width: 3 + random(9), height: 2 + random(9), count: 1 + random(random(2) ? 5 : 14), mayTurn: random(3) > 0 }));
  return { demand, width };
}

/** Sheets so small that a few of them are needed. */
export function sheetCase(random: Random): { readonly demand: readonly Demand[]; readonly cloth: Extract<Cloth, { readonly kind: 'sheets' }> } {
  const [width, height] = [10 + random(8), 8 + random(8)];
  const demand = Array.from({ length: 1 + random(4) }, () => ({ width: 3 + random(7), height: 2 + random(6), count: 1 + random(6), mayTurn: random(3) > 0 }));
  return { demand, cloth: { kind: 'sheets', width, height, ...(random(2) ? { eitherWay: true as const } : {}) } };
}

/**
 * One fabric of a quilt in eighths of an inch, 40" or 42" wide: units of blocks (1 1/2" to 8 1/2" by halves, some by eighths for
 * triangles), sashing, a few setting triangles, borders and binding as long strips.
 */
export function quiltCase(random: Random): { readonly demand: readonly Demand[]; readonly width: number } {
  const size = (): number => (random(4) === 0 ? 12 + random(70) : 12 + 4 * random(15));
  const kinds = 3 + random(28);
  const directional = random(5) === 0;
  const demand = Array.from({ length: kinds }, () => {
    const [width, height] = [size(), random(2) ? size() : 0];
    return { width, height: height || width, count: 4 * (1 + random(random(3) ? 12 : 40)), mayTurn: !directional };
  });
  if (random(2)) demand.push({ width: 20, height: 68 + 8 * random(10), count: 12 + random(60), mayTurn: !directional });
  if (random(3) === 0) demand.push({ width: 100 + random(60), height: 0, count: 2 + random(8), mayTurn: false });
  if (random(2)) demand.push({ width: random(2) ? 320 : 336, height: 20 + 4 * random(10), count: 4 + random(8), mayTurn: false });
  return { demand: demand.map((each) => ({ ...each, height: each.height || each.width })), width: random(2) && demand.every((each) => each.width <= 320) ? 320 : 336 };
}
