/** The letters by which cut pieces are sorted at the table: A to Z, then AA, AB …, in the order of the plan's pieces. */

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** The label of a piece by its index in `CuttingPlan.pieces`. */
export function pieceLabel(index: number): string {
  const last = LETTERS.charAt(index % LETTERS.length);
  const rest = (index - (index % LETTERS.length)) / LETTERS.length;
  return rest === 0 ? last : `${pieceLabel(rest - 1)}${last}`;
}
