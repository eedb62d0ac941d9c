/**
 * Binding. Straight: the perimeter and 10" more for joins and corners, in strips across the width: ⌈(perimeter + 10") / width⌉,
 * as Christa Quilts prints it (https://christaquilts.com/quilty-math/) and the patterns of All People Quilt have it; enough for
 * straight joins, which is made sure of where there are very many. Bias: one strip made of a square of the same area,
 * √(length · width) rounded up to a whole inch or centimetre (https://www.quiltersquestiontime.com/blog/how-do-i-calculate-how-much-fabric-i-need-for-bias-binding).
 */
import { toInches, type UnitSystem } from '../exact/length.ts';
import { ZERO, add, atMost, ceil, div, floor, fraction, less, min, mul, roundDownTo, roundUpTo, sub, type Exact } from '../exact/number.ts';
import { rootUpTo } from '../exact/roots.ts';
import type { QuiltLayout } from '../geometry/layout.ts';
import type { BindingSpec, Fabric, Rules } from '../model/pattern.ts';
import { boughtLength } from './buy.ts';
import { countable, stripsToJoin } from './joined.ts';
import type { BindingPlan, Piece } from './plan.ts';
import { sharesOf } from './roles.ts';
import { stockOf, stripLength } from './stock.ts';
import { wholeUnit } from './units.ts';

/** What a binding is longer than the perimeter, for joins and corners: 10" (the sources above), 25 cm in a metric pattern. */
export function joiningAllowance(units: UnitSystem): Exact {
  return units === 'inches' ? fraction(10) : toInches(fraction(25), 'cm');
}

export interface BindingCut {
  readonly plan: BindingPlan;
  /** One; of an assorted role, one for each print. */
  readonly pieces: readonly Piece[];
}

/** The binding and what it is cut from; undefined where the quilt, the fabric or the strip is too narrow for any. */
export function planBinding(layout: QuiltLayout, spec: BindingSpec, rules: Rules): BindingCut | undefined {
  const perimeter = mul(fraction(2), add(layout.width, layout.height));
  if (!less(ZERO, perimeter) || !less(ZERO, spec.cutWidth)) return undefined;
  const length = add(perimeter, joiningAllowance(rules.units));
  const fabrics = spec.fabric.assorted?.prints ?? [];
  const reach = (of: (fabric: Fabric) => Exact): Exact => min(of(fabrics[0] ?? spec.fabric), ...fabrics.map(of));
  return spec.bias ? biasBinding(length, spec, rules, reach(squareRoom)) : straightBinding({ perimeter, length, reach: reach(stripLength) }, spec, rules);
}

/** The side of the largest square that can be cut from a fabric. */
function squareRoom(fabric: Fabric): Exact {
  const stock = stockOf(fabric);
  return stock.kind === 'length' ? stock.across : min(stock.across, stock.down);
}

/** The strips or squares; those of an assorted role are dealt to its prints, and what each gives is joined to the rest. */
function dealt(piece: Piece, { fabric }: BindingSpec, rules: Rules): readonly Piece[] {
  if (!fabric.assorted) return [piece];
  const join = mul(rules.seam, fraction(2));
  return sharesOf(fabric, piece.cutCount).map(({ fabric: print, count }): Piece => {
    const own = { ...piece, fabric: print, role: fabric.name, cutCount: count };
    if (!piece.joined) return { ...own, pieces: count };
    const height = stripLength(print);
    const length = sub(mul(height, fraction(count)), mul(join, fraction(count - 1)));
    return { ...own, cut: { ...piece.cut, height }, exactCut: { ...piece.exactCut, height }, joined: [{ length, count: 1 }], pieces: count };
  });
}

interface Around {
  readonly perimeter: Exact;
  readonly length: Exact;
  /** How long the strips are that it is joined from. */
  readonly reach: Exact;
}

function straightBinding({ perimeter, length, reach }: Around, spec: BindingSpec, rules: Rules): BindingCut | undefined {
  const { fabric, cutWidth, double } = spec;
  const closed = { length: add(perimeter, mul(fraction(2), rules.seam)), count: 1 };
  const sewn = stripsToJoin([closed], reach, rules.seam);
  const printed = sewn === undefined ? undefined : countable(ceil(div(length, reach)));
  if (sewn === undefined || printed === undefined) return undefined;
  const strips = larger(sewn, printed);
  const width = roundUpTo(cutWidth, rules.roundUp);
  const cut = { width, height: reach };
  return {
    plan: { fabric, width, double, length, strips, buy: bought(mul(width, fraction(strips)), spec, rules) },
    pieces: dealt({ ...pieceOf(spec, cut, strips), shape: 'strip', method: 'from strips joined', lie: 'across', joined: [closed], exactCut: { ...cut, width: cutWidth } }, spec, rules),
  };
}

/** As few squares as fit the fabric, alike. */
function biasBinding(length: Exact, spec: BindingSpec, rules: Rules, reach: Exact): BindingCut | undefined {
  const { fabric, cutWidth, double } = spec;
  const whole = wholeUnit(rules.units);
  const largest = roundDownTo(reach, whole);
  if (atMost(largest, ZERO)) return undefined;
  const area = mul(length, cutWidth);
  const strips = countable(ceil(div(area, mul(largest, largest))));
  if (strips === undefined) return undefined;
  const square = rootUpTo(div(area, fraction(strips)), whole);
  const rows = ceil(div(fraction(strips), fraction(floor(div(reach, square)))));
  return {
    plan: { fabric, width: cutWidth, double, length, strips, square, buy: bought(mul(square, fraction(rows)), spec, rules) },
    pieces: dealt(pieceOf(spec, { width: square, height: square }, strips), spec, rules),
  };
}

function pieceOf({ fabric, place }: BindingSpec, cut: Piece['cut'], count: number): Piece {
  const { width, height } = cut;
  return {
    fabric,
    shape: 'square',
    finished: cut,
    exactCut: cut,
    cut,
    cutCount: count,
    piecesPerCut: 1,
    pieces: count,
    for: 'binding',
    outline: [{ x: ZERO, y: ZERO }, { x: width, y: ZERO }, { x: width, y: height }, { x: ZERO, y: height }],
    places: [place],
    method: 'bias',
  };
}

function bought(length: Exact, { fabric }: BindingSpec, rules: Rules): Exact {
  return boughtLength(length, { ...rules, shrink: fabric.shrink });
}

function larger(a: number, b: number): number {
  return a > b ? a : b;
}
