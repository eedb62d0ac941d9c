/**
 * Binding. Straight: the perimeter and 10" more for joins and corners, in strips across the width: ⌈(perimeter + 10") / width⌉,
 * as Christa Quilts prints it (https://christaquilts.com/quilty-math/) and the patterns of All People Quilt have it; enough for
 * straight joins, which is made sure of where there are very many. Bias: one strip made of a square of the same area,
 * √(length · width) rounded up to a whole inch or centimetre (https://www.quiltersquestiontime.com/blog/how-do-i-calculate-how-much-fabric-i-need-for-bias-binding).
 */
import { ZERO, add, atMost, ceil, div, floor, fraction, less, mul, roundDownTo, roundUpTo, type Exact } from '../exact/number.ts';
import { rootUpTo } from '../exact/roots.ts';
import type { QuiltLayout } from '../geometry/layout.ts';
import type { BindingSpec, Rules } from '../model/pattern.ts';
import { boughtLength } from './buy.ts';
import { countable, stripsToJoin } from './joined.ts';
import type { BindingPlan, Piece } from './plan.ts';
import { wholeUnit } from './units.ts';

/** Inches more than the perimeter. */
export const JOINING_ALLOWANCE = fraction(10);

export interface BindingCut {
  readonly plan: BindingPlan;
  readonly piece: Piece;
}

/** The binding and what it is cut from; undefined where the quilt, the fabric or the strip is too narrow for any. */
export function planBinding(layout: QuiltLayout, spec: BindingSpec, rules: Rules): BindingCut | undefined {
  const perimeter = mul(fraction(2), add(layout.width, layout.height));
  if (!less(ZERO, perimeter) || !less(ZERO, spec.cutWidth)) return undefined;
  const length = add(perimeter, JOINING_ALLOWANCE);
  return spec.bias ? biasBinding(length, spec, rules) : straightBinding(perimeter, length, spec, rules);
}

function straightBinding(perimeter: Exact, length: Exact, spec: BindingSpec, rules: Rules): BindingCut | undefined {
  const { fabric, cutWidth, double } = spec;
  const closed = { length: add(perimeter, mul(fraction(2), rules.seam)), count: 1 };
  const sewn = stripsToJoin([closed], fabric.width, rules.seam);
  const printed = sewn === undefined ? undefined : countable(ceil(div(length, fabric.width)));
  if (sewn === undefined || printed === undefined) return undefined;
  const strips = larger(sewn, printed);
  const width = roundUpTo(cutWidth, rules.roundUp);
  const cut = { width, height: fabric.width };
  return {
    plan: { fabric, width, double, length, strips, buy: bought(mul(width, fraction(strips)), spec, rules) },
    piece: { ...pieceOf(spec, cut, strips), shape: 'strip', method: 'from strips joined', lie: 'across', joined: [closed], exactCut: { ...cut, width: cutWidth } },
  };
}

/** As few squares as fit the fabric, alike. */
function biasBinding(length: Exact, spec: BindingSpec, rules: Rules): BindingCut | undefined {
  const { fabric, cutWidth, double } = spec;
  const whole = wholeUnit(rules.units);
  const largest = roundDownTo(fabric.width, whole);
  if (atMost(largest, ZERO)) return undefined;
  const area = mul(length, cutWidth);
  const strips = countable(ceil(div(area, mul(largest, largest))));
  if (strips === undefined) return undefined;
  const square = rootUpTo(div(area, fraction(strips)), whole);
  const rows = ceil(div(fraction(strips), fraction(floor(div(fabric.width, square)))));
  return {
    plan: { fabric, width: cutWidth, double, length, strips, square, buy: bought(mul(square, fraction(rows)), spec, rules) },
    piece: pieceOf(spec, { width: square, height: square }, strips),
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
