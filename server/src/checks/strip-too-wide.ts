/** `strip-too-wide`: a piece that is wider than its fabric, whichever way it lies. */
import type { Measure, TooWide } from '../cutting/plan.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Problem } from '../text/problem.ts';
import { example } from './example.ts';
import type { Rule } from './rule.ts';
import { lengthText } from './wording.ts';

const buoys = (size: string): string => example(`block Buoy ${size} {\n  ink sand\n}\nquilt {\n  straight 1 by 1\n  place { Buoy }\n}\n`);

export const stripTooWide: Rule = {
  id: 'strip-too-wide',
  severity: 'warning',
  when: 'later',
  title: 'A piece that is wider than its fabric',
  why: 'A piece is cut from the usable width of its fabric, or from a fat quarter, a precut or a piece at hand. One that is wider than that in both directions has to be joined from two, which puts a seam where the drawing shows none.',
  bad: buoys('90" by 50"'),
  good: buoys('70" by 50"'),
  mends: ['Divide the patch in the block, so that the seam is where you want it.', 'Say how wide the fabric is: `width 108"` for a wide backing.'],
  find: ({ quilts, pattern }) => quilts.flatMap(({ plan }) => plan.tooWide.map((each) => problemOf(each, pattern))),
};

function problemOf({ fabric, for: use, needs, cloth, places }: TooWide, pattern: Pattern): Problem {
  if (cloth) {
    const size = ({ width, height }: Measure): string => `${lengthText(width, pattern)} by ${lengthText(height, pattern)}`;
    const message = `a piece for ${use} is cut ${size(cloth.needs)}, and a ${cloth.kind} of \`${fabric.name}\` is ${size(cloth.has)}`;
    return { rule: 'strip-too-wide', place: fabric.place, message, ...(places[0] ? { related: [{ place: places[0], message: 'the piece' }] } : {}) };
  }
  const message = `a piece for ${use} needs fabric ${lengthText(needs, pattern)} wide, \`${fabric.name}\` is ${lengthText(fabric.width, pattern)}`;
  return { rule: 'strip-too-wide', place: places[0] ?? fabric.place, message };
}
