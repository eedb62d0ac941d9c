/**
 * The quilt as it is set: blocks and what stands between and around them as parts, sewn in rows (level where they can be, on point
 * along the diagonals) and borders in their order. A block counts as one part, however it is made.
 */
import { ZERO, add, atMost, equals, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import { backwards, boundingBox } from '../exact/polygon.ts';
import type { Box, Polygon } from '../exact/polygon.ts';
import { applyToAll, determinantSign } from '../exact/transform.ts';
import type { BlockLayout, BorderLayout, Patch, Placement, QuiltLayout } from '../geometry/layout.ts';
import { assemble } from './assembly.ts';
import type { Assembled } from './assembly.ts';
import { patchesIn } from './plan.ts';
import type { Assembly, Seam } from './plan.ts';

export interface SettingPart {
  readonly outline: Polygon;
  /** One of the two. */
  readonly placement?: Placement;
  readonly patch?: Patch;
}

export interface Setting {
  /** The parts that the plan's numbers name: placements first, then patches, in the order of the layout. */
  readonly parts: readonly SettingPart[];
  /** Undefined when the parts do not tile the quilt (then the layout has findings). */
  readonly assembled: Assembled | undefined;
}

export function settingOf(layout: QuiltLayout): Setting {
  const placed = layout.placements.map((placement): SettingPart => ({ outline: placement.clip ?? placedOutline(placement), placement }));
  const parts = [...placed, ...layout.patches.map((patch): SettingPart => ({ outline: patch.outline, patch }))];
  return { parts, assembled: assemble(parts.map(sewable), { rows: 'across', nests: nestsOf(layout, parts) }) };
}

/** For each part the borders it lies within, the outermost first: a border is sewn on by itself, all around. */
function nestsOf({ width, height, borders }: QuiltLayout, parts: readonly SettingPart[]): number[][] {
  let room: Box = { left: ZERO, top: ZERO, right: width, bottom: height };
  const rooms = borders.toReversed().map((border) => (room = inside(room, border)));
  return parts.map(({ outline }) => {
    const box = rooms.length === 0 ? undefined : boundingBox(outline);
    return rooms.flatMap((each, i) => (box && holds(each, box) ? [i] : []));
  });
}

function inside(room: Box, { strips }: BorderLayout): Box {
  const wide = (side: BorderLayout['strips'][number]['side']): Exact => strips.find((strip) => strip.side === side)?.width ?? ZERO;
  return {
    left: add(room.left, wide('left')),
    top: add(room.top, wide('top')),
    right: sub(room.right, wide('right')),
    bottom: sub(room.bottom, wide('bottom')),
  };
}

function holds(room: Box, box: Box): boolean {
  return atMost(room.left, box.left) && atMost(room.top, box.top) && atMost(box.right, room.right) && atMost(box.bottom, room.bottom);
}

/**
 * The rows of the setting inside its borders, in the order they are joined, each as the numbers of its parts from end to end (all of
 * its parts where it is pieced more deeply). None when there is no plan.
 */
export function rowsOf(setting: Setting): readonly (readonly number[])[] {
  const centre = centreOf(setting);
  if (!centre) return [];
  return centre.kind === 'join' && !centre.seams.every(isUpright) ? centre.parts.map(patchesIn) : [patchesIn(centre)];
}

/** What the borders are sewn to. */
export function centreOf({ assembled, parts }: Setting): Assembly | undefined {
  const isBorder = (part: number): boolean => parts[part]?.placement?.part === 'border' || ['border', 'border_corner'].includes(parts[part]?.patch?.role ?? '');
  for (let node = assembled?.plan.assembly; node !== undefined; ) {
    const inner: readonly Assembly[] = node.kind === 'join' ? node.parts.filter((part) => !patchesIn(part).every(isBorder)) : node.kind === 'patch' ? [] : [node.part];
    const isAround = node.kind === 'finish' || (node.kind === 'join' && inner.length < node.parts.length);
    if (!isAround || inner.length !== 1) return node;
    [node] = inner;
  }
  return undefined;
}

function isUpright({ stretches }: Seam): boolean {
  return stretches.every(({ from, to }) => equals(from.x, to.x));
}

/** The block's own corners, clockwise from its upper left one. */
export function blockOutline({ width, height }: Pick<BlockLayout, 'width' | 'height'>): Polygon {
  const at = (x: Exact, y: Exact): Point => ({ x, y });
  return [at(ZERO, ZERO), at(width, ZERO), at(width, height), at(ZERO, height)];
}

function placedOutline({ block, transform }: Placement): Polygon {
  const corners = applyToAll(blockOutline(block), transform);
  return determinantSign(transform) < 0 ? backwards(corners) : corners;
}

function sewable({ outline, placement, patch }: SettingPart): Parameters<typeof assemble>[0][number] {
  return { outline, role: 'patch', fabric: { name: placement?.block.key ?? patch?.fabric.name ?? '' }, ...(patch?.arcs ? { arcs: patch.arcs } : {}) };
}
