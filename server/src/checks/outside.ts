/** `outside`: a patch that leaves its block, decided exactly. */
import { WHOLE_GOOSE, gooseExample } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';
import { blockAreaText, blockPointText, blockSizeText } from './wording.ts';

export const outside: Rule = {
  id: 'outside',
  severity: 'error',
  title: 'A patch that leaves the block',
  why: 'What lies outside the block lies over its neighbours in the quilt, and their seams would not meet.',
  bad: gooseExample('  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n  patch sand 1,0 3,0 2,1\n'),
  good: WHOLE_GOOSE,
  mends: ['Move the corner back to the edge of the box.', 'Check `box`: x runs to the right, y down.'],
  find: (context) =>
    findingsOf(context, 'outside').map(({ place, area, at, width, height, ...measure }) => ({
      rule: 'outside',
      place,
      message: `this patch leaves the block, ${blockSizeText({ width, height }, measure, context.pattern)}, by ${blockAreaText(area, measure, context.pattern)}, at ${blockPointText(at, measure, context.pattern)}`,
    })),
};
