/** `unused-fabric` and `unused-block`: declared and never sewn. */
import type { Place } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';

export const unusedFabric: Rule = {
  id: 'unused-fabric',
  severity: 'warning',
  title: 'A fabric that nothing is cut from',
  why: 'A fabric in the list that no patch, border, backing or binding is cut from would be bought for nothing, or a patch was meant to have it.',
  bad: quiltExample('fabric coal #333333 "Coal"\nblock Buoy 4" {\n  ink sand\n  sand ink\n}'),
  good: quiltExample('fabric coal #333333 "Coal"\nblock Buoy 4" {\n  ink sand\n  sand coal\n}'),
  mends: ['Use it, or drop its line.', 'Keep it on purpose with `// allow unused-fabric` at the end of its line.'],
  find: (context) => findingsOf(context, 'unused-fabric').map(({ place, name, line }) => unused('unused-fabric', `no patch is cut from \`${name}\``, place, line)),
};

export const unusedBlock: Rule = {
  id: 'unused-block',
  severity: 'warning',
  title: 'A block that is never set',
  why: 'A block that neither the quilt nor another block uses is not sewn, and its patches are not in the cut list.',
  bad: quiltExample('block Buoy 4" {\n  ink sand\n  sand ink\n}\nblock Bell 4" {\n  ink\n}'),
  good: quiltExample('block Bell {\n  ink\n}\nblock Buoy 4" {\n  Bell sand\n  sand ink\n}'),
  mends: ['Set it: `place { … }`, `between { … }`, or in a cell of another block.', 'Keep it for later with `// allow unused-block` at the end of its line.'],
  find: (context) => findingsOf(context, 'unused-block').map(({ place, name, line }) => unused('unused-block', `block \`${name}\` is never set`, place, line)),
};

function unused(rule: 'unused-fabric' | 'unused-block', message: string, place: Place, whole: Place): Problem {
  return { rule, place, message, fix: { title: 'Drop the declaration', edits: [{ place: whole, text: '' }] } };
}
