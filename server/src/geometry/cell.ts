/**
 * A cell in its room: fabrics, seams, nested blocks, turns. `|` and `-` divide the room; `/` and `\` run from corner to corner of
 * it, so each side is laid in the whole room and then cut along the seam.
 */
import { ONE, ZERO, add, div, equals, mul, sign, sum } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import type { Polygon } from '../exact/polygon.ts';
import { compose, scale, translate } from '../exact/transform.ts';
import type { Finding } from '../model/finding.ts';
import type { BlockInstance, BlockUse, CellSpec, FabricUse } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';
import { cutAlong } from './clip.ts';
import type { BlockLayout, Patch } from './layout.ts';
import { AT_REST, chain, cornersOf, movePatch, plainly, turnBox } from './move.ts';
import type { Room, Size } from './move.ts';

/** Patches in the coordinates of what they stand in, and what is wrong with them. */
export interface Laid {
  readonly patches: readonly Patch[];
  readonly findings: readonly Finding[];
}

export const NOTHING: Laid = { patches: [], findings: [] };

export interface CellContext {
  /** Lays out a nested block; in a room for one whose lengths take up what is left. */
  readonly nest: (block: BlockInstance, room?: Size) => BlockLayout;
  /** The room is in inches (else in the units of a block without a size). */
  readonly inInches: boolean;
}

type SplitCell = Extract<CellSpec, { kind: 'split' }>;
type TurnedCell = Extract<CellSpec, { kind: 'turned' }>;

export function layCell(context: CellContext, cell: CellSpec, room: Room): Laid {
  switch (cell.kind) {
    case 'fabric':
      return { patches: [fabricPatch(cell, cornersOf(room))], findings: [] };
    case 'block':
      return fitBlock(context, cell, room);
    case 'split':
      return cell.seam === '/' || cell.seam === '\\' ? layTriangles(context, cell, room) : layParts(context, cell, room);
    case 'turned':
      return layTurned(context, cell, room);
    case 'goes_on':
    case 'bad':
      return NOTHING;
  }
}

/**
 * A block turned in its own box and then scaled evenly to the room. One of another proportion is a finding, and is stretched to
 * the room so that no gap is reported as well.
 */
export function fitBlock(context: CellContext, use: BlockUse, room: Room): Laid {
  const layout = context.nest(use.block, turnBox(use.turns, room));
  const turned = turnBox(use.turns, layout);
  const [across, down] = [div(room.width, turned.width), div(room.height, turned.height)];
  const even = equals(across, down);
  const fit = plainly(compose(translate(room.x, room.y), scale(across, down)), across);
  const motion = chain(fit, turned.motion);
  return {
    patches: layout.patches.map((patch) => movePatch(patch, motion, use.place)),
    findings: even ? layout.findings : [...layout.findings, doesNotFit(context, use, turned, room)],
  };
}

/**
 * A patch of a fabric. The grain line of a directional fabric is always known: it is turned with the block the patch stands in,
 * and by what the cell says (`stripe@90` turns the print).
 */
export function fabricPatch(use: Pick<FabricUse, 'fabric' | 'turns' | 'place'>, outline: Polygon): Patch {
  const { fabric, place } = use;
  const patch: Patch = { fabric, outline, role: 'patch', place };
  if (!fabric.directional) return patch;
  return movePatch({ ...patch, grain: ZERO }, { ...AT_REST, degrees: turnBox(use.turns ?? [], UNIT).motion.degrees });
}

const UNIT: Size = { width: ONE, height: ONE };

export function together(parts: readonly Laid[]): Laid {
  return { patches: parts.flatMap((part) => part.patches), findings: parts.flatMap((part) => part.findings) };
}

export function doesNotFit(context: CellContext, use: BlockUse, found: Size, room: Size): Finding {
  return {
    rule: 'does-not-fit',
    place: use.place,
    name: use.block.name,
    found: { width: found.width, height: found.height },
    room: { width: room.width, height: room.height },
    isLength: context.inInches && use.block.size !== undefined,
    related: use.block.definition.place,
  };
}

/** Parts beside or above each other, by their weights. */
function layParts(context: CellContext, cell: SplitCell, room: Room): Laid {
  const bad = cell.parts.find((part) => sign(part.weight) <= 0);
  const weights = cell.parts.map((part) => (bad ? ONE : part.weight));
  const whole = sum(weights);
  const beside = cell.seam === '|';
  let start = beside ? room.x : room.y;
  const parts = cell.parts.map((part, i) => {
    const share = mul(beside ? room.width : room.height, div(weights[i] ?? ONE, whole));
    const inner = beside ? { ...room, x: start, width: share } : { ...room, y: start, height: share };
    start = add(start, share);
    return layCell(context, part.cell, inner);
  });
  return together(bad ? [...parts, { patches: [], findings: [noWeight(bad.cell.place)] }] : parts);
}

