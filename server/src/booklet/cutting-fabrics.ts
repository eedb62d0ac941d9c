/** The fabrics in cutting.md: what to buy of each, how much of it is used, and its strips; then the roles dealt to prints. */
import type { UnitSystem } from '../exact/length.ts';
import { less } from '../exact/number.ts';
import type { FabricPlan, Piece, RolePlan } from '../cutting/plan.ts';
import type { Fabric } from '../model/pattern.ts';
import { boughtEverywhere, boughtText } from './bought.ts';
import { plain } from './markdown.ts';
import { stripLines } from './strip-words.ts';
import { counted, listed, type Printer } from './words.ts';

export type Section = readonly (readonly string[])[];

export interface FabricWords {
  readonly pieces: readonly Piece[];
  readonly print: Printer;
  readonly units: UnitSystem;
  /** Where its cutting layout is drawn; absent where none is written. */
  readonly drawing?: string;
}

/** A fabric with all that is cut from it. */
export function fabricSection(plan: FabricPlan, { pieces, print, units, drawing }: FabricWords): Section {
  const { fabric, cuts } = plan;
  return headed(titleOf(fabric), [
    `- ${plan.counted?.kind === 'piece' ? 'Take' : 'Buy'} ${boughtEverywhere(plan, print, units)}.`,
    ...usedLines(plan, print),
    `- Cuts: ${cuts.strips} for the strips, ${cuts.pieces} for the pieces.`,
    ...(drawing === undefined ? [] : [`- Drawn to scale in ${drawing}.`]),
    ...stripLines(plan, pieces, print),
  ]);
}

function usedLines(plan: FabricPlan, print: Printer): readonly string[] {
  const { fabric, length, lowerBound, isLeast, isLeastBought, counted: cloth } = plan;
  if (!cloth) return [`- Usable width: ${print.length(fabric.width)}.`, `- Length cut: ${print.length(length)}${isLeast ? ', proven least' : `; no plan takes less than ${print.length(lowerBound)}${isLeastBought ? ', and that buys the same' : ''}`}.`];
  const least = cloth.count <= cloth.least ? ', proven least' : `; no plan takes fewer than ${cloth.least}`;
  const over = cloth.atHand !== undefined && cloth.atHand < cloth.count ? [`- At hand: ${cloth.atHand}, which is ${cloth.count - cloth.atHand} too few.`] : [];
  return [`- Usable of each: ${print.widthByHeight(cloth)}${cloth.kind === 'square' || cloth.kind === 'strip' ? '' : `, the ${less(cloth.height, cloth.width) ? 'shorter' : 'longer'} side along the selvage`}.`, `- Needed: ${cloth.count}${least}.`, ...over];
}

/** An assorted role: what of it is cut from each print, whose own sections stand above. */
export function roleSection(role: RolePlan, print: Printer): Section {
  const { fabric, prints, pieces } = role;
  return headed(`${titleOf(fabric)} (assorted)`, [
    `- Buy ${boughtText(role, print)} in all, of ${counted(prints.length, 'print')}.`,
    `- ${counted(pieces, 'piece')}, dealt in turn: ${listed(prints.map((each) => `${each.pieces} of ${each.fabric.name}`))}.`,
  ]);
}

/** A heading and its lines; nothing where there are none. */
export function headed(title: string, lines: readonly string[]): Section {
  return lines.length > 0 ? [[`## ${title}`], lines] : [];
}

function titleOf({ name, label }: Fabric): string {
  return label === '' || label === name ? name : `${name}: ${plain(label)}`;
}
