/** `unknown-name`: a name that nothing declares. */
import { nearestWord } from '../text/nearest.ts';
import { quiltExample } from './example.ts';
import { findingsOf, type FindingOf, type Rule } from './rule.ts';
import type { Problem } from '../text/problem.ts';

export const unknownName: Rule = {
  id: 'unknown-name',
  severity: 'error',
  title: 'A name that nothing declares',
  why: 'A fabric or block that is named but not declared has no colour, no size and no yardage. Names are case-sensitive: `Ink` and `ink` are two names.',
  bad: quiltExample('block Buoy 4" {\n  ink snad\n  sand ink\n}'),
  good: quiltExample('block Buoy 4" {\n  ink sand\n  sand ink\n}'),
  mends: ['Correct the spelling; the quick fix offers the nearest name.', 'Declare it: `fabric NAME #rrggbb "label"`, or `block NAME SIZE { … }`.'],
  find: (context) => findingsOf(context, 'unknown-name').map(problemOf),
};

function problemOf(finding: FindingOf<'unknown-name'>): Problem {
  const near = nearestWord(finding.name, finding.known);
  const problem: Problem = {
    rule: 'unknown-name',
    place: finding.place,
    message: `no ${finding.wanted} is called \`${finding.name}\`${near === undefined ? '' : `; did you mean \`${near}\`?`}`,
  };
  return near === undefined ? problem : { ...problem, fix: { title: `Write \`${near}\``, edits: [{ place: finding.place, text: near }] } };
}
