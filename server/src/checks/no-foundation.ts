/** `no-foundation`: a block that asks to be sewn on paper and cannot be. */
import type { BlockLayout } from '../geometry/layout.ts';
import type { BlockInstance } from '../model/pattern.ts';
import { foundationOf, type WhyNot } from '../piecing/foundation.ts';
import { placeIn, type Place } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import type { CheckContext, Rule } from './rule.ts';
import { quickBlocks } from './sewing.ts';

export const noFoundation: Rule = {
  id: 'no-foundation',
  severity: 'hint',
  when: 'later',
  title: 'A block that paper does not help',
  why: 'On paper a patch is added along one straight line that parts it from everything sewn before. Blocks with curves, with a piece that is set in or with a seam sewn in two goes have no such order, not even in sections. They are cut and sewn as if `foundation` did not stand there.',
  bad: quiltExample('block Buoy 7" {\n  foundation\n  drunkards_path(ink, sand)\n}'),
  good: quiltExample('block Buoy 7" {\n  foundation\n  snowball(ink, sand)\n}'),
  mends: ['Cut the patch that is in the way in two, along a line that another seam continues.', 'Take `foundation` out.'],
  find: notOnPaper,
};

function notOnPaper(context: CheckContext): readonly Problem[] {
  const told = new Map<Place, Problem>();
  for (const layout of quickBlocks(context)) {
    const place = layout.instance.foundation ? foundationPlace(layout.instance) : undefined;
    const plan = place && foundationOf(layout);
    if (!place || plan?.kind !== 'none' || plan.why === 'unsound' || told.has(place)) continue;
    const first = layout.patches[plan.patches[0] ?? -1];
    const related = first ? [{ place: first.within?.[0] ?? first.place, message: plan.patches.length === 1 ? 'this one' : 'the first of them' }] : [];
    told.set(place, { rule: 'no-foundation', place, message: `\`${layout.instance.definition.name}\` cannot be sewn on paper: ${reason(plan, layout)}`, related });
  }
  return [...told.values()];
}

function reason(plan: Exclude<WhyNot, { readonly why: 'unsound' }>, { patches }: BlockLayout): string {
  const all = patches.length === 1 ? '1 patch' : `${patches.length} patches`;
  const of = `${plan.patches.length} of its ${all}`;
  if (plan.why === 'too many') return `its ${all} are more than the ${plan.most} that are looked at`;
  if (plan.why === 'curve') return `${of} ${plan.patches.length === 1 ? 'has a curved edge' : 'have curved edges'}`;
  if (plan.why === 'inner corner') return `flipped corners leave ${of} in parts`;
  return `no straight line runs across ${plan.patches.length === patches.length ? `its ${all}` : of}`;
}

/** Where a block of this file says `foundation`. */
export function foundationPlace({ definition }: BlockInstance): Place | undefined {
  if (definition.origin !== 'file') return undefined;
  const found = definition.statement.body?.statements.find(({ node }) => node.kind === 'foundation');
  return found && placeIn(found.line, found.node.word);
}
