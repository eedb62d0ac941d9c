/** Parts of a seam in words: what is sewn to what, in which direction, in how many pieces. */
import { isZero, sign } from '../exact/number.ts';
import { cross, minus, type Point } from '../exact/point.ts';
import { patchesIn, type Assembly, type Seam, type Stretch } from '../piecing/plan.ts';
import { listed } from './words.ts';

/** Where something lies, as one looks at the drawing. */
export type Way = 'left' | 'right' | 'top' | 'bottom' | 'upper left' | 'upper right' | 'lower left' | 'lower right';

/** How a join runs: its parts lie beside each other, above each other, aslant in a row, or none of these. */
export type Run = 'across' | 'down' | 'aslant' | 'other';

export function runOf(seams: readonly Seam[]): Run {
  const stretches = seams.flatMap((each) => each.stretches);
  const [first] = stretches;
  if (!first || !seams.every(({ kind }) => kind === 'straight') || !stretches.every((each) => isZero(cross(along(first), along(each))))) return 'other';
  return isZero(along(first).x) ? 'across' : isZero(along(first).y) ? 'down' : 'aslant';
}

/** Where the left or the right side of a straight stretch lies. */
export function wayOf(stretch: Stretch, side: 'left' | 'right'): Way {
  const { x, y } = along(stretch);
  // y runs down: the right hand of one who walks to the right points down.
  const [level, upright] = side === 'right' ? [-sign(y), sign(x)] : [sign(y), -sign(x)];
  if (upright === 0) return level < 0 ? 'left' : 'right';
  if (level === 0) return upright < 0 ? 'top' : 'bottom';
  return `${upright < 0 ? 'upper' : 'lower'} ${level < 0 ? 'left' : 'right'}`;
}

function along({ from, to }: Stretch): Point {
  return minus(to, from);
}

/** The side of a stretch that a part lies on. */
export function sideOf(part: Assembly, { left }: Stretch): 'left' | 'right' {
  const own = new Set(patchesIn(part));
  return left.some((patch) => own.has(patch)) ? 'left' : 'right';
}

/** Names in their order, short where they repeat: `unit 1, 2 × sand square, unit 1`, `5 parts, A and B in turn, A first`. */
export function inOrder(names: readonly string[]): string {
  const [first = '', second = ''] = names;
  const alternate = names.length > 4 && first !== second && names.every((name, i) => name === (i % 2 === 0 ? first : second));
  if (alternate) return `${names.length} parts, ${first} and ${second} in turn, ${first} first`;
  return listed(runsOf(names).map(({ name, count }) => (count === 1 ? name : `${count} × ${name}`)));
}

/** `the first row`, `the 12th row`. */
export function ordinal(index: number): string {
  const number = index + 1;
  return ORDINALS[index] ?? `${number}${number % 100 > 10 && number % 100 < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][number % 10] ?? 'th')}`;
}

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];

function runsOf(names: readonly string[]): { readonly name: string; readonly count: number }[] {
  const runs: { name: string; count: number }[] = [];
  for (const name of names) {
    const last = runs.at(-1);
    if (last?.name === name) last.count += 1;
    else runs.push({ name, count: 1 });
  }
  return runs;
}
