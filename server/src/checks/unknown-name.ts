/** `unknown-name`: a name that nothing declares. */
import { nearestWord } from '../text/nearest.ts';
import { quiltExample } from './example.ts';
import { findingsOf, type FindingOf, type Rule } from './rule.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Problem } from '../text/problem.ts';

export const unknownName: Rule = {
  id: 'unknown-name',
  severity: 'error',
  title: 'A name that nothing declares',
  why: 'A fabric or block that is named but not declared has no colour, no size and no yardage. Names are case-sensitive: `Ink` and `ink` are two names.',
  bad: quiltExample('block Buoy 4" {\n  ink snad\n  sand ink\n}'),
  good: quiltExample('block Buoy 4" {\n  ink sand\n  sand ink\n}'),
  mends: ['Correct the spelling; the quick fix offers the nearest name.', 'Import the library that has it: `import "traditional"`.', 'Declare it: `fabric NAME #rrggbb "label"`, or `block NAME SIZE { … }`.'],
  find: (context) => findingsOf(context, 'unknown-name').map((finding) => problemOf(finding, context.pattern)),
};

function problemOf(finding: FindingOf<'unknown-name'>, { tree }: Pattern): Problem {
  const { name, place, wanted, known, library } = finding;
  const problem = { rule: 'unknown-name', place, message: `no ${wanted} is called \`${name}\`` } as const;
  const [line] = tree.document.lines;
  if (library !== undefined && line) {
    const fix = { title: `Import the library \`${library}\``, edits: [{ place: { line, from: 0, to: 0 }, text: `import "${library}"\n` }] };
    return { ...problem, message: `${problem.message} here; the library \`${library}\` has one: write \`import "${library}"\``, fix };
  }
  const near = nearestWord(name, isAlone(finding) ? [...known, ...LONE_WORDS] : known);
  if (near === undefined) return problem;
  return { ...problem, message: `${problem.message}; did you mean \`${near}\`?`, fix: { title: `Write \`${near}\``, edits: [{ place, text: near }] } };
}

/** Statements of a block that are one word: a misspelt one is read as a row of one cell. */
const LONE_WORDS = ['templates', 'foundation'];

function isAlone({ name, place }: FindingOf<'unknown-name'>): boolean {
  return place.line.text.replace(/\/\/.*/, '').trim() === name;
}
