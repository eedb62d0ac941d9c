/** The same questions as integer programs for HiGHS, a general solver: the fewest crossings that cannot nest, the fewest seams in two goes. */
import loadHighs from 'highs';
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
