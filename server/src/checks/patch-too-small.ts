/** `patch-too-small`: a finished patch that is narrower than the two seam allowances behind it. */
import type { Piece } from '../cutting/plan.ts';
import { add, less, min } from '../exact/number.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import { soundPieces, type Rule } from './rule.ts';
import { lengthText } from './wording.ts';

export const patchTooSmall: Rule = {
  id: 'patch-too-small',
  severity: 'warning',
  when: 'later',
  title: 'A patch narrower than its seam allowances',
  why: 'Behind a finished patch lie two seam allowances. Where it is narrower than both together they lie over each other: the patch is stiff, hard to press, and easily lost in the next seam.',
  bad: quiltExample('block Buoy 4" {\n  grid 15 1 by 1\n  ink sand\n}'),
  good: quiltExample('block Buoy 4" {\n  grid 7 1 by 1\n  ink sand\n}'),
  mends: ['Make the patch wider, or the block larger.', 'Sew it wider and trim the allowance, or appliqué it; then `// allow patch-too-small`.'],
  find: ({ quilts, pattern }) => quilts.flatMap(soundPieces).flatMap((piece) => problemOf(piece, pattern)),
};

function problemOf(piece: Piece, pattern: Pattern): readonly Problem[] {
  const width = min(piece.finished.width, piece.finished.height);
  const allowances = add(pattern.rules.seam, pattern.rules.seam);
  const place = piece.places[0];
  if (!place || piece.for === 'binding' || !less(width, allowances)) return [];
  const message = `this patch is ${lengthText(width, pattern)} wide, its two seam allowances ${lengthText(allowances, pattern)}`;
  return [{ rule: 'patch-too-small', place, message }];
}
