/**
 * What piecing finds, for the rules that tell it. A block is sewn once and stays so over keystrokes; a setting is sewn only for the
 * quilt that is shown, and only while that is quick.
 */
import type { Exact } from '../exact/number.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { Pattern } from '../model/pattern.ts';
import { settingSewing, sewingOfBlock } from '../piecing/sewing.ts';
import type { CheckContext, CheckedQuilt, FindingOf } from './rule.ts';
import { blockPointText } from './wording.ts';

export type SewingRule = 'set-in-seam' | 'partial-seam' | 'bulky-point';

export interface Sewn<R extends SewingRule> {
  readonly finding: FindingOf<R>;
  /** A point of the finding, in words. */
  readonly at: (point: { readonly x: Exact; readonly y: Exact }) => string;
}

/** The findings of one rule in every block of the file and of its quilts, and in the setting. Blocks with a fault are left out. */
export function sewnFindings<R extends SewingRule>({ blocks, quilts, pattern }: CheckContext, rule: R): readonly Sewn<R>[] {
  const all = new Set([...blocks, ...quilts.flatMap(({ layout }) => layout.blocks.map((block) => block.layout))]);
  const inBlocks = [...all].filter(isSound).flatMap((layout) => ofRule(sewingOfBlock(layout).findings, rule).map((finding) => sewn(finding, layout.instance.size !== undefined, pattern)));
  const [shown] = quilts;
  return shown && isQuick(shown) ? [...inBlocks, ...ofRule(settingSewing(shown.layout).findings, rule).map((finding) => sewn(finding, true, pattern))] : inBlocks;
}

/** `, 4 times in this block` for what one text makes more than once. */
export function timesText(count: number): string {
  return count === 1 ? '' : `, ${count} times in this block`;
}

function sewn<R extends SewingRule>(finding: FindingOf<R>, isLength: boolean, pattern: Pattern): Sewn<R> {
  return { finding, at: (point) => blockPointText(point, { isLength }, pattern) };
}

function ofRule<R extends SewingRule>(findings: CheckContext['findings'], rule: R): readonly FindingOf<R>[] {
  return findings.filter((finding): finding is FindingOf<R> => finding.rule === rule);
}

function isSound({ findings, instance }: BlockLayout): boolean {
  return findings.length === 0 && instance.findings.length === 0;
}

/** More parts than this are not sewn at every keystroke. */
const QUICK = 200;

function isQuick({ layout }: CheckedQuilt): boolean {
  return layout.findings.length === 0 && layout.spec.findings.length === 0 && layout.placements.length + layout.patches.length <= QUICK;
}
