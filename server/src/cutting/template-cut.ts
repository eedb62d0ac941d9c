/**
 * What is cut for blocks that ask for print: `templates` cuts every patch with a template; for a block sewn on paper (`foundation`) every
 * patch is cut roughly: the box around it, with the seam allowance and a quarter of an inch more on each side. Common practice, no source.
 */
import { add, equals, fraction, mul, roundUpTo, sub, TWO, type Exact } from '../exact/number.ts';
import { boundingBox } from '../exact/polygon.ts';
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import { isOnPaper } from '../piecing/foundation.ts';
import { blocksAlong } from '../piecing/methods-at.ts';
import { cuttingOf, type Cutting, type CutRules } from './shape.ts';

/** What a patch on paper is larger than its own seams on each side, in inches: 1/4", or 6 mm where the pattern is metric. */
export function roughExtra({ roundUp }: Pick<CutRules, 'roundUp'>): Exact {
  return roundUpTo(fraction(6, 25), roundUp);
}

/** Undefined where the block asks for nothing, and where it cannot be sewn on paper. The patch is one of the block's, at the size it is set in. */
export function printedCutting(block: BlockLayout, patch: Patch, rules: CutRules): Cutting | undefined {
  if (isOnPaper(block)) return roughCutting(patch, rules);
  return asksForTemplates(block, patch) ? cuttingOf(patch, { ...rules, printed: true }) : undefined;
}

function asksForTemplates({ instance }: BlockLayout, { within = [] }: Patch): boolean {
  return instance.templates || blocksAlong(instance, within).some(({ templates }) => templates);
}

function roughCutting({ outline }: Patch, rules: CutRules): Cutting {
  const { left, right, top, bottom } = boundingBox(outline);
  const finished = { width: sub(right, left), height: sub(bottom, top) };
  const more = mul(TWO, add(rules.seam, roughExtra(rules)));
  const exactCut = { width: add(finished.width, more), height: add(finished.height, more) };
  const cut = { width: roundUpTo(exactCut.width, rules.roundUp), height: roundUpTo(exactCut.height, rules.roundUp) };
  const shape = equals(cut.width, cut.height) ? 'square' : 'rectangle';
  return { shape, finished, exactCut, cut, piecesPerCut: 1, method: 'plain' };
}
