/**
 * Judges a cutting plan without trusting the planner: it shares no code with it. Every fabric is cut again (`verify-cloth.ts`), and
 * every piece must fall off as often as it is cut. Also: sizes on the ruler, counts, joined strips long enough, backing that
 * covers, binding that goes round.
 */
import { add, atMost, div, equals, fraction, isWhole, isZero, less, mul, sub, type Exact } from '../exact/number.ts';
import type { Rules } from '../model/pattern.ts';
import type { BackingPlan, BindingPlan, CuttingPlan, Piece } from './plan.ts';
import { couldFit, fabricFaults, isWholeCount, joinedLength, spoken, type Fallen } from './verify-cloth.ts';

/** What is wrong with a plan, one sentence each; empty when it can be cut as it stands. */
export function faultsOf(plan: CuttingPlan, rules: Rules): readonly string[] {
  const fallen: Fallen = new Map();
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
function pieceFaults({ cut, exactCut, finished, cutCount, piecesPerCut, pieces, joined, fabric, shape, method, segment, segments, for: use }: Piece, name: string, rules: Rules): readonly string[] {
  const doubled = mul(rules.seam, fraction(2));
  const isJoined = joined !== undefined;
  const reach = isJoined ? joined.reduce((total, { length, count }) => add(total, mul(length, fraction(count))), fraction(0)) : fraction(0);
  // Four geese take four small squares at once, whatever is over.
  // The last strip set takes a part of as many strips as the set has of the fabric.
  const atOnce = method === 'four at a time' && shape === 'half-square triangle' ? 4 : segments === undefined ? 1 : pieces / segments;
  const strip = joinedLength(fabric);
  const sewn = sub(mul(strip, fraction(cutCount)), mul(doubled, fraction(cutCount - 1)));
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
    [isJoined && (less(sewn, reach) || !equals(cut.height, strip)), 'is joined from too few strips'],
  ]);
}

/** Setting triangles are measured by the block they stand beside, so this does not hold for them. */
function lacksSeams({ finished, exactCut, isJoined }: Pick<Piece, 'finished' | 'exactCut'> & { readonly isJoined: boolean }, doubled: Exact): boolean {
  return less(exactCut.width, add(finished.width, doubled)) || (!isJoined && less(exactCut.height, add(finished.height, doubled)));
}

/** Every piece falls off the fabric as often as it is cut, unless its cloth is too small for it. */
function countFaults(piece: Piece, index: number, plan: CuttingPlan, fallen: ReadonlyMap<number, number>): readonly string[] {
  const isExcused = plan.tooWide.some((each) => each.piece === index);
  const expected = isExcused ? 0 : piece.cutCount;
  const found = fallen.get(index) ?? 0;
  return found === expected ? [] : [`piece ${index}: ${found} cut, ${expected} needed`];
}

function tooWideFaults(index: number | undefined, plan: CuttingPlan): readonly string[] {
  const piece = index === undefined ? undefined : plan.pieces[index];
  if (!piece) return [];
  return spoken(`piece ${index ?? 0}`, [[couldFit(piece), 'is said to be too wide and fits']]);
}

function backingFaults({ panels, seams, width, height, panelLength, clothWidth, fabric, buy }: BackingPlan, rules: Rules): readonly string[] {
  if (!fabric) return [];
  const joins = mul(rules.seam, fraction(2 * (panels - 1)));
  const sewn = sub(mul(clothWidth, fraction(panels)), joins);
  const covers = (across: Exact, along: Exact): boolean => atMost(across, sewn) && atMost(along, panelLength);
  const isCovered = (seams !== 'horizontal' && covers(width, height)) || (seams !== 'vertical' && covers(height, width));
  return spoken('backing', [
    [!isCovered, 'does not cover the quilt'],
    [(panels === 1) !== (seams === 'none'), 'has seams that do not match its panels'],
    [less(mul(buy, sub(fraction(1), fabric.shrink)), mul(panelLength, fraction(panels))), 'is bought too short'],
  ]);
}

function bindingFaults({ fabric, strips, length, square, width, buy }: BindingPlan, rules: Rules): readonly string[] {
  const area = square ? mul(mul(square, square), fraction(strips)) : mul(mul(joinedLength(fabric), fraction(strips)), width);
  return spoken('binding', [
    [less(area, mul(length, width)), 'is too short to go round'],
    [square !== undefined && less(joinedLength(fabric), square), 'is made from a square wider than its fabric'],
    [isZero(buy) || !isWhole(div(buy, rules.yardage)), 'is bought in no whole step'],
  ]);
}
