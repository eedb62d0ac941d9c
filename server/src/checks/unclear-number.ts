/** `unclear-number`: a number that can be read in two ways; the parser says which it took. */
import { quiltExample } from './example.ts';
import type { Rule } from './rule.ts';

export const unclearNumber: Rule = {
  id: 'unclear-number',
  severity: 'hint',
  title: 'A number that can be read in two ways',
  why: '`2 1/2` is two and a half, and so is `2-1/2`; in a list of proportions a reader may take the first for two numbers. `71/2"` is thirty-five and a half inches, and most likely a blank was lost.',
  bad: quiltExample('block Buoy 71/2" {\n  ink sand\n  sand ink\n}'),
  good: quiltExample('block Buoy 7 1/2" {\n  ink sand\n  sand ink\n}'),
  mends: ['Write the mixed number with a hyphen: `2-1/2`.', 'Put the lost blank back: `7 1/2"`.'],
  find: ({ tree }) => tree.problems.filter((problem) => problem.rule === 'unclear-number'),
};
