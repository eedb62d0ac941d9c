/**
 * Borders of strips. A strip is cut finished + 2s each way; a mitred one, a trapezoid whose outer edge is the border's, needs
 * (2+2√2)s in length, as a long side between two 45° points does, or 2s(o + √(w² + o²))/w where its own width is w and that of
 * its neighbours o. Strips are cut across the width and joined end to end where
 * they must be; `lengthwise`, and the sides in a directional fabric, are cut along the selvage in one piece.
 */
import { ZERO, add, div, equals, fraction, key, less, mul, roundUpTo, type Exact } from '../exact/number.ts';
import { dealOf, inPrint } from '../geometry/deal.ts';
import type { BorderLayout, QuiltLayout } from '../geometry/layout.ts';
import type { Fabric } from '../model/pattern.ts';
import { countOf, gathered, splitByJoining, stripsToJoin, type Length } from './joined.ts';
import type { BorderCut, Measure, Piece } from './plan.ts';
import type { CutRules } from './shape.ts';
import { lengthBetween } from './sides.ts';
import { stripLength } from './stock.ts';

export interface BorderPlan {
  readonly cuts: readonly BorderCut[];
  readonly pieces: readonly Piece[];
}

/** The strips of every border that has any; pieced borders are made of blocks. */
export function planBorders(layout: QuiltLayout, rules: CutRules): BorderPlan {
  const plans = layout.borders.flatMap((border, i) => {
    const { fabric, corners } = border;
    return fabric && corners !== 'pieced' ? [planBorder({ border, fabric, prints: printsOf(layout, border), number: i + 1, rules })] : [];
  });
  return { cuts: plans.flatMap(({ cuts }) => cuts), pieces: plans.flatMap(({ pieces }) => pieces) };
}

/** The prints that an assorted fabric was dealt to the border's strips; their patches stand in the order of the strips. */
function printsOf(layout: QuiltLayout, { fabric, place }: BorderLayout): readonly Fabric[] {
  const deal = fabric?.assorted && dealOf(layout);
  if (!deal) return [];
  return layout.patches.flatMap((patch, i) => (patch.role === 'border' && patch.place === place ? [inPrint(patch, deal.patches[i]).fabric] : []));
}

interface BorderContext {
  readonly border: BorderLayout;
  readonly fabric: Fabric;
  /** Of each strip; none where the fabric is not assorted. */
  readonly prints: readonly Fabric[];
  readonly number: number;
  readonly rules: CutRules;
}

/** `width` across the strip, `height` along it. */
interface CutStrip {
  readonly fabric: Fabric;
  readonly finished: Measure;
  readonly exactCut: Measure;
  readonly cut: Measure;
  readonly lie: 'across' | 'along';
}

function planBorder(context: BorderContext): BorderPlan {
  const { border, fabric, prints, number } = context;
  const strips = border.strips.flatMap((strip, i) => (less(ZERO, strip.width) && less(ZERO, strip.length) ? [cutStrip(strip, prints[i] ?? fabric, context)] : []));
  if (strips.length === 0) return { cuts: [], pieces: [] };
  const listed = grouped(strips, ({ cut }) => `${key(cut.width)} ${key(cut.height)}`);
  const cut: BorderCut = {
    number,
    width: border.width,
    fabric,
    corners: border.corners,
    lengthwise: border.lengthwise,
    strips: listed.map(([strip, ...more]) => ({ width: strip.cut.width, length: strip.cut.height, count: 1 + more.length })),
  };
  const alike = grouped(strips, (strip) => `${key(strip.cut.width)} ${strip.lie} ${strip.fabric.name}`);
  return { cuts: [cut], pieces: alike.flatMap((group) => stripPieces(group, context)) };
}

function cutStrip(strip: BorderLayout['strips'][number], fabric: Fabric, { border, rules }: BorderContext): CutStrip {
  const sides = mul(rules.seam, fraction(2));
  const ends = border.corners === 'mitred' ? mitredEnds(strip, border, rules) : sides;
  const exactCut = { width: add(strip.width, sides), height: add(strip.length, ends) };
  const isSide = strip.side === 'left' || strip.side === 'right';
  return {
    fabric,
    finished: { width: strip.width, height: strip.length },
    exactCut,
    cut: { width: roundUpTo(exactCut.width, rules.roundUp), height: roundUpTo(exactCut.height, rules.roundUp) },
    lie: border.lengthwise || (fabric.directional && isSide) ? 'along' : 'across',
  };
}

/** What the seams take at both ends of a strip whose corners are mitred from the inner to the outer corner. */
function mitredEnds({ side, width }: BorderLayout['strips'][number], { strips }: BorderLayout, { seam }: CutRules): Exact {
  const isSide = (each: string): boolean => each === 'left' || each === 'right';
  const other = strips.find((strip) => isSide(strip.side) !== isSide(side))?.width ?? width;
  const slant = lengthBetween({ x: ZERO, y: ZERO }, { x: width, y: other });
  return mul(mul(seam, fraction(2)), div(add(other, slant), width));
}

/** The pieces for strips of one width that lie the same way. */
function stripPieces(strips: readonly [CutStrip, ...CutStrip[]], context: BorderContext): readonly Piece[] {
  const [{ lie, fabric }] = strips;
  const lengths = gathered(strips.map(({ cut }) => cut.height));
  const pieceAt = (length: Length): Piece => wholePiece(strips.find(({ cut }) => equals(cut.height, length.length)) ?? strips[0], length.count, context);
  if (lie === 'along') return lengths.map(pieceAt);
  const { whole, joined } = splitByJoining(lengths, stripLength(fabric), context.rules.seam);
  const [longest] = joined;
  return [...whole.map(pieceAt), ...(longest ? [joinedPiece(pieceAt(longest), joined, context)] : [])];
}

function wholePiece({ fabric, finished, exactCut, cut, lie }: CutStrip, count: number, { border, fabric: role, number }: BorderContext): Piece {
  const { width, height } = finished;
  return {
    fabric,
    ...(role.assorted ? { role: role.name } : {}),
    shape: 'strip',
    finished,
    exactCut,
    cut,
    lie,
    cutCount: count,
    pieces: count,
    piecesPerCut: 1,
    method: 'plain',
    for: `border ${number}`,
    outline: [{ x: ZERO, y: ZERO }, { x: width, y: ZERO }, { x: width, y: height }, { x: ZERO, y: height }],
    places: [border.place],
  };
}

/** Strips of the whole width, joined into one from which the lengths are cut. */
function joinedPiece(longest: Piece, lengths: readonly Length[], { rules }: BorderContext): Piece {
  const { fabric } = longest;
  const height = stripLength(fabric);
  const cutCount = stripsToJoin(lengths, height, rules.seam);
  if (cutCount === undefined) return longest;
  const cut = { width: longest.cut.width, height };
  const exactCut = { width: longest.exactCut.width, height };
  return { ...longest, cut, exactCut, cutCount, pieces: countOf(lengths), method: 'from strips joined', joined: lengths };
}

function grouped<T>(items: readonly T[], name: (item: T) => string): readonly (readonly [T, ...T[]])[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const item of items) {
    const group = groups.get(name(item));
    if (group) group.push(item);
    else groups.set(name(item), [item]);
  }
  return [...groups.values()];
}
