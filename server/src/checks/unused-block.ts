/** `unused-block`: declared, and never set. */
import { quiltExample } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';
import { unused } from './unused.ts';

export const unusedBlock: Rule = {
  id: 'unused-block',
  severity: 'warning',
  title: 'A block that is never set',
  why: 'A block that neither the quilt nor another block uses is not sewn, and its patches are not in the cut list.',
  bad: quiltExample('block Buoy 4" {\n  ink sand\n  sand ink\n}\nblock Bell 4" {\n  ink\n}'),
  good: quiltExample('block Bell {\n  ink\n}\nblock Buoy 4" {\n  Bell sand\n  sand ink\n}'),
  mends: ['Set it: `place { … }`, `between { … }`, or in a cell of another block.', 'Keep it for later with `// allow unused-block` at the end of its line.'],
  find: (context) => findingsOf(context, 'unused-block').map(({ place, name, line }) => unused('unused-block', `block \`${name}\` is never set`, place, line, context.tree.document)),
};
