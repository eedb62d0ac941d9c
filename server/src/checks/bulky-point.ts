/** `bulky-point`: so many seams end in one point that their allowances pile up. */
import { quiltExample } from './example.ts';
import { sewingOf } from '../piecing/sewing.ts';
import type { Problem } from '../text/problem.ts';
import type { CheckContext, Rule } from './rule.ts';
import { placeTouching, quickShown, sewnFindings, timesText } from './sewing.ts';
import { blockPointText, count } from './wording.ts';

export const bulkyPoint: Rule = {
  id: 'bulky-point',
  severity: 'hint',
  when: 'later',
  title: 'Many seams that end in one point',
  why: 'Where eight seams end in one point sixteen layers of allowance lie over each other. The point will not lie flat, and the needle goes around it. Pressed open, the layers spread.',
  bad: quiltExample('block Buoy 4" {\n  ink\\sand ink/sand\n  sand/ink sand\\ink\n}'),
  good: quiltExample('block Buoy 4" {\n  ink\\sand sand\n  sand     sand\\ink\n}'),
  mends: [
    'Press these seams open: the pressing plan does so already.',
    'Trim the tips of the allowances before the last seam, or fan them out in a ring.',
    'Let fewer patches end in the point; or keep it: `// allow bulky-point`.',
  ],
  find: (context) => [
    ...sewnFindings(context, 'bulky-point').map(({ finding, at }) => ({
      rule: 'bulky-point' as const,
      place: finding.place,
      message: `${finding.ends} seams end at one point${timesText(finding.count)}, ${at(finding.at)}: press them open`,
    })),
    ...whereBlocksMeet(context),
  ],
};

/** One for the whole quilt, at the block that touches the first of them: a tile repeats its corners everywhere. */
function whereBlocksMeet(context: CheckContext): readonly Problem[] {
  const shown = quickShown(context);
  if (!shown) return [];
  const { pressing: { bulky: [first, ...others] }, setting } = sewingOf(shown.layout, context.pattern.rules);
  const place = first && placeTouching(setting, first.at);
  if (!first || !place) return [];
  const where = blockPointText(first.at, { isLength: true }, context.pattern);
  const times = others.length === 0 ? '' : `, and so at ${count(others.length, 'more point')}`;
  return [{ rule: 'bulky-point', place, message: `${first.ends} seams end at one point where blocks meet, ${where} of the quilt${times}: press the seam between the rows open` }];
}
