/** From the quilt in the plane to what is cut from which fabric: pieces, strips, lengths to buy, backing, batting, binding. */
import { compare, fraction, isZero, mul, type Exact } from '../exact/number.ts';
import type { QuiltLayout } from '../geometry/layout.ts';
import { usualOverhang } from '../model/finishing.ts';
import type { Pattern, QuiltSpec, Rules } from '../model/pattern.ts';
import { allSteps, type Steps } from '../text/steps.ts';
import { planBacking, planBatting } from './backing.ts';
import { planBinding } from './binding.ts';
import { planBorders } from './borders.ts';
import { planDrop } from './drop.ts';
import type { Order } from './demand.ts';
import { orderOf, piecesTooLarge, planFabric } from './fabric.ts';
import { needsOf } from './needs.ts';
import { piecesOf } from './pieces.ts';
import type { CuttingPlan, FabricPlan, Piece, QuiltingPlan, TooWide } from './plan.ts';
import { planQuilting } from './quilting.ts';
import { planRoles } from './roles.ts';
import type { Effort } from './search.ts';
import { planSleeve } from './sleeve.ts';
import { soundRules } from './units.ts';

/**
 * The plan for a quilt in one size. Never throws on what a pattern says: what cannot be cut from its fabric is in `tooWide`.
 * `effort`: how its strips are sought (`at once` unless said); its pieces do not depend on that.
 */
export function planCutting(layout: QuiltLayout, pattern: Pattern, options: PlanOptions = {}): CuttingPlan {
  return allSteps(planningSteps(layout, pattern, options));
}

export interface PlanOptions {
  readonly effort?: Effort;
}

/** The same step by step. */
export function* planningSteps(layout: QuiltLayout, pattern: Pattern, { effort = 'at once' }: PlanOptions = {}): Steps<CuttingPlan> {
  const rules = soundRules(pattern.rules);
  const { backing, batting, binding, sleeve } = layout.spec;
  const borders = planBorders(layout, rules);
  const bound = binding && planBinding(layout, binding, rules);
  const hung = sleeve && planSleeve(layout, sleeve, rules);
  const drop = planDrop(layout);
  const isEmpty = isZero(layout.width);
  // Every quilt has a backing and a batting, whether the pattern speaks of them or not.
  const unsaid = { overhang: usualOverhang(rules.units) };
  const backed = backing ?? !isEmpty ? planBacking(layout, backing ?? unsaid, rules) : undefined;
  const padded = batting ?? !isEmpty ? planBatting(layout, batting ?? unsaid, rules) : undefined;
  const cut = yield* piecesOf(yield* needsOf(layout, rules), rules);
  const pieces = inOrder([...cut, ...borders.pieces, ...(bound?.pieces ?? []), ...(hung ? [hung.piece] : [])], pattern);
  const fabrics = [...new Map(pieces.map(({ fabric }) => [fabric.name, fabric])).values()];
  // Strips are searched for when somebody asks: most checks need the pieces only, at every keystroke.
  let plans: readonly FabricPlan[] | undefined;
  let quilted: readonly QuiltingPlan[] | undefined;
  return {
    pieces,
    get fabrics() {
      return (plans ??= fabrics.map((fabric) => planFabric(fabric, pieces, rules, effort)));
    },
    get roles() {
      return planRoles(pieces, this.fabrics, pattern);
    },
    get quilting() {
      return (quilted ??= planQuilting(layout));
    },
    borders: borders.cuts,
    ...(backed ? { backing: backed } : {}),
    ...(padded ? { batting: padded } : {}),
    ...(bound ? { binding: bound.plan } : {}),
    ...(hung ? { sleeve: hung.plan } : {}),
    ...(drop ? { drop } : {}),
    tooWide: [...piecesTooLarge(pieces), ...(bound ? [] : tooNarrow(binding, 'binding', rules)), ...(backed ? [] : tooNarrow(backing, 'backing', rules))],
  };
}

/** What the optimiser is asked for each fabric of a plan. */
export function ordersOf({ pieces }: Pick<CuttingPlan, 'pieces'>, { rules }: Pattern): readonly Order[] {
  const fabrics = new Map(pieces.map(({ fabric }) => [fabric.name, fabric]));
  return [...fabrics.values()].flatMap((fabric) => orderOf(fabric, pieces, soundRules(rules)) ?? []);
}

/** Fabrics as they are declared, prints that an assorted role makes in its place; of a fabric, the uses as they come up, the largest piece first. */
function inOrder(pieces: readonly Piece[], pattern: Pattern): readonly Piece[] {
  const fabrics = ranks([...declared(pattern), ...pieces.map(({ fabric }) => fabric.name)]);
  const uses = usesInOrder(pieces);
  const rank = (of: ReadonlyMap<string, number>, name: string): number => of.get(name) ?? of.size;
  return [...pieces].sort(
    (a, b) =>
      rank(fabrics, a.fabric.name) - rank(fabrics, b.fabric.name) ||
      rank(uses, a.for) - rank(uses, b.for) ||
      compare(b.cut.height, a.cut.height) ||
      compare(b.cut.width, a.cut.width),
  );
}

function declared({ fabrics }: Pattern): readonly string[] {
  return [...fabrics.values()].flatMap(({ name, assorted }) => [name, ...(assorted?.prints ?? []).filter((print) => !fabrics.has(print.name)).map((print) => print.name)]);
}

/** Blocks as they come up, the setting, the sashing; then the borders from the inside out, the binding and the sleeve. */
function usesInOrder(pieces: readonly Piece[]): ReadonlyMap<string, number> {
  const uses = [...new Set(pieces.map((piece) => piece.for))];
  const isLast = (use: string): boolean => /^border\b/.test(use) || use === 'binding' || use === 'sleeve';
  const borders = uses.filter((use) => /^border\b/.test(use)).sort((a, b) => Number(a.slice(7)) - Number(b.slice(7)));
  return ranks([...uses.filter((use) => !isLast(use)), ...borders, 'binding', 'sleeve']);
}

function ranks(names: readonly string[]): ReadonlyMap<string, number> {
  return new Map([...new Set(names)].map((name, rank) => [name, rank]));
}

/** Backing or binding of which nothing can be sewn: the fabric is no wider than a join takes. */
function tooNarrow(spec: QuiltSpec['binding'] | QuiltSpec['backing'], what: string, rules: Rules): readonly TooWide[] {
  if (!spec?.fabric) return [];
  const least: Exact = mul(rules.seam, fraction(2));
  return [{ fabric: spec.fabric, for: what, needs: least, places: [spec.place] }];
}
