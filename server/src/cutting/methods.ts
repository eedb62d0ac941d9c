/**
 * Units that are made in a way the author chose (`method`), and what is cut for them. Finished side f or width w and height h, seam s,
 * t what is cut over and trimmed (language.md, section 7):
 *
 * - half squares two at a time: squares of f + (2+√2)s + t, one of each fabric for two units; eight at a time: 2f + (4+2√2)s + 2t;
 * - geese four at a time: one square of w + (2+2√2)s + t and four of h + (2+√2)s + t; corners: a rectangle w + 2s by h + 2s and two
 *   squares of h + 2s, laid on, sewn from corner to corner and flipped;
 * - strips: a strip across the fabric for each part of a row, as wide as the part + 2s, cut into segments as long as the row + 2s.
 *
 * `singles` is the way for which nothing needs to be said: triangles cut from squares and sewn one by one, here with t.
 */
import { ZERO, add, div, floor, isZero, key as numberKey, less, mul, roundUpTo, sub, TWO, type Exact } from '../exact/number.ts';
import { boundingBox, isUprightRectangle } from '../exact/polygon.ts';
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import type { Methods } from '../model/pattern.ts';
import { patchesIn, type Assembly } from '../piecing/plan.ts';
import { sewingOfBlock } from '../piecing/sewing.ts';
import { unitsOf, type Unit } from '../piecing/units.ts';
import type { Measure } from './plan.ts';
import { cuttingOf, type Cutting, type CutRules } from './shape.ts';
import { lengthBetween, rightIsosceles, withRoot } from './sides.ts';

/** How one unit is made. */
export type Making = 'singles' | 'two at a time' | 'eight at a time' | 'four at a time' | 'corners' | 'strip sets';

/** A patch of a unit that is made in a chosen way. */
export interface Made {
  readonly making: Making;
  readonly trim: Exact;
  /** The same for units that are made together: the same shapes in the same fabrics. */
  readonly set: string;
  /** The large triangle of a goose. */
  readonly isBody: boolean;
  /** How the rectangles of a row lie: beside or above each other. */
  readonly run: 'across' | 'down' | undefined;
}

/** By the patch. */
export type MadePatches = ReadonlyMap<number, Made>;

const NONE: MadePatches = new Map();

const known = new WeakMap<BlockLayout, Map<string, MadePatches>>();

/** What of a block is made in a chosen way; nothing where no method says so. A block's own methods come before the pattern's. */
export function madePatches(block: BlockLayout, methods: Methods): MadePatches {
  const chosen = { ...methods, ...block.instance.methods };
  const { halfSquares, geese, strips } = chosen;
  if (!halfSquares && !geese && strips?.on !== true) return NONE;
  const key = [halfSquares?.way, textOf(halfSquares?.trim), geese?.way, textOf(geese?.trim), strips?.on].join();
  const ofBlock = known.get(block) ?? new Map<string, MadePatches>();
  known.set(block, ofBlock);
  const made = ofBlock.get(key) ?? findMade(block, chosen);
  ofBlock.set(key, made);
  return made;
}

/** What is cut for such a patch, at the size it is set in; undefined when it cannot be made so. */
export function methodCutting(patch: Patch, made: Made, rules: CutRules): Cutting | undefined {
  const found = WAYS[made.making](patch, made, rules);
  if (!found) return undefined;
  const up = (side: Exact): Exact => roundUpTo(side, rules.roundUp);
  const { width, height } = found.exactCut;
  return { ...found, cut: { width: up(width), height: made.making === 'strip sets' ? height : up(height) } };
}

/** How a patch of a block is cut there, by the method for its unit or as its shape is. */
export function cuttingInBlock(block: BlockLayout, index: number, rules: CutRules): Cutting | undefined {
  const patch = block.patches[index];
  if (!patch) return undefined;
  const made = madePatches(block, rules.methods ?? {}).get(index);
  return (made && methodCutting(patch, made, rules)) ?? cuttingOf(patch, rules);
}

function textOf(trim: Exact | undefined): string {
  return trim ? numberKey(trim) : '';
}

/** Only cloth that does not mind: no grain to keep, no prints to deal. */
function findMade(layout: BlockLayout, chosen: Methods): MadePatches {
  const { assembled } = sewingOfBlock(layout);
  if (!assembled) return NONE;
  const { units, numbers } = unitsOf([{ layout, count: 1, assembled }]);
  const found = new Map<number, Made>();
  for (const [part, number] of numbers) {
    const unit = units[number];
    const patches = patchesIn(part);
    if (!unit || !patches.every((patch) => !found.has(patch) && isFree(layout.patches[patch]))) continue;
    const way = wayOf(unit, part, layout, chosen);
    if (!way) continue;
    const legs = patches.map((patch) => legOf(layout.patches[patch]?.outline ?? []) ?? ZERO);
    const isBody = (leg: Exact): boolean => legs.some((each) => less(each, leg));
    patches.forEach((patch, i) => found.set(patch, { ...way, set: `${way.making} ${number}`, isBody: isBody(legs[i] ?? ZERO), run: runOf(part) }));
  }
  return found;
}

function isFree(patch: Patch | undefined): boolean {
  return patch?.role === 'patch' && !patch.arcs && patch.grain === undefined && !patch.fabric.assorted && !patch.fabric.directional;
}

const MAKINGS: Readonly<Record<'two_at_a_time' | 'eight_at_a_time' | 'four_at_a_time' | 'singles' | 'corners', Making>> = {
  two_at_a_time: 'two at a time',
  eight_at_a_time: 'eight at a time',
  four_at_a_time: 'four at a time',
  singles: 'singles',
  corners: 'corners',
};

