/** `partial-seam`: a ring of pieces, of which none can be the first that is sewn on whole. */
import { quiltExample } from './example.ts';
import type { Rule } from './rule.ts';
import { sewnFindings, timesText } from './sewing.ts';

export const partialSeam: Rule = {
  id: 'partial-seam',
  severity: 'hint',
  when: 'later',
  title: 'A seam that is sewn in two goes',
  why: 'Pieces that go around a centre like the sails of a mill each end against the side of the next. None can be the first that is sewn on whole: the first seam is sewn part of the way, the others follow around, and the first is finished at the end.',
  bad: quiltExample('block Buoy 3" {\n  patch ink  0,0 2,0 2,1 0,1\n  patch sand 2,0 3,0 3,2 2,2\n  patch ink  1,2 3,2 3,3 1,3\n  patch sand 0,1 1,1 1,3 0,3\n  patch ink  1,1 2,1 2,2 1,2\n}'),
  good: quiltExample('block Buoy 3" {\n  ink sand ink\n  sand ink sand\n  ink sand ink\n}'),
  mends: [
    'Sew in the order that the steps give: it begins with half a seam.',
    'Let two opposite pieces run the whole width, or cut one piece in two where the next begins.',
    'Keep it, and say that it is meant: `// allow partial-seam`.',
  ],
  find: (context) =>
    sewnFindings(context, 'partial-seam').map(({ finding, at, along }) => ({
      rule: 'partial-seam',
      place: finding.place,
      message: `this seam is sewn only part of the way at first${timesText(finding.count)}${firstGo(along(finding))}: it stops at ${at(finding.stop)} and is finished when the other pieces are on`,
      ...(finding.other ? { related: [{ place: finding.other, message: 'sewn to this' }] } : {}),
    })),
};

function firstGo(length: string | undefined): string {
  return length === undefined ? '' : `, the first ${length} of it`;
}
