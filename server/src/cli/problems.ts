/** Problems as every report shows them: where in which file, how grave, and what they are related to. */
import { isAbsolute, relative } from 'node:path';
import { severityOf } from '../checks/list.ts';
import type { Severity } from '../checks/rule.ts';
import { documentsOf } from '../features/documents.ts';
import type { Snapshot } from '../snapshot.ts';
import { rangeOf, type Place, type Range } from '../text/place.ts';
import type { RuleId } from '../text/problem.ts';
import type { Io } from './io.ts';

export interface FileReport {
  /** As given on the command line. */
  readonly path: string;
  readonly absolute: string;
  readonly problems: readonly Reported[];
}

export interface Reported {
  readonly rule: RuleId;
  readonly severity: Severity;
  readonly message: string;
  readonly range: Range;
  /** The text of the line where it begins. */
  readonly line: string;
  readonly related: readonly RelatedPlace[];
}

export interface RelatedPlace {
  /** As given for the same file; else relative to the working folder. */
  readonly path: string;
  readonly message: string;
  readonly range: Range;
}

export function reportOf(snapshot: Snapshot, path: string, io: Io): FileReport {
  const documents = documentsOf(snapshot);
  const located = (place: Place): { readonly path: string; readonly range: Range } | undefined => {
    const document = documents.get(place.line.source);
    const range = document && rangeOf(document, place);
    return range && { path: document === snapshot.document ? path : shown(document.source, io), range };
  };
  const problems = snapshot.problems.map((problem): Reported => ({
    rule: problem.rule,
    severity: severityOf(problem.rule),
    message: problem.message,
    range: rangeOf(snapshot.document, problem.place) ?? START,
    line: problem.place.line.text,
    related: (problem.related ?? []).flatMap(({ place, message }) => {
      const at = located(place);
      return at ? [{ ...at, message }] : [];
    }),
  }));
  return { path, absolute: snapshot.document.source, problems };
}

/** How many problems are of each severity. */
export function countsOf(reports: readonly FileReport[]): Readonly<Record<Severity, number>> {
  const counts = { error: 0, warning: 0, hint: 0 };
  for (const report of reports) for (const problem of report.problems) counts[problem.severity] += 1;
  return counts;
}

/** A path as a person in the working folder would write it. */
export function shown(absolute: string, io: Pick<Io, 'folder'>): string {
  const way = relative(io.folder, absolute);
  return way === '' ? '.' : way.startsWith('..') || isAbsolute(way) ? absolute : way;
}

const START: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
