/**
 * What piecing finds, for the rules that tell it. A block is sewn once and stays so over keystrokes; a setting is sewn only for the
 * quilt that is shown, and only while that is quick.
 */
import { lengthBetween } from '../cutting/sides.ts';
import type { Exact } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import { locate } from '../exact/polygon.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Setting } from '../piecing/setting.ts';
import { settingSewing, sewingOfBlock } from '../piecing/sewing.ts';
import type { Place } from '../text/place.ts';
import type { CheckContext, CheckedQuilt, FindingOf } from './rule.ts';
import { blockPointText, lengthText } from './wording.ts';

export type SewingRule = 'set-in-seam' | 'partial-seam' | 'bulky-point';

export interface Sewn<R extends SewingRule> {
  readonly finding: FindingOf<R>;
  /** A point of the finding, in words. */
  readonly at: (point: { readonly x: Exact; readonly y: Exact }) => string;
  /** How long a line is, finished; undefined in a block that has no size. */
  readonly along: (line: { readonly from: Point; readonly to: Point }) => string | undefined;
}

/** The findings of one rule in every block of the file and of its quilts, and in the setting. Blocks with a fault are left out. */
export function sewnFindings<R extends SewingRule>({ blocks, quilts, pattern }: CheckContext, rule: R): readonly Sewn<R>[] {
  const inBlocks = soundBlocks({ blocks, quilts }).quick.flatMap((layout) => ofRule(sewingOfBlock(layout).findings, rule).map((finding) => sewn(finding, layout.instance.size !== undefined, pattern)));
  const shown = quickShown({ quilts });
  return shown ? [...inBlocks, ...ofRule(settingSewing(shown.layout).findings, rule).map((finding) => sewn(finding, true, pattern))] : inBlocks;
}

/** The quilt that is shown, where its setting is sewn at every keystroke. */
export function quickShown({ quilts: [shown] }: Pick<CheckContext, 'quilts'>): CheckedQuilt | undefined {
  return shown && isQuick(shown) ? shown : undefined;
}

/** The cell of the first block that touches a point of the quilt. */
export function placeTouching({ parts }: Setting, at: Point): Place | undefined {
  return parts.find(({ placement, outline }) => placement !== undefined && locate(outline, at) === 0)?.placement?.place;
}

/** The blocks that are sewn at every keystroke. */
export function quickBlocks(context: Pick<CheckContext, 'blocks' | 'quilts'>): readonly BlockLayout[] {
  return soundBlocks(context).quick;
}

/** Blocks too large to be sewn at every keystroke: what is not looked at is said. */
export function unsewnBlocks(context: Pick<CheckContext, 'blocks' | 'quilts'>): readonly BlockLayout[] {
  return soundBlocks(context).slow;
}

interface Blocks {
  readonly quick: readonly BlockLayout[];
  readonly slow: readonly BlockLayout[];
}

/** In the order of the file, until their patches together are too many. */
function soundBlocks({ blocks, quilts }: Pick<CheckContext, 'blocks' | 'quilts'>): Blocks {
  const all = new Set([...blocks, ...quilts.flatMap(({ layout }) => layout.blocks.map((block) => block.layout))]);
  const quick: BlockLayout[] = [];
  const slow: BlockLayout[] = [];
  let patches = 0;
  for (const layout of [...all].filter(isSound)) {
    const fits = patches + layout.patches.length <= QUICK_PATCHES;
    if (fits) patches += layout.patches.length;
    (fits ? quick : slow).push(layout);
  }
  return { quick, slow };
}

/** `, 4 times in this block` for what one text makes more than once. */
export function timesText(count: number): string {
  return count === 1 ? '' : `, ${count} times in this block`;
}

function sewn<R extends SewingRule>(finding: FindingOf<R>, isLength: boolean, pattern: Pattern): Sewn<R> {
  const along: Sewn<R>['along'] = ({ from, to }) => (isLength ? lengthText(lengthBetween(from, to), pattern) : undefined);
  return { finding, at: (point) => blockPointText(point, { isLength }, pattern), along };
}

function ofRule<R extends SewingRule>(findings: CheckContext['findings'], rule: R): readonly FindingOf<R>[] {
  return findings.filter((finding): finding is FindingOf<R> => finding.rule === rule);
}

function isSound({ findings, instance }: BlockLayout): boolean {
  return findings.length === 0 && instance.findings.length === 0;
}

/** More parts than this are not sewn at every keystroke. */
const QUICK = 200;

/** Of all blocks together: what is sewn in half a second when a file is opened. */
export const QUICK_PATCHES = 5_000;

function isQuick({ layout }: CheckedQuilt): boolean {
  return layout.findings.length === 0 && layout.spec.findings.length === 0 && layout.placements.length + layout.patches.length <= QUICK;
}
