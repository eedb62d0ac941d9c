/** `sizes-differ`: neighbours in a setting whose edges are not equally long. */
import { example } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';
import { bothLengths } from './wording.ts';

const blocks = (size: string): string =>
  example(`block Buoy 6" {\n  ink sand\n  sand ink\n}\nblock Bell ${size} {\n  sand ink\n  ink sand\n}\nquilt {\n  straight 2 by 2\n  place {\n    Buoy Bell\n    Bell Buoy\n  }\n}\n`);

export const sizesDiffer: Rule = {
  id: 'sizes-differ',
  severity: 'error',
  title: 'Neighbours of different sizes',
  why: 'Two blocks that are sewn edge to edge must be equally long there; easing in a quarter inch ten times makes a wave, not a quilt.',
  bad: blocks('5 3/4"'),
  good: blocks('6"'),
  mends: ['Give both the same size.', 'Set them in a `grid` with columns and rows of their own, in lengths.', 'Add a strip or a frame to the smaller one.'],
  find: (context) =>
    findingsOf(context, 'sizes-differ').map(({ place, other, found, expected, what }) => {
      const [has, wants] = bothLengths(found, expected, context.pattern);
      return { rule: 'sizes-differ', place, message: `${what} ${has}, its neighbour ${wants}`, related: [{ place: other, message: `${wants} comes from here` }] };
    }),
};
