/**
 * Lengths that no plan of the same cuts can go below, however cleverly they are laid along the grain.
 * Area: what is cut, over the usable width. Rows: pieces at least w wide each way they may lie stand at most ⌊W/w⌋ side by side
 * on any line across the fabric, so they fall into as many columns (an interval graph needs no more colours than its deepest
 * point), one of which holds at least ⌈n/⌊W/w⌋⌉ of them, each at least h long.
 */
import { ZERO, atMost, ceil, div, floor, fraction, less, max, min, mul, sum, type Exact } from '../exact/number.ts';

/** Pieces that may lie in one or two ways; `ways` is not empty and each way fits the width. */
export interface Laid {
  readonly count: number;
  readonly ways: readonly Way[];
}

export interface Way {
  /** Across the fabric, and along the selvage. */
  readonly across: Exact;
  readonly down: Exact;
}

/** The best of the bounds, for fabric of a usable width. */
export function lowerBound(pieces: readonly Laid[], width: Exact): Exact {
  if (pieces.length === 0) return ZERO;
  const least = pieces.map(leastOf);
  const rows = least.map((piece) => rowBound(least, piece, width));
  return max(areaBound(pieces, width), ...rows);
}

/** By what the pieces cover alone. */
export function areaBound(pieces: readonly Laid[], width: Exact): Exact {
  return div(sum(pieces.map(({ count, ways: [way] }) => (way ? mul(fraction(count), mul(way.across, way.down)) : ZERO))), width);
}

interface Least extends Way {
  readonly count: number;
}

function leastOf({ count, ways }: Laid): Least {
  const [first, ...rest] = ways;
  if (!first) return { count: 0, across: ZERO, down: ZERO };
  return {
    count,
    across: min(first.across, ...rest.map(({ across }) => across)),
    down: min(first.down, ...rest.map(({ down }) => down)),
  };
}

/** The bound from all pieces that are no smaller than `piece` either way. */
function rowBound(pieces: readonly Least[], piece: Least, width: Exact): Exact {
  if (!less(ZERO, piece.across)) return ZERO;
  const count = pieces.reduce((total, other) => (atMost(piece.across, other.across) && atMost(piece.down, other.down) ? total + other.count : total), 0);
  const columns = floor(div(width, piece.across));
  return mul(fraction(ceil(div(fraction(count), fraction(columns)))), piece.down);
}
