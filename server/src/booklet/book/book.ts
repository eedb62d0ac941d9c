/**
 * The booklet as a document that knows no paper and no screen: chapters of headings, sentences, lists, tables and figures. The PDF
 * and the HTML page are both written from it, so that they say the same.
 */
import type { Scene } from '../../drawing/scene.ts';
import type { Language } from '../words/catalogue.ts';

export type Paper = 'a4' | 'letter';

export interface Book {
  readonly language: Language;
  readonly paper: Paper;
  readonly title: string;
  readonly by?: string;
  /** The size in hand, where the pattern names several. */
  readonly size?: string;
  readonly cover: readonly Block[];
  readonly chapters: readonly BookChapter[];
  readonly furniture: Furniture;
}

/** Words that stand around the chapters. */
export interface Furniture {
  readonly contents: string;
  readonly page: (number: number, of: number) => string;
}

export interface BookChapter {
  /** Letters, digits and hyphens; links lead to it. */
  readonly id: string;
  readonly title: string;
  /** Whether it begins a page. */
  readonly begins: 'page' | 'here';
  /** Where it is another than the book's. */
  readonly language?: Language;
  readonly blocks: readonly Block[];
}

/** Plain text; or Markdown, in which raw HTML is text and addresses are not followed. */
export type Text = string | Markdown;

export interface Markdown {
  readonly markdown: string;
}

export type Block =
  | Heading
  | { readonly kind: 'paragraph'; readonly text: Text; readonly look?: 'title' | 'lead' | 'note' }
  | List
  | Table
  | Figure
  /** Figures beside each other, as many in a row as there is room for. */
  | { readonly kind: 'figures'; readonly figures: readonly Figure[] }
  /** A picture with what is done, beside it where there is room. */
  | { readonly kind: 'step'; readonly figure: Figure; readonly list: List }
  | { readonly kind: 'caution'; readonly title: string; readonly items: readonly Text[] }
  /** The author's own words: paragraphs, lists, headings. */
  | { readonly kind: 'prose'; readonly markdown: string };

export interface Heading {
  readonly kind: 'heading';
  /** Within a chapter: 2 for its parts, 3 for theirs. */
  readonly level: 2 | 3;
  readonly text: Text;
  /** `#rrggbb`, shown before it. */
  readonly swatch?: string;
}

export interface List {
  readonly kind: 'list';
  readonly ordered: boolean;
  readonly items: readonly Text[];
}

export interface Table {
  readonly kind: 'table';
  /** What it holds, for those who do not see it. */
  readonly title: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** The column in hand, shown stronger. */
  readonly strong?: number;
}

export interface Cell {
  readonly text: Text;
  /** `#rrggbb`, shown before it. */
  readonly swatch?: string;
}

export interface Figure {
  readonly kind: 'figure';
  readonly scene: Scene;
  /** What is said instead of it. */
  readonly alt: string;
  readonly caption?: string;
  readonly size: FigureSize;
  /** `line`: its seams are what counts, drawn stronger. */
  readonly look?: 'line';
}

/** `page`: as large as a page has room for; `cover`: the like, with room for a title; `large`: over the width of the text; `middle`: more than half of that; `small`: a quarter. */
export type FigureSize = 'page' | 'cover' | 'large' | 'middle' | 'small';
