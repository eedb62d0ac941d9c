/** SARIF 2.1.0 (OASIS), which code hosts and many editors read. */
import { relative, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import { RULES } from '../../checks/list.ts';
import type { Severity } from '../../checks/rule.ts';
import { isInside } from '../../disk/sources.ts';
import type { Range } from '../../text/place.ts';
import type { Io } from '../io.ts';
import type { FileReport, Reported } from '../problems.ts';
import { VERSION } from '../version.ts';

/** One run; paths are URIs relative to the working folder where they lie in it. */
export function sarifReport(reports: readonly FileReport[], io: Io): string {
  const log = {
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0',
    runs: [{
      tool: { driver: { name: 'scant', version: VERSION, semanticVersion: VERSION, rules: RULES.map(ruleOf) } },
      columnKind: 'utf16CodeUnits',
      artifacts: reports.map((report) => ({ location: { uri: uriOf(report, io) } })),
      results: reports.flatMap((report, index) => report.problems.map((problem) => resultOf(problem, { uri: uriOf(report, io), index }))),
    }],
  };
  return `${JSON.stringify(log, null, 2)}\n`;
}

interface Artifact {
  readonly uri: string;
  readonly index: number;
}

const LEVELS: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', hint: 'note' };

function ruleOf(rule: (typeof RULES)[number]): object {
  return {
    id: rule.id,
    shortDescription: { text: rule.title },
    fullDescription: { text: rule.why },
    help: { text: rule.mends.join('\n') },
    defaultConfiguration: { level: LEVELS[rule.severity] },
  };
}

function resultOf(problem: Reported, artifact: Artifact): object {
  const index = RULES.findIndex((rule) => rule.id === problem.rule);
  const related = problem.related.map((each, id) => ({
    id,
    physicalLocation: { artifactLocation: { uri: encodeURI(each.path.replaceAll(sep, '/')) }, region: regionOf(each.range) },
    message: { text: each.message },
  }));
  return {
    ruleId: problem.rule,
    ...(index >= 0 && { ruleIndex: index }),
    level: LEVELS[problem.severity],
    message: { text: problem.message },
    locations: [{ physicalLocation: { artifactLocation: artifact, region: regionOf(problem.range) } }],
    ...(related.length > 0 && { relatedLocations: related }),
  };
}

/** Lines and columns from 1; the end column is the one behind the last character. */
function regionOf({ start, end }: Range): object {
  return { startLine: start.line + 1, startColumn: start.character + 1, endLine: end.line + 1, endColumn: end.character + 1 };
}

function uriOf({ absolute }: FileReport, io: Io): string {
  if (!isInside(io.folder, absolute)) return pathToFileURL(absolute).href;
  return relative(io.folder, absolute).split(sep).map(encodeURIComponent).join('/');
}
