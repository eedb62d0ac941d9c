/** `set-in-seam`: a piece that no straight seam can add, because at its corner three patches meet and no seam runs through. */
import { quiltExample } from './example.ts';
import { count } from './wording.ts';
import type { Rule } from './rule.ts';
import { sewnFindings, timesText } from './sewing.ts';

export const setInSeam: Rule = {
  id: 'set-in-seam',
  severity: 'hint',
  when: 'later',
  title: 'A piece that is set in',
  why: 'Most blocks are sewn with seams that run straight from edge to edge. Where three patches meet and no seam runs through, the last of them is set in: sewn to the corner, a seam allowance in from the raw edge, then turned and sewn along the next side. It can be done, slowly, and wants a dot at the corner.',
  bad: quiltExample('block Buoy 4" {\n  patch ink  0,0 2,0 2,2 0,2\n  patch sand 2,0 4,0 4,4 2,2\n  patch ink  0,2 2,2 4,4 0,4\n}'),
  good: quiltExample('block Buoy 4" {\n  ink sand\n  ink\\sand ink\n}'),
  mends: [
    'Cut the piece in two along a line that another seam continues.',
    'Sew in the order that the steps give: the piece to set in comes last.',
    'Keep it, mark the corner with a dot, and say that it is meant: `// allow set-in-seam`.',
  ],
  find: (context) =>
    sewnFindings(context, 'set-in-seam').map(({ finding, at }) => ({
      rule: 'set-in-seam',
      place: finding.place,
      message: `this piece is set in at ${count(finding.corners, 'corner')}${timesText(finding.count)}: no seam runs straight through ${finding.corners === 1 ? 'the one' : 'the first'} at ${at(finding.at)}`,
    })),
};
