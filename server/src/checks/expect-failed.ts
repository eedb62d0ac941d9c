/** `expect-failed`: what the author said must hold does not hold. */
import { cutNames, piecesFor, quantityAt, quantityNames, type Quantity } from '../cutting/quantities.ts';
import { formatMetres, formatYards, toInches } from '../exact/length.ts';
import type { FabricPlan } from '../cutting/plan.ts';
import { compare, equals, isZero, type Exact } from '../exact/number.ts';
import type { Expectation, Pattern } from '../model/pattern.ts';
import { nearestWord } from '../text/nearest.ts';
import type { Problem } from '../text/problem.ts';
import { example } from './example.ts';
import type { CheckContext, CheckedQuilt, Rule } from './rule.ts';
import { bothLengths, lengthText, numberText } from './wording.ts';

const crib = (limit: string): string =>
  example(`block Buoy 6" {\n  ink sand\n  sand ink\n}\nquilt {\n  straight 5 by 6\n  place { Buoy }\n}\nexpect width at most ${limit}\n`);

export const expectFailed: Rule = {
  id: 'expect-failed',
  severity: 'error',
  when: 'later',
  title: 'An expectation that does not hold',
  why: 'An `expect` line is the author\'s promise to the maker: a size that fits the bed, a count that fits the bolt. It is checked at every keystroke, so a change elsewhere cannot break it unseen.',
  bad: crib('28"'),
  good: crib('30"'),
  mends: ['Change the pattern until it holds.', 'Change the expectation, if the new value is meant.'],
  find: (context) => context.pattern.expectations.flatMap((expectation) => judge(expectation, context)),
};

function judge(expectation: Expectation, context: CheckContext): readonly Problem[] {
  const [first] = expectation.path;
  const named = context.quilts.filter((quilt) => quilt.size !== undefined && quilt.size.name === first?.text);
  const made = context.pattern.sizes.length > 0 ? context.quilts.filter((quilt) => quilt.size !== undefined) : context.quilts;
  if (made.length === 0) return [failed(expectation, 'there is no quilt to measure in this file')];
  // A quilt that could not be laid out has its own problem; that nothing can be measured in it is no second one.
  const path = expectation.path.slice(named.length > 0 ? 1 : 0).map((each) => each.text);
  return (named.length > 0 ? named : made).filter(isLaidOut).flatMap((quilt) => judgeIn(quilt, path, expectation, context));
}

function isLaidOut({ layout }: CheckedQuilt): boolean {
  return !isZero(layout.width) && [...layout.spec.findings, ...layout.findings].every((finding) => finding.rule === 'not-yet');
}

/** What hangs on how a fabric is cut is judged on its best plan, or not before that is known. */
function judgeIn(quilt: CheckedQuilt, path: readonly string[], expectation: Expectation, { pattern, search }: CheckContext): readonly Problem[] {
  const cut = cutFabrics(quilt, path);
  if (cut.length === 0) return judgeOn(quilt, path, expectation, pattern);
  if (search !== 'later') return judgeOn({ size: quilt.size, layout: quilt.layout, plan: quilt.settled.plan, settled: quilt.settled }, path, expectation, pattern);
  return cut.every(({ isBest }) => isBest) ? judgeOn(quilt, path, expectation, pattern) : [];
}

/** The fabrics whose cutting a quantity depends on: the one it names, or the prints of the role. */
function cutFabrics({ plan }: CheckedQuilt, path: readonly string[]): readonly FabricPlan[] {
  const name = path.join('.');
  const isOf = (fabric: string): boolean => name === fabric || name.startsWith(`${fabric}.`);
  if (!plan.pieces.some(({ fabric, role }) => isOf(fabric.name) || (role !== undefined && isOf(role)))) return [];
  const prints = plan.roles.filter(({ fabric }) => isOf(fabric.name)).flatMap((role) => role.prints.map(({ fabric }) => fabric.name));
  return plan.fabrics.filter(({ fabric }) => isOf(fabric.name) || prints.includes(fabric.name));
}

