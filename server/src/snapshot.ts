/**
 * One immutable, lazy view of a pattern at a version: tree, model, layouts, problems, plans and scenes, each worked out
 * once, when first asked for. Editor features, outputs and the command line read nothing else.
 */
import { knownEarly, knownFully, newStatements, problemsKnown, type Known } from './checks/early.ts';
import { lowContrastIn } from './checks/low-contrast.ts';
import { distinctBlocks } from './checks/rule.ts';
import { checkSteps } from './checks/run.ts';
import { quickBlocks } from './checks/sewing.ts';
import { planCutting, planningSteps } from './cutting/build.ts';
import type { CuttingPlan } from './cutting/plan.ts';
import { sceneOfBlock, sceneOfQuilt } from './drawing/build.ts';
import type { Scene } from './drawing/scene.ts';
import { layoutBlock } from './geometry/block.ts';
import type { BlockLayout, QuiltLayout } from './geometry/layout.ts';
import { layoutQuilt } from './geometry/quilt.ts';
import { buildPattern, type ModelHost } from './model/build.ts';
import { defaultInstance, sampleInstance } from './model/instantiate.ts';
import type { BlockDefinition, BlockInstance, Colorway, Pattern, QuiltSpec, SizeDefinition } from './model/pattern.ts';
import { specifyQuilt } from './model/quilt.ts';
import { sewingOf, sewingOfBlock, unitStepsOfQuilt, type QuiltSewing } from './piecing/sewing.ts';
import { parse } from './syntax/parse.ts';
import type { Statement, Tree } from './syntax/tree.ts';
import { replaceRange, type Document } from './text/document.ts';
import { rangeOf } from './text/place.ts';
import { allSteps, mapSteps, type Steps } from './text/steps.ts';
import type { Problem, TextEdit } from './text/problem.ts';
import { RULES, severityOf } from './checks/list.ts';
import type { Rule } from './checks/rule.ts';

export interface Snapshot {
  readonly document: Document;
  readonly version: number;
  readonly tree: Tree;
  readonly pattern: Pattern;
  /** Every problem that no `// allow` silences, in the order of the text. */
  readonly problems: readonly Problem[];
  /** Those of them that are errors; worked out without the others, which take longer. */
  readonly errors: readonly Problem[];
  readonly hasErrors: boolean;
  /** The problems as far as they are known at once: those of the text, of names and of edited blocks, and what of the others was known before. */
  readonly early: readonly Problem[];
  /** Whether `problems` is at hand. */
  readonly isWorkedOut: boolean;
  /** Works `problems` out step by step, so that others can have their turn between. */
  workOut(): Steps<undefined>;
  /** The same, its problems judged on the best cutting plans. */
  readonly settled: Snapshot;
  /** One per named size; a single one with no size when none is named; none for a library of blocks. */
  readonly quilts: readonly QuiltView[];
  /** What the editor shows first: the count in `quilt`, else the first size. */
  readonly shown: QuiltView | undefined;
  /** The blocks of this file laid out, in the order of the text; parameters without a default stand in grey. */
  readonly blocks: readonly BlockView[];
  /** The quilt in other colours. */
  inColorway(colorway: Colorway): readonly QuiltView[];
}

export interface QuiltView {
  readonly name: string | null;
  readonly size: SizeDefinition | undefined;
  readonly colorway: Colorway | undefined;
  readonly spec: QuiltSpec;
  readonly layout: QuiltLayout;
  /** What is found at once; the best where that is known already. Its pieces are the same. */
  readonly plan: CuttingPlan;
  /** The same with the best plan, which outputs are written from; it may take a second. */
  readonly settled: QuiltView;
  /** How it is sewn and pressed. */
  readonly sewing: QuiltSewing;
  readonly scene: Scene;
}

export interface BlockView {
  readonly definition: BlockDefinition;
  readonly layout: BlockLayout;
  readonly scene: Scene;
}

const ERRORS = RULES.filter(({ severity }) => severity === 'error');

/** A snapshot of a document. `previous`, an older snapshot of the same document, lends what has not changed. */
export function snapshotOf(document: Document, version: number, host: ModelHost, previous?: Snapshot, { search = 'now', tree = parse(document, previous?.tree) }: SnapshotOptions = {}): Snapshot {
  const before = previous instanceof LazySnapshot ? previous.known : undefined;
  return new LazySnapshot(version, tree, buildPattern(tree, host, previous?.pattern), { search, host, before });
}

export interface SnapshotOptions {
  /** When problems may look for the best cutting plans: `later`, what hangs on one that is not known yet is not judged. */
  readonly search?: 'now' | 'later';
  /** The document's, where it was read already. */
  readonly tree?: Tree;
}

