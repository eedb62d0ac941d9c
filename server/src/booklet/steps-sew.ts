/** One part of a plan as lines of steps: what is sewn to what, in order, and how each seam is pressed. */
import { compare } from '../exact/number.ts';
import { samePoint, squaredDistance, type Point } from '../exact/point.ts';
import { edgesOf } from '../exact/polygon.ts';
import { patchesIn, type Assembly, type Finish, type Flip, type Join, type Seam, type Stretch } from '../piecing/plan.ts';
import { pressLine, type Ironing } from './steps-press.ts';
import { TEXTS } from './steps-texts.ts';
import { inOrder, ordinal, runOf, sideOf, wayOf, type Run, type Way } from './steps-words.ts';

export interface Bench extends Ironing {
  /** What a part is called that lies ready; undefined for one that is sewn in these lines. */
  readonly nameOf: (part: Assembly) => string | undefined;
  /** The corners of a patch, where it is one. */
  readonly outlineOf: (leaf: number) => readonly Point[];
  /** The width of a seam, in words. */
  readonly seam: string;
  /** How long the first go of a seam is from the raw edge where it begins, in words. */
  readonly lengthOf: (stretch: Stretch) => string;
  /** Corners that something is set into later. */
  readonly setIn: readonly Point[];
  /** True where crossings lock. */
  readonly nests: boolean;
  /** Another line in place of the one for the seams of the part itself. */
  readonly pressed?: string;
}

/** The lines that sew a part; `name` is what it is called among its neighbours. */
export function sewLines(part: Assembly, bench: Bench, name?: string): readonly string[] {
  switch (part.kind) {
    case 'patch':
      return [];
    case 'join':
      return joinLines(part, bench, name);
    case 'finish':
      return finishLines(part, bench, name);
    case 'flip':
      return flipLines(part, bench, name);
  }
}

function finishLines({ part, seam }: Finish, bench: Bench, name?: string): readonly string[] {
  return [...sewLines(part, bench, name), seam.stop ? TEXTS.finish : TEXTS.closing];
}

/** Corners of the same name are laid on together. */
function flipLines(flip: Flip, bench: Bench, name?: string): readonly string[] {
  const corners: string[] = [];
  let base: Assembly = flip;
  for (; base.kind === 'flip'; base = base.part) corners.push(bench.nameOf({ kind: 'patch', patch: base.patch }) ?? '');
  const ready = base.kind === 'patch' ? bench.nameOf(base) : undefined;
  const kinds = [...new Set(corners.toReversed())];
  return [
    ...(ready === undefined ? sewLines(base, bench, name) : [TEXTS.begin(ready)]),
    ...kinds.flatMap((kind) => TEXTS.flip(kind, corners.filter((each) => each === kind).length, bench.seam)),
  ];
}

/** What the parts of a join are called; a first part that has just been sewn has no name. */
export function partNames(join: Join, bench: Pick<Bench, 'nameOf'>): readonly string[] {
  const { parts } = join;
  const { run } = placed(join);
  const isAlone = (run === 'aslant' || run === 'other') && parts.filter((part) => bench.nameOf(part) === undefined).length === 1;
  return parts.map((part, i) => bench.nameOf(part) ?? (i === 0 && (parts.length === 2 || run === 'other') ? '' : isAlone ? TEXTS.justSewn : `the ${ordinal(i)} ${PART_OF[run]}`));
}

/** How the parts of a join lie: a run only where each lies behind the one before it; two may lie the other way round. */
export function placed({ parts, seams }: Join): { readonly run: Run; readonly isBack: boolean } {
  const run = runOf(seams);
  const ways = seams.map((seam, i) => {
    const [stretch] = seam.stretches;
    const [before, added] = [parts[i], parts[i + 1]];
    if (!stretch || !before || !added) return undefined;
    const side = sideOf(added, stretch);
    const near = new Set(patchesIn(before));
    const isNext = (side === 'left' ? stretch.right : stretch.left).some((patch) => near.has(patch));
    return isNext ? BACK.has(wayOf(stretch, side)) : undefined;
  });
  const [first] = ways;
  const isBack = first === true && run !== 'aslant';
  if (run === 'other' || first === undefined || ways.some((way) => way !== first) || (isBack && parts.length > 2)) return { run: 'other', isBack: false };
  return { run, isBack };
}

const BACK: ReadonlySet<Way> = new Set(['left', 'top', 'upper left', 'lower left']);

function joinLines(join: Join, bench: Bench, name?: string): readonly string[] {
  const { run, isBack } = placed(join);
  const names = partNames(join, bench);
  const goesOn = names[0] === '';
  const { pressed, ...inner } = bench;
  const before = join.parts.flatMap((part, i) => (bench.nameOf(part) === undefined ? sewLines(part, inner, names[i] === '' || names[i] === TEXTS.justSewn ? undefined : names[i]) : []));
  const isPair = run === 'aslant' && join.parts.length === 2 && !goesOn && name === undefined;
  const sewn = run === 'other' || isPair ? otherLines(join, names, bench) : rowLines(join, names, { run, isBack, bench, name, goesOn });
  const called = name !== undefined && !sewn.some((line) => line.includes(name)) ? [TEXTS.named(name)] : [];
  return [...before, ...openEndLines(join, bench), ...sewn, pressed ?? pressLine(join, names, run, bench), ...called];
}

