/** `duplicate-name`: two declarations of one name. */
import { dropping } from './dropping.ts';
import { example } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';

export const duplicateName: Rule = {
  id: 'duplicate-name',
  severity: 'error',
  title: 'Two declarations of one name',
  why: 'A name stands for one thing. With two fabrics called `ink` nobody could say which one a cell means; the first one counts until one of them has another name.',
  bad: example('fabric ink #333333 "Coal"\nblock Buoy 4" {\n  ink sand\n}\n'),
  good: example('fabric coal #333333 "Coal"\nblock Buoy 4" {\n  ink sand coal\n}\n'),
  mends: ['Give one of them another name.', 'Drop the one that is not needed.'],
  find: (context) =>
    findingsOf(context, 'duplicate-name').map(({ place, name, what, first, whole }) => ({
      rule: 'duplicate-name',
      place,
      message: `there are two ${what} called \`${name}\`; the first one counts`,
      related: [{ place: first, message: `the first \`${name}\`` }],
      ...(whole ? { fix: { title: 'Drop the one that does not count', edits: [dropping(context.tree.document, whole)] } } : {}),
    })),
};
