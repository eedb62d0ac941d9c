/** The hover over a length: the same in other units, and what is cut or finished for it. */
import { formatLength, fromInches } from '../exact/length.ts';
import { add, fraction, mul, sign, sub, toNumber, type Exact } from '../exact/number.ts';
import { lengthText } from '../checks/wording.ts';
import type { Pattern } from '../model/pattern.ts';
import type { StatementKind } from '../syntax/tree.ts';
import type { Place } from '../text/place.ts';
import { fact, type Fact, type Hover } from './hover-text.ts';

/** Measures of cloth and tools: no seam is added to them. */
const OF_CLOTH: readonly StatementKind[] = ['seam', 'round_up', 'yardage', 'backing', 'batting', 'binding', 'fabric', 'method', 'quilting', 'expect', 'let'];

export interface LengthAt {
  readonly inches: Exact;
  /** Written after `cut`. */
  readonly cut: boolean;
  readonly statement: StatementKind;
}

export function lengthHover(pattern: Pattern, place: Place, { inches, cut, statement }: LengthAt): Hover {
  const facts: readonly Fact[] = [
    ...fact('Inches', formatLength(inches, { units: 'inches' })),
    ...fact('Centimetres', formatLength(inches, { units: 'centimetres' })),
    ...fact('Millimetres', millimetres(inches)),
    ...(OF_CLOTH.includes(statement) ? [] : seamFacts(pattern, inches, cut ? 'cut' : 'finished')),
  ];
  return { place, heading: `${lengthText(inches, pattern)}${OF_CLOTH.includes(statement) ? '' : cut ? ' cut' : ' finished'}`, facts };
}

function seamFacts(pattern: Pattern, inches: Exact, as: 'cut' | 'finished'): readonly Fact[] {
  const seams = mul(fraction(2), pattern.rules.seam);
  const other = as === 'cut' ? sub(inches, seams) : add(inches, seams);
  if (sign(other) <= 0) return [];
  const allowance = `two seams of ${lengthText(pattern.rules.seam, pattern)}`;
  return fact(as === 'cut' ? 'Finished' : 'Cut', `${lengthText(other, pattern)} (${as === 'cut' ? 'without' : 'with'} ${allowance})`);
}

/** `190.5 mm`, `about 269.41 mm`. */
function millimetres(inches: Exact): string {
  const value = toNumber(fromInches(inches, 'mm'));
  const rounded = Number(value.toFixed(2));
  return `${Math.abs(rounded - value) < 1e-9 ? '' : 'about '}${rounded} mm`;
}
