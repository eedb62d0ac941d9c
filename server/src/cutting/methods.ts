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
import { ZERO, add, div, equals, floor, less, mul, roundUpTo, sub, TWO, type Exact } from '../exact/number.ts';
import { area, boundingBox } from '../exact/polygon.ts';
import type { BlockLayout, Patch, QuiltLayout } from '../geometry/layout.ts';
import type { Methods } from '../model/pattern.ts';
import { makingKey, rowRun, setSize, type Way } from '../piecing/making.ts';
import { methodsKey } from '../piecing/methods-at.ts';
import { patchesIn, type Assembly } from '../piecing/plan.ts';
import { sewingOfBlock, unitsOfQuilt } from '../piecing/sewing.ts';
import { unitsOf, type Unit, type Units } from '../piecing/units.ts';
import type { Measure } from './plan.ts';
import { cuttingOf, type Cutting, type CutRules } from './shape.ts';
import { laidAlike } from './template-alike.ts';
import { printedCutting } from './template-cut.ts';
import { lengthBetween, rightIsosceles, withRoot } from './sides.ts';

/** A patch of a unit that is made in a way of its own. */
export interface Made {
  readonly way: Way;
  readonly trim: Exact;
  /** The same for units that are made together, in whatever block; undefined where it makes no difference: all sets are whole. */
  readonly set: string | undefined;
  /** The large triangle of a goose, the middle of a snowball. */
  readonly isBody: boolean;
  /** How the rectangles of a row lie: beside or above each other. */
  readonly run: 'across' | 'down' | undefined;
  /** Units of the kind in the quilt. */
  readonly count: number;
  /** The narrowest fabric of the unit: strips that are sewn together are as long as that is wide. */
  readonly reach: Exact;
}

/** By the patch. */
export type MadePatches = ReadonlyMap<number, Made>;

const NONE: MadePatches = new Map();

/** What of the blocks of a quilt is made in a way of its own, said or usual. */
export function madePatches(quilt: QuiltLayout, methods: Methods): ReadonlyMap<BlockLayout, MadePatches> {
  const units = unitsOfQuilt(quilt, methods);
  const found = known.get(units) ?? new Map(quilt.blocks.map(({ layout }) => [layout, madeIn(layout, units)]));
  known.set(units, found);
  return found;
}

const known = new WeakMap<Units, ReadonlyMap<BlockLayout, MadePatches>>();

/** The same for a block by itself. */
function madeAlone(layout: BlockLayout, methods: Methods): MadePatches {
  const { assembled } = sewingOfBlock(layout);
  if (!assembled) return NONE;
  const ofBlock = alone.get(layout) ?? new Map<string, MadePatches>();
  alone.set(layout, ofBlock);
  const name = methodsKey(methods);
  const found = ofBlock.get(name) ?? madeIn(layout, unitsOf([{ layout, count: 1, assembled }], methods));
  ofBlock.set(name, found);
  return found;
}

const alone = new WeakMap<BlockLayout, Map<string, MadePatches>>();

/** What is cut for such a patch, at the size it is set in; undefined when it cannot be made so. */
export function methodCutting(patch: Patch, made: Made, rules: CutRules): Cutting | undefined {
  const found = WAYS[made.way](patch, made, rules);
  if (!found) return undefined;
  const up = (side: Exact): Exact => roundUpTo(side, rules.roundUp);
  const { width, height } = found.exactCut;
  return { ...found, cut: { width: up(width), height: made.way === 'strip sets' ? height : up(height) } };
}

/** How a patch of a block is cut there, by the method for its unit or as its shape is; in a quilt, as that needs it. */
export function cuttingInBlock(block: BlockLayout, index: number, rules: CutRules, quilt?: QuiltLayout): Cutting | undefined {
  const patch = block.patches[index];
  if (!patch) return undefined;
  const methods = rules.methods ?? {};
  const made = ((quilt && madePatches(quilt, methods).get(block)) ?? madeAlone(block, methods)).get(index);
  return printedCutting(block, patch, rules) ?? (made && methodCutting(patch, made, rules)) ?? cuttingOf(laidAlike(block, index), rules);
}

