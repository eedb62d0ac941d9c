/** Which way to press, in words: the cloth that the seams go to where that says it, else the side as one looks at the drawing. */
import type { Seam, Stretch } from '../piecing/plan.ts';
import type { PressSide, PressedSeams } from '../piecing/pressing.ts';
import { TEXTS } from './steps-texts.ts';
import { sideOf, wayOf, type Run, type Way } from './steps-words.ts';
import { listed } from './words.ts';
import type { Join } from '../piecing/plan.ts';

export interface Ironing {
  readonly sides: PressedSeams['sides'];
  /** The cloth of a patch, or what a part of the quilt is called. */
  readonly clothOf: (leaf: number) => string;
}

/** The line for the seams of a join, whose parts have these names. */
export function pressLine({ parts, seams }: Join, names: readonly string[], run: Run, { sides, clothOf }: Ironing): string {
  const pressed = seams.map((seam) => ({ seam, side: sideOfSeam(seam, sides) }));
  const known = pressed.flatMap(({ seam, side }, i) => {
    const [stretch] = seam.kind === 'straight' || seam.kind === 'curved' || seam.kind === 'partial' ? seam.stretches : [];
    const added = parts[i + 1];
    return side !== undefined && stretch && added ? [{ stretch, side, toAdded: side === sideOf(added, stretch) }] : [];
  });
  if (known.length < pressed.length || known.length === 0) return TEXTS.pressAsDrawn;
  const { length } = known;
  if (known.every(({ side }) => side === 'open')) return TEXTS.pressOpen(length);
  const goal = length > 1 ? commonGoal(names, known) : undefined;
  const cloths = known.map(({ stretch, side }) => clothTowards(stretch, side, clothOf));
  const towards = goal ?? (cloths.every((each) => each === cloths[0]) ? cloths[0] : undefined);
  if (towards !== undefined) return TEXTS.pressTo(length, TEXTS.towards(towards));
  const ways = known.map(({ stretch, side }) => wayWords(stretch, side));
  if (run === 'other' && length > 1) return TEXTS.pressAsDrawn;
  const [way = ''] = ways;
  if (ways.every((each) => each === way)) return TEXTS.pressTo(length, way);
  const turns = run === 'other' ? undefined : inTurn(ways);
  return run === 'other' || turns === undefined ? TEXTS.pressAsDrawn : TEXTS.pressEach(TEXTS.row[run], turns);
}

/** More than these without a pattern are easier to see than to read. */
const MOST_WAYS = 6;

/** Ways in their order, short where they take turns or change once; undefined where that is too long. */
function inTurn(ways: readonly string[]): string | undefined {
  const [first = '', second = ''] = ways;
  if (ways.length > 2 && ways.every((way, i) => way === (i % 2 === 0 ? first : second))) return `${first} and ${second} in turn`;
  const change = ways.findIndex((way) => way !== first);
  const last = ways.at(-1) ?? '';
  if (change > 1 && ways.slice(change).every((way) => way === last)) return `the first ${change} ${first}, ${ways.length - change === 1 ? 'the last' : `the last ${ways.length - change}`} ${last}`;
  return ways.length > MOST_WAYS ? undefined : listed(ways);
}

/** The one side of all stretches of a seam; undefined when they differ. */
export function sideOfSeam({ number }: Seam, sides: PressedSeams['sides']): PressSide | undefined {
  const all = sides[number] ?? [];
  return all.every((side) => side === all[0]) ? all[0] : undefined;
}

/** The cloth that a seam goes to, where one cloth lies there and another one, or others, on the other side. */
export function clothTowards(stretch: Stretch, side: PressSide, clothOf: (leaf: number) => string): string | undefined {
  if (side === 'open') return undefined;
  const own = new Set((side === 'left' ? stretch.left : stretch.right).map(clothOf));
  const other = new Set((side === 'left' ? stretch.right : stretch.left).map(clothOf));
  const [cloth] = own;
  return own.size === 1 && cloth !== undefined && cloth !== '' && !other.has(cloth) ? cloth : undefined;
}

/** What all seams go to and none goes away from, by name. */
function commonGoal(names: readonly string[], known: readonly { readonly side: PressSide; readonly toAdded: boolean }[]): string | undefined {
  if (known.some(({ side }) => side === 'open')) return undefined;
  const to = new Set(known.map(({ toAdded }, i) => short(names[toAdded ? i + 1 : i])));
  const from = new Set(known.map(({ toAdded }, i) => short(names[toAdded ? i : i + 1])));
  const [goal] = to;
  return to.size === 1 && goal !== undefined && goal !== '' && !from.has(goal) ? goal : undefined;
}

/** A name without its measures. */
export function short(name = ''): string {
  return name.replace(/ \([^()]*\)$/, '');
}

/** The side as one looks at the drawing. */
export function wayWords(stretch: Stretch, side: PressSide): string {
  return side === 'open' ? 'open' : WAYS[wayOf(stretch, side)];
}

const WAYS: Readonly<Record<Way, string>> = {
  left: 'to the left',
  right: 'to the right',
  top: 'up',
  bottom: 'down',
  'upper left': 'to the upper left',
  'upper right': 'to the upper right',
  'lower left': 'to the lower left',
  'lower right': 'to the lower right',
};
