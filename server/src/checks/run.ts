/**
 * Runs every rule over a pattern; what `// allow` silences is taken out, the rest stands in the order of the text. An
 * error in an imported file is an error of the pattern that is sewn from it: it is told at the import.
 */
import type { BlockLayout } from '../geometry/layout.ts';
import type { Finding } from '../model/finding.ts';
import type { BlockInstance, Pattern } from '../model/pattern.ts';
import type { Tree } from '../syntax/tree.ts';
import type { Place } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';
import { RULES, severityOf } from './list.ts';
import type { CheckContext, CheckedQuilt } from './rule.ts';

/** The problems of a pattern in this document, each once, by line and column. */
export function runChecks(input: Omit<CheckContext, 'findings'>): readonly Problem[] {
  const context: CheckContext = { ...input, findings: allFindings(input) };
  const seen = new Set<string>();
  const number = (place: Place): number => input.tree.document.numberOf(place.line);
  return [...RULES.flatMap((rule) => rule.find(context)), ...syntaxOfImports(input.pattern)]
    .flatMap((problem) => toldHere(problem, input))
    .filter((problem) => !isAllowed(problem, input.tree) && isNew(seen, problem, number(problem.place)))
    .map((problem) => ({ problem, line: number(problem.place) }))
    .sort((a, b) => a.line - b.line || a.problem.place.from - b.problem.place.from)
    .map(({ problem }) => problem);
}

/** Findings of the declarations, the blocks and the quilts. */
function allFindings({ pattern, blocks, quilts }: Omit<CheckContext, 'findings'>): readonly Finding[] {
  const layouts = new Set<BlockLayout>([...blocks, ...quilts.flatMap((quilt) => placedBlocks(quilt))]);
  return [
    ...pattern.findings,
    ...[...layouts].flatMap((layout) => layout.findings),
    ...[...instancesIn([...layouts].map((layout) => layout.instance))].flatMap((instance) => instance.findings),
    ...quilts.flatMap(({ layout }) => [...layout.spec.findings, ...layout.findings]),
  ];
}

/** Blocks and all that stands in them, each once. */
function instancesIn(roots: readonly BlockInstance[]): ReadonlySet<BlockInstance> {
  const all = new Set(roots);
  for (const instance of all) for (const inner of instance.nested ?? []) all.add(inner);
  return all;
}

/** A problem of this document as it is; an error of another one at the import that brings it in; else nothing. */
function toldHere(problem: Problem, { tree, pattern }: Pick<CheckContext, 'tree' | 'pattern'>): readonly Problem[] {
  const source = problem.place.line.source;
  if (source === tree.document.source) return [problem];
  if (severityOf(problem.rule) !== 'error') return [];
  const by = pattern.imports.find((each) => each.tree?.document.source === source) ?? pattern.imports[0];
  if (!by) return [];
  const line = by.tree?.document.source === source ? `, line ${by.tree.document.numberOf(problem.place.line) + 1}` : '';
  return [{ rule: problem.rule, place: by.place, message: `in \`${by.path}\`${line}: ${problem.message}`, related: [{ place: problem.place, message: problem.message }] }];
}

function syntaxOfImports(pattern: Pattern): readonly Problem[] {
  return pattern.imports.flatMap((each) => each.tree?.problems ?? []);
}

function placedBlocks({ layout }: CheckedQuilt): readonly BlockLayout[] {
  return layout.blocks.map((block) => block.layout);
}

function isAllowed(problem: Problem, tree: Tree): boolean {
  return tree.allowed.get(problem.place.line)?.includes(problem.rule) ?? false;
}

function isNew(seen: Set<string>, problem: Problem, line: number): boolean {
  const key = `${problem.rule} ${line} ${problem.place.from} ${problem.place.to} ${problem.message}`;
  if (seen.has(key)) return false;
  seen.add(key);
  return true;
}
