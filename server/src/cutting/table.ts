/**
 * Fabric in layers under the cutter. Each fold doubles the layers: three layers of fabric folded once are six under the blade,
 * and one cut makes six pieces.
 */

/** Pieces from one cut through `layers` of fabric, each folded `folds` times. Throws RangeError unless both are whole and there is a layer. */
export function piecesPerCut(layers: number, folds: number): number {
  if (!Number.isSafeInteger(layers) || layers < 1) throw new RangeError('Fabric lies in one layer or more.');
  if (!Number.isSafeInteger(folds) || folds < 0) throw new RangeError('Fabric is folded a whole number of times.');
  return layers * 2 ** folds;
}

/** Cuts for `pieces` pieces through such a stack. */
export function cutsFor(pieces: number, layers: number, folds: number): number {
  return Math.ceil(pieces / piecesPerCut(layers, folds));
}
