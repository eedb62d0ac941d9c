/**
 * What one fabric is asked for, as the optimiser wants it: whole numbers of one step, kinds of the same size together whatever they
 * are for. The step divides every size where they have a common divisor that is not too fine; else sizes are rounded to the ruler,
 * pieces up and cloth down.
 */
import { asFraction, ceil, div, floor, fraction, ONE, type Exact } from '../exact/number.ts';
import type { Fabric, Rules } from '../model/pattern.ts';
import type { Cloth, Demand } from './pack/types.ts';
import { takenLength } from './buy.ts';
import type { LotWay, Stock } from './stock.ts';

/** A kind of piece that fits its cloth. */
export interface Lot {
  /** An index into the plan's pieces. */
  readonly piece: number;
  readonly count: number;
  readonly ways: readonly LotWay[];
}

/** Plain data: it can be handed to another thread. */
export interface Task {
  readonly demand: readonly Demand[];
  readonly cloth: Cloth;
  /** What is bought is ⌈total · over / under⌉ steps; absent where that is no fraction. */
  readonly bought?: { readonly over: bigint; readonly under: bigint };
}

export interface Order {
  readonly task: Task;
  /** Equal for equal tasks. */
  readonly key: string;
  readonly step: Exact;
  /** For each demand, whose pieces it is. `flipped`: the piece's height is the demand's width. */
  readonly members: readonly (readonly Member[])[];
}

export interface Member {
  readonly piece: number;
  readonly count: number;
  readonly flipped: boolean;
}

/** Undefined where there is nothing to cut. */
export function orderFor(all: readonly Lot[], stock: Stock, fabric: Fabric, rules: Rules): Order | undefined {
  const step = all.length > 0 ? stepFor(all, stock, rules) : ONE;
  const lots = all.filter((lot) => isCountable(lot, step));
  if (lots.length === 0) return undefined;
  const room = clothIn(stock, step);
  const groups = new Map<string, { readonly demand: Demand; readonly members: Member[] }>();
  for (const { piece, count, ways } of lots) {
    const { flipped, ...size } = sizeIn(ways, step, room);
    const name = `${size.width} ${size.height} ${size.mayTurn}`;
    const group = groups.get(name);
    if (group) group.members.push({ piece, count, flipped });
    else groups.set(name, { demand: { ...size, count: 0 }, members: [{ piece, count, flipped }] });
  }
  const sorted = [...groups.values()].map(({ demand, members }) => ({ members, demand: { ...demand, count: members.reduce((total, { count }) => total + count, 0) } })).sort((a, b) => inOrder(a.demand, b.demand));
  const task = { demand: sorted.map(({ demand }) => demand), cloth: room, ...boughtIn(stock, step, fabric, rules) };
  return { task, key: keyOf(task), step, members: sorted.map(({ members }) => members) };
}

/** So that the order of the text does not matter. */
function inOrder(a: Demand, b: Demand): number {
  return b.height - a.height || b.width - a.width || Number(a.mayTurn) - Number(b.mayTurn);
}

function keyOf({ demand, cloth, bought }: Task): string {
  return JSON.stringify([demand, cloth, bought ? [`${bought.over}`, `${bought.under}`] : null]);
}

/** As the demand has it, the first way lies unturned. A piece that may lie either way has its shorter side first. */
function sizeIn(ways: readonly LotWay[], step: Exact, { width: room }: Cloth): Omit<Demand, 'count'> & { readonly flipped: boolean } {
  const way = ways.find(({ turned }) => !turned) ?? ways[0];
  if (!way) throw new RangeError('a piece that does not fit');
  const [across, down] = [steps(way.across, step), steps(way.down, step)];
  if (ways.length > 1) return across <= down ? { width: across, height: down, mayTurn: true, flipped: false } : { width: down, height: across, mayTurn: true, flipped: true };
  return { width: across > room ? room : across, height: down, mayTurn: false, flipped: way.turned };
}

/** No quilt comes near it: what is past it is not planned, so that all sums are safe integers. */
const MOST = 2n ** 44n;

function isCountable({ count, ways }: Lot, step: Exact): boolean {
  return ways.every(({ down }) => BigInt(count) * ceil(div(down, step)) < MOST);
}

function clothIn(stock: Stock, step: Exact): Cloth {
  const width = room(stock.across, step);
  if (stock.kind === 'length') return { kind: 'length', width };
  const height = room(stock.down, step);
  return stock.kind === 'strips' ? { kind: 'strips', width, heights: [height] } : { kind: 'sheets', width, height, eitherWay: true };
}

function room(length: Exact, step: Exact): number {
  const found = floor(div(length, step));
  return Number(found < MOST_STEPS ? found : MOST_STEPS);
}

function steps(length: Exact, step: Exact): number {
  return Number(ceil(div(length, step)));
}

/** Finer than this a width is not divided: the search works through every step of it. */
const MOST_STEPS = 8192n;

function stepFor(lots: readonly Lot[], stock: Stock, { roundUp }: Rules): Exact {
  const cloth = stock.kind === 'length' ? [stock.across] : [stock.across, stock.down];
  const step = commonDivisor([...cloth, ...lots.flatMap(({ ways }) => ways.flatMap(({ across, down }) => [across, down]))]);
  return step && cloth.every((length) => floor(div(length, step)) <= MOST_STEPS) ? step : roundUp;
}

/** The largest length of which all are multiples; undefined when there is none. */
function commonDivisor(lengths: readonly Exact[]): Exact | undefined {
  let [over, under] = [0n, 1n];
  for (const length of lengths) {
    const found = asFraction(length);
    if (!found) return undefined;
    over = divisorOf(over * found.d, found.n * under);
    under *= found.d;
    const shared = divisorOf(over, under);
    [over, under] = [over / shared, under / shared];
  }
  return over > 0n ? fraction(over, under) : undefined;
}

function divisorOf(a: bigint, b: bigint): bigint {
  return b === 0n ? a : divisorOf(b, a % b);
}

/** Lengths are bought with spare and shrinkage in steps of `yardage`; sheets and strips one by one. */
function boughtIn({ kind }: Stock, step: Exact, { shrink }: Fabric, { spare, yardage }: Rules): Pick<Task, 'bought'> {
  if (kind !== 'length') return {};
  const found = asFraction(div(takenLength(step, { shrink, spare }), yardage));
  return found ? { bought: { over: found.n, under: found.d } } : {};
}
