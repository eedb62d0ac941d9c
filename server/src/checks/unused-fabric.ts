/** `unused-fabric`: declared, and nothing is cut from it. */
import { quiltExample } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';
import { unused } from './unused.ts';

export const unusedFabric: Rule = {
  id: 'unused-fabric',
  severity: 'warning',
  title: 'A fabric that nothing is cut from',
  why: 'A fabric in the list that no patch, border, backing or binding is cut from would be bought for nothing, or a patch was meant to have it.',
  bad: quiltExample('fabric coal #333333 "Coal"\nblock Buoy 4" {\n  ink sand\n  sand ink\n}'),
  good: quiltExample('fabric coal #333333 "Coal"\nblock Buoy 4" {\n  ink sand\n  sand coal\n}'),
  mends: ['Use it, or drop its line.', 'Keep it on purpose with `// allow unused-fabric` at the end of its line.'],
  find: (context) => findingsOf(context, 'unused-fabric').map(({ place, name, line }) => unused('unused-fabric', `no patch is cut from \`${name}\``, place, line, context.tree.document)),
};
