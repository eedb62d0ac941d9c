/** `border-does-not-fit`: a pieced border (or a row) whose unit does not divide the side it is sewn to. */
import { compare, equals, type Exact } from '../exact/number.ts';
import type { Pattern } from '../model/pattern.ts';
import { placeIn } from '../text/place.ts';
import type { Fix, Problem } from '../text/problem.ts';
import { example } from './example.ts';
import type { CheckContext, CheckedQuilt, FindingOf, Rule } from './rule.ts';
import { isRounded, lengthText } from './wording.ts';

const bordered = (spacer: string): string =>
  example(`block Buoy 5" {\n  ink sand\n  sand ink\n}\nblock Rope 2" {\n  ink/sand\n}\nquilt {\n  straight 3 by 3\n  place { Buoy }\n${spacer}  border pieced Rope\n}\n`);

export const borderDoesNotFit: Rule = {
  id: 'border-does-not-fit',
  severity: 'error',
  when: 'later',
  title: 'A pieced border or a row whose units do not come out even',
  why: 'The units of a pieced border must come out even on every side. A plain spacer border inside it makes any unit fit, when it has the right width; a row of a quilt of rows needs a spacer at each end.',
  bad: bordered(''),
  good: bordered('  border 1/2" ink\n'),
  mends: [
    'Add the spacer border named in the message; the quick fix writes it, in sizes that need different ones as `border fit`.',
    'Let the tool find its width in every size: `border fit 1" FABRIC` before the pieced border.',
  ],
  find: (context) => told(context).map(({ finding, size }) => problemOf(finding, size, context)),
};

type Misfit = FindingOf<'border-does-not-fit'>;

interface Told {
  readonly finding: Misfit;
  /** The name of the size it is in, where the pattern has sizes. */
  readonly size?: string;
}

/** In each size; the count in `quilt` is left out where a size says the same. */
function told({ quilts }: CheckContext): readonly Told[] {
  const all = quilts.flatMap((quilt) => misfits(quilt).map((finding): Told => ({ finding, ...(quilt.size ? { size: quilt.size.name } : {}) })));
  return all.filter((each) => each.size !== undefined || !all.some((other) => other.size !== undefined && isSame(each.finding, other.finding)));
}

function misfits({ layout }: CheckedQuilt): readonly Misfit[] {
  return layout.findings.filter((finding) => finding.rule === 'border-does-not-fit');
}

function isSame(one: Misfit, other: Misfit): boolean {
  return one.place === other.place && one.what === other.what && equals(one.side, other.side);
}

function problemOf(finding: Misfit, size: string | undefined, context: CheckContext): Problem {
  const { pattern } = context;
  const { place, spacer, spacers } = finding;
  const where = size === undefined ? '' : `in ${size}, `;
  const start = `${where}${finding.what} of ${lengthText(finding.unit, pattern)} does not divide ${lengthText(finding.side, pattern)}`;
  const problem = (message: string): Problem => ({ rule: 'border-does-not-fit', place, message });
  if (spacer) return problem(`${start}; a spacer of ${lengthText(spacer, pattern)} at each end fills it`);
  if (!spacers) return problem(start);
  const fix = spacerFix(finding, context);
  return { ...problem(`${start}; a spacer border of ${widthsText(spacers, pattern)} before it makes it fit`), ...(fix ? { fix } : {}) };
}

interface Widths {
  readonly top: Exact;
  readonly sides: Exact;
}

function widthsText({ top, sides }: Widths, pattern: Pattern): string {
  return equals(top, sides) ? lengthText(top, pattern) : `${lengthText(top, pattern)} at top and bottom and ${lengthText(sides, pattern)} at the sides`;
}

/** A spacer of the widths that are needed, or, where the sizes need different ones, one that finds its width in each. */
function spacerFix({ place }: Misfit, { quilts, pattern, tree }: CheckContext): Fix | undefined {
  const fabric = spacerFabric(place.line.text, quilts, pattern);
  const [first, ...others] = quilts.flatMap((quilt) => neededIn(quilt, place));
  if (fabric === undefined || !first || place.line.source !== tree.document.source) return undefined;
  const isOne = quilts.every((quilt) => neededIn(quilt, place).length > 0) && others.every((each) => equals(each.top, first.top) && equals(each.sides, first.sides));
  const widths = isOne ? widthsOf(first, pattern) : `fit ${pattern.rules.units === 'inches' ? '1/2"' : '1 cm'}`;
  if (widths === undefined) return undefined;
  const text = `border ${widths} ${fabric}\n${place.line.text.slice(0, place.from)}`;
  const title = isOne ? `Add a spacer border: ${widths}` : 'Add a spacer border that fits in every size';
  return { title, edits: [{ place: placeIn(place.line, { from: place.from, to: place.from }), text }] };
}

function neededIn(quilt: CheckedQuilt, place: Misfit['place']): readonly Widths[] {
  return misfits(quilt).flatMap((finding) => (finding.place === place && finding.spacers ? [finding.spacers] : []));
}

/** As the language writes them; undefined where no text says them exactly. */
function widthsOf({ top, sides }: Widths, pattern: Pattern): string | undefined {
  const [level, upright] = [lengthText(top, pattern), lengthText(sides, pattern)];
  if (isRounded(level) || isRounded(upright)) return undefined;
  return compare(top, sides) === 0 ? level : `top ${level} sides ${upright}`;
}

/** That of the border before it, else the first of the pattern. */
function spacerFabric(line: string, quilts: readonly CheckedQuilt[], pattern: Pattern): string | undefined {
  const borders = quilts.flatMap(({ layout }) => layout.borders);
  const before = borders[borders.findIndex(({ place }) => place.line.text === line) - 1];
  return before?.fabric?.name ?? pattern.fabrics.keys().next().value;
}
