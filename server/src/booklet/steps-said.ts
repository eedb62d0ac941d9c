/** The author's own wording, its placeholders filled in. */
import { placeholdersIn, valueAt } from '../cutting/placeholders.ts';
import type { Quantity } from '../cutting/quantities.ts';
import type { Pattern, StepsText } from '../model/pattern.ts';
import { instancesIn, type BlockSteps } from './steps-plan.ts';
import { authored, plain } from './markdown.ts';
import type { BookletQuilt, BookletSource } from './source.ts';
import type { Printer } from './words.ts';

export interface Said {
  /** In place of the generated steps, where the author says so. */
  readonly instead: readonly string[] | undefined;
  readonly before: (block: BlockSteps) => readonly string[];
  readonly after: (block: BlockSteps) => readonly string[];
}

/** What is said of a block that the quilt does not have in this size is left out. */
export function saidOf({ pattern, quilts }: BookletSource, quilt: BookletQuilt, blocks: readonly BlockSteps[], print: Printer): Said {
  const linesOf = (texts: readonly StepsText[]): readonly string[] => texts.flatMap((each) => each.texts.map(({ text }) => filledIn(text, { pattern, quilts, quilt, print })));
  const instead = pattern.steps.filter(({ where }) => where === 'instead');
  const at = (where: StepsText['where'], block: BlockSteps): readonly string[] => {
    const texts = pattern.steps.filter((each) => each.where === where && each.of !== undefined && placeOf(each.of, where, blocks) === block);
    return linesOf(texts);
  };
  return { instead: instead.length > 0 ? linesOf(instead) : undefined, before: (block) => at('before', block), after: (block) => at('after', block) };
}

/** The block itself, or blocks that it stands in: before the first of them, after the last. */
function placeOf(name: string, where: StepsText['where'], blocks: readonly BlockSteps[]): BlockSteps | undefined {
  const holds = (block: BlockSteps): boolean => block.sewn.some(({ layout }) => [...instancesIn(layout.instance)].some(({ definition }) => definition.name === name));
  return where === 'before' ? blocks.find(holds) : blocks.findLast(holds);
}

interface Filling {
  readonly pattern: Pattern;
  readonly quilts: readonly BookletQuilt[];
  readonly quilt: BookletQuilt;
  readonly print: Printer;
}

/** Markdown stays as the author wrote it, HTML in it as text; what has no value stays as it is (`unknown-placeholder` tells it, and nothing is written then). */
export function filledIn(text: string, { pattern, quilts, quilt, print }: Filling): string {
  let filled = '';
  let behind = 0;
  for (const { path, from, to } of placeholdersIn(text)) {
    const value = valueAt(path, quilt, quilts, pattern.rules);
    filled += text.slice(behind, from) + (value ? plain(quantityText(value, print)) : text.slice(from, to));
    behind = to;
  }
  return authored((filled + text.slice(behind)).trim());
}

function quantityText({ kind, value }: Quantity, print: Printer): string {
  if (kind === 'count') return print.number(value);
  return kind === 'cloth' ? print.cloth(value) : print.length(value);
}
