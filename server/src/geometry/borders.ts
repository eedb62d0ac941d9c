/**
 * Borders, from the inside out. Their widths are planned first, each on what lies inside it, so that the quilt's size is known
 * before anything is laid; a spacer border looks ahead to the pieced one it makes fit.
 */
import { HALF, TWO, ZERO, add, compare, mul, sign, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { formatLength } from '../exact/length.ts';
import type { Finding } from '../model/finding.ts';
import type { BorderSpec, QuiltSpec, Rules } from '../model/pattern.ts';
import { layPlainBorder, plainPatches } from './border-plain.ts';
import { fittingWidths, planPieced } from './border-pieced.ts';
import type { BorderWidths, PlannedBorder } from './border-plan.ts';
import type { Size } from './move.ts';
import { written } from './written.ts';

type Spec<K extends BorderSpec['kind']> = Extract<BorderSpec, { kind: K }>;
type StripSpec = Spec<'plain' | 'to' | 'fit'>;

export interface PlannedBorders extends Size {
  readonly borders: readonly PlannedBorder[];
  /** From the quilt's corner to the setting's. */
  readonly left: Exact;
  readonly top: Exact;
}

/** `spec.borders` around a setting. */
export function planBorders(spec: QuiltSpec, inside: Size, rules: Rules): PlannedBorders {
  const specs = spec.borders;
  const isWhole = specs.length === written(spec, 'border').length;
  const borders: PlannedBorder[] = [];
  let size = inside;
  for (const [index, each] of specs.entries()) {
    const border = planBorder(each, { inner: size, later: specs.slice(index + 1), isWhole, rules });
    borders.push(border);
    size = grown(size, border.widths);
  }
  return { ...size, borders, left: mul(HALF, sub(size.width, inside.width)), top: mul(HALF, sub(size.height, inside.height)) };
}

interface BorderContext {
  /** What the border goes around. */
  readonly inner: Size;
  /** The borders outside it. */
  readonly later: readonly BorderSpec[];
  /** No border is missing because it could not be resolved. */
  readonly isWhole: boolean;
  readonly rules: Rules;
}

function planBorder(spec: BorderSpec, context: BorderContext): PlannedBorder {
  switch (spec.kind) {
    case 'plain':
      return planStrips(spec, context, { widths: { top: spec.top, sides: spec.sides }, findings: [] });
    case 'pieced':
      return planPieced(spec, context.inner);
    case 'to':
      return planStrips(spec, context, widthsTo(spec, context));
    case 'fit':
      return planStrips(spec, context, widthsToFit(spec, context));
  }
}

interface Widths {
  readonly widths: BorderWidths;
  readonly findings: readonly Finding[];
}

function planStrips(spec: StripSpec, { inner }: BorderContext, { widths, findings }: Widths): PlannedBorder {
  const bad = sign(widths.top) < 0 || sign(widths.sides) < 0 || (sign(widths.top) === 0 && sign(widths.sides) === 0 && spec.kind === 'plain');
  const problem = 'a border is wider than zero';
  const usable = bad ? { top: ZERO, sides: ZERO } : widths;
  return {
    place: spec.place,
    widths: usable,
    patches: plainPatches(spec.corners),
    findings: bad ? [...findings, { rule: 'wrong-argument', place: spec.place, problem }] : findings,
    lay: (room) => layPlainBorder(spec, usable, { ...room, width: inner.width, height: inner.height }),
  };
}

/** `border to W by H`: half of what is missing on each side. */
function widthsTo(spec: Spec<'to'>, { inner, rules }: BorderContext): Widths {
  const widths = { top: mul(HALF, sub(spec.height, inner.height)), sides: mul(HALF, sub(spec.width, inner.width)) };
  if (sign(widths.top) >= 0 && sign(widths.sides) >= 0) return { widths, findings: [] };
  const text = (size: Size): string => `${formatLength(size.width, rules)} by ${formatLength(size.height, rules)}`;
  const problem = `the top is already ${text(inner)}, and no border brings it to ${text(spec)}`;
  return { widths: { top: ZERO, sides: ZERO }, findings: [{ rule: 'wrong-argument', place: spec.place, problem }] };
}

/** `border fit LEN`: the least widths from LEN that bring the next pieced border to whole units. */
function widthsToFit(spec: Spec<'fit'>, { inner, later, isWhole }: BorderContext): Widths {
  const least = { top: spec.atLeast, sides: spec.atLeast };
  const next = later.findIndex((border) => border.kind !== 'plain');
  const pieced = later[next];
  if (pieced?.kind !== 'pieced') {
    const tooFar = 'only plain borders can stand between `border fit` and the pieced border it makes fit';
    const problem = pieced ? tooFar : 'no pieced border follows that this one could make fit';
    return { widths: least, findings: isWhole ? [{ rule: 'wrong-argument', place: spec.place, problem }] : [] };
  }
  const between = later.slice(0, next).filter((border) => border.kind === 'plain');
  const size = between.reduce((sum, border) => grown(sum, border), inner);
  const widths = fittingWidths(pieced, size, spec.atLeast);
  return { widths: widths ?? least, findings: [] };
}

function grown(size: Size, widths: BorderWidths): Size {
  return { width: add(size.width, mul(TWO, positive(widths.sides))), height: add(size.height, mul(TWO, positive(widths.top))) };
}

function positive(width: Exact): Exact {
  return compare(width, ZERO) > 0 ? width : ZERO;
}
