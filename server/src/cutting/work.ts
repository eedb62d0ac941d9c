/** How much work a way of making units is: cuts after the strips are cut, and units that are over. */

export interface Work {
  readonly cuts: number;
  readonly over: number;
}

export type HalfSquares = 'singles' | 'two_at_a_time' | 'eight_at_a_time';
export type Geese = 'singles' | 'four_at_a_time' | 'corners';

/**
 * A square is one cut off its strip, and what is cut through two layers at once is one cut. Singles: a square of each fabric for two,
 * a diagonal in each. Two at a time: the same squares, one cut through both. Eight: a square of each, and four cuts through both.
 */
export function halfSquareWork(way: HalfSquares, count: number): Work {
  if (way === 'eight_at_a_time') return inSets(count, 8, 2 + 4);
  return inSets(count, 2, way === 'two_at_a_time' ? 2 + 1 : 2 + 2);
}

/**
 * Singles: for four, a large square with two diagonals and four small ones with one. Four at a time: five squares, one cut through the
 * first pair of seams, and one for each half after the second. Corners: for each three pieces and two corners cut off.
 */
export function geeseWork(way: Geese, count: number): Work {
  if (way === 'corners') return { cuts: 5 * count, over: 0 };
  return inSets(count, 4, way === 'four_at_a_time' ? 5 + 3 : 3 + 8);
}

function inSets(count: number, size: number, cuts: number): Work {
  const sets = Math.ceil(count / size);
  return { cuts: sets * cuts, over: sets * size - count };
}
