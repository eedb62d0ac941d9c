/**
 * What can be said at once after a keystroke: problems of the text, of names, and of the blocks that were edited. What else was
 * known of the version before goes on being said where its lines still stand, until everything has been looked at again.
 */
import type { BlockLayout } from '../geometry/layout.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Statement, Tree } from '../syntax/tree.ts';
import type { Document, Line } from '../text/document.ts';
import { groupedBy } from '../text/grouped.ts';
import type { Problem, RuleId } from '../text/problem.ts';
import { RULES } from './list.ts';
import { inOrderOfText, runChecks } from './run.ts';

/** What is known of a version. */
export interface Known {
  readonly tree: Tree;
  /** Of the text and the names: found anew in every version. */
  readonly always: readonly Problem[];
  /** Of blocks, the quilt, and what is sewn and cut. */
  readonly rest: readonly Problem[];
}

const EARLY = RULES.filter(({ when }) => when === undefined);
const EARLY_IDS: ReadonlySet<RuleId> = new Set(EARLY.map(({ id }) => id));

/** What is known at once. `blocks`: the layouts of the blocks in the statements that are new since `before`. */
export function knownEarly({ tree, pattern }: Sources, { statements, blocks }: Edited, before: Known | undefined): Known {
  const always = alwaysIn({ tree, pattern });
  const edited = blocks.length === 0 ? [] : without(ownOf(tree, runChecks({ tree, pattern, blocks, quilts: [] }, EARLY)), always);
  const lines = new Set(statements.flatMap(linesOf));
  const kept = (before?.rest ?? []).filter((problem) => stands(problem, tree.document) && !(lines.has(problem.place.line) && EARLY_IDS.has(problem.rule)));
  return { tree, always, rest: [...without(kept, [...always, ...edited]), ...edited] };
}

interface Sources {
  readonly tree: Tree;
  readonly pattern: Pattern;
}

interface Edited {
  readonly statements: readonly Statement[];
  readonly blocks: readonly BlockLayout[];
}

/** What is known when every rule has been asked. */
export function knownFully({ tree, pattern }: Sources, problems: readonly Problem[]): Known {
  const always = alwaysIn({ tree, pattern });
  return { tree, always, rest: without(problems, always) };
}

/** In the order of the text. */
export function problemsKnown({ tree, always, rest }: Known): readonly Problem[] {
  return rest.length === 0 ? always : inOrderOfText([...always, ...rest], tree.document);
}

/** The top-level statements that are not in an earlier version of the file. */
export function newStatements(tree: Tree, before: Tree | undefined): readonly Statement[] {
  const [now, old] = [tree.statements, before?.statements ?? []];
  let start = 0;
  while (start < now.length && now[start] === old[start]) start += 1;
  let end = 0;
  while (end < now.length - start && end < old.length - start && now[now.length - 1 - end] === old[old.length - 1 - end]) end += 1;
  const others = new Set(old.slice(start, old.length - end));
  return now.slice(start, now.length - end).filter((statement) => !others.has(statement));
}

function alwaysIn({ tree, pattern }: Sources): readonly Problem[] {
  return ownOf(tree, runChecks({ tree, pattern, blocks: [], quilts: [] }, EARLY));
}

/** What comes from other files is told where it is used, which only everything together can say. */
function ownOf({ document: { source } }: Tree, problems: readonly Problem[]): readonly Problem[] {
  return problems.filter(({ place, related = [] }) => [place, ...related.map((each) => each.place)].every(({ line }) => line.source === source));
}

function linesOf({ line, place, body }: Statement): readonly Line[] {
  return [line, ...(place.endLine ? [place.endLine] : []), ...(body?.statements.flatMap(linesOf) ?? [])];
}

function stands({ place, related = [] }: Problem, document: Document): boolean {
  const isThere = (line: Line | undefined): boolean => line?.source !== document.source || document.numberOf(line) >= 0;
  return [place, ...related.map((each) => each.place)].every(({ line, endLine }) => isThere(line) && isThere(endLine));
}

function without(problems: readonly Problem[], others: readonly Problem[]): readonly Problem[] {
  if (problems.length === 0 || others.length === 0) return problems;
  const byLine = groupedBy(others, ({ place }) => place.line);
  return problems.filter((one) => !(byLine.get(one.place.line) ?? []).some((other) => isSame(one, other)));
}

function isSame(one: Problem, other: Problem): boolean {
  return one.rule === other.rule && one.place.from === other.place.from && one.place.to === other.place.to && one.message === other.message;
}
