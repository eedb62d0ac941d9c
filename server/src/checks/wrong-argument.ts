/** `wrong-argument`: a value that cannot stand where it stands. */
import { example } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';

export const wrongArgument: Rule = {
  id: 'wrong-argument',
  severity: 'error',
  title: 'A value that cannot stand there',
  why: 'A block takes as many arguments as it has parameters, each of its kind; a length is no count, and nothing is cut to a width below zero.',
  bad: example('block Buoy(a, b) 4" {\n  a b\n  b a\n}\nquilt {\n  straight 2 by 2\n  place { Buoy(ink) }\n  backing sand\n}\n'),
  good: example('block Buoy(a, b) 4" {\n  a b\n  b a\n}\nquilt {\n  straight 2 by 2\n  place { Buoy(ink, sand) }\n  backing sand\n}\n'),
  mends: ['Give every parameter that has no default, in order or by name: `Buoy(a: ink, b: sand)`.', 'Give a parameter a default in its declaration: `block Buoy(a = ink, b = sand)`.'],
  find: (context) =>
    findingsOf(context, 'wrong-argument').map(({ place, problem, related }) => ({
      rule: 'wrong-argument',
      place,
      message: problem,
      ...(related ? { related: [{ place: related, message: 'it is declared here' }] } : {}),
    })),
};
