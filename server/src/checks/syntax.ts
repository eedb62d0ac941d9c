/** `syntax`: a line that cannot be read. The parser words each case; the mend is its own where it is certain. */
import { quiltExample } from './example.ts';
import type { Rule } from './rule.ts';

export const syntax: Rule = {
  id: 'syntax',
  severity: 'error',
  title: 'A line that cannot be read',
  why: 'Every line is read by itself, so a slip costs its own line only: the rest of the pattern is still checked and drawn. Until it is mended, nothing is written, because a pattern with a hole in it would be sewn with a hole in it.',
  bad: quiltExample('block Buoy 4" {\n  ink sand-\n  sand ink\n}'),
  good: quiltExample('block Buoy 4" {\n  ink sand-ink\n  sand ink\n}'),
  mends: ['Read the message: it says what was expected at the place marked.', 'Take the quick fix where one is offered.'],
  find: ({ tree }) => tree.problems.filter((problem) => problem.rule === 'syntax'),
};
