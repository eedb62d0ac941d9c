/**
 * How something is sewn, as a picture: its parts drawn apart, and across every gap an arrow to the side that the seam is pressed to
 * (two for a seam that is pressed open). What lies ready stays whole. Parts of parts move with them.
 */
import { toNumber } from '../exact/number.ts';
import type { Polygon } from '../exact/polygon.ts';
import type { BlockLayout, QuiltLayout } from '../geometry/layout.ts';
import type { Assembly, Seam, Stretch } from '../piecing/plan.ts';
import type { PressedSeams, PressSide } from '../piecing/pressing.ts';
import type { Setting } from '../piecing/setting.ts';
import { partsOfQuilt, sceneOfBlock } from './build.ts';
import type { Scene, SceneShape, SceneUse } from './scene.ts';

type Drawn = SceneShape | SceneUse;

export interface Exploding {
  readonly title: string;
  readonly part: Assembly;
  readonly sides: PressedSeams['sides'];
  /** True for parts that lie ready. */
  readonly isReady: (part: Assembly) => boolean;
  /** How far parts move from the middle of what they are sewn into, of the way between their middles; 0 leaves them where they lie. */
  readonly apart?: number;
}

/** A part of a block. */
export function explodedBlock(layout: BlockLayout, exploding: Exploding): Scene {
  const { items, sources } = sceneOfBlock(layout);
  return exploded({ ...exploding, drawn: items.map((item) => [item]), boxes: layout.patches.map(({ outline }) => boxOf(outline)), blocks: [], sources });
}

/** A part of the setting, by the numbers of its parts. */
export function explodedSetting(layout: QuiltLayout, { parts }: Setting, exploding: Exploding): Scene {
  const { items, scene } = partsOfQuilt(layout);
  return exploded({ ...exploding, drawn: items, boxes: parts.map(({ outline }) => boxOf(outline)), blocks: scene.blocks, sources: scene.sources });
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** The sum of the points of its area, and the area: their quotient is the middle of what is in the box. */
  readonly moment: Shift;
  readonly area: number;
}

interface Picture extends Exploding, Pick<Scene, 'blocks' | 'sources'> {
  /** What each leaf looks like. */
  readonly drawn: readonly (readonly Drawn[])[];
  readonly boxes: readonly Box[];
}

type Shift = readonly [x: number, y: number];

/** Unless said. */
const APART = 0.16;

function exploded(picture: Picture): Scene {
  const shifts = new Map<number, Shift>();
  move(picture, picture.part, [0, 0], shifts);
  const leaves = [...shifts].sort(([a], [b]) => a - b);
  const room = joint(leaves.map(([leaf, shift]) => shiftedBox(picture.boxes[leaf] ?? NOTHING, shift)));
  const width = Math.max(room.right - room.left, room.bottom - room.top);
  const margin = width / 40;
  const origin: Shift = [margin - room.left, margin - room.top];
  const arrows = seamsIn(picture).flatMap((seam) => seamArrows(seam, picture, { shifts, origin, size: width / 22 }));
  return {
    width: room.right - room.left + 2 * margin,
    height: room.bottom - room.top + 2 * margin,
    title: picture.title,
    blocks: picture.blocks,
    items: [...leaves.flatMap(([leaf, shift]) => (picture.drawn[leaf] ?? []).map((item) => shifted(item, [shift[0] + origin[0], shift[1] + origin[1]]))), ...arrows],
    sources: picture.sources,
  };
}

/** Each part moves away from the middle of what it is sewn into. */
function move(picture: Picture, part: Assembly, by: Shift, shifts: Map<number, Shift>): void {
  if (part.kind === 'patch') shifts.set(part.patch, by);
  else if (part.kind === 'flip') {
    move(picture, part.part, by, shifts);
    shifts.set(part.patch, by);
  } else if (part.kind === 'finish') move(picture, part.part, by, shifts);
  else {
    const isWhole = picture.isReady(part) && part !== picture.part;
    const apart = isWhole ? 0 : (picture.apart ?? APART);
    const [x, y] = middle(boxIn(picture, part));
    for (const each of part.parts) {
      const [ownX, ownY] = middle(boxIn(picture, each));
      move({ ...picture, ...(isWhole ? { isReady: () => true } : {}) }, each, [by[0] + apart * (ownX - x), by[1] + apart * (ownY - y)], shifts);
    }
  }
}

function boxIn({ boxes }: Picture, part: Assembly): Box {
  return joint(leavesOf(part).map((leaf) => boxes[leaf] ?? NOTHING));
}

function leavesOf(part: Assembly): readonly number[] {
  if (part.kind === 'patch') return [part.patch];
  return part.kind === 'join' ? part.parts.flatMap(leavesOf) : leavesOf(part.part);
}

