/** What the preview's page and the extension say to each other, and what the page remembers over a reload. */
import type { Preview } from '../../../server/src/lsp/requests.ts';

/** To the page. */
export type ToPage =
  /** What to show from now on; `preview` null: the file is gone, or none was ever chosen. */
  | { readonly type: 'show'; readonly uri: string | null; readonly name: string; readonly locked: boolean; readonly preview: Preview | null }
  | { readonly type: 'lock'; readonly locked: boolean }
  /** The outlines of what the cursor is at, in the picture of that version. */
  | { readonly type: 'outline'; readonly uri: string; readonly version: number; readonly path: string }
  /** To be drawn as points: that many across. */
  | { readonly type: 'rasterise'; readonly svg: string; readonly width: number; readonly height: number };

/** From the page. */
export type FromPage =
  | { readonly type: 'ready' }
  /** Inches in the picture. */
  | { readonly type: 'click'; readonly uri: string; readonly x: number; readonly y: number }
  | { readonly type: 'choose'; readonly uri: string; readonly size: string | null; readonly colorway: string | null }
  /** Another view, or another step of it. */
  | { readonly type: 'look'; readonly uri: string | null; readonly view: string; readonly step: number }
  /** Write what a tile stands for. */
  | { readonly type: 'write'; readonly uri: string; readonly tile: string }
  /** A PNG in base 64; null when it could not be drawn. */
  | { readonly type: 'rastered'; readonly png: string | null }
  | { readonly type: 'toggleLock' | 'save' | 'print' | 'ownWindow' };

export const BACKGROUNDS = ['theme', 'white', 'grey'] as const;
export type Background = (typeof BACKGROUNDS)[number];

/** Kept by the editor for the page, also over a restart. */
export interface PageState {
  readonly uri: string | null;
  readonly locked: boolean;
  readonly background: Background;
  /** The view it shows, of whatever file. */
  readonly look: string;
  /** By file, the last shown last. */
  readonly files: readonly FileState[];
}

export interface FileState {
  readonly uri: string;
  readonly size: string | null;
  readonly colorway: string | null;
  /** The block that was looked at last. */
  readonly block: string | null;
  readonly step: number;
  /** Where the picture lies in each view; none for one that fills the page. */
  readonly views: Readonly<Record<string, View>>;
}

/** A file that is shown for the first time. */
export function newFile(uri: string): FileState {
  return { uri, size: null, colorway: null, block: null, step: 1, views: {} };
}

/** Where the picture lies: CSS pixels an inch, and where its upper left corner is, in CSS pixels of the view. */
export interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** What a new preview shows. */
export const FIRST_VIEW = 'whole';

const REMEMBERED_FILES = 50;

/** The state with one file's part replaced; what was not shown for long is forgotten. */
export function withFile(state: PageState, file: FileState): PageState {
  return { ...state, files: [...state.files.filter(({ uri }) => uri !== file.uri), file].slice(-REMEMBERED_FILES) };
}

/** A state as the editor gave it back, whatever an older version may have left there. */
export function asPageState(value: unknown, background: Background): PageState {
  const given = (typeof value === 'object' && value !== null ? value : {}) as Partial<PageState>;
  return {
    uri: typeof given.uri === 'string' ? given.uri : null,
    locked: given.locked === true,
    background: BACKGROUNDS.find((each) => each === given.background) ?? background,
    look: typeof given.look === 'string' ? given.look : FIRST_VIEW,
    files: Array.isArray(given.files) ? given.files.flatMap(asFileState) : [],
  };
}

function asFileState(value: unknown): readonly FileState[] {
  const { uri, size, colorway, block, step, views } = (typeof value === 'object' && value !== null ? value : {}) as { [K in keyof FileState]?: unknown };
  if (typeof uri !== 'string') return [];
  const places = Object.entries(typeof views === 'object' && views !== null ? views : {}).filter((entry): entry is [string, View] => isView(entry[1]));
  return [{ uri, size: asName(size), colorway: asName(colorway), block: asName(block), step: typeof step === 'number' && step >= 1 ? Math.floor(step) : 1, views: Object.fromEntries(places) }];
}

function asName(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}

function isView(value: unknown): value is View {
  const { scale, x, y } = (typeof value === 'object' && value !== null ? value : {}) as { [K in keyof View]?: unknown };
  return [scale, x, y].every(Number.isFinite) && Number(scale) > 0;
}
