/** Runs broken into lines at blanks, never within a word unless it is longer than a line. */
import { widthOf, type FontName, type Pdf } from './pdf.ts';
import type { Run } from './prose.ts';

/** What is written at once. */
export interface Span {
  readonly text: string;
  readonly font: FontName;
  /** From the left end of its line, in points. */
  readonly x: number;
}

export type Line = readonly Span[];

export interface Setting {
  readonly width: number;
  readonly size: number;
  /** Of plain runs. */
  readonly font?: FontName;
}

interface Word {
  readonly parts: readonly { readonly text: string; readonly font: FontName }[];
  readonly width: number;
  /** A line ends behind it. */
  readonly ends: boolean;
}

export function linesOf(pdf: Pdf, runs: readonly Run[], setting: Setting): readonly Line[] {
  const blank = widthOf(pdf, ' ', { font: setting.font ?? 'regular', size: setting.size });
  const lines: Word[][] = [[]];
  let filled = 0;
  let ended = false;
  for (const word of wordsIn(pdf, runs, setting).flatMap((each) => fitting(pdf, each, setting))) {
    const line = lines.at(-1) ?? [];
    if (ended || (line.length > 0 && filled + blank + word.width > setting.width + SLACK)) {
      lines.push([word]);
      filled = word.width;
    } else {
      filled += (line.length > 0 ? blank : 0) + word.width;
      line.push(word);
    }
    ended = word.ends;
  }
  return lines.map((words) => spansOf(pdf, words, setting, blank));
}

/** Points from the left end to the right end of the widest line, and of the widest word. */
export function widthsOf(pdf: Pdf, runs: readonly Run[], setting: Omit<Setting, 'width'>): { readonly whole: number; readonly word: number } {
  const words = wordsIn(pdf, runs, { ...setting, width: Infinity });
  const blank = widthOf(pdf, ' ', { font: setting.font ?? 'regular', size: setting.size });
  return { whole: words.reduce((sum, { width }) => sum + width + blank, -blank), word: Math.max(0, ...words.map(({ width }) => width)) };
}

function wordsIn(pdf: Pdf, runs: readonly Run[], { size, font = 'regular' }: Setting): readonly Word[] {
  const words: Word[] = [];
  let parts: { text: string; font: FontName }[] = [];
  const close = (ends: boolean): void => {
    if (parts.length > 0 || ends) words.push({ parts, width: parts.reduce((sum, part) => sum + widthOf(pdf, part.text, { font: part.font, size }), 0), ends });
    parts = [];
  };
  for (const { text, look } of runs) {
    const own = look === 'plain' ? font : look;
    for (const [i, line] of text.split('\n').entries()) {
      if (i > 0) close(true);
      for (const [j, word] of line.split(' ').entries()) {
        if (j > 0) close(false);
        if (word !== '') parts.push({ text: word, font: own });
      }
    }
  }
  close(false);
  return words;
}

/** What sums of widths may be off by, in points. */
const SLACK = 0.01;

/** A word that is longer than a line, in pieces that fit. */
function fitting(pdf: Pdf, word: Word, { width, size }: Setting): readonly Word[] {
  if (word.width <= width + SLACK) return [word];
  const pieces: Word[] = [];
  for (const { text, font } of word.parts) {
    let piece = '';
    const close = (): void => void pieces.push({ parts: [{ text: piece, font }], width: widthOf(pdf, piece, { font, size }), ends: false });
    for (const letter of text) {
      if (piece !== '' && widthOf(pdf, piece + letter, { font, size }) > width) {
        close();
        piece = '';
      }
      piece += letter;
    }
    close();
  }
  return pieces;
}

/** Neighbours of one font are written at once. */
function spansOf(pdf: Pdf, words: readonly Word[], { size }: Setting, blank: number): Line {
  const spans: { text: string; font: FontName; x: number }[] = [];
  let x = 0;
  words.forEach((word, i) => {
    if (i > 0) x += blank;
    word.parts.forEach(({ text, font }, j) => {
      const last = spans.at(-1);
      const before = i > 0 && j === 0 ? ' ' : '';
      if (last?.font === font) last.text += before + text;
      else spans.push({ text, font, x });
      x += widthOf(pdf, text, { font, size });
    });
  });
  return spans;
}