/** The seams that are sewn here: not those within what lies ready. */
function seamsIn({ part: whole, isReady }: Picture): readonly Seam[] {
  const inside = (part: Assembly): readonly Seam[] => {
    if (part.kind === 'patch' || (part !== whole && isReady(part))) return [];
    if (part.kind === 'join') return [...part.parts.flatMap(inside), ...part.seams];
    return inside(part.part);
  };
  return inside(whole);
}

interface Place {
  readonly shifts: ReadonlyMap<number, Shift>;
  readonly origin: Shift;
  readonly size: number;
}

function seamArrows({ number, stretches }: Seam, { sides }: Picture, place: Place): readonly SceneShape[] {
  return stretches.flatMap((stretch, i) => {
    const side = sides[number]?.[i];
    return side === undefined ? [] : arrowsAt(stretch, side, place);
  });
}

function arrowsAt({ from, to, left, right }: Stretch, side: PressSide, { shifts, origin, size }: Place): readonly SceneShape[] {
  const [dx, dy] = [toNumber(to.x) - toNumber(from.x), toNumber(to.y) - toNumber(from.y)];
  const length = Math.hypot(dx, dy);
  if (length === 0) return [];
  const moved = [left, right].map((patches) => shifts.get(patches[Math.floor(patches.length / 2)] ?? -1) ?? [0, 0]);
  const [a, b] = [moved[0] ?? [0, 0], moved[1] ?? [0, 0]];
  const x = (toNumber(from.x) + toNumber(to.x)) / 2 + ((a[0] ?? 0) + (b[0] ?? 0)) / 2 + origin[0];
  const y = (toNumber(from.y) + toNumber(to.y)) / 2 + ((a[1] ?? 0) + (b[1] ?? 0)) / 2 + origin[1];
  const reach = Math.min(size, length / 2);
  // To the right of one who walks along it; y runs down.
  const across: Shift = [(-dy / length) * reach, (dx / length) * reach];
  const back: Shift = [-across[0], -across[1]];
  if (side === 'open') return [arrow([x, y], across), arrow([x, y], back)];
  return [arrow([x, y], side === 'right' ? across : back)];
}

const ARROW = '#c1121f';

/** A triangle with its point in the direction given. */
function arrow([x, y]: Shift, [dx, dy]: Shift): SceneShape {
  return { kind: 'shape', points: [x + dx / 2, y + dy / 2, x - dy / 4, y + dx / 4, x + dy / 4, y - dx / 4], fill: ARROW, fabric: '', source: -1, over: FRONT };
}

/** In front of every patch. */
const FRONT = 1000;

function shifted(item: Drawn, [x, y]: Shift): Drawn {
  if (item.kind === 'shape') return { ...item, points: item.points.map((value, i) => value + (i % 2 === 0 ? x : y)) };
  const [a, b, c, d, e, f] = item.matrix;
  return { ...item, matrix: [a, b, c, d, e + x, f + y] };
}

const NOTHING: Box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity, moment: [0, 0], area: 0 };

function boxOf(outline: Polygon): Box {
  const points = outline.map(({ x, y }): Shift => [toNumber(x), toNumber(y)]);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const twice = points.map(([x, y], i) => cornerCross([x, y], points[(i + 1) % points.length] ?? [x, y]));
  const sumOf = (axis: 0 | 1): number => points.reduce((sum, point, i) => sum + ((point[axis] + (points[(i + 1) % points.length] ?? point)[axis]) * (twice[i] ?? 0)) / 6, 0);
  const area = twice.reduce((sum, each) => sum + each / 2, 0);
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys), moment: [sumOf(0), sumOf(1)], area };
}

function cornerCross([x, y]: Shift, [nextX, nextY]: Shift): number {
  return x * nextY - nextX * y;
}

function joint(boxes: readonly Box[]): Box {
  return boxes.reduce<Box>((all, box) => ({
    left: Math.min(all.left, box.left),
    top: Math.min(all.top, box.top),
    right: Math.max(all.right, box.right),
    bottom: Math.max(all.bottom, box.bottom),
    moment: [all.moment[0] + box.moment[0], all.moment[1] + box.moment[1]],
    area: all.area + box.area,
  }), NOTHING);
}

function shiftedBox(box: Box, [x, y]: Shift): Box {
  const { left, top, right, bottom } = box;
  return { ...box, left: left + x, top: top + y, right: right + x, bottom: bottom + y };
}

function middle({ moment: [x, y], area }: Box): Shift {
  return area === 0 ? [0, 0] : [x / area, y / area];
}
