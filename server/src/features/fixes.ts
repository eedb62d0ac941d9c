/** Mends for problems: the certain one where a rule has it, and silencing what is meant that way. */
import { severityOf } from '../checks/list.ts';
import type { Snapshot } from '../snapshot.ts';
import type { Line } from '../text/document.ts';
import { rangeOf, type Place, type Range } from '../text/place.ts';
import type { Problem, TextEdit } from '../text/problem.ts';
import { offersFor } from './mends-more.ts';

export interface Mend {
  readonly problem: Problem;
  readonly title: string;
  readonly edits: readonly TextEdit[];
  readonly certain: boolean;
}

/** The mends of the problems that touch a range, certain ones first. */
export function mendsIn(snapshot: Snapshot, range: Range): readonly Mend[] {
  const near = snapshot.problems.filter(({ place }) => touches(rangeOf(snapshot.document, place), range));
  const certain = near.flatMap((problem) => (problem.fix ? [{ problem, title: problem.fix.title, edits: problem.fix.edits, certain: true }] : []));
  const offered = near.flatMap((problem) => offersFor(snapshot, problem).map((offer) => ({ problem, ...offer, certain: false })));
  return distinct([...certain, ...offered, ...near.flatMap(silencing)]);
}

/** Problems of several sizes have one mend. */
function distinct(mends: readonly Mend[]): readonly Mend[] {
  const nameOf = ({ title, edits }: Mend): string => [title, ...edits.map(({ place, text }) => `${place.from} ${place.to} ${text}`)].join('\n');
  return [...new Map(mends.toReversed().map((mend) => [nameOf(mend), mend])).values()].reverse();
}

/** All certain mends of a file at once; where two touch, the first in the text. */
export function allMends({ document, problems }: Snapshot): readonly TextEdit[] {
  const taken: Range[] = [];
  return problems.flatMap(({ fix }) => {
    const ranges = fix?.edits.map(({ place }) => rangeOf(document, place)) ?? [];
    const isFree = ranges.every((range) => range && !taken.some((other) => touches(other, range)));
    if (!fix || !isFree || isLoss(fix.title)) return [];
    taken.push(...ranges.filter((range) => range !== undefined));
    return fix.edits;
  });
}

/** What takes text out is done one by one. */
function isLoss(title: string): boolean {
  return title.startsWith('Drop');
}

/** `// allow RULE` at the end of the line, for what is no error. */
function silencing(problem: Problem): readonly Mend[] {
  if (severityOf(problem.rule) === 'error') return [];
  const { line } = problem.place;
  const edit = allowing(line, problem.rule);
  return edit ? [{ problem, title: `Allow ${problem.rule} in this line`, edits: [edit], certain: false }] : [];
}

/** Undefined where the line has another comment already. */
function allowing(line: Line, rule: string): TextEdit | undefined {
  const text = line.text.trimEnd();
  const end: Place = { line, from: text.length, to: line.text.length };
  const comment = /(?:^|\s|[{}])\/\/\s*(.*)$/.exec(text)?.[1];
  if (comment === undefined) return { place: end, text: `  // allow ${rule}` };
  return comment.startsWith('allow ') ? { place: end, text: ` ${rule}` } : undefined;
}

function touches(a: Range | undefined, b: Range): boolean {
  if (!a) return false;
  return !isBefore(a.end, b.start) && !isBefore(b.end, a.start);
}

function isBefore(a: Range['start'], b: Range['start']): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}
