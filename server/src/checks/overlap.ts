/** `overlap`: two patches that share area, decided exactly. */
import { WHOLE_GOOSE, gooseExample } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';
import { blockAreaText, blockPointText } from './wording.ts';

export const overlap: Rule = {
  id: 'overlap',
  severity: 'error',
  title: 'Two patches that share area',
  why: 'Two patches cannot be sewn side by side where one lies over the other. (A flipped corner, written `corner`, is the one patch that may lie over another.)',
  bad: gooseExample('  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n  patch sand 1,0 2,0 2,1 1/2,1\n'),
  good: WHOLE_GOOSE,
  mends: ['Give the two patches the same corners along the seam they share.', 'Drop one of them where both were meant to be the same patch.'],
  find: (context) =>
    findingsOf(context, 'overlap').map(({ place, other, area, at, ...measure }) => ({
      rule: 'overlap',
      place,
      message: `this patch lies over another by ${blockAreaText(area, measure, context.pattern)}, at ${blockPointText(at, measure, context.pattern)}`,
      related: [{ place: other, message: 'the other patch' }],
    })),
};