function wayOf({ name }: Unit, part: Assembly, layout: BlockLayout, { halfSquares, geese, strips }: Methods): Pick<Made, 'making' | 'trim'> | undefined {
  if (name === 'half-square triangle') return halfSquares && { making: MAKINGS[halfSquares.way], trim: halfSquares.trim ?? ZERO };
  if (name === 'flying goose') return geese && (geese.way !== 'four_at_a_time' || hasEqualWings(part, layout)) ? { making: MAKINGS[geese.way], trim: geese.trim ?? ZERO } : undefined;
  return strips?.on === true && isRow(part, layout) ? { making: 'strip sets', trim: ZERO } : undefined;
}

/** Four at a time, what is the left wing of one goose is the right wing of another. */
function hasEqualWings(part: Assembly, layout: BlockLayout): boolean {
  const triangles = patchesIn(part).flatMap((index) => {
    const patch = layout.patches[index];
    const leg = patch && legOf(patch.outline);
    return leg ? [{ leg, fabric: patch.fabric.name }] : [];
  });
  const wings = triangles.filter(({ leg }) => triangles.every((other) => !less(other.leg, leg)));
  return new Set(wings.map(({ fabric }) => fabric)).size === 1;
}

/** Rectangles side by side, cut from yardage. */
function isRow(part: Assembly, { patches }: BlockLayout): boolean {
  if (part.kind !== 'join' || !part.parts.every((each) => each.kind === 'patch' && isUprightRectangle(patches[each.patch]?.outline ?? []))) return false;
  return runOf(part) !== undefined && patchesIn(part).every((patch) => patches[patch]?.fabric.source.kind === 'yardage');
}

function runOf(part: Assembly): Made['run'] {
  const stretches = part.kind === 'join' ? part.seams.flatMap((seam) => seam.stretches) : [];
  if (stretches.length === 0) return undefined;
  if (stretches.every(({ from, to }) => isZero(sub(from.x, to.x)))) return 'across';
  return stretches.every(({ from, to }) => isZero(sub(from.y, to.y))) ? 'down' : undefined;
}

type Found = Omit<Cutting, 'cut'>;
type Way = (patch: Patch, made: Made, rules: CutRules) => Found | undefined;

const WAYS: Readonly<Record<Making, Way>> = {
  singles: (patch, made, rules) => triangles(patch, rules, { ...made, half: { method: 'once on the diagonal', piecesPerCut: 2 }, quarter: { method: 'twice on the diagonal', piecesPerCut: 4 } }),
  'two at a time': (patch, made, rules) => triangles(patch, rules, { ...made, half: { method: 'two at a time', piecesPerCut: 2 } }),
  'eight at a time': (patch, made, rules) => triangles(patch, rules, { ...made, half: { method: 'eight at a time', piecesPerCut: 8 } }),
  'four at a time': (patch, made, rules) =>
    triangles(patch, rules, { ...made, half: { method: 'four at a time', piecesPerCut: 2, fours: true }, quarter: { method: 'four at a time', piecesPerCut: 4 } }),
  corners,
  'strip sets': stripSet,
};

interface Triangles extends Made {
  readonly half: Pick<Cutting, 'method' | 'piecesPerCut' | 'fours'>;
  readonly quarter?: Pick<Cutting, 'method' | 'piecesPerCut'>;
}

/** Squares for triangles: half ones, and quarters for the bodies of geese. */
function triangles({ outline }: Patch, { seam }: CutRules, { making, trim, isBody, half, quarter }: Triangles): Found | undefined {
  const leg = legOf(outline);
  if (!leg) return undefined;
  const finished = square(leg);
  if (isBody && quarter) {
    const long = mul(leg, withRoot(0, 1));
    return { shape: 'quarter-square triangle', finished, exactCut: square(add(add(long, mul(seam, withRoot(2, 2))), trim)), ...quarter };
  }
  const side = add(add(leg, mul(seam, withRoot(2, 1))), trim);
  return { shape: 'half-square triangle', finished, exactCut: square(making === 'eight at a time' ? mul(TWO, side) : side), ...half };
}

/** The body is a rectangle, the wings are squares on its corners. */
function corners({ outline }: Patch, { isBody }: Made, { seam }: CutRules): Found | undefined {
  const triangle = rightIsosceles(outline);
  const leg = legOf(outline);
  if (!triangle || !leg) return undefined;
  const long = lengthBetween(...triangle.ends);
  const finished = isBody ? { width: div(long, TWO), height: long } : square(leg);
  return { shape: isBody ? 'rectangle' : 'square', finished, exactCut: widened(finished, seam), method: 'plain', piecesPerCut: 1 };
}

/** Finished, the height is that of the row: every strip is as long as the fabric is wide. */
function stripSet({ outline, fabric }: Patch, { run }: Made, { seam, roundUp }: CutRules): Found | undefined {
  const { left, right, top, bottom } = boundingBox(outline);
  const [across, down] = [sub(right, left), sub(bottom, top)];
  const finished = run === 'across' ? { width: across, height: down } : { width: down, height: across };
  const { width, height } = widened(finished, seam);
  const segment = roundUpTo(height, roundUp);
  const piecesPerCut = Number(floor(div(fabric.width, segment)));
  return piecesPerCut < 1 ? undefined : { shape: 'strip', finished, exactCut: { width, height: fabric.width }, method: 'strip set', piecesPerCut, segment };
}

function widened({ width, height }: Measure, seam: Exact): Measure {
  const both = mul(TWO, seam);
  return { width: add(width, both), height: add(height, both) };
}

function legOf(outline: Patch['outline']): Exact | undefined {
  const triangle = rightIsosceles(outline);
  return triangle && lengthBetween(triangle.corner, triangle.ends[0]);
}

function square(side: Exact): Measure {
  return { width: side, height: side };
}
