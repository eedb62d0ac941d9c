/** The one place where numbers are rounded and texts are escaped for SVG. */

/** Inches with at most 4 decimals: never −0, never an exponent. What no drawing can hold is cut off at a million inches. */
export function coordinate(inches: number): string {
  return rounded(inches, 1e4);
}

/** The part of a matrix that multiplies coordinates: 6 decimals, so that the corners of a large block still meet. */
export function factor(value: number): string {
  return rounded(value, 1e6);
}

/** A text for XML content or a quoted attribute. Characters that XML cannot hold become U+FFFD. */
export function escapeXml(text: string): string {
  return text
    .toWellFormed()
    .replace(NOT_XML, '\uFFFD')
    .replace(/[&<>"']/g, (character) => ENTITIES[character] ?? '');
}

const LARGEST = 1e6;

/** All that XML 1.0 leaves out. */
const NOT_XML = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/g;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

function rounded(value: number, steps: number): string {
  const held = Number.isNaN(value) ? 0 : Math.min(Math.max(value, -LARGEST), LARGEST);
  const nearest = Math.round(held * steps) / steps;
  const text = Math.abs(nearest) < 1e-6 ? '0' : `${nearest}`;
  return text;
}
