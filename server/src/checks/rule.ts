/** The shape of a rule: what it is called, how grave it is, why it matters, an example of each kind, and how it is found. */
import type { CuttingPlan, Piece } from '../cutting/plan.ts';
import { layoutBlock } from '../geometry/block.ts';
import type { BlockLayout, QuiltLayout } from '../geometry/layout.ts';
import type { Finding } from '../model/finding.ts';
import type { BlockInstance, Pattern, SizeDefinition } from '../model/pattern.ts';
import type { Tree } from '../syntax/tree.ts';
import type { Problem, RuleId, TextEdit } from '../text/problem.ts';

/** Errors stop outputs; warnings and hints do not. */
export type Severity = 'error' | 'warning' | 'hint';

export interface Rule {
  readonly id: RuleId;
  readonly severity: Severity;
  /** `later`: it asks how things are set, sewn or cut, which takes longer than a keystroke. */
  readonly when?: 'later';
  /** A few words, as a heading. */
  readonly title: string;
  /** Why it matters to a maker, in a short paragraph. */
  readonly why: string;
  /** A whole pattern in which the rule speaks exactly where `bad` says, and one in which it is silent. */
  readonly bad: string;
  readonly good: string;
  /** The usual mends, one a line. */
  readonly mends: readonly string[];
  readonly find: (context: CheckContext) => readonly Problem[];
}

export interface CheckContext {
  readonly tree: Tree;
  readonly pattern: Pattern;
  /** The file's blocks with their defaults, or with stand-ins where a parameter has none. */
  readonly blocks: readonly BlockLayout[];
  readonly quilts: readonly CheckedQuilt[];
  /** `later`: the best cutting plans may not be looked for; what hangs on one that is not known is left for later. */
  readonly search?: 'now' | 'later';
  /** The quilts of the pattern with its text edited, in the order of `quilts`. */
  readonly vary?: (edits: readonly TextEdit[]) => readonly CheckedQuilt[];
  /** Every finding of the model and the geometry, each once, in no order. */
  readonly findings: readonly Finding[];
}

/** The quilt in one size; the plan is worked out when a rule first asks for it. */
export interface CheckedQuilt {
  readonly size: SizeDefinition | undefined;
  readonly layout: QuiltLayout;
  readonly plan: CuttingPlan;
  /** With the best plan; it may take a second. */
  readonly settled: { readonly plan: CuttingPlan };
}

export type FindingOf<R extends Finding['rule']> = Extract<Finding, { readonly rule: R }>;

/** The findings of one rule. */
export function findingsOf<R extends Finding['rule']>(context: CheckContext, rule: R): readonly FindingOf<R>[] {
  return context.findings.filter((finding): finding is FindingOf<R> => finding.rule === rule);
}

/** Every block of the file and of its quilts, and all that stand in them, each distinct one once, in its own measures. */
export function distinctBlocks({ blocks, quilts }: Pick<CheckContext, 'blocks' | 'quilts'>): ReadonlySet<BlockLayout> {
  const placed = quilts.flatMap(({ layout }) => layout.blocks.map((block) => block.layout));
  return new Set([...instancesIn([...blocks, ...placed].map(({ instance }) => instance))].map(layoutBlock));
}

/** Blocks and all that stands in them, each once. */
export function instancesIn(roots: readonly BlockInstance[]): ReadonlySet<BlockInstance> {
  const all = new Set(roots);
  for (const instance of all) for (const inner of instance.nested ?? []) all.add(inner);
  return all;
}

/** The pieces of a quilt, those of blocks left out in which something is wrong already: their sizes would mislead. */
export function soundPieces({ layout, plan }: CheckedQuilt): readonly Piece[] {
  const faulty = new Set(layout.blocks.filter((block) => hasFindings(block.layout)).map(({ name }) => name));
  return plan.pieces.filter(({ for: use, shared = [use] }) => !shared.some((name) => faulty.has(name)));
}

function hasFindings({ findings, instance }: BlockLayout): boolean {
  return findings.length > 0 || instance.findings.length > 0;
}
