/** Measures as a printer sets them: `2 1/2" by` becomes 2½″, and a number stays on the line of its unit. */

/** Fractions before an inch mark or a yard, inch marks, and blanks that hold a line together. */
export function typeset(text: string): string {
  const fractions = text.replace(/(?<![\d/.,])(?:(\d+) )?(\d+)\/(\d+)(?="|″| yd\b)/g, (_, whole: string | undefined, over: string, under: string) => `${whole ?? ''}${fractionSign(over, under)}`);
  return inchMarks(fractions)
    .replace(/(?<=[\d¼-¾⅐-⅞₀-₉]) (?=(?:yd|cm|mm|m|WOF|SB|HST|QST|HQD|VQD)\b)/g, HELD)
    .replace(/(?<=\S) × /g, `${HELD}×${HELD}`);
}

/** No line breaks at this blank. */
const HELD = '\u00A0';

const SIGNS: Readonly<Record<string, string>> = {
  '1/2': '½', '1/3': '⅓', '2/3': '⅔', '1/4': '¼', '3/4': '¾', '1/8': '⅛', '3/8': '⅜', '5/8': '⅝', '7/8': '⅞',
};

function fractionSign(over: string, under: string): string {
  return SIGNS[`${over}/${under}`] ?? `${shifted(over, '⁰¹²³⁴⁵⁶⁷⁸⁹')}⁄${shifted(under, '₀₁₂₃₄₅₆₇₈₉')}`;
}

function shifted(digits: string, to: string): string {
  return digits.replace(/\d/g, (digit) => to[Number(digit)] ?? digit);
}

/** A `"` behind a number is an inch mark, unless it closes a text that another one opened. */
function inchMarks(text: string): string {
  let open = false;
  return text.replace(/"/g, (mark, at: number) => {
    if (!open && /[\d¼-¾⅐-⅞₀-₉]/.test(text[at - 1] ?? '')) return '″';
    open = !open;
    return mark;
  });
}
