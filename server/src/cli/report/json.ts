/** For programs. The shape is a contract: see the handbook's page of the command line. */
import type { FileReport } from '../problems.ts';

/** Lines and characters (UTF-16) from 0. What is related to a problem and stands in another file names its `path`. */
export function jsonReport(reports: readonly FileReport[]): string {
  const files = reports.map(({ path, problems }) => ({
    path,
    problems: problems.map(({ rule, severity, message, range, related }) => ({
      rule,
      severity,
      message,
      range,
      related: related.map((each) => ({ message: each.message, range: each.range, ...(each.path !== path && { path: each.path }) })),
    })),
  }));
  return `${JSON.stringify({ files }, null, 2)}\n`;
}
