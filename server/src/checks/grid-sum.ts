/** `grid-sum`: lengths that do not add up to the block. */
import { add, compare, sign, sub } from '../exact/number.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Fix, Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import { findingsOf, type FindingOf, type Rule } from './rule.ts';
import { bothLengths, isRounded, lengthText } from './wording.ts';

export const gridSum: Rule = {
  id: 'grid-sum',
  severity: 'error',
  title: 'Lengths that do not add up to the block',
  why: 'Where a grid is given in lengths they must fill the block exactly; an eighth of an inch too much in one seam is an inch too much in eight blocks.',
  bad: quiltExample('block Buoy 6" {\n  grid 2" 2" 1 1/2" by 3" 3"\n  ink sand ink\n  sand ink sand\n}'),
  good: quiltExample('block Buoy 6" {\n  grid 2" 2" 2" by 3" 3"\n  ink sand ink\n  sand ink sand\n}'),
  mends: ['Change one of the lengths; the quick fix changes the last one.', 'Write proportions instead of lengths: `grid 2 2 1 by 1 1`.', 'Change the size of the block.'],
  find: (context) => findingsOf(context, 'grid-sum').map((finding) => problemOf(finding, context.pattern)),
};

function problemOf(finding: FindingOf<'grid-sum'>, pattern: Pattern): Problem {
  const [found, expected] = bothLengths(finding.found, finding.expected, pattern);
  const isFull = finding.shared === true && compare(finding.found, finding.expected) >= 0;
  const fix = lastLengthFix(finding, pattern);
  return {
    rule: 'grid-sum',
    place: finding.place,
    message: isFull ? `the lengths of ${finding.what} take ${found} of ${expected} and leave nothing for the rest` : `${finding.what} add up to ${found}, not ${expected}`,
    ...(finding.related ? { related: [{ place: finding.related, message: `${expected} is asked for here` }] } : {}),
    ...(fix ? { fix } : {}),
  };
}

/** The last length can take up the difference when something is left for it. */
function lastLengthFix(finding: FindingOf<'grid-sum'>, pattern: Pattern): Fix | undefined {
  const last = finding.last;
  if (!last?.isLength) return undefined;
  const value = add(last.value, sub(finding.expected, finding.found));
  const text = lengthText(value, pattern);
  if (sign(value) <= 0 || isRounded(text)) return undefined;
  return { title: `Make the last one ${text}`, edits: [{ place: last.place, text }] };
}
