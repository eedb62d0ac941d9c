/** For people and problem matchers: one problem a line, `path:line:column: severity rule: message`, then the counts. */
import type { Severity } from '../../checks/rule.ts';
import { harmless, painted, printableLine, type Io, type Paint } from '../io.ts';
import { countsOf, type FileReport, type Reported } from '../problems.ts';

/** Lines and columns from 1. On a terminal the source line stands below each problem, and what it is related to. */
export function textReport(reports: readonly FileReport[], io: Io): string {
  return [...reports.map((report) => problemLines(report, io)), `${summaryOf(reports)}\n`].join('');
}

/** The problems of one file, without the counts. */
export function problemLines(report: FileReport, io: Io): string {
  return report.problems.map((problem) => problemLine(report.path, problem, io) + (io.terminal ? details(problem, io) : '')).join('');
}

/** `2 errors, 1 warning in 3 files`, `no problems in 1 file`. */
export function summaryOf(reports: readonly FileReport[]): string {
  const counts = countsOf(reports);
  const found = (['error', 'warning', 'hint'] as const).filter((severity) => counts[severity] > 0).map((severity) => plural(counts[severity], severity));
  return `${found.length === 0 ? 'no problems' : found.join(', ')} in ${plural(reports.length, 'file')}`;
}

export function plural(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}

const PAINTS: Readonly<Record<Severity, Paint>> = { error: 'red', warning: 'yellow', hint: 'blue' };

function problemLine(path: string, { range, severity, rule, message }: Reported, io: Io): string {
  const at = `${harmless(path)}:${range.start.line + 1}:${range.start.character + 1}:`;
  return `${painted(at, 'bold', io)} ${painted(severity, PAINTS[severity], io)} ${rule}: ${harmless(message)}\n`;
}

function details({ range, severity, line, related }: Reported, io: Io): string {
  const { start, end } = range;
  const length = Math.max((end.line === start.line ? end.character : line.length) - start.character, 1);
  const [from, to] = window(line, start.character);
  const marks = '^'.repeat(Math.max(Math.min(length, to - start.character), 1));
  return [
    `    ${printableLine(line.slice(from, to))}`,
    `    ${' '.repeat(start.character - from)}${painted(marks, PAINTS[severity], io)}`,
    ...related.map((each) => `    ${painted(`${harmless(each.path)}:${each.range.start.line + 1}:${each.range.start.character + 1}: ${harmless(each.message)}`, 'dim', io)}`),
    '',
  ].join('\n');
}

const WIDEST = 160;

/** The part of a very long line that is shown. */
function window(line: string, column: number): readonly [from: number, to: number] {
  if (line.length <= WIDEST) return [0, line.length];
  const from = Math.max(Math.min(column - 20, line.length - WIDEST), 0);
  return [from, from + WIDEST];
}
