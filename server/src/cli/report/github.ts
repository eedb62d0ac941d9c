/** For GitHub's workflow runner, which shows them beside the lines of a change. */
import type { Severity } from '../../checks/rule.ts';
import type { FileReport, Reported } from '../problems.ts';

/** One workflow command a problem. */
export function githubReport(reports: readonly FileReport[]): string {
  return reports.flatMap(({ path, problems }) => problems.map((problem) => `${commandOf(path, problem)}\n`)).join('');
}

const COMMANDS: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', hint: 'notice' };

function commandOf(path: string, { severity, rule, message, range }: Reported): string {
  const { start, end } = range;
  const columns = start.line === end.line ? { col: start.character + 1, endColumn: Math.max(end.character, start.character + 1) } : {};
  const properties = { file: path.replaceAll('\\', '/'), line: start.line + 1, endLine: end.line + 1, ...columns, title: rule };
  const written = Object.entries(properties).map(([name, value]) => `${name}=${property(`${value}`)}`);
  return `::${COMMANDS[severity]} ${written.join(',')}::${data(message)}`;
}

function data(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function property(text: string): string {
  return data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
