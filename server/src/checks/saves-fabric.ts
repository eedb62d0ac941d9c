/**
 * `saves-fabric`: a little less of a block or a border would save strips, and cloth to buy. It is worked out by planning the pattern
 * again with the smaller measure; nothing is said unless every number of that plan is better.
 */
import { savingOf, type Saving } from '../cutting/savings.ts';
import type { CuttingPlan } from '../cutting/plan.ts';
import { formatLength, formatMetres, formatYards, toInches } from '../exact/length.ts';
import { add, fraction, less, mul, sub, sum, type Exact } from '../exact/number.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Length, Statement } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import type { Problem, TextEdit } from '../text/problem.ts';
import { example } from './example.ts';
import type { CheckContext, CheckedQuilt, Rule } from './rule.ts';
import { count, lengthText } from './wording.ts';

const buoys = (size: string): string => example(`block Buoy ${size} {\n  ink\n}\nquilt {\n  straight 6 by 8\n  place { Buoy }\n  border 2" sand\n  backing sand\n}\n`);

export const savesFabric: Rule = {
  id: 'saves-fabric',
  severity: 'hint',
  when: 'later',
  title: 'A little less saves fabric',
  why: 'Strips are cut across the fabric, so a patch that just does not fit once more into a strip wastes the rest of every strip. A quarter of an inch less of a block, or of a border, may save whole strips. The tool plans the pattern again with the smaller measure before it says so, and looks no further than 1" (2 cm).',
  bad: buoys('9 3/4"'),
  good: buoys('9 1/2"'),
  mends: ['Take the smaller measure.', 'Keep it, where the size matters more than the cloth: `// allow saves-fabric`.'],
  find: (context) => {
    const quilt = context.quilts[0];
    const plan = quilt && context.vary && planToBeat(quilt, context);
    return plan ? candidatesIn(context).flatMap((candidate) => problemsOf(candidate, plan, context)) : [];
  },
};

/** Less cloth than this is not worth a search: two yards, in inches. */
const LEAST = fraction(72);

/** More measures than these are not tried. */
const MOST = 6;

/** Of blocks with more patches, planning again takes too long for a hint. */
const MOST_PATCHES = 1000;

/** Undefined where something is wrong already, where there is little cloth, or as long as the best plan is not known. */
function planToBeat(quilt: CheckedQuilt, { findings, search }: CheckContext): CuttingPlan | undefined {
  if (quilt.layout.blocks.reduce((patches, { layout }) => patches + layout.patches.length, 0) > MOST_PATCHES) return undefined;
  if (findings.some(({ rule }) => rule !== 'not-yet') || less(sum(quilt.plan.fabrics.map(({ length }) => length)), LEAST)) return undefined;
  if (search !== 'later') return quilt.settled.plan;
  return quilt.plan.fabrics.every(({ isBest }) => isBest) ? quilt.plan : undefined;
}

/** Measures that stand in the text as plain numbers: the size that blocks of this file share, or the width of a border. */
interface Candidate {
  readonly what: (size: string) => string;
  readonly size: Exact;
  readonly statements: readonly Statement[];
  readonly lengths: readonly Length[];
}

function candidatesIn({ tree, quilts, pattern }: CheckContext): readonly Candidate[] {
  const used = new Set(quilts[0]?.layout.blocks.map(({ layout }) => layout.instance.definition.statement));
  const sizes = new Map<string, { readonly statement: Statement; readonly length: Length; readonly size: Exact; readonly name: string }[]>();
  for (const statement of tree.statements) {
    const { node, line } = statement;
    const length = node.kind === 'block' && used.has(statement as never) ? node.size : undefined;
    const size = length?.kind === 'length' ? plainSize(length, line.text, pattern) : undefined;
    if (node.kind !== 'block' || length?.kind !== 'length' || !size) continue;
    const text = lengthText(size, pattern);
    sizes.set(text, [...(sizes.get(text) ?? []), { statement, length, size, name: node.name?.text ?? '' }]);
  }
  const blocks = [...sizes.values()].flatMap((alike): Candidate[] => {
    const [first] = alike;
    return first ? [{ what: (size) => `${listed(alike.map(({ name }) => name))} finish${alike.length === 1 ? 'es' : ''} at ${size}`, size: first.size, statements: alike.map(({ statement }) => statement), lengths: alike.map(({ length }) => length) }] : [];
  });
  return [...blocks, ...bordersIn(pattern)].slice(0, MOST);
}

function bordersIn(pattern: Pattern): readonly Candidate[] {
  const statements = (pattern.quilt?.body?.statements ?? []).filter(({ node }) => node.kind === 'border' && node.form === 'plain');
  return statements.flatMap((statement, i): Candidate[] => {
    const { node, line } = statement;
    const length = node.kind === 'border' ? node.width : undefined;
    const size = length && plainSize(length, line.text, pattern);
    const word = length?.cut ? 'is cut' : 'finishes at';
    return length && size ? [{ what: (text) => `${statements.length === 1 ? 'the border' : `the border in line ${i + 1}`} ${word} ${text}`, size, statements: [statement], lengths: [length] }] : [];
  });
}

/** In inches; undefined where it is no plain number in the pattern's units. */
function plainSize({ value, from, to }: Length, line: string, pattern: Pattern): Exact | undefined {
  const number = value.kind === 'measure' ? value.amount : value;
  if (number.kind !== 'number' || /[(%]/.test(line.slice(from, to))) return undefined;
  const unit = value.kind === 'measure' ? value.unit : undefined;
  const isInches = pattern.rules.units === 'inches';
  if (unit !== undefined && unit !== (isInches ? 'in' : 'cm')) return undefined;
  return isInches ? number.value : toInches(number.value, 'cm');
}

/** Four steps of 1/4", or of half a centimetre; the first that saves something is told. */
function problemsOf(candidate: Candidate, plan: CuttingPlan, { pattern, vary }: CheckContext): readonly Problem[] {
  const step = pattern.rules.units === 'inches' ? fraction(1, 4) : toInches(fraction(1, 2), 'cm');
  for (const steps of [1, 2, 3, 4]) {
    const size = sub(candidate.size, mul(step, fraction(steps)));
    if (less(size, add(step, step))) return [];
    const [quilt] = vary?.(editsFor(candidate, size, pattern)) ?? [];
    const saving = quilt && isSound(quilt) ? savingOf(plan, quilt.plan) : undefined;
    const [statement] = candidate.statements;
    const [length] = candidate.lengths;
    if (saving && statement && length) return [{ rule: 'saves-fabric', place: placeIn(statement.line, length), message: messageFor(candidate, size, saving, pattern) }];
  }
  return [];
}

function isSound({ layout }: CheckedQuilt): boolean {
  const blocks = layout.blocks.flatMap(({ layout: block }) => [...block.findings, ...block.instance.findings]);
  return [...layout.spec.findings, ...layout.findings, ...blocks].every(({ rule }) => rule === 'not-yet');
}

function editsFor({ statements, lengths }: Candidate, size: Exact, pattern: Pattern): readonly TextEdit[] {
  return statements.flatMap(({ line }, i): TextEdit[] => {
    const length = lengths[i];
    return length ? [{ place: placeIn(line, length.value), text: formatLength(size, { units: pattern.rules.units }) }] : [];
  });
}

function messageFor({ what }: Candidate, size: Exact, { strips, cloth }: Saving, pattern: Pattern): string {
  const bought = pattern.rules.units === 'inches' ? formatYards(cloth) : formatMetres(cloth);
  return `${count(strips, 'strip')} fewer and ${bought} less to buy if ${what(lengthText(size, pattern))}`;
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
}
