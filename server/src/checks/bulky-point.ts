/** `bulky-point`: so many seams end in one point that their allowances pile up. */
import { quiltExample } from './example.ts';
import type { Rule } from './rule.ts';
import { sewnFindings, timesText } from './sewing.ts';

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
  find: (context) =>
    sewnFindings(context, 'bulky-point').map(({ finding, at }) => ({
      rule: 'bulky-point',
      place: finding.place,
      message: `${finding.ends} seams end at one point${timesText(finding.count)}, ${at(finding.at)}: press them open`,
    })),
};