function madeIn(layout: BlockLayout, { units, numbers }: Units): MadePatches {
  const { assembled } = sewingOfBlock(layout);
  const found = new Map<number, Made>();
  const visit = (part: Assembly): void => {
    const unit = units[numbers.get(part) ?? -1];
    if (unit?.made) return markUnit(unit, part, layout, found);
    if (part.kind === 'join') part.parts.forEach(visit);
    else if (part.kind !== 'patch') visit(part.part);
  };
  if (assembled) visit(assembled.plan.assembly);
  return found;
}

function markUnit(unit: Unit, part: Assembly, { patches }: BlockLayout, found: Map<number, Made>): void {
  const { made } = unit;
  if (!made) return;
  const own = patchesIn(part);
  const areas = own.map((patch) => area(patches[patch]?.outline ?? []));
  const isBody = (size: Exact): boolean => areas.some((each) => less(each, size));
  const widths = own.flatMap((patch) => patches[patch]?.fabric.width ?? []);
  const reach = widths.reduce((least, width) => (less(width, least) ? width : least), widths[0] ?? ZERO);
  const set = needsOwnSets(unit, made.way) ? `${unit.number} ${makingKey(made)}` : undefined;
  own.forEach((patch, i) => found.set(patch, { ...made, set, isBody: isBody(areas[i] ?? ZERO), run: rowRun(part), count: unit.count, reach }));
}

function needsOwnSets({ uses }: Unit, way: Way): boolean {
  return way === 'strip sets' || uses.some(({ count }) => count % setSize(way) !== 0);
}

type Found = Omit<Cutting, 'cut'>;
type CutWay = (patch: Patch, made: Made, rules: CutRules) => Found | undefined;

const WAYS: Readonly<Record<Way, CutWay>> = {
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
function triangles({ outline }: Patch, { seam }: CutRules, { way, trim, isBody, half, quarter }: Triangles): Found | undefined {
  const leg = legOf(outline);
  if (!leg) return undefined;
  const finished = square(leg);
  if (isBody && quarter) {
    const long = mul(leg, withRoot(0, 1));
    return { shape: 'quarter-square triangle', finished, exactCut: square(add(add(long, mul(seam, withRoot(2, 2))), trim)), ...quarter };
  }
  const side = add(add(leg, mul(seam, withRoot(2, 1))), trim);
  return { shape: 'half-square triangle', finished, exactCut: square(way === 'eight at a time' ? mul(TWO, side) : side), ...half };
}

/** The body is the whole unit, the wings and corners are squares on its corners. */
function corners({ outline }: Patch, { isBody }: Made, { seam }: CutRules): Found | undefined {
  const leg = legOf(outline);
  const finished = isBody ? bodySize(outline) : leg && square(leg);
  if (!finished) return undefined;
  const shape = equals(finished.width, finished.height) ? 'square' : 'rectangle';
  return { shape, finished, exactCut: widened(finished, seam), method: 'plain', piecesPerCut: 1 };
}

/** A goose is as high as half of the long side of its body; the middle of a snowball reaches every side. */
function bodySize(outline: Patch['outline']): Measure | undefined {
  const triangle = rightIsosceles(outline);
  if (triangle) {
    const long = lengthBetween(...triangle.ends);
    return { width: div(long, TWO), height: long };
  }
  const { left, right, top, bottom } = boundingBox(outline);
  return { width: sub(right, left), height: sub(bottom, top) };
}

/** Finished, the height is that of the row: every strip is as long as the fabric is wide. */
function stripSet({ outline, fabric }: Patch, { run, count, reach }: Made, { seam, roundUp }: CutRules): Found | undefined {
  const { left, right, top, bottom } = boundingBox(outline);
  const [across, down] = [sub(right, left), sub(bottom, top)];
  const finished = run === 'across' ? { width: across, height: down } : { width: down, height: across };
  const { width, height } = widened(finished, seam);
  const segment = roundUpTo(height, roundUp);
  const piecesPerCut = Number(floor(div(reach, segment)));
  return piecesPerCut < 1 ? undefined : { shape: 'strip', finished, exactCut: { width, height: fabric.width }, method: 'strip set', piecesPerCut, segment, segments: count };
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
