/**
 * A block in the plane, its upper left corner at 0,0. Laid out once for an instance and a size, however often it is set; a layout
 * carries the findings of all blocks nested in it.
 */
import { ONE, div, equals, key, mul, sign } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { scale } from '../exact/transform.ts';
import type { Finding } from '../model/finding.ts';
import type { BlockInstance, GridLine } from '../model/pattern.ts';
import { NOTHING } from './cell.ts';
import type { CellContext, Laid } from './cell.ts';
import { layCentre, naturalCentreSize } from './centre.ts';
import { MOST_PATCHES, countPatches, readable } from './count.ts';
import { coverageFindings } from './coverage.ts';
import { layFlipped } from './flipped.ts';
import { layGrid, naturalGridSize } from './grid.ts';
import type { BlockLayout, Patch } from './layout.ts';
import { movePatch, plainly } from './move.ts';
import type { Size } from './move.ts';
import { layPatches, naturalBox } from './patches.ts';
import { usesIn } from './uses.ts';

/** The block at its own size; one without a size, in the units of its grid or box. */
export function layoutBlock(instance: BlockInstance): BlockLayout {
  return remembered(instance, instance.key, () => layoutOf(instance, naturalSize(instance)));
}

/**
 * The block in a room given in inches. One with a size keeps it. One without is scaled evenly to the room, or, where its grid has
 * a `rest`, laid out in it; if neither fills the room it is answered in its own units, and the caller reports that.
 */
export function layoutBlockIn(instance: BlockInstance, room: Size): BlockLayout {
  if (instance.size) return layoutBlock(instance);
  const name = `${instance.key} ${key(room.width)} by ${key(room.height)}`;
  return remembered(instance, name, () => {
    if (takesUpRest(instance)) return { ...layoutOf(instance, room), key: name };
    const own = layoutBlock(instance);
    const factor = factorTo(own, room);
    return factor ? scaled(own, factor, name) : own;
  });
}

/** A block as sashing: what `rest` takes up is as long as the room asks, even where the block is drawn with a size. */
export function layoutSashIn(instance: BlockInstance, room: Size): BlockLayout {
  const { size, body } = instance;
  if (!size || body.kind !== 'grid' || !takesUpRest(instance)) return layoutBlockIn(instance, room);
  const width = body.columns?.some(isRest) ? room.width : size.width;
  const height = body.rows?.some(isRest) ? room.height : size.height;
  if (equals(width, size.width) && equals(height, size.height)) return layoutBlock(instance);
  const name = `${instance.key} ${key(width)} by ${key(height)}`;
  return remembered(instance, name, () => layoutOf({ ...instance, key: name, size: { ...size, width, height } }, { width, height }));
}

/** The size of a block, or what its grid, box or strips come to; 1 by 1 where nothing tells. */
export function naturalSize(instance: BlockInstance): Size {
  if (instance.size) return instance.size;
  const { body } = instance;
  const size = body.kind === 'grid' ? naturalGridSize(body) : body.kind === 'patches' ? naturalBox(body) : body.kind === 'centre' ? naturalCentreSize(body) : undefined;
  return size && isProper(size) ? size : { width: ONE, height: ONE };
}

/** True when one of the block's columns or rows takes up what is left. */
export function takesUpRest({ body }: BlockInstance): boolean {
  return body.kind === 'grid' && ((body.columns ?? []).some(isRest) || (body.rows ?? []).some(isRest));
}

function isRest(line: GridLine): boolean {
  return line.kind === 'rest';
}

const layouts = new WeakMap<BlockInstance, Map<string, BlockLayout>>();

function remembered(instance: BlockInstance, name: string, make: () => BlockLayout): BlockLayout {
  const known = layouts.get(instance) ?? new Map<string, BlockLayout>();
  layouts.set(instance, known);
  const layout = known.get(name) ?? make();
  known.set(name, layout);
  return layout;
}

function layoutOf(instance: BlockInstance, wanted: Size): BlockLayout {
  const limit = limitFindings(instance, wanted);
  const size = isProper(wanted) ? wanted : { width: ONE, height: ONE };
  const laid = limit.length > 0 ? { patches: [], findings: limit } : layWhole(instance, size);
  return {
    key: instance.key,
    instance,
    width: size.width,
    height: size.height,
    patches: laid.patches,
    findings: [...new Set(laid.findings)],
  };
}

/** Asked before any work is done; told of the innermost block that is too large. */
function limitFindings(instance: BlockInstance, size: Size): readonly Finding[] {
  const { place } = instance.definition;
  if (!isProper(size)) return [{ rule: 'wrong-argument', place: instance.size?.place ?? place, problem: 'a block is wider and higher than zero' }];
  const count = countPatches(instance);
  if (count <= MOST_PATCHES) return [];
  const inner = usesIn(instance).find((use) => countPatches(use.block) > MOST_PATCHES)?.block;
  if (inner) return layoutBlock(inner).findings;
  return [{ rule: 'too-large', place, found: `${readable(count)} patches`, limit: `${readable(MOST_PATCHES)} patches` }];
}

function layWhole(instance: BlockInstance, size: Size): Laid {
  const base = layBody(instance, size);
  const corners = layFlipped(instance.corners, { ...size, isLength: instance.size !== undefined });
  return { patches: [...base.patches, ...corners.patches], findings: [...base.findings, ...corners.findings] };
}

function layBody(instance: BlockInstance, size: Size): Laid {
  const { body } = instance;
  const context: CellContext = { nest, inInches: instance.size !== undefined };
  const said = instance.size ? { sizePlace: instance.size.place } : {};
  switch (body.kind) {
    case 'grid':
      return layGrid({ ...context, ...said }, body, size);
    case 'patches':
      return withCoverage(instance, layPatches(context, body, size), size);
    case 'centre':
      return layCentre({ ...context, ...(instance.size ? { wanted: instance.size } : {}) }, body);
    case 'empty':
      return withCoverage(instance, NOTHING, size);
  }
}

function withCoverage(instance: BlockInstance, laid: Laid, size: Size): Laid {
  return { patches: laid.patches, findings: [...laid.findings, ...coverageFindings(instance, laid.patches, size)] };
}

/** A nested block at its own size, or in its room when it has a `rest` to fill. */
export function nest(block: BlockInstance, room?: Size): BlockLayout {
  return room && !block.size && takesUpRest(block) ? layoutBlockIn(block, room) : layoutBlock(block);
}

function factorTo(own: Size, room: Size): Exact | undefined {
  const factor = div(room.width, own.width);
  return equals(mul(own.height, factor), room.height) ? factor : undefined;
}

function scaled(layout: BlockLayout, factor: Exact, name: string): BlockLayout {
  const motion = plainly(scale(factor), factor);
  return {
    ...layout,
    key: name,
    width: mul(layout.width, factor),
    height: mul(layout.height, factor),
    patches: layout.patches.map((patch: Patch) => movePatch(patch, motion)),
  };
}

function isProper(size: Size): boolean {
  return sign(size.width) > 0 && sign(size.height) > 0;
}
