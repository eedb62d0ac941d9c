/**
 * The printed shapes of a cutting plan: one template for all its `template` pieces of one shape, whatever their fabric and block, some
 * with the template turned over. Names and counts are those of the cut list. Shapes are in inches, the straight grain of the block
 * upright unless the author fixed it.
 */
import { toNumber } from '../exact/number.ts';
import type { Patch, QuiltLayout } from '../geometry/layout.ts';
import type { Fabric, Rules } from '../model/pattern.ts';
import { pieceLabel } from './labels.ts';
import type { CuttingPlan, Piece } from './plan.ts';
import { marksOfPatch, type SideMark } from './template-marks.ts';
import { cutOutline, planeShape, type PlaneShape } from './template-outline.ts';
import { poseOf, type Pose } from './template-pose.ts';

export interface Template {
  /** The letters of its pieces in the cut list: `C`, `C and F`. */
  readonly letters: readonly string[];
  /** Finished: the seam line. */
  readonly shape: PlaneShape;
  readonly cut: PlaneShape;
  /** Degrees clockwise from upright. */
  readonly grain: number;
  /** Where seams meet its sides, and where the middle of a curve is: shared by both partners of the seam. */
  readonly marks: readonly SideMark[];
  readonly uses: readonly TemplateUse[];
}

export interface TemplateUse {
  /** Into `CuttingPlan.pieces`. */
  readonly piece: number;
  readonly fabric: Fabric;
  readonly for: string;
  readonly pieces: number;
  /** All of them are cut with the template turned over. */
  readonly isTurnedOver: boolean;
}

/** In the order of the plan's pieces. */
export function templatesOf(layout: QuiltLayout, plan: Pick<CuttingPlan, 'pieces'>, { seam }: Pick<Rules, 'seam'>): readonly Template[] {
  const groups = new Map<string, Posed[]>();
  for (const [index, piece] of plan.pieces.entries()) {
    if (piece.shape !== 'template') continue;
    const posed = { index, piece, pose: poseOfPatch(piece) };
    const group = groups.get(posed.pose.key);
    if (group) group.push(posed);
    else groups.set(posed.pose.key, [posed]);
  }
  if (groups.size === 0) return [];
  const marks = marksIn(layout, groups);
  return [...groups].map(([key, group]) => templateOf(group, marks.get(key) ?? [], toNumber(seam)));
}

interface Posed {
  readonly index: number;
  readonly piece: Piece;
  readonly pose: Pose;
}

function templateOf(group: readonly Posed[], marks: readonly CanonicalMark[], seam: number): Template {
  const [first] = group;
  if (!first) throw new RangeError('a template of no piece');
  const { piece, pose } = first;
  const shape = planeShape({ outline: piece.outline, ...(piece.arcs ? { arcs: piece.arcs } : {}) });
  return {
    letters: group.map(({ index }) => pieceLabel(index)),
    shape,
    cut: cutOutline(shape, seam),
    grain: piece.grain ? toNumber(piece.grain) : 0,
    marks: marksOn(pose, marks, piece),
    uses: group.map(({ index, piece: each, pose: lies }) => ({ piece: index, fabric: each.fabric, for: each.for, pieces: each.pieces, isTurnedOver: lies.isTurnedOver !== pose.isTurnedOver })),
  };
}

function poseOfPatch({ outline, arcs, grain, fabric }: Pick<Patch, 'outline' | 'arcs' | 'grain' | 'fabric'>): Pose {
  return poseOf({ outline, ...(arcs ? { arcs } : {}), ...(grain ? { grain } : {}), ...(fabric.directional ? { isDirectional: true } : {}) });
}

/** On the side by its place in the order of the pose; how far along, from 0 to 1. */
interface CanonicalMark {
  readonly side: number;
  readonly along: number;
}

/** For each shape, the marks that all its patches share. */
function marksIn(layout: QuiltLayout, groups: ReadonlyMap<string, unknown>): ReadonlyMap<string, readonly CanonicalMark[]> {
  const found = new Map<string, readonly CanonicalMark[]>();
  for (const patches of [...layout.blocks.map((block) => block.layout.patches), layout.patches]) {
    patches.forEach((patch, index) => {
      if (patch.role === 'flipped_corner') return;
      const pose = poseOfPatch(patch);
      if (!groups.has(pose.key)) return;
      const marks = canonical(pose, marksOfPatch(patches, index));
      const known = found.get(pose.key);
      found.set(pose.key, known ? known.filter((mark) => marks.some((other) => isSame(mark, other))) : marks);
    });
  }
  return found;
}

function isSame(one: CanonicalMark, other: CanonicalMark): boolean {
  return one.side === other.side && Math.abs(one.along - other.along) < 1e-6;
}

function canonical({ sides, isBackwards }: Pose, marks: readonly SideMark[]): readonly CanonicalMark[] {
  return marks.map(({ side, along }) => ({ side: sides.indexOf(side), along: isBackwards ? 1 - along : along }));
}

/** Back onto a piece's own sides. */
function marksOn({ sides, isBackwards }: Pose, marks: readonly CanonicalMark[], { outline }: Piece): readonly SideMark[] {
  return marks.flatMap(({ side, along }) => {
    const own = sides[side];
    return own === undefined || own >= outline.length ? [] : [{ side: own, along: isBackwards ? 1 - along : along }];
  });
}
