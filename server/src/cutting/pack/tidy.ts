/** Of plans that take as little cloth, one that is less work: without one of the strip widths, or with fewer cuts. */
import { dive } from './dive.ts';
import { compareCounters } from './draft.ts';
import type { Limit, Question } from './question.ts';
import { relax } from './relax.ts';
import { offer, type Search } from './search.ts';
import { isSpent } from './work.ts';

/** Yields between steps; ends when nothing is found any more or the work is spent. */
export function* tidy(search: Search): Generator<void, void> {
  if (search.problem.cloth.kind === 'sheets') return;
  for (;;) {
    const before = search.found.written.counters;
    yield* dropWidths(search);
    yield* saveCuts(search);
    if (isSpent(search.work) || compareCounters(search.found.written.counters, before) === 0) return;
  }
}

/** The width of which there is least first. */
function* dropWidths(search: Search): Generator<void, void> {
  const used = usedSources(search);
  const seldom = [...used].sort((a, b) => a[1] * costOf(search, a[0]) - b[1] * costOf(search, b[0])).map(([source]) => source);
  for (const source of seldom) {
    if (isSpent(search.work)) return;
    const kept = new Set([...usedSources(search).keys()].filter((each) => each !== source));
    if (kept.size === usedSources(search).size) continue;
    yield* dig(search, { ...questionOf(search, kept), ceiling: search.found.draft.total });
  }
}

/** As many strips of each width as there are, but other ones. */
function* saveCuts(search: Search): Generator<void, void> {
  const used = usedSources(search);
  const limits = [...used].map(([source, copies]): Limit => ({ source, sense: -1, bound: copies }));
  yield* dig(search, { ...questionOf(search, new Set(used.keys())), limits, charges: { perPattern: 1, perCut: 1 } });
}

function usedSources({ found }: Search): ReadonlyMap<number, number> {
  const used = new Map<number, number>();
  for (const { column, copies } of found.draft.parts) used.set(column.source, (used.get(column.source) ?? 0) + copies);
  return used;
}

function costOf({ problem }: Search, source: number): number {
  return problem.sources[source]?.cost ?? 0;
}

function questionOf({ problem, found }: Search, kept: ReadonlySet<number>): Question {
  const barred = new Set([...problem.sources.keys()].filter((source) => !kept.has(source)));
  return { problem, wanted: problem.counts, limits: [], columns: found.draft.parts.map(({ column }) => column), ceiling: found.draft.total, barred };
}

function* dig(search: Search, question: Question): Generator<void, void> {
  const { work } = search;
  const relaxation = yield* relax(question, work);
  if (!question.charges && relaxation.value > question.ceiling + 1e-6) return;
  yield* dive(question, relaxation, { work, offer: (draft) => offer(search, draft) });
}
