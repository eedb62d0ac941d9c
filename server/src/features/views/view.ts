/** What a view is: one drawing with names, buttons, words and figures beside it, all as plain data; the page only lays it out. */
import type { Scene } from '../../drawing/scene.ts';
import type { TextEdit } from '../../text/problem.ts';
import type { Position } from '../../text/document.ts';
import type { Choice } from '../picture.ts';
import type { Label } from '../sheet.ts';

/** In the order they are offered; the names are our own. */
export const VIEWS = [
  { name: 'whole', title: 'Whole quilt' },
  { name: 'block', title: 'One block' },
  { name: 'values', title: 'Light and dark' },
  { name: 'mirrors', title: 'Four mirrors' },
  { name: 'settings', title: 'Settings sheet' },
  { name: 'fabrics', title: 'Fabric sheet' },
  { name: 'sewing', title: 'Sewing order' },
  { name: 'pressing', title: 'Pressing arrows' },
  { name: 'cutting', title: 'Cutting layouts' },
  { name: 'sizes', title: 'All sizes' },
] as const;

export type ViewName = (typeof VIEWS)[number]['name'];

/** What is looked at: a view of a size and colourway, of a block, at a step. */
export interface ViewChoice extends Choice {
  readonly view?: string | undefined;
  /** Where the cursor stands: its block is looked at. */
  readonly position?: Position | undefined;
  /** The block to look at while the cursor is in none. */
  readonly block?: string | null | undefined;
  /** Counted from 1; what is out of reach is the nearest there is. */
  readonly step?: number | undefined;
}

export interface View {
  /** Undefined when there is nothing to draw. */
  readonly scene: Scene | undefined;
  readonly labels: readonly Label[];
  readonly tiles: readonly Tile[];
  /** Sentences beside the drawing. */
  readonly notes: readonly string[];
  readonly table: Table | undefined;
  readonly step: Step | undefined;
  /** The name of the block that it is about. */
  readonly block: string | undefined;
}

/** Part of a drawing that can be chosen: what it stands for is then written into the text. */
export interface Tile {
  /** Stable for the same text. */
  readonly id: string;
  readonly name: string;
  /** Further words under the name. */
  readonly detail: string;
  /** In inches of the scene. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** The text says so already. */
  readonly isSet: boolean;
  /** What choosing it does, for those who cannot see it; undefined when nothing. */
  readonly action: string | undefined;
}

export interface Table {
  readonly caption: string;
  readonly heads: readonly string[];
  /** The first cell names the row. */
  readonly rows: readonly (readonly string[])[];
}

export interface Step {
  readonly number: number;
  readonly count: number;
  /** What is being made. */
  readonly title: string;
  readonly text: string;
}

/** What choosing a tile writes. */
export interface Writing {
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

export const EMPTY: View = { scene: undefined, labels: [], tiles: [], notes: [], table: undefined, step: undefined, block: undefined };
