/** The columns or rows of a grid as sizes: lengths stand, proportions share what lengths leave, `rest` takes it. */
import { ONE, ZERO, add, div, equals, fraction, mul, sign, sub, sum } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { GridLine } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';

export interface Lines {
  readonly sizes: readonly Exact[];
  readonly findings: readonly Finding[];
}

export interface LinesContext {
  /** `the columns` or `the rows`, for the message. */
  readonly what: string;
  /** Where the total was written. */
  readonly related?: Place;
}

/**
 * The sizes of the lines, which add up to `total`. Lengths that do not are a finding, and are then taken as proportions so that
 * the rest of the block can still be judged.
 */
export function divideLines(lines: readonly GridLine[], total: Exact, context: LinesContext): Lines {
  if (lines.length === 0) return { sizes: [], findings: [] };
  const bad = lines.find((line) => line.kind !== 'rest' && sign(line.value) <= 0);
  if (bad) return { sizes: equalParts(lines.length, total), findings: [tooSmall(bad.place, context.what)] };
  const fixed = sum(lines.map((line) => (line.kind === 'length' ? line.value : ZERO)));
  const shares = sum(lines.map(shareOf));
  const left = sub(total, fixed);
  const noLengths = lines.every((line) => line.kind !== 'length');
  if (noLengths || sign(left) > 0) {
    if (sign(shares) > 0) return { sizes: lines.map((line) => sizeOf(line, div(left, shares))), findings: mixed(lines, context.what) };
  } else if (sign(left) === 0 && sign(shares) === 0) return { sizes: lines.map((line) => sizeOf(line, ZERO)), findings: [] };
  const scale = div(total, naturalLength(lines));
  return { sizes: lines.map((line) => mul(naturalSize(line), scale)), findings: [wrongSum(lines, fixed, total, context)] };
}

/** What the lines come to by themselves: proportions count as units, and so does a `rest`. */
export function naturalLength(lines: readonly GridLine[]): Exact {
  return sum(lines.map(naturalSize));
}

/** n equal parts of a total. */
export function equalParts(n: number, total: Exact): Exact[] {
  return Array.from({ length: n }, () => div(total, fraction(n)));
}

/** Where each part begins, and where the last one ends. */
export function edgesFrom(start: Exact, sizes: readonly Exact[]): Exact[] {
  const edges = [start];
  for (const size of sizes) edges.push(add(edges.at(-1) ?? start, size));
  return edges;
}

/** True when the sizes read the same from both ends. */
export function isSymmetric(sizes: readonly Exact[]): boolean {
  return sizes.every((size, i) => equals(size, sizes.at(-1 - i) ?? size));
}

function naturalSize(line: GridLine): Exact {
  return line.kind !== 'rest' && sign(line.value) > 0 ? line.value : ONE;
}

function shareOf(line: GridLine): Exact {
  if (line.kind === 'length') return ZERO;
  return line.kind === 'rest' ? ONE : line.value;
}

function sizeOf(line: GridLine, share: Exact): Exact {
  return line.kind === 'length' ? line.value : mul(shareOf(line), share);
}

/** `rest` beside proportions says nothing: both would share what is left. */
function mixed(lines: readonly GridLine[], what: string): Finding[] {
  const rest = lines.find((line) => line.kind === 'rest');
  if (!rest || lines.every((line) => line.kind !== 'proportion')) return [];
  return [{ rule: 'wrong-argument', place: rest.place, problem: `\`rest\` takes what lengths leave, and ${what} are proportions` }];
}

function tooSmall(place: Place, what: string): Finding {
  return { rule: 'wrong-argument', place, problem: `${what} of a grid are more than zero` };
}

function wrongSum(lines: readonly GridLine[], found: Exact, expected: Exact, context: LinesContext): Finding {
  const last = lines.at(-1);
  const place = last?.place;
  const first = lines[0]?.place;
  if (!place || !first) throw new RangeError('A grid without lines has no sum.');
  return {
    rule: 'grid-sum',
    place: first.line === place.line ? { line: first.line, from: first.from, to: place.to } : place,
    found,
    expected,
    what: context.what,
    ...(lines.some((line) => line.kind !== 'length') ? { shared: true } : last.kind === 'length' ? { last: { place, value: last.value, isLength: true } } : {}),
    ...(context.related ? { related: context.related } : {}),
  };
}
