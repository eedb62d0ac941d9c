/** The cloth a fabric comes in: off the bolt, as fat quarters, as precut strips or squares, or as a piece at hand. */
import { atMost, compare, less, max, min, type Exact } from '../exact/number.ts';
import type { Fabric } from '../model/pattern.ts';
import type { Measure, Piece } from './plan.ts';

/** `across` is perpendicular to the selvage, `down` along it. */
export type Stock =
  | { readonly kind: 'length'; readonly across: Exact }
  | { readonly kind: 'strips' | 'sheets'; readonly across: Exact; readonly down: Exact };

/** A fat quarter's shorter side runs along the selvage (half a yard of it); of a piece it is the second measure. */
export function stockOf({ width, source }: Pick<Fabric, 'width' | 'source'>): Stock {
  switch (source.kind) {
    case 'yardage':
      return { kind: 'length', across: width };
    case 'strips':
      return { kind: 'strips', across: width, down: source.size };
    case 'squares':
      return { kind: 'sheets', across: source.size, down: source.size };
    case 'fat_quarters':
      return { kind: 'sheets', across: max(source.width, source.height), down: min(source.width, source.height) };
    case 'piece':
      return { kind: 'sheets', across: source.width, down: source.height };
  }
}

/** How long the strips are that can be cut from a fabric and joined; along the selvage only where the print does not mind. */
export function stripLength(fabric: Pick<Fabric, 'width' | 'source' | 'directional'>): Exact {
  const stock = stockOf(fabric);
  return stock.kind === 'sheets' && !fabric.directional ? max(stock.across, stock.down) : stock.across;
}

/** A way a piece may lie on the cloth. `turned`: `cut.height` lies across. */
export interface LotWay {
  readonly across: Exact;
  readonly down: Exact;
  readonly turned: boolean;
}

/** The ways a piece fits its cloth; none when it is too large each way that it may lie. */
export function waysOf(piece: Pick<Piece, 'cut' | 'lie' | 'fabric' | 'method'>, stock: Stock = stockOf(piece.fabric)): readonly LotWay[] {
  const { cut } = piece;
  const lie = lieOn(piece, stock);
  const along = { across: cut.width, down: cut.height, turned: false };
  const across = { across: cut.height, down: cut.width, turned: true };
  const isSquare = compare(cut.width, cut.height) === 0;
  const ways = lie === 'along' || (isSquare && lie === undefined) ? [along] : lie === 'across' ? [across] : [across, along];
  return ways.filter((way) => atMost(way.across, stock.across) && (stock.kind === 'length' || atMost(way.down, stock.down)));
}

/** Strips to be joined run whichever way they are longer where cloth has an end, unless the print minds. */
function lieOn({ lie, method, fabric }: Pick<Piece, 'lie' | 'method' | 'fabric'>, { kind }: Stock): Piece['lie'] {
  return kind === 'sheets' && method === 'from strips joined' && !fabric.directional ? undefined : lie;
}

/** The size of the piece of cloth a larger piece would need, the way it comes nearest. */
export function needOf({ cut, lie }: Pick<Piece, 'cut' | 'lie'>, stock: Stock): Measure {
  const upright = { width: cut.width, height: cut.height };
  const level = { width: cut.height, height: cut.width };
  if (lie === 'along') return upright;
  if (lie === 'across') return level;
  const isTall = stock.kind === 'length' || atMost(stock.across, stock.down);
  return less(cut.width, cut.height) === isTall ? upright : level;
}
