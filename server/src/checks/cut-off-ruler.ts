/** `cut-off-ruler`: a cut size that no line of the ruler shows, so that it had to be rounded up. */
import type { Piece } from '../cutting/plan.ts';
import { equals, min, mul, roundUpTo, SQRT2, type Exact } from '../exact/number.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import { soundPieces, type Rule } from './rule.ts';
import { lengthText } from './wording.ts';

export const cutOffRuler: Rule = {
  id: 'cut-off-ruler',
  severity: 'warning',
  when: 'later',
  title: 'A cut size that is not on the ruler',
  why: 'A 10" block on a grid of three has patches of 3 1/3", and no ruler shows thirds. Cut sizes are rounded up to the ruler, so such a patch comes out a little too large, and the block with it: sew it and trim it to size, or choose a size that the grid divides.',
  bad: quiltExample('block Buoy 10" {\n  ink  sand ink\n  sand ink  sand\n  ink  sand ink\n}'),
  good: quiltExample('block Buoy 9" {\n  ink  sand ink\n  sand ink  sand\n  ink  sand ink\n}'),
  mends: [
    'Give the block a size that its grid divides: 9" or 12" for a grid of three.',
    'If your ruler has sixteenths, say so in `pattern`: `round_up 1/16"`.',
    'Keep it, sew, and trim the units to size: `// allow cut-off-ruler`.',
  ],
  find: ({ quilts, pattern }) => quilts.flatMap(soundPieces).flatMap((piece) => problemOf(piece, pattern)),
};

function problemOf(piece: Piece, pattern: Pattern): readonly Problem[] {
  const off = measures(piece).find((length) => !isOnRuler(length, pattern));
  const place = piece.places[0];
  if (!off || !place) return [];
  const cut = piece.shape === 'square' || piece.shape === 'rectangle' || piece.shape === 'strip';
  const rounded = lengthText(roundUpTo(off, pattern.rules.roundUp), pattern);
  const message = cut
    ? `a cut of ${lengthText(off, pattern)} is not on the ruler; it is cut ${rounded}`
    : `a finished side of ${lengthText(off, pattern)} is not on the ruler; the nearest that is: ${rounded}`;
  return [{ rule: 'cut-off-ruler', place, message }];
}

/**
 * The lengths of a piece that a ruler should show: what is cut of squares, rectangles and strips (their length, and that of sashes,
 * is cut to measure), the finished sides of triangles (their cut size is always rounded up and trimmed). Setting triangles are cut
 * large and templates by their outline.
 */
function measures({ shape, finished, exactCut, for: use }: Piece): readonly Exact[] {
  if (use === 'sashing') return [min(exactCut.width, exactCut.height)];
  if (shape === 'square' || shape === 'rectangle') return [exactCut.width, exactCut.height];
  if (shape === 'strip') return [exactCut.width];
  if (shape === 'half-square triangle') return [finished.width];
  return shape === 'quarter-square triangle' ? [mul(finished.width, SQRT2)] : [];
}

function isOnRuler(length: Exact, pattern: Pattern): boolean {
  return equals(length, roundUpTo(length, pattern.rules.roundUp));
}
