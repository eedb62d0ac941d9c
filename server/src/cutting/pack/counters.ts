/** What a plan asks of its cutter: strip widths, cuts, changes of the ruler. */
import type { Problem } from './problem.ts';
import type { Counters, Strip, Subcut } from './types.ts';

/** Strips in the order given; strips of one kind lie on one another from the first segment to the last trim. */
export function countersOf(strips: readonly Strip[], { items }: Pick<Problem, 'items'>): Counters {
  const sizes = new Map(items.map(({ demand, size }) => [demand, size]));
  const settings = strips.flatMap((strip) => [strip.height, ...strip.subcuts.flatMap((subcut) => settingsFor(strip, subcut, sizes))]);
  return {
    widths: new Set(strips.map(({ height }) => height)).size,
    cuts: strips.reduce((total, strip) => total + strip.count * strip.subcuts.reduce((cuts, subcut) => cuts + cutsFor(strip, subcut, sizes), 1), 0),
    rulerChanges: settings.filter((setting, i) => setting !== settings[i - 1]).length,
  };
}

type Sizes = ReadonlyMap<number, { readonly width: number; readonly height: number }>;

function layOf({ piece, turned }: Subcut, sizes: Sizes): { readonly across: number; readonly down: number } {
  const { width, height } = sizes.get(piece) ?? { width: 0, height: 0 };
  return turned ? { across: height, down: width } : { across: width, down: height };
}

/** The segment's width, and the piece's height where something is trimmed off. */
function settingsFor({ height }: Strip, subcut: Subcut, sizes: Sizes): readonly number[] {
  const { across, down } = layOf(subcut, sizes);
  return down === height ? [across] : [across, down];
}

function cutsFor({ height }: Strip, subcut: Subcut, sizes: Sizes): number {
  const { down } = layOf(subcut, sizes);
  const stack = subcut.stacked ?? 1;
  const full = Math.floor(subcut.count / stack);
  const rest = subcut.count % stack;
  const trims = (pieces: number): number => (pieces * down === height ? pieces - 1 : pieces);
  return full * (1 + trims(stack)) + (rest > 0 ? 1 + trims(rest) : 0);
}
