/**
 * A hanging sleeve: a strip 8 1/2" wide and 2" shorter than the quilt is wide, hemmed at its ends and folded to a tube of about 4"
 * (common practice, no source); 22 cm and 5 cm in a metric pattern.
 */
import { TWO, ZERO, fraction, less, mul, roundUpTo, sub, type Exact } from '../exact/number.ts';
import { toInches } from '../exact/length.ts';
import type { QuiltLayout } from '../geometry/layout.ts';
import type { QuiltSpec, Rules } from '../model/pattern.ts';
import { stripsToJoin } from './joined.ts';
import type { Piece, SleevePlan } from './plan.ts';
import { sharesOf } from './roles.ts';
import { stripLength } from './stock.ts';

export interface SleeveCut {
  readonly plan: SleevePlan;
  readonly piece: Piece;
}

/** Undefined where the quilt or the fabric is too narrow for any. An assorted role gives its first print. */
export function planSleeve(layout: QuiltLayout, { fabric: said, place }: NonNullable<QuiltSpec['sleeve']>, rules: Rules): SleeveCut | undefined {
  const fabric = sharesOf(said, 1)[0]?.fabric ?? said;
  const [width, shorter] = measuresIn(rules).map((each) => roundUpTo(each, rules.roundUp)) as [Exact, Exact];
  if (!less(shorter, layout.width)) return undefined;
  const exact = sub(layout.width, shorter);
  const length = roundUpTo(exact, rules.roundUp);
  const reach = stripLength(fabric);
  // What must not be turned is cut along the selvage, where yardage has length enough.
  const isWhole = !less(reach, length) || (fabric.directional && fabric.source.kind === 'yardage');
  const strips = isWhole ? 1 : stripsToJoin([{ length, count: 1 }], reach, rules.seam);
  if (strips === undefined) return undefined;
  const cut = { width, height: isWhole ? length : reach };
  const outline = [{ x: ZERO, y: ZERO }, { x: width, y: ZERO }, { x: width, y: length }, { x: ZERO, y: length }];
  return {
    plan: { fabric, cut: { width, height: length }, strips },
    piece: {
      fabric,
      ...(said.assorted ? { role: said.name } : {}),
      shape: 'strip',
      method: isWhole ? 'plain' : 'from strips joined',
      finished: { width: sub(width, mul(TWO, rules.seam)), height: sub(exact, mul(TWO, rules.seam)) },
      cut,
      exactCut: isWhole ? { width, height: exact } : cut,
      cutCount: strips,
      pieces: 1,
      piecesPerCut: 1,
      for: 'sleeve',
      outline,
      places: [place],
      ...(isWhole ? {} : { joined: [{ length, count: 1 }] }),
      ...(fabric.directional || isWhole ? {} : { lie: 'across' as const }),
    },
  };
}

/** The width that is cut, and what it is shorter than the quilt. */
function measuresIn({ units }: Rules): readonly [Exact, Exact] {
  return units === 'inches' ? [fraction(17, 2), fraction(2)] : [toInches(fraction(22), 'cm'), toInches(fraction(5), 'cm')];
}
