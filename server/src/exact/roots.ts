/** Square roots: exact where the field holds them, else the multiples of a step on either side (for sizes on any slant). */
import { SQRT2, SQRT3, abs, add, asFraction, ceil, div, floor, fraction, isZero, mul, sign, sub } from './number.ts';
import type { Exact } from './number.ts';
import { rootFloor } from './wide.ts';

/** √x when it lies in Q(√2, √3), else undefined: √(9/4) = 3/2, √(3 + 2√2) = 1 + √2; √5 and √−1 are not there. */
export function squareRoot(x: Exact): Exact | undefined {
  const root = rootIn(x, 2);
  return root === undefined ? undefined : abs(root);
}

/** The least multiple of `step` ≥ √x. Throws RangeError when x < 0 or `step` ≤ 0. */
export function rootUpTo(x: Exact, step: Exact): Exact {
  const steps = ceil(squaredSteps(x, step));
  return mul(fraction(steps === 0n ? 0n : rootFloor(steps - 1n) + 1n), step);
}

/** The greatest multiple of `step` ≤ √x. Throws RangeError when x < 0 or `step` ≤ 0. */
export function rootDownTo(x: Exact, step: Exact): Exact {
  return mul(fraction(rootFloor(floor(squaredSteps(x, step)))), step);
}

/** Levels of the tower Q ⊂ Q(√2) ⊂ Q(√2, √3). */
type Level = 0 | 1 | 2;

/**
 * A root of x among the numbers of a level. Above Q, x = A + B√g with A and B one level down, and (s + t√g)² = x means
 * s² + g·t² = A and 2st = B, so s² = (A ± √(A² − g·B²)) / 2.
 */
function rootIn(x: Exact, level: Level): Exact | undefined {
  if (isZero(x)) return x;
  if (sign(x) < 0) return undefined;
  if (level === 0) return rationalRoot(x);
  const down = level === 2 ? 1 : 0;
  const [plain, rooted, root, g] = split(x, level);
  if (isZero(rooted)) return rootIn(plain, down) ?? product(rootIn(div(plain, g), down), root);
  const norm = rootIn(sub(mul(plain, plain), mul(g, mul(rooted, rooted))), down);
  if (norm === undefined) return undefined;
  for (const twice of [add(plain, norm), sub(plain, norm)]) {
    const s = rootIn(div(twice, fraction(2)), down);
    if (s !== undefined && !isZero(s)) return add(s, mul(div(rooted, mul(fraction(2), s)), root));
  }
  return undefined;
}

/** A, B, √g and g of x = A + B√g. */
function split(x: Exact, level: 1 | 2): readonly [Exact, Exact, Exact, Exact] {
  const { a, b, c, d, over } = x.wide ?? x;
  const [one, two, three, six] = [fraction(a, over), fraction(b, over), fraction(c, over), fraction(d, over)];
  if (level === 1) return [one, two, SQRT2, fraction(2)];
  return [add(one, mul(two, SQRT2)), add(three, mul(six, SQRT2)), SQRT3, fraction(3)];
}

function rationalRoot(x: Exact): Exact | undefined {
  const { n, d } = asFraction(x) ?? { n: 2n, d: 1n };
  const root = rootFloor(n * d);
  return root * root === n * d ? fraction(root, d) : undefined;
}

function product(x: Exact | undefined, y: Exact): Exact | undefined {
  return x === undefined ? undefined : mul(x, y);
}

/** x / step², for x ≥ 0. */
function squaredSteps(x: Exact, step: Exact): Exact {
  if (sign(step) <= 0) throw new RangeError('A step is more than zero.');
  if (sign(x) < 0) throw new RangeError('No length is the root of a negative number.');
  return div(x, mul(step, step));
}
