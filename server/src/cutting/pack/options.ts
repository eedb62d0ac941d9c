/**
 * How pieces of one kind can stand in a strip of one height: the ways they may lie, how many stand one above the other, and the
 * steps by which more width holds more of them.
 */

export interface Way {
  /** Along the strip, and up it. */
  readonly across: number;
  readonly down: number;
  readonly turned: boolean;
}

export interface StackedWay extends Way {
  /** Pieces one above the other. */
  readonly stack: number;
  /** `across` in steps of the grid. */
  readonly steps: number;
}

export interface Option {
  /** One or two, none of them at least as good as the other in width and stack. */
  readonly ways: readonly StackedWay[];
  /** The least widths, in steps of the grid, that hold more pieces than any narrower one, and how many they hold, up to the count wanted. */
  readonly widths: Int32Array;
  readonly pieces: Int32Array;
  /** How many pieces fill a strip, wanted or not. */
  readonly most: number;
  /** Cuts that free those pieces from their part of the strip. */
  readonly cuts: Int32Array;
}

/** A number of pieces side by side, lying one way. */
export interface Group {
  readonly way: StackedWay;
  readonly pieces: number;
}

interface Inside {
  readonly height: number;
  readonly room: number;
  readonly grid: number;
}

/** What widths hold, by the ways and stacks it is for: the same in strips of many heights. */
export type Steps = Map<string, Pick<Option, 'widths' | 'pieces' | 'most'>>;

/** Undefined when no way fits. `known` is that of the kind of piece and its count. */
export function optionFor(ways: readonly Way[], count: number, { height, room, grid }: Inside, known: Steps): Option | undefined {
  const fitting = ways.filter(({ down }) => down <= height);
  const stacked = fitting.map((way) => ({ ...way, stack: Math.min(count, Math.floor(height / way.down)), steps: way.across / grid }));
  const best = stacked.filter((way, i) => !stacked.some((other, j) => i !== j && isBetter(other, way) && (j < i || !isBetter(way, other))));
  return best.length === 0 ? undefined : steppedOption(best, count, { height, room, grid }, known);
}

function isBetter(a: StackedWay, b: StackedWay): boolean {
  return a.steps <= b.steps && a.stack >= b.stack;
}

function steppedOption(ways: readonly StackedWay[], count: number, { height, room }: Inside, known: Steps): Option {
  const name = ways.map(({ steps, stack }) => `${steps} ${stack}`).join('|');
  const found = known.get(name) ?? stepsIn(ways, count, room);
  known.set(name, found);
  const { widths, pieces } = found;
  let cuts: Int32Array | undefined;
  return {
    ways,
    ...found,
    get cuts() {
      return (cuts ??= pieces.map((each, i) => cutsOf(groupsIn(ways, widths[i] as number, each, height), height)));
    },
  };
}

function stepsIn(ways: readonly StackedWay[], count: number, room: number): Pick<Option, 'widths' | 'pieces' | 'most'> {
  const held = heldIn(ways, room);
  const widths: number[] = [];
  for (let x = 1; x <= room && (held[x - 1] as number) < count; x += 1) if ((held[x] as number) > (held[x - 1] as number)) widths.push(x);
  return { widths: Int32Array.from(widths), pieces: Int32Array.from(widths, (x) => Math.min(count, held[x] as number)), most: held[room] as number };
}

/** For each width, how many pieces it holds, wanted or not. */
function heldIn(ways: readonly StackedWay[], room: number): Float64Array {
  const held = new Float64Array(room + 1);
  for (let x = 1; x <= room; x += 1) {
    let most = held[x - 1] as number;
    for (const { steps, stack } of ways) if (steps <= x) most = Math.max(most, (held[x - steps] as number) + stack);
    held[x] = most;
  }
  return held;
}

/** The pieces of one strip in groups that take the least width, then the fewest cuts. */
export function groupsOf({ ways, widths, pieces }: Option, wanted: number, height: number): readonly Group[] {
  const at = pieces.findIndex((held) => held >= wanted);
  return groupsIn(ways, widths[at] ?? 0, wanted, height);
}

function groupsIn(ways: readonly StackedWay[], width: number, wanted: number, height: number): readonly Group[] {
  const [first, second] = ways;
  if (!first || !second) return first ? [{ way: first, pieces: wanted }] : [];
  const most = Math.min(Math.floor(width / first.steps), Math.ceil(wanted / first.stack));
  let best: readonly Group[] = [];
  for (let segments = 0; segments <= most; segments += 1) {
    const of = Math.min(wanted, segments * first.stack);
    const rest = Math.ceil((wanted - of) / second.stack);
    if (segments * first.steps + rest * second.steps > width) continue;
    const groups = [{ way: first, pieces: of }, { way: second, pieces: wanted - of }].filter((group) => group.pieces > 0);
    if (best.length === 0 || cutsOf(groups, height) < cutsOf(best, height)) best = groups;
  }
  return best;
}

export function cutsOf(groups: readonly Group[], height: number): number {
  return groups.reduce((total, { way, pieces }) => total + groupCuts(way, pieces, height), 0);
}

/** A cut for each segment; a cut for each piece in it, but for the topmost one where nothing is left above. */
function groupCuts({ down, stack }: StackedWay, pieces: number, height: number): number {
  const full = Math.floor(pieces / stack);
  const rest = pieces % stack;
  return full * (1 + trims(stack, down, height)) + (rest > 0 ? 1 + trims(rest, down, height) : 0);
}

function trims(pieces: number, down: number, height: number): number {
  return pieces * down === height ? pieces - 1 : pieces;
}

/** In steps of the grid. */
export function widthOf({ widths, pieces }: Option, wanted: number): number {
  if (wanted === 0) return 0;
  for (let i = 0; i < pieces.length; i += 1) if ((pieces[i] as number) >= wanted) return widths[i] as number;
  return Number.MAX_SAFE_INTEGER;
}

/** How many pieces, of those wanted, a width in steps of the grid holds. */
export function piecesIn({ widths, pieces }: Option, width: number): number {
  for (let i = widths.length - 1; i >= 0; i -= 1) if ((widths[i] as number) <= width) return pieces[i] as number;
  return 0;
}
