/** The order in which a block is sewn, in a few lines: the units it needs, then the block. */
import type { BlockLayout } from '../geometry/layout.ts';
import { blockSewing, type BlockWords } from './steps-blocks.ts';
import { stepsPlan } from './steps-plan.ts';
import { TEXTS } from './steps-texts.ts';

/** Nothing for a block that is not in the quilt, or that no plan was worked out for. */
export function orderLines(layout: BlockLayout, words: Omit<BlockWords, 'plan'>): readonly string[] {
  const plan = stepsPlan(words.sewing);
  const block = plan.blocks.find(({ sewn }) => sewn.some((each) => each.layout === layout));
  return block ? blockSewing(block, { ...words, plan }).filter((line) => !isAside(line)) : [];
}

/** Lines that say how, not what. */
function isAside(line: string): boolean {
  return line === TEXTS.match || line === TEXTS.nest || /^(Press|Wait) /.test(line);
}
