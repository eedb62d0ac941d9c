/**
 * Runs every rule over a pattern; what `// allow` silences is taken out, the rest stands in the order of the text. An
 * error in a block of another file is an error of the pattern that is sewn from it: it is told where the block is used
 * (its arguments may be what is wrong), and what is wrong in the rest of that file at the import.
 */
import { layoutBlock } from '../geometry/block.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import { usesIn } from '../geometry/uses.ts';
import type { Finding } from '../model/finding.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Tree } from '../syntax/tree.ts';
import type { Document } from '../text/document.ts';
import type { Place } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';
import { allSteps, mapSteps, type Steps } from '../text/steps.ts';
import { brief } from './brief.ts';
import { RULES, severityOf } from './list.ts';
import { instancesIn, type CheckContext, type CheckedQuilt, type Rule } from './rule.ts';

/** The problems of a pattern in this document, each once, by line and column: of all rules, or of those given. */
export function runChecks(input: Omit<CheckContext, 'findings'>, rules: readonly Rule[] = RULES): readonly Problem[] {
  return allSteps(checkSteps(input, rules));
}

/** The same step by step, a rule each. */
export function* checkSteps(input: Omit<CheckContext, 'findings'>, rules: readonly Rule[]): Steps<readonly Problem[]> {
  const context: CheckContext = { ...input, findings: allFindings(input) };
  const uses = usesOfFaulty(input);
  const told = new Set<BlockAt>();
  const seen = new Set<string>();
  const number = (place: Place): number => input.tree.document.numberOf(place.line);
  const found = yield* mapSteps(rules, (rule) => rule.find(context));
  const problems = [...found.flat(), ...syntaxOfImports(input.pattern)]
    .flatMap((problem) => toldHere(problem, input, uses, told))
    .filter((problem) => !isAllowed(problem, input.tree) && isNew(seen, problem, number(problem.place)));
  return inOrderOfText(problems, input.tree.document).map(brief);
}

/** By line and column; those of one place as they were. */
export function inOrderOfText(problems: readonly Problem[], document: Document): readonly Problem[] {
  return problems
    .map((problem) => ({ problem, line: document.numberOf(problem.place.line) }))
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

/** For what is wrong in other files: the cell of this one that uses the block it is in, the first of several. */
function usesOfFaulty({ tree, blocks, quilts }: Omit<CheckContext, 'findings'>): ReadonlyMap<Place, BlockAt> {
  const { source } = tree.document;
  const uses = [
    ...blocks.flatMap(({ instance }) => usesIn(instance).map(({ block, place }) => ({ layout: layoutBlock(block), place }))),
    ...quilts.flatMap(({ layout }) => layout.placements.map(({ block, place }) => ({ layout: block, place }))),
  ];
  const seen = new Set<BlockLayout>();
  const found = new Map<Place, BlockAt>();
  for (const { layout, place } of uses) {
    if (place.line.source !== source || seen.has(layout)) continue;
    seen.add(layout);
    const at = { name: layout.instance.name, place };
    const inside = [...layout.findings, ...[...instancesIn([layout.instance])].flatMap((instance) => instance.findings)];
    for (const finding of inside) if (finding.place.line.source !== source && !found.has(finding.place)) found.set(finding.place, at);
  }
  return found;
}

interface BlockAt {
  readonly name: string;
  readonly place: Place;
}

/** A problem of this document as it is; an error of another one where it comes in, the first one for each use; else nothing. */
function toldHere(problem: Problem, { tree, pattern }: Pick<CheckContext, 'tree' | 'pattern'>, uses: ReadonlyMap<Place, BlockAt>, told: Set<BlockAt>): readonly Problem[] {
  const source = problem.place.line.source;
  if (source === tree.document.source) return [problem];
  if (severityOf(problem.rule) !== 'error') return [];
  const { rule, message } = problem;
  const related = [{ place: problem.place, message }];
  const use = uses.get(problem.place);
  if (use && told.has(use)) return [];
  if (use) {
    told.add(use);
    return [{ rule, place: use.place, message: `in \`${use.name}\`: ${message}`, related }];
  }
  const by = pattern.imports.find((each) => each.tree?.document.source === source) ?? pattern.imports[0];
  if (!by) return [];
  const line = by.tree?.document.source === source ? `, line ${by.tree.document.numberOf(problem.place.line) + 1}` : '';
  return [{ rule, place: by.place, message: `in \`${by.path}\`${line}: ${message}`, related }];
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
