/** What the written outputs are made from: a pattern and its quilts, laid out and planned (a snapshot is one). */
import type { QuiltLayout } from '../geometry/layout.ts';
import type { Pattern } from '../model/pattern.ts';
import type { CuttingPlan } from '../cutting/plan.ts';

export interface BookletSource {
  readonly pattern: Pattern;
  /** One per named size; a single one without a name when none is named. */
  readonly quilts: readonly BookletQuilt[];
}

export interface BookletQuilt {
  readonly name: string | null;
  readonly layout: QuiltLayout;
  readonly plan: CuttingPlan;
}

/** What a pattern without a title is called. */
export const UNTITLED = 'Untitled quilt';
