/** What the preview's page and the extension say to each other, and what the page remembers over a reload. */
import type { Preview } from '../../../server/src/lsp/requests.ts';

/** To the page. */
export type ToPage =
  /** What to show from now on; `preview` null: the file is gone, or none was ever chosen. */
  | { readonly type: 'show'; readonly uri: string | null; readonly name: string; readonly locked: boolean; readonly preview: Preview | null }
  | { readonly type: 'lock'; readonly locked: boolean }
  /** The outlines of what the cursor is at, in the picture of that version. */
  | { readonly type: 'outline'; readonly uri: string; readonly version: number; readonly path: string };

/** From the page. */
export type FromPage =
  | { readonly type: 'ready' }
  /** Inches in the picture. */
  | { readonly type: 'click'; readonly uri: string; readonly x: number; readonly y: number }
  | { readonly type: 'choose'; readonly uri: string; readonly size: string | null; readonly colorway: string | null }
  | { readonly type: 'toggleLock' };

export const BACKGROUNDS = ['theme', 'white', 'grey'] as const;
export type Background = (typeof BACKGROUNDS)[number];

/** Kept by the editor for the page, also over a restart. */
export interface PageState {
  readonly uri: string | null;
  readonly locked: boolean;
  readonly background: Background;
  /** By file, the last shown last. */
  readonly files: readonly FileState[];
}

export interface FileState {
  readonly uri: string;
  readonly size: string | null;
  readonly colorway: string | null;
  /** Undefined while the picture fills the view. */
  readonly view?: View;
}

/** Where the picture lies: CSS pixels an inch, and where its upper left corner is, in CSS pixels of the view. */
export interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

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
    files: Array.isArray(given.files) ? given.files.flatMap(asFileState) : [],
  };
}

function asFileState(value: unknown): readonly FileState[] {
  const { uri, size, colorway, view } = (typeof value === 'object' && value !== null ? value : {}) as { [K in keyof FileState]?: unknown };
  if (typeof uri !== 'string') return [];
  return [{ uri, size: asName(size), colorway: asName(colorway), ...(isView(view) && { view }) }];
}

function asName(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}

function isView(value: unknown): value is View {
  const { scale, x, y } = (typeof value === 'object' && value !== null ? value : {}) as { [K in keyof View]?: unknown };
  return [scale, x, y].every(Number.isFinite) && Number(scale) > 0;
}
