/** `import-missing`: a file that cannot be brought in. */
import { example } from './example.ts';
import { findingsOf, type FindingOf, type Rule } from './rule.ts';

export const importMissing: Rule = {
  id: 'import-missing',
  severity: 'error',
  title: 'A file that cannot be brought in',
  why: 'What an import brings in is part of the pattern. A path is relative to the file it stands in and stays inside the workspace, so that a pattern means the same on every machine. A name without a dot or a slash (`import "traditional"`) is a library of the tool itself.',
  bad: example('import "no-such-file.quilt"\nblock Buoy 4" {\n  ink sand\n}\n'),
  good: example('block Buoy 4" {\n  ink sand\n}\n'),
  mends: ['Correct the path: it is relative to this file.', 'Move the file into the workspace.'],
  find: (context) => findingsOf(context, 'import-missing').map((finding) => ({ rule: 'import-missing', place: finding.place, message: reason(finding) })),
};

function reason({ path, why, shelf }: FindingOf<'import-missing'>): string {
  if (shelf) return `there is no library \`${path}\`; the tool's own: ${shelf.map((name) => `\`${name}\``).join(', ') || 'none'} (a file of yours ends in \`.quilt\`)`;
  if (why === 'outside') return `\`${path}\` lies outside the workspace`;
  return why === 'missing' ? `there is no file \`${path}\` here` : `\`${path}\` cannot be read`;
}
