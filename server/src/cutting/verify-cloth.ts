/**
 * Cuts a fabric again as its plan says, sharing no code with the planner: every strip is cut off its cloth, every segment off its
 * strip and every piece off its segment, each a straight cut from edge to edge, and what falls off is counted. Also: that the cloth
 * is as it is sold, that pieces lie with the grain, that lengths add up and bounds are in order.
 */
import { add, atMost, compare, div, equals, fraction, isWhole, key, less, mul, sign, sub, type Exact } from '../exact/number.ts';
import type { Fabric, Rules } from '../model/pattern.ts';
import type { Cloth, CuttingPlan, FabricPlan, Piece, Strip, Subcut } from './plan.ts';

/** Pieces by their index in the plan, and how often they fell off. */
export type Fallen = Map<number, number>;

/** What is wrong with a fabric's plan, one sentence each. */
export function fabricFaults(found: FabricPlan, plan: CuttingPlan, rules: Rules, fallen: Fallen): readonly string[] {
  const { fabric, strips, length, buy, lowerBound, cloths, counted, isLeast } = found;
  const name = `fabric ${fabric.name}`;
  const widths = (all: readonly Strip[]): Exact => all.reduce((total, { width, count }) => add(total, mul(width, fraction(count))), fraction(0));
  const cut = cloths.reduce((total, cloth) => add(total, mul(widths(cloth.strips), fraction(cloth.count))), fraction(0));
  const taken = cloths.reduce((total, { count }) => total + count, 0);
  const isSold = fabric.source.kind === 'yardage';
  return [
    ...cloths.flatMap((cloth, i) => clothFaults(cloth, { name: `${name}, cloth ${i}`, found, plan, fallen })),
    ...spoken(name, [
      [!equals(widths(strips), length) || !equals(cut, length), 'has strips that do not add up to its length'],
      [!isSameCount(countedStrips(strips, 1), cloths), 'lists other strips than are cut'],
      [less(length, lowerBound), 'is shorter than its lower bound'],
      [isSold && isLeast && less(lowerBound, length), 'is said to be the least and is above its bound'],
      [less(mul(buy, sub(fraction(1), fabric.shrink)), length), 'is bought too short'],
      [!isWhole(div(buy, rules.yardage)), 'is bought in no whole step'],
      [isSold !== (counted === undefined), 'is counted and sold by length, or neither'],
      [counted !== undefined && (counted.count !== taken || counted.count < counted.least), 'miscounts its cloth'],
      [isSold && taken > 1, 'lies in several lengths'],
    ]),
  ];
}

/** Strips by what they are, with how often. */
function countedStrips(strips: readonly Strip[], times: number, counts = new Map<string, number>()): Map<string, number> {
  for (const { width, count, subcuts } of strips) {
    const name = `${key(width)} ${JSON.stringify(subcuts)}`;
    counts.set(name, (counts.get(name) ?? 0) + count * times);
  }
  return counts;
}

function isSameCount(listed: ReadonlyMap<string, number>, cloths: readonly Cloth[]): boolean {
  const cut = cloths.reduce((counts, { strips, count }) => countedStrips(strips, count, counts), new Map<string, number>());
  return cut.size === listed.size && [...cut].every(([name, count]) => listed.get(name) === count);
}

interface Table {
  readonly name: string;
  readonly found: FabricPlan;
  readonly plan: CuttingPlan;
  readonly fallen: Fallen;
}

/** Strips come off the cloth one after the other. */
function clothFaults(cloth: Cloth, table: Table): readonly string[] {
  const { name, found } = table;
  const { across, down, turned, strips, count } = cloth;
  const [long, wide] = turned ? [down, across] : [across, down];
  const rest = strips.reduce((left, strip) => sub(left, mul(strip.width, fraction(strip.count))), wide);
  return [
    ...strips.flatMap((strip, i) => stripFaults(strip, long, cloth, { ...table, name: `${name}, strip ${i}` })),
    ...spoken(name, [
      [sign(rest) < 0, 'has strips wider than the cloth is long'],
      [!isWholeCount(count), 'is cut from no cloth'],
      [!isAsSold(across, down, found), 'is not as it is sold'],
    ]),
  ];
}

/** A fat quarter's longer side lies across. */
function isAsSold(across: Exact, down: Exact, { fabric: { source, width }, length }: FabricPlan): boolean {
  const is = (a: Exact, b: Exact): boolean => equals(across, a) && equals(down, b);
  if (source.kind === 'yardage') return is(width, length);
  if ('size' in source) return is(source.kind === 'strips' ? width : source.size, source.size);
  const isTall = less(source.width, source.height);
  return source.kind === 'piece' || !isTall ? is(source.width, source.height) : is(source.height, source.width);
}

