/**
 * Cuts at the table. Fabric lies folded once (two layers), and `layers` folded fabrics or strips lie on one another, so `layers 3`
 * gives six pieces a cut (common practice, no source). Strips off a bolt are cut one fabric at a time.
 */
import { add, equals, fraction, mul, sum, ZERO, type Exact } from '../exact/number.ts';
import type { FabricSource } from '../model/pattern.ts';
import type { Cloth, Piece, Strip, Subcut, TableCuts } from './plan.ts';

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

/** Fabric is folded once. */
const FOLDS = 1;

/** All cuts of a fabric: its cloth straightened and cut into strips, the strips into segments, segments trimmed, squares divided. */
export function cutsAtTable(cloths: readonly Cloth[], pieces: readonly Piece[], source: FabricSource['kind'], layers: number): TableCuts {
  const cut = new Map<number, number>();
  for (const cloth of cloths) for (const strip of cloth.strips) for (const { piece, count } of strip.subcuts) cut.set(piece, (cut.get(piece) ?? 0) + cloth.count * strip.count * count);
  const diagonals = [...cut].reduce((total, [index, count]) => total + (DIAGONALS[pieces[index]?.method ?? 'plain'] ?? 0) * cutsFor(count, layers, FOLDS), 0);
  return {
    strips: total(cloths, (cloth) => stripCuts(cloth, source, layers)),
    pieces: diagonals + total(cloths, (cloth) => total(cloth.strips, (strip) => Math.ceil((cloth.count * strip.count) / layers) * segmentCuts(strip, cloth, pieces))),
  };
}

const DIAGONALS: Readonly<Partial<Record<Piece['method'], number>>> = { 'once on the diagonal': 1, 'twice on the diagonal': 2 };

/** One to straighten the end, then one for each strip; a precut is straight, and its last strip may reach its edge. */
function stripCuts({ count, across, down, turned, strips }: Cloth, source: FabricSource['kind'], layers: number): number {
  if (source === 'strips') return 0;
  const all = total(strips, (strip) => strip.count);
  if (source === 'yardage') return (1 + all) * count;
  const used = sum(strips.map((strip) => mul(strip.width, fraction(strip.count))));
  const isFull = equals(used, turned ? across : down);
  return ((source === 'squares' ? 0 : 1) + all - (isFull ? 1 : 0)) * Math.ceil(count / layers);
}

/** Through the fold, two segments a cut; what is lower than its strip is trimmed in the same layers. The end of a full strip is a selvage. */
function segmentCuts({ width, subcuts }: Strip, { across, down, turned }: Cloth, pieces: readonly Piece[]): number {
  let used: Exact = ZERO;
  let cuts = 0;
  for (const { across: size, down: height, segments, stack } of segmentsOf(subcuts, pieces)) {
    used = add(used, mul(size, fraction(segments)));
    const isFull = equals(used, turned ? down : across);
    const isLow = !equals(mul(height, fraction(stack)), width);
    cuts += cutsFor(isFull ? segments - 1 : segments, 1, FOLDS) + cutsFor(segments, 1, FOLDS) * (isLow ? stack : stack - 1);
  }
  return cuts;
}

interface Segments {
  readonly across: Exact;
  readonly down: Exact;
  readonly stack: number;
  count: number;
  segments: number;
}

/** Subcuts that continue one another are one. */
function segmentsOf(subcuts: readonly Subcut[], pieces: readonly Piece[]): readonly Segments[] {
  const found: Segments[] = [];
  for (const { piece, count, turned, stacked = 1, continues } of subcuts) {
    const cut = pieces[piece]?.cut;
    const last = found.at(-1);
    if (!cut) continue;
    if (continues && last) last.count += count;
    else found.push({ across: turned ? cut.height : cut.width, down: turned ? cut.width : cut.height, stack: stacked, count, segments: 0 });
  }
  for (const each of found) each.segments = Math.ceil(each.count / each.stack);
  return found;
}

function total<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((done, item) => done + of(item), 0);
}