/** Blocks of so many new statements are laid out at once: a small text, or an edit. Those of a large text that is opened come later. */
const AT_ONCE = 60;

interface Kept {
  readonly host: ModelHost;
  readonly search: 'now' | 'later';
  /** What was known of the version before. */
  readonly before: Known | undefined;
}

class LazySnapshot implements Snapshot {
  readonly document: Document;
  readonly version: number;
  readonly tree: Tree;
  readonly pattern: Pattern;
  readonly #search: 'now' | 'later';
  readonly #host: ModelHost;
  #before: Known | undefined;
  #early: Known | undefined;
  #full: Known | undefined;
  #settled: Snapshot | undefined;
  #problems: readonly Problem[] | undefined;
  #errors: readonly Problem[] | undefined;
  #quilts: readonly LazyQuilt[] | undefined;
  #shown: LazyQuilt | undefined;
  #blocks: readonly BlockView[] | undefined;

  constructor(version: number, tree: Tree, pattern: Pattern, { search, before, host }: Kept) {
    this.#host = host;
    this.#search = search;
    this.#before = before;
    this.document = tree.document;
    this.version = version;
    this.tree = tree;
    this.pattern = pattern;
  }

  get problems(): readonly Problem[] {
    return (this.#problems ??= allSteps(this.#problemsOf(RULES)));
  }

  get errors(): readonly Problem[] {
    return (this.#errors ??= this.#problems ? this.#problems.filter(({ rule }) => severityOf(rule) === 'error') : allSteps(this.#problemsOf(ERRORS)));
  }

  #problemsOf(rules: readonly Rule[]): Steps<readonly Problem[]> {
    return checkSteps({
      tree: this.tree,
      pattern: this.pattern,
      blocks: this.blocks.map((block) => block.layout),
      quilts: this.#checkedQuilts(),
      search: this.#search,
      vary: (edits) => this.#varied(edits),
    }, rules);
  }

  #varied(edits: readonly TextEdit[]): readonly QuiltView[] {
    const document = edits.reduce((text, { place, text: fresh }) => {
      const range = rangeOf(text, place);
      return range ? replaceRange(text, range.start, range.end, fresh) : text;
    }, this.document);
    const tree = parse(document, this.tree);
    return new LazySnapshot(this.version, tree, buildPattern(tree, this.#host, this.pattern), { search: 'now', host: this.#host, before: undefined }).#checkedQuilts();
  }

  get isWorkedOut(): boolean {
    return this.#problems !== undefined;
  }

  get early(): readonly Problem[] {
    return this.#problems ?? problemsKnown(this.#knownEarly());
  }

  /** The version before is not held longer than until its news are read. */
  #knownEarly(): Known {
    if (this.#early) return this.#early;
    const statements = newStatements(this.tree, this.#before?.tree);
    const blocks = statements.length <= AT_ONCE ? this.#instancesOf(new Set(statements)).map(layoutBlock) : [];
    this.#early = knownEarly(this, { statements, blocks }, this.#before);
    this.#before = undefined;
    return this.#early;
  }

  /** For the next version. */
  get known(): Known | undefined {
    if (this.#problems) return (this.#full ??= knownFully(this, this.#problems));
    return this.#early ?? this.#before;
  }

  *workOut(): Steps<undefined> {
    yield* mapSteps(this.#definitions(undefined), (definition) => this.#instanceOf(definition).map(layoutBlock));
    const blocks = this.blocks.map(({ layout }) => layout);
    const quilts = this.#checkedQuilts();
    yield* mapSteps(quilts, ({ layout }) => layout);
    yield* mapSteps(quickBlocks({ blocks, quilts }), sewingOfBlock);
    yield* mapSteps(distinctBlocks({ blocks, quilts }), lowContrastIn);
    for (const { layout } of quilts) yield* unitStepsOfQuilt(layout, this.pattern.rules.methods);
    for (const quilt of quilts) yield* quilt.planning();
    this.#problems ??= yield* this.#problemsOf(RULES);
    yield undefined;
    this.#full ??= knownFully(this, this.#problems);
    return undefined;
  }

  get hasErrors(): boolean {
    return this.errors.length > 0;
  }

  get settled(): Snapshot {
    if (this.#search === 'now') return this;
    return (this.#settled ??= new LazySnapshot(this.version, this.tree, this.pattern, { search: 'now', host: this.#host, before: undefined }));
  }

  get quilts(): readonly LazyQuilt[] {
    return (this.#quilts ??= this.#quiltsIn(undefined));
  }

  get shown(): LazyQuilt | undefined {
    if (!this.pattern.quilt) return undefined;
    if (this.pattern.sizes.length === 0) return this.quilts[0];
    this.#shown ??= new LazyQuilt(this.pattern, undefined, undefined);
    return this.#shown.spec.setting ? this.#shown : this.quilts[0];
  }

  get blocks(): readonly BlockView[] {
    return (this.#blocks ??= this.#instancesOf(undefined).map((instance) => new LazyBlock(instance.definition, layoutBlock(instance))));
  }

  /** The file's blocks with their defaults or stand-ins: of some statements, or all. */
  #instancesOf(statements: ReadonlySet<Statement> | undefined): readonly BlockInstance[] {
    return this.#definitions(statements).flatMap((definition) => this.#instanceOf(definition));
  }

  #definitions(statements: ReadonlySet<Statement> | undefined): readonly BlockDefinition[] {
    if (statements?.size === 0) return [];
    return [...this.pattern.blocks.values()].filter(({ origin, statement }) => origin === 'file' && (statements?.has(statement) ?? true));
  }

  #instanceOf(definition: BlockDefinition): readonly BlockInstance[] {
    const instance = defaultInstance(this.pattern, definition) ?? sampleInstance(this.pattern, definition);
    return instance ? [instance] : [];
  }

  inColorway(colorway: Colorway): readonly QuiltView[] {
    return this.#quiltsIn(colorway);
  }

  #quiltsIn(colorway: Colorway | undefined): readonly LazyQuilt[] {
    if (!this.pattern.quilt) return [];
    const sizes = this.pattern.sizes.length > 0 ? this.pattern.sizes : [undefined];
    return sizes.map((size) => new LazyQuilt(this.pattern, size, colorway));
  }

  /** The count in `quilt` is checked too, even when only named sizes are made. */
  #checkedQuilts(): readonly LazyQuilt[] {
    const shown = this.shown;
    return shown && !this.quilts.includes(shown) ? [shown, ...this.quilts] : this.quilts;
  }
}

class LazyQuilt implements QuiltView {
  readonly #pattern: Pattern;
  readonly size: SizeDefinition | undefined;
  readonly colorway: Colorway | undefined;
  #layout: QuiltLayout | undefined;
  #plan: CuttingPlan | undefined;
  #settled: QuiltView | undefined;
  #scene: Scene | undefined;

  constructor(pattern: Pattern, size: SizeDefinition | undefined, colorway: Colorway | undefined) {
    this.#pattern = pattern;
    this.size = size;
    this.colorway = colorway;
  }

  get name(): string | null {
    return this.size?.name ?? null;
  }
  get spec(): QuiltSpec {
    return this.layout.spec;
  }
  get layout(): QuiltLayout {
    return (this.#layout ??= layoutQuilt(specifyQuilt(this.#pattern, this.size, this.colorway), this.#pattern.rules));
  }
  get plan(): CuttingPlan {
    return allSteps(this.planning());
  }
  /** Works `plan` out step by step. */
  *planning(): Steps<CuttingPlan> {
    return (this.#plan ??= yield* planningSteps(this.layout, this.#pattern));
  }
  get settled(): QuiltView {
    return (this.#settled ??= new SettledQuilt(this, this.#pattern));
  }
  get sewing(): QuiltSewing {
    return sewingOf(this.layout, this.#pattern.rules);
  }
  get scene(): Scene {
    return (this.#scene ??= sceneOfQuilt(this.layout));
  }
}

/** A quilt with the best plan; all else is that of the quilt. */
class SettledQuilt implements QuiltView {
  readonly #quilt: QuiltView;
  readonly #pattern: Pattern;
  #plan: CuttingPlan | undefined;

  constructor(quilt: QuiltView, pattern: Pattern) {
    this.#quilt = quilt;
    this.#pattern = pattern;
  }

  get name(): string | null {
    return this.#quilt.name;
  }
  get size(): SizeDefinition | undefined {
    return this.#quilt.size;
  }
  get colorway(): Colorway | undefined {
    return this.#quilt.colorway;
  }
  get spec(): QuiltSpec {
    return this.#quilt.spec;
  }
  get layout(): QuiltLayout {
    return this.#quilt.layout;
  }
  get plan(): CuttingPlan {
    return (this.#plan ??= planCutting(this.layout, this.#pattern, { effort: 'best' }));
  }
  get settled(): QuiltView {
    return this;
  }
  get sewing(): QuiltSewing {
    return this.#quilt.sewing;
  }
  get scene(): Scene {
    return this.#quilt.scene;
  }
}

class LazyBlock implements BlockView {
  readonly definition: BlockDefinition;
  readonly layout: BlockLayout;
  #scene: Scene | undefined;

  constructor(definition: BlockDefinition, layout: BlockLayout) {
    this.definition = definition;
    this.layout = layout;
  }
  get scene(): Scene {
    return (this.#scene ??= sceneOfBlock(this.layout));
  }
}
