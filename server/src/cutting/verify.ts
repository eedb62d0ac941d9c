/**
 * Judges a cutting plan without trusting the planner: it shares no code with it. Every strip is cut off the fabric and every
 * segment off its strip, each a straight cut from edge to edge, and what falls off is counted. Also: sizes on the ruler,
 * counts, joined strips long enough, lengths that add up, bounds in order, backing that covers, binding that goes round.
 */
import { add, atMost, compare, div, equals, fraction, isWhole, isZero, less, mul, sign, sub, type Exact } from '../exact/number.ts';
import type { Rules } from '../model/pattern.ts';
import type { BackingPlan, BindingPlan, CuttingPlan, FabricPlan, Piece, Strip, Subcut } from './plan.ts';

/** What is wrong with a plan, one sentence each; empty when it can be cut as it stands. */
export function faultsOf(plan: CuttingPlan, rules: Rules): readonly string[] {
  const fallen = new Map<number, number>();
  return [
    ...plan.pieces.flatMap((piece, i) => pieceFaults(piece, `piece ${i}`, rules)),
    ...plan.fabrics.flatMap((fabric) => fabricFaults(fabric, plan, rules, fallen)),
    ...plan.pieces.flatMap((piece, i) => countFaults(piece, i, plan, fallen)),
    ...plan.tooWide.flatMap(({ piece }) => tooWideFaults(piece, plan)),
    ...(plan.backing ? backingFaults(plan.backing, rules) : []),
    ...(plan.binding ? bindingFaults(plan.binding, rules) : []),
  ];
}

/** Sizes on the ruler and not below what is needed; as many as needed and no more than a cut too many. */
function pieceFaults({ cut, exactCut, finished, cutCount, piecesPerCut, pieces, joined, fabric, shape, method, segment, for: use }: Piece, name: string, rules: Rules): readonly string[] {
  const doubled = mul(rules.seam, fraction(2));
  const isJoined = joined !== undefined;
  const reach = isJoined ? joined.reduce((total, { length, count }) => add(total, mul(length, fraction(count))), fraction(0)) : fraction(0);
  // Four geese take four small squares at once, whatever is over.
  const atOnce = method === 'four at a time' && shape === 'half-square triangle' ? 4 : 1;
  const sewn = sub(mul(fabric.width, fraction(cutCount)), mul(doubled, fraction(cutCount - 1)));
  return spoken(name, [
    [less(cut.width, exactCut.width) || less(cut.height, exactCut.height), 'is cut smaller than it must be'],
    [!less(sub(cut.width, exactCut.width), rules.roundUp) || !less(sub(cut.height, exactCut.height), rules.roundUp), 'is cut larger than the next mark'],
    [use !== 'binding' && !isWhole(div(cut.width, rules.roundUp)), 'has a width that is not on the ruler'],
    [!isJoined && !segment && use !== 'binding' && !isWhole(div(cut.height, rules.roundUp)), 'has a height that is not on the ruler'],
    [use !== 'binding' && !shape.includes('setting') && lacksSeams({ finished, exactCut, isJoined }, doubled), 'has no seam allowance'],
    [!isWholeCount(cutCount) || !isWholeCount(pieces) || !isWholeCount(piecesPerCut), 'has a count that is no whole number'],
    [!isJoined && cutCount * piecesPerCut < pieces, 'is cut too few times'],
    [!isJoined && (cutCount - atOnce) * piecesPerCut >= pieces, 'is cut too many times'],
    [segment !== undefined && (less(segment, add(finished.height, doubled)) || less(cut.height, mul(segment, fraction(piecesPerCut)))), 'has segments too short, or too many'],
    [isJoined && (less(sewn, reach) || !equals(cut.height, fabric.width)), 'is joined from too few strips'],
  ]);
}

/** Setting triangles are measured by the block they stand beside, so this does not hold for them. */
function lacksSeams({ finished, exactCut, isJoined }: Pick<Piece, 'finished' | 'exactCut'> & { readonly isJoined: boolean }, doubled: Exact): boolean {
  return less(exactCut.width, add(finished.width, doubled)) || (!isJoined && less(exactCut.height, add(finished.height, doubled)));
}

function fabricFaults(found: FabricPlan, plan: CuttingPlan, rules: Rules, fallen: Map<number, number>): readonly string[] {
  const { fabric, strips, length, buy, lowerBound } = found;
  const name = `fabric ${fabric.name}`;
  const used = strips.reduce((total, { width, count }) => add(total, mul(width, fraction(count))), fraction(0));
  const left = mul(buy, sub(fraction(1), fabric.shrink));
  return [
    ...strips.flatMap((strip, i) => stripFaults(strip, { name: `${name}, strip ${i}`, found, plan, fallen })),
    ...spoken(name, [
      [!equals(used, length), 'has strips that do not add up to its length'],
      [less(length, lowerBound), 'is shorter than its lower bound'],
      [less(left, length), 'is bought too short'],
      [!isWhole(div(buy, rules.yardage)), 'is bought in no whole step'],
    ]),
  ];
}

