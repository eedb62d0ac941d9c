/** `uneven-drop`: a quilt that does not cover the mattress it is for, or hangs unevenly over its sides and its foot. */
import { ZERO, add, atMost, fraction, less, neg, sub, type Exact } from '../exact/number.ts';
import type { DropPlan } from '../cutting/plan.ts';
import type { Pattern, SizeDefinition } from '../model/pattern.ts';
import type { Problem } from '../text/problem.ts';
import { example } from './example.ts';
import type { Rule } from './rule.ts';
import { lengthText } from './wording.ts';

/** What the eye forgives between the drop at the sides and that at the foot. Our own choice. */
const FORGIVEN = fraction(4);

/** What may be tucked over the pillows at the head (C. A. Taylor, A Time to Sew, http://atimetosewquilts.com/measurements.htm). */
const PILLOWS = fraction(15);

const buoys = (count: string): string => example(`block Buoy 9" {\n  ink sand\n  sand ink\n}\nquilt {\n  straight 7 by 10\n  place { Buoy }\n}\nsize twin ${count} for twin_bed\n`);

export const unevenDrop: Rule = {
  id: 'uneven-drop',
  severity: 'hint',
  when: 'later',
  title: 'A quilt that hangs unevenly over its bed',
  why: 'A quilt for a bed covers the mattress and hangs over both sides and the foot. With its head at the head of the mattress, half of what it is wider hangs at each side, and what it is longer at the foot. The two should be alike within 4"; at the head up to 15" more may be tucked over the pillows.',
  bad: buoys('7 by 8'),
  good: buoys('7 by 10'),
  mends: ['Change the count of blocks, or the width of the borders: `border top LEN sides LEN FABRIC` has two widths.', 'Bring the top to a size: `border to W by H FABRIC`.', 'A coverlet that stays on the mattress, or one that hangs to the floor on one side: `// allow uneven-drop`.'],
  find: ({ quilts, pattern }) => quilts.flatMap(({ size, plan: { drop } }) => (size && drop ? problemsOf(size, drop, pattern) : [])),
};

function problemsOf(size: SizeDefinition, { bed, sides, foot }: DropPlan, pattern: Pattern): readonly Problem[] {
  const problem = (message: string): Problem => ({ rule: 'uneven-drop', place: size.place, message });
  const mattress = `the mattress of a ${bed.replaceAll('_', ' ')}`;
  const short = [...missing(add(sides, sides), 'narrower', pattern), ...missing(foot, 'shorter', pattern)];
  if (short.length > 0) return [problem(`the quilt is ${short.join(' and ')} than ${mattress}`)];
  const more = sub(foot, sides);
  if (atMost(neg(FORGIVEN), more) && atMost(more, add(PILLOWS, FORGIVEN))) return [];
  return [problem(`over ${mattress} ${lengthText(sides, pattern)} hangs at each side and ${lengthText(foot, pattern)} at the foot`)];
}

function missing(over: Exact, word: string, pattern: Pattern): readonly string[] {
  return less(over, ZERO) ? [`${lengthText(neg(over), pattern)} ${word}`] : [];
}
