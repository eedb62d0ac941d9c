/** `row-length`: a row with more or fewer cells than its grid has columns, or more or fewer rows than the grid has. */
import { quiltExample } from './example.ts';
import { findingsOf, type FindingOf, type Rule } from './rule.ts';
import { count } from './wording.ts';
import type { Problem } from '../text/problem.ts';

export const rowLength: Rule = {
  id: 'row-length',
  severity: 'error',
  title: 'A row with another number of cells',
  why: 'The cells of a grid stand in columns. A row with one cell too many or too few would leave a hole in the block or have a patch that lies nowhere.',
  bad: quiltExample('block Buoy 6" {\n  ink  sand ink\n  sand ink\n  ink  sand ink\n}'),
  good: quiltExample('block Buoy 6" {\n  ink  sand ink\n  sand ink  sand\n  ink  sand ink\n}'),
  mends: ['Count the cells: blanks part them, seams do not.', 'A patch that goes on over two columns is written `<` in the second one.'],
  find: (context) => findingsOf(context, 'row-length').map(problemOf),
};

function problemOf(finding: FindingOf<'row-length'>): Problem {
  const { place, found, expected, related } = finding;
  const what = finding.of === 'cells' ? 'cell' : 'row';
  const subject = finding.of === 'cells' ? 'this row has' : 'there are';
  const message = `${subject} ${count(found, what)}, the grid has ${expected}`;
  return related ? { rule: 'row-length', place, message, related: [{ place: related, message: finding.relatedMessage ?? 'the grid' }] } : { rule: 'row-length', place, message };
}
