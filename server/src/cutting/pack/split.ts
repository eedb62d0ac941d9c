/**
 * Divides the plans of a part: by how many strips of a height there are, then by how many pieces of a kind the strips of a height
 * hold, and where all those are whole, by whether strips can hold them. Every whole plan of the part is in one of the new ones.
 */
import { clipped, columnOf, without } from './column.ts';
import { draftOf, type Copies } from './draft.ts';
import { amountUnder, type Limit, type Question } from './question.ts';
import type { Relaxation } from './relax.ts';
import { offer, type Search } from './search.ts';
import { fitWhole } from './whole.ts';

type Limits = readonly Limit[];

interface Known {
  readonly bound: number;
  readonly tries: number;
}

/** Limits for each new part; none when there is no better plan in the part; `unknown` when that is not found out. */
export function split(search: Search, question: Question, { parts }: Relaxation, known: Known): readonly Limits[] | 'unknown' {
  const priced = question.problem.sources.flatMap((source, index) => (source.sheet ? [] : [{ source: index, weight: source.cost }]));
  if (priced.length === 0) return 'unknown';
  const strips = priced.map(({ source, weight }) => ({ source, weight, amount: sumUnder({ source, sense: 1, bound: 0 }, parts) }));
  const best = mostFractional(strips);
  if (best) return halves(best);
  const pieces = priced.flatMap(({ source, weight }) => question.wanted.map((_, item) => ({ source, item, weight, amount: sumUnder({ source, item, sense: 1, bound: 0 }, parts) })));
  const other = mostFractional(pieces);
  return other ? halves(other) : splitWhole(search, strips, pieces, known);
}

interface Amount {
  readonly source: number;
  readonly item?: number;
  readonly weight: number;
  readonly amount: number;
}

function sumUnder(limit: Limit, parts: Relaxation['parts']): number {
  return parts.reduce((total, { column, amount }) => total + amount * amountUnder(limit, column), 0);
}

function mostFractional(amounts: readonly Amount[]): Amount | undefined {
  const far = ({ amount, weight }: Amount): number => Math.min(amount - Math.floor(amount), Math.ceil(amount) - amount) * weight;
  return amounts.filter((each) => far(each) > 1e-5 * each.weight).reduce<Amount | undefined>((best, each) => (!best || far(each) > far(best) ? each : best), undefined);
}

function halves({ source, item, amount }: Amount): readonly Limits[] {
  const on = item === undefined ? { source } : { source, item };
  return [[{ ...on, sense: 1, bound: Math.ceil(amount) }], [{ ...on, sense: -1, bound: Math.floor(amount) }]];
}

/** All numbers are whole: are there such strips? If so it is a plan. If not, one strip more of the height or one piece less in it. */
function splitWhole(search: Search, strips: readonly Amount[], pieces: readonly Amount[], { bound, tries }: Known): readonly Limits[] | 'unknown' {
  const copies: Copies[] = [];
  let wanted = search.problem.counts;
  for (const { source, amount } of strips) {
    const kind = search.problem.sources[source]?.strips[0];
    const held = pieces.filter((each) => each.source === source).map((each) => Math.min(Math.round(each.amount), search.problem.counts[each.item ?? 0] as number));
    const answer = kind ? fitWhole(kind, held, Math.round(amount), tries, search.work) : 'unknown';
    if (!kind || answer === 'unknown') return 'unknown';
    if (answer === 'never') return otherwise(source, Math.round(amount), held);
    for (const takes of answer) {
      const column = clipped(columnOf(source, [{ kind, takes }]), wanted);
      if (!column) continue;
      wanted = without(wanted, column, 1);
      copies.push({ column, copies: 1 });
    }
  }
  if (wanted.some((count) => count > 0)) return 'unknown';
  return offer(search, draftOf(search.problem, copies)) <= bound ? [] : 'unknown';
}

/** So many strips and no more do not hold all these pieces: all plans that ask for less of something. */
function otherwise(source: number, strips: number, held: readonly number[]): readonly Limits[] {
  const items = held.flatMap((count, item) => (count > 0 ? [{ item, count }] : []));
  const enough = items.map(({ item, count }): Limit => ({ source, item, sense: 1, bound: count }));
  const fewer = items.map(({ item, count }, i): Limits => [...enough.slice(0, i), { source, item, sense: -1, bound: count - 1 }, { source, sense: -1, bound: strips }]);
  return [[{ source, sense: 1, bound: strips + 1 }], ...fewer];
}
