/** What is bought of a fabric, in words: a length, or how many fat quarters or precuts. */
import type { FabricPlan } from '../cutting/plan.ts';
import type { UnitSystem } from '../exact/length.ts';
import { printerFor, type Printer } from './words.ts';
import { CUTTING_EN } from './words/cutting-en.ts';
import type { CuttingWords } from './words/cutting-words.ts';

/** `2 3/8 yd`, `9 fat quarters`, `1 strip 2 1/2" wide`. */
export function boughtText({ buy, counted: cloth }: Pick<FabricPlan, 'buy' | 'counted'>, print: Printer, words: Pick<CuttingWords, 'cloth'> = CUTTING_EN): string {
  if (!cloth) return print.cloth(buy);
  return words.cloth(cloth.kind, cloth.count, cloth.kind === 'strip' ? print.length(cloth.height) : print.size(cloth));
}

/** `2 3/8 yd, or 2.2 m`: by both measures cloth is sold by. */
export function boughtEverywhere(plan: FabricPlan, { words, print, units }: { readonly words: CuttingWords; readonly print: Printer; readonly units: UnitSystem }): string {
  const bought = boughtText(plan, print, words);
  const other = printerFor(units === 'inches' ? 'centimetres' : 'inches', words.voice);
  return plan.counted ? bought : words.or(bought, other.cloth(plan.buyElsewhere));
}
