/**
 * Whether so many strips of one kind hold so many pieces of each item, by trying: always a strip with the first item still wanted,
 * every filling to which nothing can be added, and no state of what is left twice.
 */
import { without } from './column.ts';
import type { Take } from './fill.ts';
import { widthOf } from './options.ts';
import { commonDivisor, type StripKind } from './problem.ts';
import type { Work } from './work.ts';

/** The strips' takes; `never` when it is proven that they do not hold it; `unknown` when it is not found out in so many steps. */
export type Answer = readonly (readonly Take[])[] | 'never' | 'unknown';

interface Trial {
  readonly kind: StripKind;
  /** Items, the widest first. */
  readonly order: readonly number[];
  /** For each item, the least share of a strip that a piece takes, in parts of which a strip has `parts`; only to give up early. */
  readonly share: readonly number[];
  readonly parts: number;
  readonly failed: Set<string>;
  steps: number;
}

export function fitWhole(kind: StripKind, wanted: readonly number[], strips: number, steps: number, work: Work): Answer {
  if (strips > MOST_STRIPS) return 'unknown';
  const order = wanted.flatMap((count, item) => (count > 0 ? [item] : [])).sort((a, b) => leastWidth(kind, b) - leastWidth(kind, a) || a - b);
  const trial: Trial = { kind, order, ...sharesIn(kind, wanted), failed: new Set(), steps };
  const found = tryStrips(trial, wanted, strips);
  work.spent += (steps - trial.steps) * STEP;
  return found ?? (trial.steps > 0 ? 'never' : 'unknown');
}

const MOST_STRIPS = 200;

/** Roughly what one step costs in steps of work. */
const STEP = 200;

function leastWidth({ options }: StripKind, item: number): number {
  return Math.min(...(options[item]?.ways.map(({ steps, stack }) => steps / stack) ?? [0]));
}

/** All shares 0 where the stacks have no common multiple that is small enough to count with. */
function sharesIn({ options, room }: StripKind, wanted: readonly number[]): Pick<Trial, 'share' | 'parts'> {
  const ways = options.flatMap((option, item) => (option && (wanted[item] as number) > 0 ? option.ways : []));
  const multiple = ways.reduce((product, { stack }) => (product > 1e6 ? product : (product * stack) / commonDivisor(product, stack)), 1);
  const isSmall = ways.every(({ stack }) => multiple % stack === 0);
  return { share: options.map((option) => (option && isSmall ? Math.min(...option.ways.map(({ steps, stack }) => steps * (multiple / stack))) : 0)), parts: room * multiple };
}

function tryStrips(trial: Trial, wanted: readonly number[], strips: number): readonly (readonly Take[])[] | undefined {
  const { order, failed } = trial;
  const first = order.find((item) => (wanted[item] as number) > 0);
  if (first === undefined) return [];
  const name = `${strips} ${order.map((item) => wanted[item] as number).join(' ')}`;
  if (trial.steps <= 0 || failed.has(name) || needed(trial, wanted) > strips * trial.parts) return undefined;
  for (const takes of fillings(trial, wanted, first)) {
    const rest = strips > 0 ? tryStrips(trial, without(wanted, { takes }, 1), strips - 1) : undefined;
    if (rest) return [takes, ...rest];
    if (trial.steps <= 0) return undefined;
  }
  failed.add(name);
  return undefined;
}

function needed({ order, share }: Trial, wanted: readonly number[]): number {
  return order.reduce((total, item) => total + (share[item] as number) * (wanted[item] as number), 0);
}

/** All fillings that hold the first item and to which no piece can be added, the fullest of an item first. */
function* fillings(trial: Trial, wanted: readonly number[], first: number): Generator<readonly Take[]> {
  const { kind, order } = trial;
  const visit = function* (at: number, left: number, takes: readonly Take[]): Generator<readonly Take[]> {
    trial.steps -= 1;
    const item = order[at];
    if (item === undefined) {
      if (!canHoldMore(kind, order, wanted, left, takes)) yield takes;
      return;
    }
    const option = kind.options[item];
    const most = option ? Math.min(wanted[item] as number, option.pieces[option.widths.findLastIndex((width) => width <= left)] ?? 0) : 0;
    for (let pieces = most; pieces >= (item === first ? 1 : 0) && trial.steps > 0; pieces -= 1) {
      yield* visit(at + 1, left - (option ? widthOf(option, pieces) : 0), pieces > 0 ? [...takes, { item, pieces }] : takes);
    }
  };
  yield* visit(0, kind.room, []);
}

function canHoldMore(kind: StripKind, order: readonly number[], wanted: readonly number[], left: number, takes: readonly Take[]): boolean {
  return order.some((item) => {
    const option = kind.options[item];
    const held = takes.find((take) => take.item === item)?.pieces ?? 0;
    return option !== undefined && held < (wanted[item] as number) && widthOf(option, held + 1) - widthOf(option, held) <= left;
  });
}
