/**
 * From the optimiser's answer back to pieces: each strip is told whose pieces it gives. Kinds of the same size are dealt out in
 * the order of the plan, so a strip may serve two blocks; where that divides a segment, the second is said to continue the first.
 */
import { fraction, key, mul, type Exact } from '../exact/number.ts';
import type { Order } from './demand.ts';
import type { Packing, Strip as PackedStrip, Subcut as PackedSubcut } from './pack/types.ts';
import type { Cloth, Strip, Subcut } from './plan.ts';
import type { Stock } from './stock.ts';

/** The cloth as it is cut, in cutting order. */
export function clothsOf(packing: Packing, order: Order, stock: Stock): readonly Cloth[] {
  const dealer = dealerFor(order);
  if (stock.kind === 'sheets') return alike(packing.sheets.flatMap((sheet) => Array.from({ length: sheet.count }, (): Cloth => ({ count: 1, across: stock.across, down: stock.down, ...(sheet.turned ? { turned: true as const } : {}), strips: sheet.strips.flatMap((strip) => dealt(strip, order, dealer)) }))));
  const strips = packing.strips.flatMap((strip) => dealt(strip, order, dealer));
  if (strips.length === 0) return [];
  if (stock.kind === 'strips') return strips.map(({ count, ...strip }) => ({ count, across: stock.across, down: stock.down, strips: [{ ...strip, count: 1 }] }));
  return [{ count: 1, across: stock.across, down: mul(order.step, fraction(packing.total)), strips }];
}

/** All strips of all cloth, those alike together, the widest first. */
export function stripsIn(cloths: readonly Cloth[]): readonly Strip[] {
  const found = new Map<string, Strip>();
  for (const cloth of cloths) {
    for (const strip of cloth.strips) {
      const name = nameOf(strip);
      found.set(name, { ...strip, count: strip.count * cloth.count + (found.get(name)?.count ?? 0) });
    }
  }
  return [...found.values()];
}

function nameOf({ width, subcuts }: Strip): string {
  return `${key(width)} ${JSON.stringify(subcuts)}`;
}

function alike(cloths: readonly Cloth[]): readonly Cloth[] {
  const found = new Map<string, Cloth>();
  for (const cloth of cloths) {
    const name = `${cloth.turned === true} ${cloth.strips.map((strip) => `${strip.count} ${nameOf(strip)}`).join('|')}`;
    found.set(name, { ...cloth, count: cloth.count + (found.get(name)?.count ?? 0) });
  }
  return [...found.values()];
}

/** What is still to be given to each member of each demand, the first first. */
type Dealer = readonly { piece: number; flipped: boolean; left: number }[][];

function dealerFor({ members }: Order): Dealer {
  return members.map((each) => each.map(({ piece, flipped, count }) => ({ piece, flipped, left: count })));
}

function dealt(strip: PackedStrip, order: Order, dealer: Dealer): readonly Strip[] {
  const width: Exact = mul(order.step, fraction(strip.height));
  const done: Strip[] = [];
  for (let left = strip.count; left > 0; ) {
    const times = Math.max(1, Math.min(left, ...strip.subcuts.map(({ piece }) => wholeStrips(strip, piece, dealer))));
    done.push({ width, count: times, subcuts: strip.subcuts.flatMap((subcut) => taken(subcut, dealer, times)) });
    left -= times;
  }
  return done;
}

/** From how many strips like it all of a demand can go to one member. */
function wholeStrips({ subcuts }: PackedStrip, demand: number, dealer: Dealer): number {
  const each = subcuts.reduce((total, { piece, count }) => (piece === demand ? total + count : total), 0);
  const next = dealer[demand]?.find(({ left }) => left > 0);
  return next ? Math.floor(next.left / each) : 1;
}

function taken({ piece: demand, count, turned, stacked = 1 }: PackedSubcut, dealer: Dealer, times: number): readonly Subcut[] {
  const cuts: Subcut[] = [];
  let done = 0;
  for (const member of dealer[demand] ?? []) {
    const here = Math.min(member.left, (count - done) * times) / times;
    if (here < 1) continue;
    member.left -= here * times;
    const lies = (turned === true) !== member.flipped;
    cuts.push({
      piece: member.piece,
      count: here,
      ...(lies ? { turned: true as const } : {}),
      ...(stacked > 1 && count > 1 ? { stacked } : {}),
      ...(done % stacked > 0 ? { continues: true as const } : {}),
    });
    done += here;
    if (done === count) break;
  }
  return cuts;
}
