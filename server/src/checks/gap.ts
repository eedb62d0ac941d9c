/** `gap`: a part of a block that no patch covers, decided exactly. */
import { WHOLE_GOOSE, gooseExample } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';
import { blockAreaText, blockPointText, count } from './wording.ts';

export const gap: Rule = {
  id: 'gap',
  severity: 'error',
  title: 'A part of the block that no patch covers',
  why: 'A gap is a hole in the quilt: there is nothing to sew the neighbours to.',
  bad: gooseExample('  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n'),
  good: WHOLE_GOOSE,
  mends: ['Add the missing patch at the corners named.', 'Move the corner of a neighbour to where the gap ends.'],
  find: (context) =>
    findingsOf(context, 'gap').map(({ place, area, corners, regions, ...measure }) => ({
      rule: 'gap',
      place,
      message: `no patch covers ${blockAreaText(area, measure, context.pattern)}${measure.isLength ? ' of the block' : ''}${regions > 1 ? ` in ${count(regions, 'place')}` : ''}${corners[0] ? `, at ${blockPointText(corners[0], measure, context.pattern)}` : ''}`,
    })),
};
