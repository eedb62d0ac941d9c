/**
 * How light a colour is: CIE 1976 L* of an sRGB colour under D65, from 0 (black) to 100 (white), and the value a quilter
 * calls it. sRGB: IEC 61966-2-1; L*: CIE 15, with the exact constants 216/24389 and 24389/27.
 */

export type ColourValue = 'light' | 'medium' | 'dark';

/** L* at and above which a fabric is light, and below which it is dark: our own choice, black to white in about thirds. */
export const LIGHT_FROM = 70;
export const DARK_BELOW = 40;

/** L* of `#rrggbb`; undefined when it is no such colour. */
export function lightness(hex: string): number | undefined {
  const luminance = luminanceOf(hex);
  if (luminance === undefined) return undefined;
  return luminance > 216 / 24389 ? 116 * Math.cbrt(luminance) - 16 : (24389 / 27) * luminance;
}

/** The grey `#gggggg` that is as light as a colour, to the nearest of 256; the text itself when it is no such colour. */
export function greyOf(hex: string): string {
  const luminance = luminanceOf(hex);
  if (luminance === undefined) return hex;
  const part = luminance <= 0.0031308 ? luminance * 12.92 : 1.055 * luminance ** (1 / 2.4) - 0.055;
  const channel = Math.round(part * 255).toString(16).padStart(2, '0');
  return `#${channel}${channel}${channel}`;
}

/** The value of `#rrggbb`; medium when it is no such colour. */
export function valueOf(hex: string): ColourValue {
  const found = lightness(hex) ?? DARK_BELOW;
  if (found >= LIGHT_FROM) return 'light';
  return found < DARK_BELOW ? 'dark' : 'medium';
}

/** Relative luminance Y, from 0 to 1: the middle row of the matrix from linear sRGB to XYZ (CSS Color 4, section 10). */
function luminanceOf(hex: string): number | undefined {
  const [, red, green, blue] = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex) ?? [];
  if (red === undefined || green === undefined || blue === undefined) return undefined;
  return 0.21263900587151027 * linear(red) + 0.715168678767756 * linear(green) + 0.07219231536073371 * linear(blue);
}

/** Linear light of one channel, two hexadecimal digits. */
function linear(channel: string): number {
  const part = parseInt(channel, 16) / 255;
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
}
