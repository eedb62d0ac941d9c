/** What of an assorted role is cut from each of its prints. */
import { sum } from '../exact/number.ts';
import type { Fabric, Pattern } from '../model/pattern.ts';
import type { FabricPlan, Piece, RolePlan } from './plan.ts';

/** The roles that pieces are cut for, in the order of the pattern. */
export function planRoles(pieces: readonly Piece[], fabrics: readonly FabricPlan[], pattern: Pattern): readonly RolePlan[] {
  const used = new Set(pieces.flatMap(({ role }) => role ?? []));
  return [...pattern.fabrics.values()].filter(({ name }) => used.has(name)).map((fabric) => planRole(fabric, pieces, fabrics));
}

function planRole(fabric: Fabric, pieces: readonly Piece[], fabrics: readonly FabricPlan[]): RolePlan {
  const own = pieces.filter(({ role }) => role === fabric.name);
  const prints = (fabric.assorted?.prints ?? []).map((print) => ({ fabric: print, pieces: total(own.filter((piece) => piece.fabric.name === print.name)) }));
  const bought = fabrics.filter((each) => prints.some((print) => print.pieces > 0 && print.fabric.name === each.fabric.name));
  return { fabric, prints, pieces: total(own), buy: sum(bought.map(({ buy }) => buy)) };
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
