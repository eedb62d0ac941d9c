/** Problems as the protocol's diagnostics: where, how grave, what else is concerned, and where it is explained. */
import { DiagnosticSeverity, DiagnosticTag, type Diagnostic, type DiagnosticRelatedInformation } from 'vscode-languageserver';
import { severityOf } from '../checks/list.ts';
import type { Severity } from '../checks/rule.ts';
import type { Snapshot } from '../snapshot.ts';
import { rangeOf } from '../text/place.ts';
import type { Problem, Related, RuleId } from '../text/problem.ts';
import { START, locationOf } from './convert.ts';

export interface DiagnosticOptions {
  /** Where the page of a rule is, for editors that can open it. */
  readonly explanationLink: (rule: RuleId) => string | undefined;
  readonly hints: 'show' | 'hide';
}

const SEVERITIES: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  hint: DiagnosticSeverity.Hint,
};

/** What a list can show: a file of nothing but mistakes has hundreds of thousands, and an editor would choke on them. */
const MOST = 1000;

/** Problems of the file (all, or those known early), in the order of its text; of very many the gravest, and word of how many there are besides. */
export function diagnosticsOf(snapshot: Snapshot, problems: readonly Problem[], options: DiagnosticOptions): Diagnostic[] {
  const wanted = problems.filter(({ rule }) => options.hints === 'show' || severityOf(rule) !== 'hint');
  const told = wanted.length <= MOST ? wanted : gravest(wanted);
  const diagnostics = told.map((problem) => diagnosticOf(snapshot, problem, options));
  return told === wanted ? diagnostics : [...diagnostics, unlisted(wanted.length - told.length)];
}

function gravest(problems: readonly Problem[]): readonly Problem[] {
  const chosen = new Set([...problems].sort((a, b) => gravity(a) - gravity(b)).slice(0, MOST - 1));
  return problems.filter((problem) => chosen.has(problem));
}

/** A limit that was passed comes before all else: it tells why the rest is as it is. */
function gravity({ rule }: Problem): number {
  return rule === 'too-large' ? 0 : SEVERITIES[severityOf(rule)];
}

function unlisted(count: number): Diagnostic {
  return { range: START, severity: DiagnosticSeverity.Information, source: 'scant', message: `${count.toLocaleString('en')} more problems are not listed` };
}

/** The rule a diagnostic of ours is about, and the title of its mend where one is certain. */
export interface DiagnosticData {
  readonly rule: RuleId;
  readonly fix?: string;
}

function diagnosticOf(snapshot: Snapshot, problem: Problem, { explanationLink }: DiagnosticOptions): Diagnostic {
  const link = explanationLink(problem.rule);
  const tags = isUnused(problem.rule) ? [DiagnosticTag.Unnecessary] : undefined;
  const relatedInformation = (problem.related ?? []).flatMap((related) => relatedOf(snapshot, related));
  const data: DiagnosticData = { rule: problem.rule, ...(problem.fix && { fix: problem.fix.title }) };
  return {
    range: rangeOf(snapshot.document, problem.place) ?? START,
    severity: SEVERITIES[severityOf(problem.rule)],
    code: problem.rule,
    ...(link !== undefined && { codeDescription: { href: link } }),
    source: 'scant',
    message: problem.message,
    ...(tags && { tags }),
    ...(relatedInformation.length > 0 && { relatedInformation }),
    data,
  };
}

function relatedOf(snapshot: Snapshot, { place, message }: Related): DiagnosticRelatedInformation[] {
  const location = locationOf(snapshot, place);
  return location ? [{ location, message }] : [];
}

function isUnused(rule: RuleId): boolean {
  return rule === 'unused-fabric' || rule === 'unused-block';
}
