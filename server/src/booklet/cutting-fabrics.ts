/** The fabrics in cutting.md: what to buy of each, how much of it is used, and its strips; then the roles dealt to prints. */
import { less } from '../exact/number.ts';
import type { CountedCloth, FabricPlan, Piece, RolePlan } from '../cutting/plan.ts';
import type { Fabric } from '../model/pattern.ts';
import { boughtEverywhere, boughtText } from './bought.ts';
import { plain } from './markdown.ts';
import { stripLines, type Telling } from './strip-words.ts';
import type { Printer } from './words.ts';
import type { Proof } from './words/cutting-words.ts';

export type Section = readonly (readonly string[])[];

export interface FabricWords {
  readonly pieces: readonly Piece[];
  readonly telling: Telling;
  /** Where its cutting layout is drawn; absent where none is written. */
  readonly drawing?: string;
}

/** A fabric with all that is cut from it. */
export function fabricSection(plan: FabricPlan, { pieces, telling, drawing }: FabricWords): Section {
  const { fabric, cuts } = plan;
  const { words } = telling;
  const bought = boughtEverywhere(plan, telling);
  return headed(titleOf(fabric), [
    `- ${plan.counted?.kind === 'piece' ? words.take(bought) : words.buy(bought)}`,
    ...usedLines(plan, telling),
    `- ${words.cuts(cuts.strips, cuts.pieces)}`,
    ...(drawing === undefined ? [] : [`- ${words.drawn(drawing)}`]),
    ...stripLines(plan, pieces, telling),
  ]);
}

function usedLines(plan: FabricPlan, { words, print }: Telling): readonly string[] {
  const { fabric, length, counted: cloth } = plan;
  if (!cloth) return [`- ${words.usable(print.length(fabric.width))}`, `- ${words.length(print.length(length), proofOf(plan, print))}`];
  const over = cloth.atHand !== undefined && cloth.atHand < cloth.count ? [`- ${words.atHand(cloth.atHand, cloth.count - cloth.atHand)}`] : [];
  return [`- ${words.usableOfEach(print.widthByHeight(cloth), sideAlong(cloth))}`, `- ${words.needed(cloth.count, cloth.count <= cloth.least ? undefined : cloth.least)}`, ...over];
}

function proofOf({ isLeast, isLeastBought, lowerBound }: FabricPlan, print: Printer): Proof {
  return isLeast ? { kind: 'least' } : { kind: 'bound', bound: print.length(lowerBound), buysTheSame: isLeastBought };
}

/** The side of the cloth that lies along the selvage, where that must be said. */
function sideAlong({ kind, width, height }: CountedCloth): 'shorter' | 'longer' | undefined {
  if (kind === 'square' || kind === 'strip') return undefined;
  return less(height, width) ? 'shorter' : 'longer';
}

/** An assorted role: what of it is cut from each print, whose own sections stand above. */
export function roleSection(role: RolePlan, { words, print }: Telling): Section {
  const { fabric, prints, pieces } = role;
  return headed(words.assorted(titleOf(fabric)), [
    `- ${words.buyInAll(boughtText(role, print, words), prints.length)}`,
    `- ${words.dealt(pieces, words.listed(prints.map((each) => words.of(each.pieces, each.fabric.name))))}`,
  ]);
}

/** A heading and its lines; nothing where there are none. */
export function headed(title: string, lines: readonly string[]): Section {
  return lines.length > 0 ? [[`## ${title}`], lines] : [];
}

function titleOf({ name, label }: Fabric): string {
  return label === '' || label === name ? name : `${name}: ${plain(label)}`;
}
