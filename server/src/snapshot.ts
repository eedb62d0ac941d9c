/**
 * One immutable, lazy view of a pattern at a version: tree, model, layouts, problems, plans and scenes, each worked out
 * once, when first asked for. Editor features, outputs and the command line read nothing else.
 */
import { runChecks } from './checks/run.ts';
import { planCutting } from './cutting/build.ts';
import type { CuttingPlan } from './cutting/plan.ts';
import { sceneOfBlock, sceneOfQuilt } from './drawing/build.ts';
import type { Scene } from './drawing/scene.ts';
import { layoutBlock } from './geometry/block.ts';
import type { BlockLayout, QuiltLayout } from './geometry/layout.ts';
import { layoutQuilt } from './geometry/quilt.ts';
import { buildPattern, type ModelHost } from './model/build.ts';
import { defaultInstance, sampleInstance } from './model/instantiate.ts';
import type { BlockDefinition, Colorway, Pattern, QuiltSpec, SizeDefinition } from './model/pattern.ts';
import { specifyQuilt } from './model/quilt.ts';
import { sewingOf, type QuiltSewing } from './piecing/sewing.ts';
import { parse } from './syntax/parse.ts';
import type { Tree } from './syntax/tree.ts';
import type { Document } from './text/document.ts';
import type { Problem } from './text/problem.ts';
import { severityOf } from './checks/list.ts';

export interface Snapshot {
  readonly document: Document;
  readonly version: number;
  readonly tree: Tree;
  readonly pattern: Pattern;
  /** Every problem that no `// allow` silences, in the order of the text. */
  readonly problems: readonly Problem[];
  readonly hasErrors: boolean;
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
  readonly plan: CuttingPlan;
  /** How it is sewn and pressed. */
  readonly sewing: QuiltSewing;
  readonly scene: Scene;
}

export interface BlockView {
  readonly definition: BlockDefinition;
  readonly layout: BlockLayout;
  readonly scene: Scene;
}

/** A snapshot of a document. `previous`, an older snapshot of the same document, lends what has not changed. */
export function snapshotOf(document: Document, version: number, host: ModelHost, previous?: Snapshot): Snapshot {
  const tree = parse(document, previous?.tree);
  const pattern = buildPattern(tree, host, previous?.pattern);
  return new LazySnapshot(document, version, tree, pattern);
}

class LazySnapshot implements Snapshot {
  readonly document: Document;
  readonly version: number;
  readonly tree: Tree;
  readonly pattern: Pattern;
  #problems: readonly Problem[] | undefined;
  #quilts: readonly QuiltView[] | undefined;
  #shown: QuiltView | undefined;
  #blocks: readonly BlockView[] | undefined;

  constructor(document: Document, version: number, tree: Tree, pattern: Pattern) {
    this.document = document;
    this.version = version;
    this.tree = tree;
    this.pattern = pattern;
  }

  get problems(): readonly Problem[] {
    return (this.#problems ??= runChecks({
      tree: this.tree,
      pattern: this.pattern,
      blocks: this.blocks.map((block) => block.layout),
      quilts: this.#checkedQuilts(),
    }));
  }

  get hasErrors(): boolean {
    return this.problems.some((problem) => severityOf(problem.rule) === 'error');
  }

  get quilts(): readonly QuiltView[] {
    return (this.#quilts ??= this.#quiltsIn(undefined));
  }

  get shown(): QuiltView | undefined {
    if (!this.pattern.quilt) return undefined;
    if (this.pattern.sizes.length === 0) return this.quilts[0];
    this.#shown ??= new LazyQuilt(this.pattern, undefined, undefined);
    return this.#shown.spec.setting ? this.#shown : this.quilts[0];
  }

  get blocks(): readonly BlockView[] {
    return (this.#blocks ??= [...this.pattern.blocks.values()]
      .filter((definition) => definition.origin === 'file')
      .map((definition) => {
        const instance = defaultInstance(this.pattern, definition) ?? sampleInstance(this.pattern, definition);
        return instance ? new LazyBlock(definition, layoutBlock(instance)) : undefined;
      })
      .filter((view) => view !== undefined));
  }

  inColorway(colorway: Colorway): readonly QuiltView[] {
    return this.#quiltsIn(colorway);
  }

  #quiltsIn(colorway: Colorway | undefined): readonly QuiltView[] {
    if (!this.pattern.quilt) return [];
    const sizes = this.pattern.sizes.length > 0 ? this.pattern.sizes : [undefined];
    return sizes.map((size) => new LazyQuilt(this.pattern, size, colorway));
  }

  /** The count in `quilt` is checked too, even when only named sizes are made. */
  #checkedQuilts(): readonly QuiltView[] {
    const shown = this.shown;
    return shown && !this.quilts.includes(shown) ? [shown, ...this.quilts] : this.quilts;
  }
}

class LazyQuilt implements QuiltView {
  readonly #pattern: Pattern;
  readonly size: SizeDefinition | undefined;
  readonly colorway: Colorway | undefined;
  #spec: QuiltSpec | undefined;
  #layout: QuiltLayout | undefined;
  #plan: CuttingPlan | undefined;
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
    return (this.#spec ??= specifyQuilt(this.#pattern, this.size, this.colorway));
  }
  get layout(): QuiltLayout {
    return (this.#layout ??= layoutQuilt(this.spec, this.#pattern.rules));
  }
  get plan(): CuttingPlan {
    return (this.#plan ??= planCutting(this.layout, this.#pattern));
  }
  get sewing(): QuiltSewing {
    return sewingOf(this.layout, this.#pattern.rules);
  }
  get scene(): Scene {
    return (this.#scene ??= sceneOfQuilt(this.layout));
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
