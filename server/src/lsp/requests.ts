/**
 * What this server understands besides the protocol: the names of its own messages and what they carry. Plain types, so
 * that the editor's side and the tests read the same page. Lengths are inches, y down, as in the drawing.
 */

/** Requests from the editor to the server, by method. */
export interface Requests {
  /** The picture of a file; null when there is no such file. */
  'scant/preview': { params: PreviewParams; result: Preview | null };
  /** The outlines of what the text at a position makes, in the picture of the same choice. */
  'scant/shapesAt': { params: ShapesParams; result: Shapes | null };
  /** The texts that make what lies at a point of the picture: the innermost first, then what it stands in. */
  'scant/textAt': { params: TextAtParams; result: SourceRange[] };
  /** What choosing a tile of a view writes; null when it stands for nothing (any more). */
  'scant/write': { params: WriteParams; result: Written | null };
  /** What is shown, to be kept outside of the editor; null when there is nothing. */
  'scant/export': { params: PreviewParams; result: Exported | null };
  /** Writes the outputs of a file. */
  'scant/build': { params: BuildParams; result: BuildAnswer };
  /** What comes out of a file, in a line; null when there is no such file. */
  'scant/headline': { params: { uri: string }; result: Headline | null };
  /** A file at a glance, row by row. */
  'scant/summary': { params: { uri: string }; result: Summary | null };
  /** A pattern that is no file, drawn: a fenced block of a Markdown text. */
  'scant/draw': { params: { text: string }; result: Drawn };
  /** The page of a rule, as Markdown; without a rule, the list of all. */
  'scant/explain': { params: ExplainParams; result: Explanation };
  /** Answered when all problems of the open texts have been worked out. */
  'scant/settled': { params: Record<string, never>; result: null };
}

/** Notifications, by method: of changes from the server to the editor, of files from the editor to the server. */
export interface Notifications {
  /** The pictures of these files may have changed. */
  'scant/changed': { uris: string[] };
  /** Files without a place on the server's disk, as the editor read them; null for one that is gone. */
  'scant/files': { files: { uri: string; text: string | null }[] };
}

/** Which picture of a file: a named size and a colourway, or what the editor shows first; the whole quilt unless a view is named. */
export interface Choice {
  size?: string | null;
  colorway?: string | null;
  view?: string;
  /** The block that views of one block are about, while the cursor is in none. */
  block?: string | null;
  /** In a view with steps, counted from 1. */
  step?: number;
}

export interface PreviewParams extends Choice {
  uri: string;
  /** Where the cursor stands: the block there is what views of one block are about. */
  position?: SourcePosition;
}

export interface Preview {
  uri: string;
  /** The document's version the picture was made from; 0 for a file that no editor has open. */
  version: number;
  title: string;
  /** Null when nothing can be drawn. */
  svg: string | null;
  /** Of the picture, in inches. */
  width: number;
  height: number;
  kind: 'quilt' | 'blocks';
  /** For a library of blocks: what stands where in the picture. */
  labels: Label[];
  /** How many errors the text has. */
  errors: number;
  /** Errors took something out of the picture: what is missing is worth keeping from an earlier one. */
  partial: boolean;
  /** What can be chosen, and what is shown. */
  sizes: string[];
  colorways: string[];
  size: string | null;
  colorway: string | null;
  /** What can be looked at, and what is. */
  views: { name: string; title: string }[];
  view: string;
  /** The block it is about; null for the whole quilt. */
  block: string | null;
  tiles: Tile[];
  /** Sentences beside the picture. */
  notes: string[];
  table: Table | null;
  step: Step | null;
}

/** Part of the picture that can be chosen; measures in inches. */
export interface Tile {
  id: string;
  name: string;
  detail: string;
  x: number;
  y: number;
  width: number;
  height: number;
  /** The text says so already. */
  isSet: boolean;
  /** What choosing it does; null when nothing. */
  action: string | null;
}

export interface Table {
  caption: string;
  heads: string[];
  /** The first cell names the row. */
  rows: string[][];
}

/** Counted from 1. */
export interface Step {
  number: number;
  count: number;
  title: string;
  text: string;
}

/** A name under a block, centred at x; y is the top of the text. */
export interface Label {
  text: string;
  x: number;
  y: number;
  /** How wide and how high it may be, in inches. */
  room?: number;
  tall?: number;
}

export interface ShapesParams extends Choice {
  uri: string;
  position: SourcePosition;
}

export interface Shapes {
  version: number;
  /** An SVG path in inches; empty when the text makes nothing that is drawn. */
  path: string;
  /** The block that the view would be about with the cursor there; null for views of the whole quilt. */
  block: string | null;
}

export interface TextAtParams extends Choice {
  uri: string;
  x: number;
  y: number;
}

export interface WriteParams extends PreviewParams {
  tile: string;
}

/** Edits of one version of one file. */
export interface Written {
  title: string;
  uri: string;
  version: number;
  edits: { range: SourceRange['range']; text: string }[];
  /** To be shown from then on, when it is a new one. */
  colorway: string | null;
}

export interface Exported {
  /** For a file name, without its end. */
  name: string;
  /** Stands by itself, at true size. */
  svg: string;
  /** Of the picture, in inches. */
  width: number;
  height: number;
  /** A page to print: the picture, its words and its figures. */
  html: string;
}

export interface SourceRange {
  uri: string;
  range: { start: SourcePosition; end: SourcePosition };
}

export interface SourcePosition {
  line: number;
  character: number;
}

export interface BuildParams {
  uri: string;
  /** `on_save`: the preview and the cut list at once, and all the rest by a process of its own, which is not waited for. */
  what: 'preview_and_cut_list' | 'on_save' | 'everything';
}

export interface BuildAnswer {
  /** Where the outputs of the file stand; null when they have no place (an unsaved file). */
  folder: string | null;
  /** Paths in the folder whose bytes are new. */
  written: string[];
  /** How many stood there already with the same bytes. */
  unchanged: number;
  /** Why nothing was written. */
  refused: { why: 'errors' | 'unsaved' | 'unknown' | 'failed'; message: string } | null;
}

export interface Headline {
  version: number;
  /** Finished size, patches, cloth; null for a library of blocks and while there are errors. */
  figures: string | null;
  errors: number;
}

export interface Summary {
  version: number;
  title: string;
  sizes: SummaryRow[];
  fabrics: SummaryRow[];
  blocks: SummaryRow[];
  problems: { rule: string; title: string; severity: 'error' | 'warning' | 'hint'; rows: SummaryRow[] }[];
}

export interface SummaryRow {
  label: string;
  detail: string;
  /** The text it leads to; null for one in a file that cannot be opened. */
  at: SourceRange | null;
  /** `#rrggbb`, of a fabric. */
  colour: string | null;
}

export interface Drawn {
  /** Null when nothing can be drawn. */
  svg: string | null;
  /** `3: message`, lines from 1. */
  errors: string[];
}

export interface ExplainParams {
  rule?: string;
}

export interface Explanation {
  /** Every rule, for a list to pick from. */
  rules: { id: string; severity: 'error' | 'warning' | 'hint'; title: string }[];
  /** Null when no rule of that name was asked for. */
  markdown: string | null;
}
