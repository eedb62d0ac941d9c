/** `border-does-not-fit`: a pieced border (or a row) whose unit does not divide the side it is sewn to. */
import { example } from './example.ts';
import { findingsOf, type FindingOf, type Rule } from './rule.ts';
import { isRounded, lengthText } from './wording.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Problem } from '../text/problem.ts';

const bordered = (spacer: string): string =>
  example(`block Buoy 5" {\n  ink sand\n  sand ink\n}\nblock Rope 2" {\n  ink/sand\n}\nquilt {\n  straight 3 by 3\n  place { Buoy }\n${spacer}  border pieced Rope\n}\n`);

export const borderDoesNotFit: Rule = {
  id: 'border-does-not-fit',
  severity: 'error',
  title: 'A pieced border or a row whose units do not come out even',
  why: 'The units of a pieced border must come out even on every side. A plain spacer border inside it makes any unit fit, when it has the right width; a row of a quilt of rows needs a spacer at each end.',
  bad: bordered(''),
  good: bordered('  border 1/2" ink\n'),
  mends: ['Add the spacer border named in the message; the quick fix writes it.', 'Let the tool find its width: `border fit 1" FABRIC` before the pieced border.'],
  find: (context) => findingsOf(context, 'border-does-not-fit').map((finding) => problemOf(finding, context.pattern)),
};

function problemOf(finding: FindingOf<'border-does-not-fit'>, pattern: Pattern): Problem {
  const { place, spacer, before } = finding;
  const start = `${finding.what} of ${lengthText(finding.unit, pattern)} does not divide ${lengthText(finding.side, pattern)}`;
  if (!spacer) return { rule: 'border-does-not-fit', place, message: start };
  const width = lengthText(spacer, pattern);
  if (!before) return { rule: 'border-does-not-fit', place, message: `${start}; a spacer of ${width} at each end fills it` };
  const message = `${start}; a spacer border of ${width} before it makes it fit`;
  const fabric = pattern.fabrics.keys().next().value;
  if (fabric === undefined || isRounded(width)) return { rule: 'border-does-not-fit', place, message };
  const insert = { line: before.line, from: before.from, to: before.from };
  return { rule: 'border-does-not-fit', place, message, fix: { title: `Add a spacer border of ${width}`, edits: [{ place: insert, text: `border ${width} ${fabric}\n${before.line.text.slice(0, before.from)}` }] } };
}