interface StripContext {
  readonly name: string;
  readonly found: FabricPlan;
  readonly plan: CuttingPlan;
  readonly fallen: Map<number, number>;
}

/** Cuts one strip of the kind into segments and the segments into pieces. */
function stripFaults(strip: Strip, { name, found, plan, fallen }: StripContext): readonly string[] {
  const { fabric } = found;
  let rest = fabric.width;
  const faults = strip.subcuts.flatMap((subcut) => {
    const piece = plan.pieces[subcut.piece];
    if (!piece || piece.fabric.name !== fabric.name) return [`${name}: a piece that is not of this fabric`];
    const { across, down, segments, stacked } = segmentsOf(piece, subcut);
    rest = sub(rest, mul(across, fraction(segments)));
    fallen.set(subcut.piece, (fallen.get(subcut.piece) ?? 0) + subcut.count * strip.count);
    return spoken(name, [
      [!isWholeCount(subcut.count) || !isWholeCount(stacked), 'a count that is no whole number'],
      [less(strip.width, mul(down, fraction(stacked))), 'a piece that is taller than the strip'],
      [piece.lie === 'along' && subcut.turned === true && !equals(across, down), 'a piece turned that must lie along the selvage'],
      [piece.lie === 'across' && subcut.turned !== true, 'a piece along the selvage that must lie across'],
    ]);
  });
  return [...faults, ...spoken(name, [[sign(rest) < 0, 'segments that are longer than the fabric is wide'], [!isWholeCount(strip.count) || sign(strip.width) <= 0, 'no strip at all']])];
}

function segmentsOf({ cut }: Piece, { count, turned, stacked = 1 }: Subcut): { across: Exact; down: Exact; segments: number; stacked: number } {
  const [across, down] = turned ? [cut.height, cut.width] : [cut.width, cut.height];
  const whole = (count - (count % stacked)) / stacked;
  return { across, down, segments: count % stacked === 0 ? whole : whole + 1, stacked };
}

/** Every piece falls off the fabric as often as it is cut, unless its fabric is not planned or is too narrow for it. */
function countFaults(piece: Piece, index: number, plan: CuttingPlan, fallen: ReadonlyMap<number, number>): readonly string[] {
  const isExcused = plan.tooWide.some((each) => each.piece === index) || plan.unplanned.some(({ fabric }) => fabric.name === piece.fabric.name);
  const expected = isExcused ? 0 : piece.cutCount;
  const found = fallen.get(index) ?? 0;
  return found === expected ? [] : [`piece ${index}: ${found} cut, ${expected} needed`];
}

function tooWideFaults(index: number | undefined, plan: CuttingPlan): readonly string[] {
  const piece = index === undefined ? undefined : plan.pieces[index];
  if (!piece) return [];
  const { cut, fabric, lie } = piece;
  const fits = (lie !== 'across' && atMost(cut.width, fabric.width)) || (lie !== 'along' && atMost(cut.height, fabric.width));
  return spoken(`piece ${index ?? 0}`, [[fits, 'is said to be too wide and fits']]);
}

function backingFaults({ panels, seams, width, height, panelLength, fabric, buy }: BackingPlan, rules: Rules): readonly string[] {
  if (!fabric) return [];
  const joins = mul(rules.seam, fraction(2 * (panels - 1)));
  const sewn = sub(mul(fabric.width, fraction(panels)), joins);
  const covers = (across: Exact, along: Exact): boolean => atMost(across, sewn) && atMost(along, panelLength);
  const isCovered = (seams !== 'horizontal' && covers(width, height)) || (seams !== 'vertical' && covers(height, width));
  return spoken('backing', [
    [!isCovered, 'does not cover the quilt'],
    [(panels === 1) !== (seams === 'none'), 'has seams that do not match its panels'],
    [less(mul(buy, sub(fraction(1), fabric.shrink)), mul(panelLength, fraction(panels))), 'is bought too short'],
  ]);
}

function bindingFaults({ fabric, strips, length, square, width, buy }: BindingPlan, rules: Rules): readonly string[] {
  const area = square ? mul(mul(square, square), fraction(strips)) : mul(mul(fabric.width, fraction(strips)), width);
  return spoken('binding', [
    [less(area, mul(length, width)), 'is too short to go round'],
    [square !== undefined && less(fabric.width, square), 'is made from a square wider than its fabric'],
    [isZero(buy) || !isWhole(div(buy, rules.yardage)), 'is bought in no whole step'],
  ]);
}

function spoken(name: string, faults: readonly (readonly [boolean, string])[]): readonly string[] {
  return faults.filter(([isWrong]) => isWrong).map(([, text]) => `${name}: ${text}`);
}

function isWholeCount(count: number): boolean {
  return Number.isSafeInteger(count) && compare(fraction(count), fraction(0)) > 0;
}
