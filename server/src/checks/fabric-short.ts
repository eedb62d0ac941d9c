/** `fabric-short`: more pieces of a fabric are needed than are at hand. */
import type { CountedCloth, FabricPlan } from '../cutting/plan.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Problem } from '../text/problem.ts';
import type { CheckContext, CheckedQuilt, Rule } from './rule.ts';
import { count, lengthText } from './wording.ts';

const buoys = (pieces: string): string => `fabric ink #22345c "Ink" from piece 12" by 30"${pieces}\nfabric sand #eadfc8 "Sand"\n\nblock Buoy 5" {\n  ink\n}\n\nquilt {\n  straight 5 by 6\n  place { Buoy }\n  backing sand\n}\n`;

export const fabricShort: Rule = {
  id: 'fabric-short',
  severity: 'warning',
  when: 'later',
  title: 'More fabric than is at hand',
  why: 'A fabric `from piece` is there already, in a size and a number that cannot be bought again. The plan says how many such pieces the quilt takes at its best.',
  bad: buoys(''),
  good: buoys(' times 3'),
  mends: ['Say how many there are: `times 3`.', 'Give some of its patches another fabric.', 'Make fewer or smaller blocks of it.'],
  find: (context) => problemsIn(shortIn(context), context.pattern),
};

interface Short {
  readonly plan: Counted;
  /** The size that takes them, where the pattern names sizes. */
  readonly size: string | undefined;
}

/** In the sizes that are made: only the named ones where a pattern names any. */
function shortIn(context: CheckContext): readonly Short[] {
  const named = context.quilts.filter(({ size }) => size !== undefined);
  return (named.length > 0 ? named : context.quilts).flatMap((quilt) => shortOf(quilt, context).map((plan) => ({ plan, size: quilt.size?.name })));
}

/** The best plan may do with fewer than the one found at once, so that is asked before anything is said. */
function shortOf(quilt: CheckedQuilt, { pattern, search }: CheckContext): readonly Counted[] {
  if (![...pattern.fabrics.values()].some(({ source }) => source.kind === 'piece')) return [];
  const short = quilt.plan.fabrics.filter(isShort);
  if (short.length === 0 || (search === 'later' && !short.every(({ isBest }) => isBest))) return [];
  return quilt.settled.plan.fabrics.filter(isShort);
}

/** One problem a fabric, however many sizes are short of it. */
function problemsIn(found: readonly Short[], pattern: Pattern): readonly Problem[] {
  const fabrics = [...new Set(found.map(({ plan }) => plan.fabric))];
  return fabrics.map((fabric) => ({ rule: 'fabric-short', place: fabric.place, message: messageFor(found.filter(({ plan }) => plan.fabric === fabric), pattern) }));
}

type Counted = FabricPlan & { readonly counted: CountedCloth & { readonly atHand: number } };

function isShort(plan: FabricPlan): plan is Counted {
  const { counted } = plan;
  return counted?.atHand !== undefined && counted.atHand < counted.count;
}

function messageFor(short: readonly Short[], pattern: Pattern): string {
  const [first] = short;
  if (!first) return '';
  const { fabric, counted: { atHand, width, height } } = first.plan;
  const needs = short.map(({ plan: { counted }, size }) => `${count(counted.count, 'piece')}${size === undefined ? '' : ` for ${size}`}`);
  return `\`${fabric.name}\` takes ${needs.join(', ')} of ${lengthText(width, pattern)} by ${lengthText(height, pattern)}, and ${atHand} ${atHand === 1 ? 'is' : 'are'} at hand`;
}
