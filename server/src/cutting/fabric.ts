/** The plan of one fabric: its pieces in strips on its cloth, how much of that is bought, and how near it is to the least there can be. */
import { compare, equals, fraction, max, min, mul, sum, type Exact } from '../exact/number.ts';
import type { Fabric, Rules } from '../model/pattern.ts';
import { clothsOf, stripsIn } from './allot.ts';
import { areaBound, lowerBound } from './bound.ts';
import { boughtLength } from './buy.ts';
import { orderFor, type Lot, type Order } from './demand.ts';
import type { Cloth, CountedCloth, FabricPlan, Piece, TooWide } from './plan.ts';
import { answerFor, type Answer, type Effort } from './search.ts';
import { needOf, stockOf, stripLength, waysOf, type Stock } from './stock.ts';
import { cutsAtTable } from './table.ts';
import { usualYardage } from './units.ts';

/** The plan for all pieces that fit the fabric. */
export function planFabric(fabric: Fabric, pieces: readonly Piece[], rules: Rules, effort: Effort): FabricPlan {
  const stock = stockOf(fabric);
  const order = orderOf(fabric, pieces, rules);
  const answer = order && answerFor(order, effort);
  const cloths = order && answer ? clothsOf(answer.packing, order, stock) : [];
  const strips = stripsIn(cloths);
  const length = sum(strips.map(({ width, count }) => mul(width, fraction(count))));
  const bound = order && answer ? boundOf(lotsOf(fabric, pieces), { stock, order, answer, length, fabric }) : length;
  const buying = { ...rules, shrink: fabric.shrink };
  const buy = boughtLength(length, buying);
  const counted = countedOf(fabric, stock, cloths, answer);
  return {
    fabric,
    strips,
    cloths,
    length,
    lowerBound: bound,
    isLeast: answer?.packing.provenOptimal ?? true,
    isLeastBought: counted ? counted.count <= counted.least : equals(buy, boughtLength(bound, buying)),
    buy,
    buyElsewhere: boughtLength(length, { ...buying, yardage: usualYardage(rules.units === 'inches' ? 'centimetres' : 'inches') }),
    ...(counted ? { counted } : {}),
    cuts: cutsAtTable(cloths, pieces, fabric.source.kind, rules.layers ?? 1),
    isBest: answer?.isBest ?? true,
  };
}

/** What the optimiser is asked for a fabric; undefined where nothing is cut from it. */
export function orderOf(fabric: Fabric, pieces: readonly Piece[], rules: Rules): Order | undefined {
  return orderFor(lotsOf(fabric, pieces), stockOf(fabric), fabric, rules);
}

function lotsOf(fabric: Fabric, pieces: readonly Piece[]): readonly Lot[] {
  const stock = stockOf(fabric);
  return pieces.flatMap((piece, index): Lot[] => {
    const ways = piece.fabric.name === fabric.name ? waysOf(piece, stock) : [];
    return ways.length > 0 ? [{ piece: index, count: piece.cutCount, ways }] : [];
  });
}

interface Found {
  readonly stock: Stock;
  readonly order: Order;
  readonly answer: Answer;
  readonly length: Exact;
  readonly fabric: Fabric;
}

/** The search's bound and those that hold for every way of cutting; for cloth that is counted, in widths of its longest strips. */
function boundOf(lots: readonly Lot[], { stock, order, answer, length, fabric }: Found): Exact {
  const room = stock.kind === 'sheets' ? max(stock.across, stock.down, stripLength(fabric)) : stock.across;
  const simple = lots.length > MOST_FOR_ROWS || stock.kind === 'sheets' ? [] : [lowerBound(lots, room)];
  const searched = stock.kind === 'sheets' ? [] : [mul(order.step, fraction(answer.packing.lowerBound))];
  const [first, ...others] = [...simple, ...searched];
  return first ? min(length, max(first, ...others)) : areaBound(lots, room);
}

/** Every piece is compared with every other there. */
const MOST_FOR_ROWS = 150;

const KINDS = { fat_quarters: 'fat quarter', strips: 'strip', squares: 'square', piece: 'piece' } as const;

function countedOf({ source }: Fabric, stock: Stock, cloths: readonly Cloth[], answer: Answer | undefined): CountedCloth | undefined {
  if (source.kind === 'yardage' || stock.kind === 'length') return undefined;
  const count = cloths.reduce((total, cloth) => total + cloth.count, 0);
  const lowest = answer?.packing.lowerBound ?? 0;
  const [strip] = answer?.packing.strips ?? [];
  const least = stock.kind === 'strips' && strip ? Math.ceil(lowest / strip.height) : lowest;
  return { kind: KINDS[source.kind], width: stock.across, height: stock.down, count, least, ...(source.kind === 'piece' ? { atHand: source.count ?? 1 } : {}) };
}

/** Pieces that fit their cloth neither way. */
export function piecesTooLarge(pieces: readonly Piece[]): readonly TooWide[] {
  return pieces.flatMap((piece, index): TooWide[] => {
    const { fabric, cut, lie, places } = piece;
    const stock = stockOf(fabric);
    if (waysOf(piece, stock).length > 0) return [];
    const narrow = compare(cut.width, cut.height) < 0 ? cut.width : cut.height;
    const needs = lie === 'along' ? cut.width : lie === 'across' ? cut.height : narrow;
    const found = { fabric, piece: index, for: piece.for, needs, places };
    if (fabric.source.kind === 'yardage' || stock.kind === 'length') return [found];
    return [{ ...found, cloth: { kind: KINDS[fabric.source.kind], needs: needOf(piece, stock), has: { width: stock.across, height: stock.down } } }];
  });
}
