/**
 * The same questions as integer programs for HiGHS, a general solver: the fewest crossings that cannot nest, the fewest seams in two
 * goes, the fewest corners set in.
 */
import loadHighs from 'highs';
import { toNumber } from '../../server/src/exact/number.ts';
import type { Polygon } from '../../server/src/exact/polygon.ts';
import type { PressProblem } from '../../server/src/piecing/press-solve.ts';
import { endsOf, stretchesOf, type Box } from './brute.ts';

const highs = await loadHighs();

/** The optimum of a program in the text format of LP files. */
function solve(text: string): number {
  const { Status, ObjectiveValue } = highs.solve(text, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
  if (Status !== 'Optimal') throw new Error(Status);
  return Math.round(ObjectiveValue);
}

/** The least weight of pairs that do not lie as asked; a side is 0 or 1. */
export function leastConflicts({ settled, pairs }: Pick<PressProblem, 'settled' | 'pairs'>): number {
  const rows = pairs.flatMap(({ a, b, differ }, i) =>
    differ ? [`y${i} - s${a} - s${b} >= -1`, `y${i} + s${a} + s${b} >= 1`] : [`y${i} - s${a} + s${b} >= 0`, `y${i} + s${a} - s${b} >= 0`].filter(() => a !== b));
  if (pairs.length === 0) return 0;
  const sides = [...new Set(pairs.flatMap(({ a, b }) => [a, b]))];
  const fixed = sides.flatMap((i) => (settled[i] === undefined ? [] : [`s${i} = ${settled[i]}`]));
  const objective = pairs.map(({ weight }, i) => `${weight} y${i}`).join(' + ');
  return solve(`Minimize\n obj: ${objective}\nSubject To\n${[...rows, ...fixed].map((row, i) => ` c${i}: ${row}`).join('\n')}\nBinary\n ${[...sides.map((i) => `s${i}`), ...pairs.map((_, i) => `y${i}`)].join(' ')}\nEnd\n`);
}

/**
 * Halves of stretches get a time; both halves have the same one unless the stretch is sewn in two goes, the halves through a point
 * have the same one, and what ends at a point comes before what runs through it. Where two lines cross, either may run through.
 */
export function leastCuts(boxes: readonly Box[]): number {
  const stretches = stretchesOf(boxes);
  const halves = stretches.flatMap((stretch) => endsOf(stretch).map((end) => ({ end, level: stretch.level })));
  const most = halves.length;
  const rows: string[] = stretches.flatMap((_, i) => [`t${2 * i} - t${2 * i + 1} - ${most} x${i} <= 0`, `t${2 * i + 1} - t${2 * i} - ${most} x${i} <= 0`]);
  const either: string[] = [];
  for (const end of new Set(halves.map((half) => half.end))) {
    const here = [...halves.keys()].filter((i) => halves[i]?.end === end);
    const [level, upright] = [true, false].map((wanted) => here.filter((i) => halves[i]?.level === wanted)) as [number[], number[]];
    if (here.length < 3) continue;
    if (here.length === 4) either.push(`z${either.length}`);
    const z = here.length === 4 ? either.at(-1) : undefined;
    for (const [through, ending, isLevel] of [[level, upright, true], [upright, level, false]] as const) {
      if (through.length < 2) continue;
      // Relaxed where the other line runs through.
      const slack = z === undefined ? '' : isLevel ? ` - ${most} + ${most} ${z}` : ` - ${most} ${z}`;
      const [a = 0, b = 0] = through;
      rows.push(bounded(`t${a} - t${b}`, slack, 0), bounded(`t${b} - t${a}`, slack, 0));
      for (const each of ending) rows.push(bounded(`t${each} - t${a}`, slack, -1));
    }
  }
  const cuts = stretches.map((_, i) => `x${i}`);
  return solve(`Minimize\n obj: ${cuts.join(' + ')}\nSubject To\n${rows.map((row, i) => ` c${i}: ${row}`).join('\n')}\nBounds\n${halves.map((_, i) => ` 0 <= t${i} <= ${most}`).join('\n')}\nBinary\n ${[...cuts, ...either].join(' ')}\nEnd\n`);
}

/** left ≤ limit, loosened by the constant and the variable in `slack`. */
function bounded(left: string, slack: string, limit: number): string {
  const constant = /^ - (\d+) \+/.exec(slack)?.[1];
  const variable = /(\d+ z\d+)$/.exec(slack)?.[1];
  if (variable === undefined) return `${left} <= ${limit}`;
  return constant === undefined ? `${left} - ${variable} <= ${limit}` : `${left} + ${variable} <= ${limit + Number(constant)}`;
}

type Spot = readonly [x: number, y: number];

/**
 * A lower bound for the corners that are set in when no seam is sewn in two goes. Lines between corners get a time. At every point
 * inside, two lines that run straight on are sewn at one time and the others before, or it is a corner that is set in. An order of
 * sewing that needs no more is the best there is.
 */
export function leastSetIn(patches: readonly Polygon[]): number {
  const lines = linesOf(patches);
  const most = lines.length;
  const at = new Map<string, number[]>();
  lines.forEach(({ ends }, i) => ends.forEach((end) => at.set(spotName(end), [...(at.get(spotName(end)) ?? []), i])));
  const rows: string[] = [];
  const [ways, turning]: [string[], string[]] = [[], []];
  for (const [name, here] of at) {
    if (here.some((i) => lines[i]?.sides !== 2)) continue;
    const straight = here.flatMap((a, k) => here.slice(k + 1).filter((b) => isStraightOn(name, lines[a]?.ends, lines[b]?.ends)).map((b) => [a, b] as const));
    const chosen = straight.map(([a, b]) => {
      const way = `p${ways.length}`;
      ways.push(way);
      const late = here.filter((i) => i !== a && i !== b).map((i) => `t${i} - t${a} + ${most} ${way} <= ${most - 1}`);
      rows.push(`t${a} - t${b} + ${most} ${way} <= ${most}`, `t${b} - t${a} + ${most} ${way} <= ${most}`, ...late);
      return way;
    });
    const turn = `x${turning.length}`;
    turning.push(turn);
    rows.push(`${[...chosen, turn].join(' + ')} = 1`);
  }
  if (turning.length === 0) return 0;
  const times = lines.flatMap(({ sides }, i) => (sides === 2 ? [` 0 <= t${i} <= ${most - 1}`] : []));
  return solve(`Minimize\n obj: ${turning.join(' + ')}\nSubject To\n${rows.map((row, i) => ` c${i}: ${row}`).join('\n')}\nBounds\n${times.join('\n')}\nBinary\n ${[...ways, ...turning].join(' ')}\nEnd\n`);
}

/** The edges of patches, parted at every corner on them, each once with the number of patches beside it. */
function linesOf(patches: readonly Polygon[]): { readonly ends: readonly [Spot, Spot]; readonly sides: number }[] {
  const outlines = patches.map((patch) => patch.map(({ x, y }): Spot => [toNumber(x), toNumber(y)]));
  const corners = [...new Map(outlines.flat().map((spot) => [spotName(spot), spot])).values()];
  const found = new Map<string, { readonly ends: readonly [Spot, Spot]; readonly sides: number }>();
  for (const outline of outlines) {
    outline.forEach((from, i) => {
      const to = outline[(i + 1) % outline.length] ?? from;
      const along = ([x, y]: Spot): number => (x - from[0]) * (to[0] - from[0]) + (y - from[1]) * (to[1] - from[1]);
      const off = ([x, y]: Spot): number => (x - from[0]) * (to[1] - from[1]) - (y - from[1]) * (to[0] - from[0]);
      const stops = corners.filter((spot) => Math.abs(off(spot)) < 1e-7 && along(spot) > -1e-7 && along(spot) < along(to) + 1e-7).sort((a, b) => along(a) - along(b));
      stops.slice(1).forEach((end, k) => {
        const ends = [stops[k] ?? end, end] as const;
        const name = ends.map(spotName).sort().join(' to ');
        found.set(name, { ends, sides: (found.get(name)?.sides ?? 0) + 1 });
      });
    });
  }
  return [...found.values()];
}

function isStraightOn(name: string, one: readonly Spot[] = [], two: readonly Spot[] = []): boolean {
  const [here] = one.filter((spot) => spotName(spot) === name);
  const [from, to] = [one, two].map((ends) => ends.find((spot) => spotName(spot) !== name));
  if (!here || !from || !to) return false;
  const [u, v] = [from, to].map(([x, y]) => [x - here[0], y - here[1]] as const) as [Spot, Spot];
  return Math.abs(u[0] * v[1] - u[1] * v[0]) < 1e-7 && u[0] * v[0] + u[1] * v[1] < 0;
}

function spotName([x, y]: Spot): string {
  return [x, y].map((each) => (Math.round(each * 1e6) / 1e6 + 0).toString()).join(' ');
}
