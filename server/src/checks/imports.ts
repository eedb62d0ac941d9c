/** `import-missing` and `import-cycle`: files that cannot be brought in. */
import { example } from './example.ts';
import { findingsOf, type FindingOf, type Rule } from './rule.ts';

export const importMissing: Rule = {
  id: 'import-missing',
  severity: 'error',
  title: 'A file that cannot be brought in',
  why: 'What an import brings in is part of the pattern. A path is relative to the file it stands in and stays inside the workspace, so that a pattern means the same on every machine.',
  bad: example('import "no-such-file.quilt"\nblock Buoy 4" {\n  ink sand\n}\n'),
  good: example('block Buoy 4" {\n  ink sand\n}\n'),
  mends: ['Correct the path: it is relative to this file.', 'Move the file into the workspace.'],
  find: (context) => findingsOf(context, 'import-missing').map((finding) => ({ rule: 'import-missing', place: finding.place, message: reason(finding) })),
};

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

function reason({ path, why }: FindingOf<'import-missing'>): string {
  if (why === 'outside') return `\`${path}\` lies outside the workspace`;
  return why === 'missing' ? `there is no file \`${path}\` here` : `\`${path}\` cannot be read`;
}
