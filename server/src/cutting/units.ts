/** Whole measures of a pattern's units, and the rules made safe to divide and round by. */
import { ZERO, fraction, less, sign, type Exact } from '../exact/number.ts';
import { toInches, type UnitSystem } from '../exact/length.ts';
import type { Rules } from '../model/pattern.ts';

/** One inch or one centimetre. */
export function wholeUnit(units: UnitSystem): Exact {
  return toInches(fraction(1), units === 'inches' ? 'in' : 'cm');
}

/** The usable width where no fabric is named: 40" or 105 cm (language.md, section 3). */
export function usualWidth(units: UnitSystem): Exact {
  return units === 'inches' ? fraction(40) : toInches(fraction(105), 'cm');
}

/** What cloth is sold in steps of: 1/8 yd or 0.1 m (language.md, section 3). */
export function usualYardage(units: UnitSystem): Exact {
  return units === 'inches' ? toInches(fraction(1, 8), 'yd') : toInches(fraction(10), 'cm');
}

/** Rules in which no step is zero or negative: a pattern that says so has a problem of its own, and is planned by the usual ones. */
export function soundRules(rules: Rules): Rules {
  const isMetric = rules.units === 'centimetres';
  return {
    ...rules,
    seam: less(rules.seam, ZERO) ? ZERO : rules.seam,
    roundUp: positive(rules.roundUp, isMetric ? toInches(fraction(1), 'mm') : fraction(1, 8)),
    yardage: positive(rules.yardage, usualYardage(rules.units)),
    spare: less(rules.spare, ZERO) ? ZERO : rules.spare,
  };
}

function positive(step: Exact, otherwise: Exact): Exact {
  return sign(step) > 0 ? step : otherwise;
}
