/** Other people's clippers, in doubles and in rounded integers, as a second opinion on areas. */
import { createRequire } from 'node:module';
import type { MainModule, Paths64 } from 'clipper2-wasm/dist/clipper2z.d.ts';
import polygonClipping from 'polygon-clipping';
import type { Polygon as Ring } from 'polygon-clipping';
import { toNumber } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';

export type Corners = readonly Point[];

/** Areas by patch or pair of patches; what is below `NOTHING` is left out. */
export interface Opinion {
  readonly gap: number;
  readonly overlaps: ReadonlyMap<string, number>;
  readonly outside: ReadonlyMap<string, number>;
}

/** Far above the oracles' rounding, far below the area of anything a thousandth of an inch off. */
export const NOTHING = 1e-7;

const UNITS = 1e8;

type Factory = () => Promise<MainModule>;
const loaded = createRequire(import.meta.url)('clipper2-wasm') as Factory | { readonly default: Factory };
const clipper = await (typeof loaded === 'function' ? loaded : loaded.default)();

/** Clipper2 in WebAssembly, on coordinates rounded to 10⁻⁸. */
export function askClipper(target: Corners, patches: readonly Corners[]): Opinion {
  const { NonZero } = clipper.FillRule;
  const all = patches.map((patch) => pathsOf([patch]));
  const [box, union] = [pathsOf([target]), pathsOf(patches)];
  const areaOf = (paths: Paths64): number => Math.abs(clipper.AreaPaths64(paths)) / UNITS ** 2;
  const overlaps = pairsWithTouchingBoxes(patches).flatMap(([a, b]) => {
    const [first, second] = [all[a], all[b]];
    return first && second ? named(`${a},${b}`, areaOf(clipper.Intersect64(first, second, NonZero))) : [];
  });
  const outside = all.flatMap((patch, index) => named(`${index}`, areaOf(clipper.Difference64(patch, box, NonZero))));
  return { gap: areaOf(clipper.Difference64(box, union, NonZero)), overlaps: new Map(overlaps), outside: new Map(outside) };
}

/** Clipper2's answer to the whole question: what the union of the patches and the target do not share, in area. */
export function clipperDifference(target: Corners, patches: readonly Corners[]): number {
  const { NonZero } = clipper.FillRule;
  return clipper.AreaPaths64(clipper.Xor64(pathsOf([target]), clipper.UnionSelf64(pathsOf(patches), NonZero), NonZero)) / UNITS ** 2;
}

/** polygon-clipping: the area of the target without a patch, or undefined where it gives up. */
export function askPolygonClipping(target: Corners, patches: readonly Corners[]): number | undefined {
  try {
    return polygonClipping.difference(ringOf(target), ...patches.map(ringOf)).reduce((sum, rings) => sum + areaOfRings(rings), 0);
  } catch {
    return undefined;
  }
}

function named(name: string, area: number): [string, number][] {
  return area < NOTHING ? [] : [[name, area]];
}

function pathsOf(patches: readonly Corners[]): Paths64 {
  const paths = new clipper.Paths64();
  for (const patch of patches) {
    const coordinates = patch.flatMap(({ x, y }) => [Math.round(toNumber(x) * UNITS), Math.round(toNumber(y) * UNITS)]);
    const path = clipper.MakePath64(coordinates);
    if (clipper.AreaPath64(path) < 0) clipper.ReversePath64(path);
    paths.push_back(path);
  }
  return paths;
}

function ringOf(corners: Corners): Ring {
  return [corners.map(({ x, y }): [number, number] => [toNumber(x), toNumber(y)])];
}

function areaOfRings(rings: Ring): number {
  const areas = rings.map((ring) => ring.reduce((sum, [x, y], i) => sum + x * (ring[(i + 1) % ring.length]?.[1] ?? y) - (ring[(i + 1) % ring.length]?.[0] ?? x) * y, 0));
  return areas.reduce((sum, area, i) => sum + (i === 0 ? Math.abs(area) : -Math.abs(area)), 0) / 2;
}

function pairsWithTouchingBoxes(patches: readonly Corners[]): [number, number][] {
  const boxes = patches.map((patch) => {
    const [xs, ys] = [patch.map(({ x }) => toNumber(x)), patch.map(({ y }) => toNumber(y))];
    return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
  });
  return boxes.flatMap((a, i) =>
    boxes.flatMap((b, j): [number, number][] => (j > i && a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom ? [[i, j]] : [])),
  );
}