/** A seam that is sewn before something is set in at its end leaves its allowance there open. Said before it is sewn. */
function openEndLines({ seams }: Join, { setIn, seam }: Bench): readonly string[] {
  const ends = seams.filter(({ kind }) => kind === 'straight').flatMap(({ stretches }) => stretches.flatMap(({ from, to }) => [from, to]));
  return ends.some((end) => setIn.some((corner) => samePoint(corner, end))) ? [TEXTS.openEnd(seam)] : [];
}

const PART_OF: Readonly<Record<Run, string>> = { across: 'column', down: 'row', aslant: 'row', other: 'part' };

interface RowWords {
  readonly run: Exclude<Run, 'other'>;
  /** The parts lie the other way round. */
  readonly isBack: boolean;
  readonly bench: Bench;
  readonly name: string | undefined;
  readonly goesOn: boolean;
}

function rowLines(join: Join, names: readonly string[], { run, isBack, bench, name, goesOn }: RowWords): readonly string[] {
  const [, added] = join.parts;
  const [stretch] = join.seams[0]?.stretches ?? [];
  const match = matchLines(join.seams, bench);
  if (goesOn && added && stretch) return [TEXTS.sewOn(names[1] ?? '', wayOf(stretch, sideOf(added, stretch))), ...match];
  const way = TEXTS.row[run];
  const inRow = inOrder(isBack ? names.toReversed() : names);
  const isOfRows = join.parts.some((part) => bench.nameOf(part) === undefined);
  if (name !== undefined) return [TEXTS.sewNamedRow(name, way, inRow), ...match];
  return [isOfRows ? TEXTS.joinRows(way, inRow) : TEXTS.sewRow(way, inRow), ...match];
}

/** Where seams meet across these seams. */
function matchLines(seams: readonly Seam[], { nests }: Bench): readonly string[] {
  const meets = seams.some(({ stretches }) => stretches.some(({ left, right }) => new Set(left).size > 1 && new Set(right).size > 1));
  if (!meets) return [];
  return nests ? [TEXTS.match, TEXTS.nest] : [TEXTS.match];
}

/** Parts that are sewn on one after another, each its own way; neighbours in the order that are sewn on alike are told together. */
function otherLines(join: Join, names: readonly string[], bench: Bench): readonly string[] {
  const [first = ''] = names;
  const [only] = join.seams;
  if (join.parts.length === 2 && only?.kind === 'straight' && first !== '') return [pairLine(join, names, bench), ...matchLines(join.seams, bench)];
  const lines = first === '' ? [] : [TEXTS.begin(first)];
  for (let i = 0; i < join.seams.length; ) {
    const seam = join.seams[i];
    if (!seam) break;
    const next = seam.kind === 'set_in' ? join.seams.findIndex((each, j) => j > i && each.kind !== 'set_in') : i + 1;
    const end = next < 0 ? join.seams.length : next;
    lines.push(...addedLines(join, names, { seam, from: i, to: end, bench }));
    i = end;
  }
  return lines;
}

interface Added {
  readonly seam: Seam;
  /** Seams, of which the part behind is sewn on. */
  readonly from: number;
  readonly to: number;
  readonly bench: Bench;
}

function addedLines(join: Join, names: readonly string[], { seam, from, to, bench }: Added): readonly string[] {
  const added = join.parts[from + 1];
  const name = names[from + 1] ?? '';
  const [stretch] = seam.stretches;
  switch (seam.kind) {
    case 'set_in':
      return [TEXTS.setIn(inOrder(names.slice(from + 1, to + 1))), ...TEXTS.setInLines(bench.seam)];
    case 'partial':
      return [TEXTS.partial(name), ...TEXTS.partialLines(stretch ? bench.lengthOf(stretch) : bench.seam)];
    case 'curved':
      return [TEXTS.curve(name), ...TEXTS.curveLines];
    default:
      return added && stretch ? [TEXTS.sewOn(name, wayOf(stretch, sideOf(added, stretch))), ...matchLines([seam], bench)] : [];
  }
}

function pairLine({ parts, seams }: Join, [a = '', b = '']: readonly string[], bench: Bench): string {
  const [stretch] = seams[0]?.stretches ?? [];
  const isLong = stretch !== undefined && parts.every((part) => part.kind === 'patch' && isLongestSide(stretch, bench.outlineOf(part.patch)));
  return isLong ? TEXTS.sewTriangles(a, b) : TEXTS.sewPair(a, b);
}

function isLongestSide({ from, to }: { readonly from: Point; readonly to: Point }, outline: readonly Point[]): boolean {
  const seam = squaredDistance(from, to);
  return outline.length === 3 && edgesOf(outline).every((edge) => compare(squaredDistance(edge.from, edge.to), seam) <= 0);
}
