/**
 * Backing and batting. The finished top, each way rounded up to a whole inch or centimetre, plus the overhang on both sides
 * (BHG Quilts Stylebook, http://bhgstylebook.com/qmaterialslists/: + 8"). Backing is whole widths of fabric side by side, a seam
 * lost from both edges of each join, the seams whichever way takes less; the overhang is its spare, so `spare` is not added.
 */
import { ZERO, add, atMost, ceil, div, fraction, less, mul, roundUpTo, sub, type Exact } from '../exact/number.ts';
import type { QuiltLayout } from '../geometry/layout.ts';
import type { QuiltSpec, Rules } from '../model/pattern.ts';
import { boughtLength } from './buy.ts';
import { countable } from './joined.ts';
import type { BackingPlan, BattingPlan, Measure } from './plan.ts';
import { usualWidth, wholeUnit } from './units.ts';

/** The backing; undefined when the fabric is no wider than a join takes, or its panels are past counting. */
export function planBacking(layout: QuiltLayout, spec: Omit<NonNullable<QuiltSpec['backing']>, 'place'>, rules: Rules): BackingPlan | undefined {
  const size = sizeWith(layout, spec.overhang, rules);
  const { fabric } = spec;
  const width = spec.width ?? fabric?.width ?? usualWidth(rules.units);
  const join = mul(rules.seam, fraction(2));
  if (atMost(width, join)) return undefined;
  const upright = panelsOver(size.width, size.height, width, join);
  const level = panelsOver(size.height, size.width, width, join);
  const isLevel = less(level.length, upright.length) && !fabric?.directional;
  const { panels, panelLength, length } = isLevel ? level : upright;
  if (panels === undefined) return undefined;
  return {
    ...size,
    ...(fabric ? { fabric } : {}),
    panels,
    seams: panels === 1 ? 'none' : isLevel ? 'horizontal' : 'vertical',
    panelLength,
    clothWidth: width,
    buy: boughtLength(length, { shrink: fabric?.shrink ?? ZERO, spare: ZERO, yardage: rules.yardage }),
  };
}

interface Panels {
  readonly panels: number | undefined;
  readonly panelLength: Exact;
  readonly length: Exact;
}

/** n panels cover n · width − (n − 1) · join. */
function panelsOver(across: Exact, along: Exact, width: Exact, join: Exact): Panels {
  const panels = countable(ceil(div(sub(across, join), sub(width, join))));
  return { panels, panelLength: along, length: mul(fraction(panels ?? 1), along) };
}

export function planBatting(layout: QuiltLayout, spec: Omit<NonNullable<QuiltSpec['batting']>, 'place'>, rules: Rules): BattingPlan {
  const size = sizeWith(layout, spec.overhang, rules);
  const fits = (a: number, b: number): boolean => atMost(size.width, fraction(a)) && atMost(size.height, fraction(b));
  const found = PACKAGES.find(({ width, height }) => fits(width, height) || fits(height, width));
  return { ...size, package: found?.name ?? 'by the yard' };
}

/**
 * Packaged batting in inches, smallest first; where sources differ, the smaller figure.
 * https://project12quilts.blogspot.com/2012/01/quilting-basics-standard-quilt-sizes.html (craft to queen; king 124 by 120),
 * https://www.primitivequiltsandprojects.com/blog/quilt-size-measurements/ (full 81 by 96, king 120 by 120).
 */
const PACKAGES: readonly { readonly name: string; readonly width: number; readonly height: number }[] = [
  { name: 'craft', width: 34, height: 45 },
  { name: 'crib', width: 45, height: 60 },
  { name: 'twin', width: 72, height: 90 },
  { name: 'full', width: 81, height: 96 },
  { name: 'queen', width: 90, height: 108 },
  { name: 'king', width: 120, height: 120 },
];

/** The size of a packaged batting in inches, for print. */
export function packageSize(name: string): string | undefined {
  const found = PACKAGES.find((each) => each.name === name);
  return found && `${found.width}" by ${found.height}"`;
}

function sizeWith({ width, height }: QuiltLayout, overhang: Exact, rules: Rules): Measure {
  const whole = wholeUnit(rules.units);
  const both = mul(overhang, fraction(2));
  return { width: add(roundUpTo(width, whole), both), height: add(roundUpTo(height, whole), both) };
}
