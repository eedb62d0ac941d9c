/** `too-large`: past the limits of the language, said at once and before the work is done. */
import { example } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';

const quilt = (count: string): string => example(`block Buoy 4" {\n  ink sand\n  sand ink\n}\nquilt {\n  straight ${count}\n  place { Buoy }\n}\n`);

export const tooLarge: Rule = {
  id: 'too-large',
  severity: 'error',
  title: 'Past the limits',
  why: 'A pattern may place 100,000 patches and hold 2,000 blocks, nested 64 deep, in a file of up to 10 MiB and 100,000 lines of up to 10,000 characters. Past that something was mistyped, and the tool answers at once instead of working on it.',
  bad: quilt('9000 by 9000'),
  good: quilt('9 by 9'),
  mends: ['Check the counts for a digit too many.', 'Split the pattern into files and import them.'],
  find: (context) => [
    ...context.tree.problems.filter((problem) => problem.rule === 'too-large'),
    ...findingsOf(context, 'too-large').map(({ place, found, limit }) => ({ rule: 'too-large' as const, place, message: `${found} is past the limit of ${limit}` })),
  ],
};