function judgeOn(quilt: CheckedQuilt, path: readonly string[], expectation: Expectation, pattern: Pattern): readonly Problem[] {
  const where = quilt.size ? ` in ${quilt.size.name}` : '';
  if (expectation.cut) return judgeCut(quilt, path, expectation, pattern, where);
  const found = quantityAt(quilt, path, pattern.rules);
  const name = path.join('.');
  if (!found) {
    return [failed(expectation, `there is no quantity \`${name}\`${where}${suggestion(name, quantityNames(quilt))}`)];
  }
  return judgeValue(found, quilt.size ? `${quilt.size.name}.${name}` : name, expectation, pattern);
}

function suggestion(name: string, known: readonly string[]): string {
  const near = nearestWord(name, known);
  return near === undefined ? '' : `; did you mean \`${near}\`?`;
}

function judgeValue(found: Quantity, what: string, expectation: Expectation, pattern: Pattern): readonly Problem[] {
  const { value, comparison } = expectation;
  if ('fatQuarters' in value) return judgeFatQuarters(found, what, value.fatQuarters, expectation);
  const bare = !value.isLength && found.kind !== 'count';
  if (value.isLength && found.kind === 'count') return [failed(expectation, `\`${what}\` is a count, ${numberText(found.value)}${found.of ? ` ${found.of}s` : ''}, not a length`)];
  const expected = bare ? inPatternUnits(value.number, pattern) : value.number;
  if (holds(compare(found.value, expected), comparison)) return [];
  const [has, wants] = texts(found, expected, pattern);
  return [failed(expectation, `\`${what}\` is ${has}, ${WANTED[comparison]} ${wants}`)];
}

function judgeFatQuarters(found: Quantity, what: string, expected: Exact, expectation: Expectation): readonly Problem[] {
  if (found.of !== 'fat quarter') return [failed(expectation, `\`${what}\` is not counted in fat quarters: its fabric is not \`from fat_quarters\``)];
  if (holds(compare(found.value, expected), expectation.comparison)) return [];
  return [failed(expectation, `\`${what}\` is ${numberText(found.value)} fq, ${WANTED[expectation.comparison]} ${numberText(expected)} fq`)];
}

const WANTED: Readonly<Record<Expectation['comparison'], string>> = { exactly: 'expected', at_most: 'expected at most', at_least: 'expected at least' };

function judgeCut(quilt: CheckedQuilt, path: readonly string[], expectation: Expectation, pattern: Pattern, where: string): readonly Problem[] {
  const { value } = expectation;
  const name = path.join('.');
  if (path.length < 2 || 'fatQuarters' in value) return [failed(expectation, 'a cut is expected as `cut BLOCK.FABRIC WIDTH by HEIGHT`')];
  const pieces = piecesFor(quilt, path);
  if (pieces.length === 0) return [failed(expectation, `nothing is cut for \`${name}\`${where}${suggestion(name, cutNames(quilt))}`)];
  const width = value.isLength ? value.number : inPatternUnits(value.number, pattern);
  const second = expectation.by ?? value;
  const height = second.isLength ? second.number : inPatternUnits(second.number, pattern);
  const asExpected = pieces.some(({ cut }) => (equals(cut.width, width) && equals(cut.height, height)) || (equals(cut.width, height) && equals(cut.height, width)));
  if (asExpected) return [];
  const sizes = [...new Set(pieces.map(({ cut }) => `${lengthText(cut.width, pattern)} by ${lengthText(cut.height, pattern)}`))];
  return [failed(expectation, `\`${name}\` is cut ${sizes.join(' and ')}${where}, expected ${lengthText(width, pattern)} by ${lengthText(height, pattern)}`)];
}

function holds(order: -1 | 0 | 1, comparison: Expectation['comparison']): boolean {
  if (comparison === 'exactly') return order === 0;
  return comparison === 'at_most' ? order <= 0 : order >= 0;
}

function texts(found: Quantity, expected: Exact, pattern: Pattern): readonly [string, string] {
  if (found.kind === 'count') return [numberText(found.value), numberText(expected)];
  if (found.kind === 'length') return bothLengths(found.value, expected, pattern);
  const cloth = pattern.rules.units === 'inches' ? formatYards : formatMetres;
  return [cloth(found.value), cloth(expected)];
}

function inPatternUnits(number: Exact, pattern: Pattern): Exact {
  return pattern.rules.units === 'inches' ? number : toInches(number, 'cm');
}

function failed(expectation: Expectation, message: string): Problem {
  return { rule: 'expect-failed', place: expectation.place, message };
}
