/** How much work a way of making units is: cuts after the strips are cut, seams, and units that are over. */

export interface Work {
  readonly cuts: number;
  readonly seams: number;
  readonly over: number;
}

export type HalfSquares = 'singles' | 'two_at_a_time' | 'eight_at_a_time';
export type Geese = 'singles' | 'four_at_a_time' | 'corners';

/**
 * A square is one cut off its strip, and what is cut through two layers at once is one cut. Singles: a square of each fabric for two,
 * a diagonal in each. Two at a time: the same squares, one cut through both. Eight: a square of each, four cuts through both, and both
 * lines sewn along on both sides. Triangles that are over when they are sewn singly are no units.
 */
export function halfSquareWork(way: HalfSquares, count: number): Work {
  if (way === 'eight_at_a_time') return inSets(count, 8, { cuts: 2 + 4, seams: 4 });
  return way === 'two_at_a_time' ? inSets(count, 2, { cuts: 2 + 1, seams: 2 }) : { ...inSets(count, 2, { cuts: 2 + 2, seams: 0 }), seams: count, over: 0 };
}

/**
 * Singles: for four, a large square with two diagonals and four small ones with one. Four at a time: five squares, one cut through the
 * first pair of seams, and one for each half after the second. Corners: for each three pieces and two corners cut off.
 */
export function geeseWork(way: Geese, count: number): Work {
  if (way === 'corners') return { cuts: 5 * count, seams: 2 * count, over: 0 };
  return way === 'four_at_a_time' ? inSets(count, 4, { cuts: 5 + 3, seams: 6 }) : { ...inSets(count, 4, { cuts: 3 + 8, seams: 0 }), seams: 2 * count, over: 0 };
}

function inSets(count: number, size: number, { cuts, seams }: Omit<Work, 'over'>): Work {
  const sets = Math.ceil(count / size);
  return { cuts: sets * cuts, seams: sets * seams, over: sets * size - count };
}
