/** What one plan takes less than another: whether a small change of a pattern saves more cloth than it makes the patches smaller. */
import { ZERO, TWO, add, div, equals, fraction, less, mul, sub, sum, type Exact } from '../exact/number.ts';
import type { CuttingPlan, FabricPlan } from './plan.ts';

export interface Saving {
  /** Strips fewer, of all fabrics off the bolt. */
  readonly strips: number;
  /** Less to buy. */
  readonly cloth: Exact;
}

/**
 * Undefined unless it is certain: something less is bought and nothing more, there are fewer strips, twice as much cloth is
 * saved as the pieces are smaller, none is too large for its fabric, and no more of them are cut off the marks of the ruler.
 */
export function savingOf(before: CuttingPlan, after: CuttingPlan): Saving | undefined {
  if (after.tooWide.length > before.tooWide.length || offRuler(after) > offRuler(before)) return undefined;
  const pairs = before.fabrics.map((plan) => ({ plan, now: after.fabrics.find(({ fabric }) => fabric.name === plan.fabric.name) }));
  if (pairs.length !== after.fabrics.length || pairs.some(({ plan, now }) => !now || isMore(now, plan))) return undefined;
  const total = (of: (plan: FabricPlan) => Exact): Exact => sub(sum(before.fabrics.map(of)), sum(after.fabrics.map(of)));
  const saving = { strips: stripsIn(before) - stripsIn(after), cloth: total(({ buy }) => buy) };
  const smaller = sub(usedBy(before), usedBy(after));
  const isWorth = less(mul(TWO, smaller), total(({ length }) => length));
  return saving.strips > 0 && less(ZERO, saving.cloth) && isWorth ? saving : undefined;
}

function isMore(now: FabricPlan, before: FabricPlan): boolean {
  return less(before.buy, now.buy) || (now.counted?.count ?? 0) > (before.counted?.count ?? 0);
}

function stripsIn({ fabrics }: CuttingPlan): number {
  return fabrics.reduce((all, { strips, counted }) => (counted ? all : strips.reduce((count, strip) => count + strip.count, all)), 0);
}

/** The lengths of cloth that the pieces themselves cover. */
function usedBy({ pieces }: CuttingPlan): Exact {
  return pieces.reduce((total, { cut, cutCount, fabric }) => add(total, div(mul(mul(cut.width, cut.height), fraction(cutCount)), fabric.width)), ZERO);
}

function offRuler({ pieces }: CuttingPlan): number {
  return pieces.filter(({ shape, cut, exactCut }) => (shape === 'square' || shape === 'rectangle') && !(equals(cut.width, exactCut.width) && equals(cut.height, exactCut.height))).length;
}
