/** `import-cycle`: files that import each other in a ring. */
import { example } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';

export const importCycle: Rule = {
  id: 'import-cycle',
  severity: 'error',
  title: 'Files that import each other in a ring',
  why: 'Each file of a ring would need the other first. What both need belongs in a third file.',
  bad: example('import "itself.quilt"\nblock Buoy 4" {\n  ink sand\n}\n'),
  good: example('block Buoy 4" {\n  ink sand\n}\n'),
  mends: ['Move what both files need into a third one, and import that.'],
  find: (context) =>
    findingsOf(context, 'import-cycle').map(({ place, chain }) => ({ rule: 'import-cycle', place, message: `this import comes back to itself: ${chain.join(' → ')}` })),
};
