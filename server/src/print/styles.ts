/** How the parts of a booklet are set: sizes and distances in points. */
import type { FontName, Tag } from './pdf.ts';

export interface Style {
  readonly size: number;
  /** From baseline to baseline. */
  readonly leading: number;
  readonly font: FontName;
  readonly colour: string;
  /** Above it. */
  readonly gap: number;
  readonly tag: Tag;
}

export const INK = '#1c2024';
export const QUIET = '#5b636b';
export const RULE = '#b8bfc6';
export const TINT = '#f1f3f5';

export const STYLES = {
  title: { size: 30, leading: 36, font: 'bold', colour: INK, gap: 0, tag: 'H1' },
  chapter: { size: 20, leading: 26, font: 'bold', colour: INK, gap: 26, tag: 'H1' },
  part: { size: 13.5, leading: 18, font: 'bold', colour: INK, gap: 16, tag: 'H2' },
  section: { size: 11, leading: 15, font: 'bold', colour: INK, gap: 12, tag: 'H3' },
  lead: { size: 13, leading: 18, font: 'regular', colour: INK, gap: 8, tag: 'P' },
  body: { size: 10, leading: 14, font: 'regular', colour: INK, gap: 6, tag: 'P' },
  item: { size: 10, leading: 14, font: 'regular', colour: INK, gap: 3, tag: 'LBody' },
  note: { size: 8.5, leading: 12, font: 'regular', colour: QUIET, gap: 6, tag: 'P' },
  caption: { size: 8.5, leading: 12, font: 'regular', colour: QUIET, gap: 3, tag: 'Caption' },
  table: { size: 9, leading: 12, font: 'regular', colour: INK, gap: 0, tag: 'TD' },
  tableHead: { size: 9, leading: 12, font: 'bold', colour: INK, gap: 0, tag: 'TH' },
} as const satisfies Readonly<Record<string, Style>>;

/** From the upper edge of a line to its baseline. */
export function baselineOf({ size, leading }: Style): number {
  return (leading - size) / 2 + size * 0.8;
}
