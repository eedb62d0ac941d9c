/** What is bought of a fabric, in words: a length, or how many fat quarters or precuts. */
import type { CountedCloth, FabricPlan } from '../cutting/plan.ts';
import type { UnitSystem } from '../exact/length.ts';
import { counted, printerFor, type Printer } from './words.ts';

/** `2 3/8 yd`, `9 fat quarters`, `1 strip 2 1/2" wide`. */
export function boughtText({ buy, counted: cloth }: Pick<FabricPlan, 'buy' | 'counted'>, print: Printer): string {
  return cloth ? clothsText(cloth, cloth.count, print) : print.cloth(buy);
}

/** `2 3/8 yd, or 2.2 m`: by both measures cloth is sold by. */
export function boughtEverywhere(plan: FabricPlan, print: Printer, units: UnitSystem): string {
  const other = printerFor(units === 'inches' ? 'centimetres' : 'inches');
  return plan.counted ? boughtText(plan, print) : `${boughtText(plan, print)}, or ${other.cloth(plan.buyElsewhere)}`;
}

/** `2 squares 5"`. */
export function clothsText(cloth: CountedCloth, count: number, print: Printer): string {
  const noun = counted(count, cloth.kind);
  if (cloth.kind === 'fat quarter') return noun;
  return cloth.kind === 'strip' ? `${noun} ${print.length(cloth.height)} wide` : `${noun} ${print.size(cloth)}`;
}
