/** What of an assorted role is cut from each of its prints. */
import { equals, sum } from '../exact/number.ts';
import type { Fabric, Pattern } from '../model/pattern.ts';
import type { CountedCloth, FabricPlan, Piece, RolePlan } from './plan.ts';

/** The roles that pieces are cut for, in the order of the pattern. */
export function planRoles(pieces: readonly Piece[], fabrics: readonly FabricPlan[], pattern: Pattern): readonly RolePlan[] {
  const used = new Set(pieces.flatMap(({ role }) => role ?? []));
  return [...pattern.fabrics.values()].filter(({ name }) => used.has(name)).map((fabric) => planRole(fabric, pieces, fabrics));
}

function planRole(fabric: Fabric, pieces: readonly Piece[], fabrics: readonly FabricPlan[]): RolePlan {
  const own = pieces.filter(({ role }) => role === fabric.name);
  const prints = (fabric.assorted?.prints ?? []).map((print) => ({ fabric: print, pieces: total(own.filter((piece) => piece.fabric.name === print.name)) }));
  const bought = fabrics.filter((each) => prints.some((print) => print.pieces > 0 && print.fabric.name === each.fabric.name));
  const counted = together(bought);
  return { fabric, prints, pieces: total(own), buy: sum(bought.map(({ buy }) => buy)), ...(counted ? { counted } : {}) };
}

/** Counted cloth of one kind and size, added up; undefined where that cannot be. */
function together(bought: readonly FabricPlan[]): CountedCloth | undefined {
  const [first, ...others] = bought.map(({ counted }) => counted);
  if (!first) return undefined;
  const isSame = (each: CountedCloth | undefined): boolean => each !== undefined && each.kind === first.kind && equals(each.width, first.width) && equals(each.height, first.height);
  if (!others.every(isSame)) return undefined;
  return others.reduce<CountedCloth>((all, each) => ({ ...all, count: all.count + (each?.count ?? 0), least: all.least + (each?.least ?? 0) }), { kind: first.kind, width: first.width, height: first.height, count: first.count, least: first.least });
}

function total(pieces: readonly Piece[]): number {
  return pieces.reduce((count, piece) => count + piece.pieces, 0);
}

/** Things dealt in turn to the prints of a role, where nothing lies side by side: how many each gets, those that get none left out. */
export function sharesOf({ assorted }: Fabric, count: number): readonly { readonly fabric: Fabric; readonly count: number }[] {
  const prints = assorted?.prints ?? [];
  const over = count % (prints.length || 1);
  return prints.map((fabric, i) => ({ fabric, count: (count - over) / prints.length + (i < over ? 1 : 0) })).filter((share) => share.count > 0);
}