function noWeight(place: Place): Finding {
  return { rule: 'wrong-argument', place, problem: 'a weight is more than zero' };
}

/** Two triangles, or what the corner-to-corner seam leaves of what stands on either side of it. */
function layTriangles(context: CellContext, cell: SplitCell, room: Room): Laid {
  const [topLeft, topRight, bottomRight, bottomLeft] = cornersOf(room);
  const [first, second, ...more] = cell.parts;
  if (!topLeft || !topRight || !bottomRight || !bottomLeft || !first || !second) return NOTHING;
  const [from, to] = cell.seam === '/' ? [topRight, bottomLeft] : [topLeft, bottomRight];
  const [leftEnd, rightEnd] = cell.seam === '/' ? [topLeft, bottomRight] : [bottomLeft, topRight];
  const left = laySide(context, first.cell, room, [from, to, leftEnd]);
  const right = laySide(context, second.cell, room, [to, from, rightEnd]);
  return together([left, right, ...(more.length > 0 ? [{ patches: [], findings: [tooManySides(cell)] }] : [])]);
}

/** One side of a seam from corner to corner: the triangle from, to, corner (clockwise) of the room. */
function laySide(context: CellContext, cell: CellSpec, room: Room, triangle: readonly [Point, Point, Point]): Laid {
  if (cell.kind === 'fabric') return { patches: [fabricPatch(cell, triangle)], findings: [] };
  return cutLaid(layCell(context, cell, room), triangle[0], triangle[1]);
}

/** Keeps what is to the right of from → to. A cell of which nothing is left is a finding; of a nested block parts may go. */
function cutLaid(laid: Laid, from: Point, to: Point): Laid {
  const patches = laid.patches.flatMap((patch) => cutPatch(patch, from, to));
  const left = new Set(patches.map(outerPlace));
  const gone = new Set(laid.patches.map(outerPlace).filter((place) => !left.has(place)));
  const findings = [...gone].map((place): Finding => ({ rule: 'empty-patch', place, why: 'the seam across leaves nothing of this' }));
  return { patches, findings: [...laid.findings, ...bentCuts(laid.patches, patches), ...findings] };
}

/** What is left of a patch beside a line. An arc is kept only where the whole patch is. */
function cutPatch(patch: Patch, from: Point, to: Point): Patch[] {
  const parts = cutAlong(patch.outline, from, to);
  if (parts[0] === patch.outline) return [patch];
  return parts.map((outline) => withoutArcs({ ...patch, outline }));
}

function withoutArcs(patch: Patch): Patch {
  const copy: { -readonly [K in keyof Patch]: Patch[K] } = { ...patch };
  delete copy.arcs;
  return copy;
}

function bentCuts(before: readonly Patch[], after: readonly Patch[]): Finding[] {
  const bent = (patches: readonly Patch[]): readonly Patch[] => patches.filter((patch) => patch.arcs);
  const kept = new Set(bent(after));
  const cut = bent(before).find((patch) => !kept.has(patch) && after.some((part) => part.place === patch.place));
  return cut ? [{ rule: 'wrong-argument', place: outerPlace(cut), problem: 'a seam from corner to corner cannot cut a patch with a curved edge' }] : [];
}

/** Where a patch came from in the text of the block that is being laid. */
export function outerPlace(patch: Patch): Place {
  return patch.within?.[0] ?? patch.place;
}

function tooManySides(cell: SplitCell): Finding {
  return { rule: 'wrong-argument', place: cell.place, problem: 'a seam from corner to corner has two sides' };
}

/** The content of a group, laid in the room as it is before the turn. */
function layTurned(context: CellContext, cell: TurnedCell, room: Room): Laid {
  const upright = turnBox([...cell.turns].reverse(), room);
  const inner = layCell(context, cell.inner, { x: ZERO, y: ZERO, width: upright.width, height: upright.height });
  const motion = chain(plainly(translate(room.x, room.y)), turnBox(cell.turns, upright).motion);
  return { patches: inner.patches.map((patch) => movePatch(patch, motion)), findings: inner.findings };
}
