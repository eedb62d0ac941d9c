/** From the quilt in the plane to what is cut from which fabric: pieces, strips, lengths to buy, backing, batting, binding. */
import { compare, fraction, isZero, mul, type Exact } from '../exact/number.ts';
import type { QuiltLayout } from '../geometry/layout.ts';
import { usualOverhang } from '../model/finishing.ts';
import type { Fabric, Pattern, QuiltSpec, Rules } from '../model/pattern.ts';
import { planBacking, planBatting } from './backing.ts';
import { planBinding } from './binding.ts';
import { planBorders } from './borders.ts';
import { lowerBound } from './bound.ts';
import { boughtLength } from './buy.ts';
import { planDrop } from './drop.ts';
import { needsOf } from './needs.ts';
import { piecesOf } from './pieces.ts';
import type { CuttingPlan, FabricPlan, Piece, TooWide, Unplanned } from './plan.ts';
import { planRoles } from './roles.ts';
import { lengthOf, planStrips, waysOf, type Lot } from './strips.ts';
import { soundRules } from './units.ts';

/**
 * The plan for a quilt in one size. Never throws on what a pattern says: what cannot be cut from its fabric is in `tooWide`,
 * and a fabric whose length is not worked out yet is in `unplanned`.
 */
export function planCutting(layout: QuiltLayout, pattern: Pattern): CuttingPlan {
  const rules = soundRules(pattern.rules);
  const { backing, batting, binding } = layout.spec;
  const borders = planBorders(layout, rules);
  const bound = binding && planBinding(layout, binding, rules);
  const drop = planDrop(layout);
  const isEmpty = isZero(layout.width);
  // Every quilt has a backing and a batting, whether the pattern speaks of them or not.
  const unsaid = { overhang: usualOverhang(rules.units) };
  const backed = backing ?? !isEmpty ? planBacking(layout, backing ?? unsaid, rules) : undefined;
  const padded = batting ?? !isEmpty ? planBatting(layout, batting ?? unsaid, rules) : undefined;
  const pieces = inOrder([...piecesOf(needsOf(layout, rules), rules), ...borders.pieces, ...(bound?.pieces ?? [])], pattern);
  const fabrics = [...new Map(pieces.map(({ fabric }) => [fabric.name, fabric])).values()];
  // Strips are searched for when somebody asks: most checks need the pieces only, at every keystroke.
  let plans: readonly FabricPlan[] | undefined;
  return {
    pieces,
    get fabrics() {
      return (plans ??= fabrics.filter((fabric) => !whyUnplanned(fabric)).map((fabric) => planFabric(fabric, pieces, rules)));
    },
    get roles() {
      return planRoles(pieces, this.fabrics, pattern);
    },
    borders: borders.cuts,
    ...(backed ? { backing: backed } : {}),
    ...(padded ? { batting: padded } : {}),
    ...(bound ? { binding: bound.plan } : {}),
    ...(drop ? { drop } : {}),
    tooWide: [...piecesTooWide(pieces), ...(bound ? [] : tooNarrow(binding, 'binding', rules)), ...(backed ? [] : tooNarrow(backing, 'backing', rules))],
    unplanned: fabrics.flatMap((fabric) => whyUnplanned(fabric) ?? []),
  };
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

/** Blocks as they come up, the setting, the sashing; then the borders from the inside out and the binding. */
function usesInOrder(pieces: readonly Piece[]): ReadonlyMap<string, number> {
  const uses = [...new Set(pieces.map((piece) => piece.for))];
  const isLast = (use: string): boolean => /^border\b/.test(use) || use === 'binding';
  const borders = uses.filter((use) => /^border\b/.test(use)).sort((a, b) => Number(a.slice(7)) - Number(b.slice(7)));
  return ranks([...uses.filter((use) => !isLast(use)), ...borders, 'binding']);
}

function ranks(names: readonly string[]): ReadonlyMap<string, number> {
  return new Map([...new Set(names)].map((name, rank) => [name, rank]));
}

function planFabric(fabric: Fabric, pieces: readonly Piece[], rules: Rules): FabricPlan {
  const lots = pieces.flatMap((piece, index): Lot[] => {
    const ways = piece.fabric.name === fabric.name ? waysOf(piece, fabric.width) : [];
    return ways.length > 0 ? [{ piece: index, count: piece.cutCount, ways }] : [];
  });
  const strips = planStrips(lots, fabric.width);
  const length = lengthOf(strips);
  return { fabric, strips, length, lowerBound: lowerBound(lots, fabric.width), buy: boughtLength(length, { ...rules, shrink: fabric.shrink }) };
}

const SOURCES = { fat_quarters: 'fat quarters', piece: 'a piece', strips: 'strips', squares: 'squares' } as const;

function whyUnplanned(fabric: Fabric): Unplanned | undefined {
  return fabric.source.kind === 'yardage' ? undefined : { fabric, why: SOURCES[fabric.source.kind] };
}

function piecesTooWide(pieces: readonly Piece[]): readonly TooWide[] {
  return pieces.flatMap((piece, index) => {
    const { fabric, cut, lie, places } = piece;
    if (whyUnplanned(fabric) || waysOf(piece, fabric.width).length > 0) return [];
    const narrow = compare(cut.width, cut.height) < 0 ? cut.width : cut.height;
    const needs = lie === 'along' ? cut.width : lie === 'across' ? cut.height : narrow;
    return [{ fabric, piece: index, for: piece.for, needs, places }];
  });
}

/** Backing or binding of which nothing can be sewn: the fabric is no wider than a join takes. */
function tooNarrow(spec: QuiltSpec['binding'] | QuiltSpec['backing'], what: string, rules: Rules): readonly TooWide[] {
  if (!spec?.fabric) return [];
  const least: Exact = mul(rules.seam, fraction(2));
  return [{ fabric: spec.fabric, for: what, needs: least, places: [spec.place] }];
}