/** Segments come off the strip, pieces off the segments. */
function stripFaults(strip: Strip, long: Exact, cloth: Cloth, { name, found, plan, fallen }: Table): readonly string[] {
  let rest = long;
  let open: Open | undefined;
  const faults = strip.subcuts.flatMap((subcut) => {
    const piece = plan.pieces[subcut.piece];
    if (!piece || piece.fabric.name !== found.fabric.name) return [`${name}: a piece that is not of this fabric`];
    const [across, down] = subcut.turned ? [piece.cut.height, piece.cut.width] : [piece.cut.width, piece.cut.height];
    const stacked = subcut.stacked ?? 1;
    const before: Open = subcut.continues && open ? open : { across, down, stacked, held: stacked };
    const isSame = equals(before.across, across) && equals(before.down, down) && before.stacked === stacked;
    let { held } = before;
    for (let i = 0; i < subcut.count; i += 1) {
      if (held === stacked) rest = sub(rest, across);
      held = held === stacked ? 1 : held + 1;
    }
    open = { across, down, stacked, held };
    fallen.set(subcut.piece, (fallen.get(subcut.piece) ?? 0) + subcut.count * strip.count * cloth.count);
    return spoken(name, [
      [!isWholeCount(subcut.count) || !isWholeCount(stacked), 'a count that is no whole number'],
      [subcut.continues === true && !isSame, 'a piece that continues another of another size'],
      [less(strip.width, mul(down, fraction(stacked))), 'a piece that is taller than the strip'],
      ...grainFaults(piece, subcut, cloth),
    ]);
  });
  return [...faults, ...spoken(name, [[sign(rest) < 0, 'segments that are longer than the strip'], [!isWholeCount(strip.count) || sign(strip.width) <= 0, 'no strip at all']])];
}

/** A segment that is being filled. */
interface Open {
  readonly across: Exact;
  readonly down: Exact;
  readonly stacked: number;
  readonly held: number;
}

/** The piece's height lies along the selvage, or across, as it must; strips to be joined may run either way on cloth that is counted. */
function grainFaults({ lie, cut, method, fabric }: Piece, { turned }: Subcut, cloth: Cloth): readonly (readonly [boolean, string])[] {
  const isAlong = (turned === true) === (cloth.turned === true);
  const isFree = method === 'from strips joined' && !fabric.directional && fabric.source.kind !== 'yardage';
  return [
    [lie === 'along' && !isAlong && !equals(cut.width, cut.height), 'a piece turned that must lie along the selvage'],
    [lie === 'across' && isAlong && !isFree, 'a piece along the selvage that must lie across'],
  ];
}

/** Whether a piece could lie on its cloth in some way. */
export function couldFit({ cut, lie, fabric, method }: Piece): boolean {
  const { width, source } = fabric;
  const [across, down] = sideLengths(width, source);
  const fits = (a: Exact, d: Exact): boolean => atMost(a, across) && (down === undefined || atMost(d, down));
  const isFree = method === 'from strips joined' && !fabric.directional && source.kind !== 'yardage';
  return ((lie !== 'across' || isFree) && fits(cut.width, cut.height)) || ((lie !== 'along' || isFree) && fits(cut.height, cut.width));
}

/** How long a strip to be joined is at most. */
export function joinedLength({ width, source, directional }: Pick<Fabric, 'width' | 'source' | 'directional'>): Exact {
  const [across, down] = sideLengths(width, source);
  return down !== undefined && source.kind !== 'strips' && !directional && less(across, down) ? down : across;
}

function sideLengths(width: Exact, source: Fabric['source']): readonly [Exact, Exact | undefined] {
  if (source.kind === 'yardage') return [width, undefined];
  if ('size' in source) return [source.kind === 'strips' ? width : source.size, source.size];
  return source.kind === 'fat_quarters' && less(source.width, source.height) ? [source.height, source.width] : [source.width, source.height];
}

/** The sentences of what is wrong. */
export function spoken(name: string, faults: readonly (readonly [boolean, string])[]): readonly string[] {
  return faults.filter(([isWrong]) => isWrong).map(([, text]) => `${name}: ${text}`);
}

export function isWholeCount(count: number): boolean {
  return Number.isSafeInteger(count) && compare(fraction(count), fraction(0)) > 0;
}
