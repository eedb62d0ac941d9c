/**
 * A display list: what to draw, in plain numbers (inches, y down), each distinct block once. Sinks (SVG, later PDF) turn
 * it into bytes; rounding and escaping are theirs. Every shape names the text it came from by an index into `sources`.
 */
import type { Place } from '../text/place.ts';

export interface Scene {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  /** Distinct blocks, drawn once and used often. */
  readonly blocks: readonly SceneBlock[];
  /** In drawing order. */
  readonly items: readonly (SceneUse | SceneShape)[];
  /** Over all of them; absent where nothing is written. */
  readonly labels?: readonly SceneLabel[];
  readonly sources: readonly Place[];
}

/** A short text in one line. */
export interface SceneLabel {
  readonly text: string;
  /** The middle of the text, or of its left end. */
  readonly x: number;
  readonly y: number;
  readonly from: 'middle' | 'left';
  /** Of its letters, about. */
  readonly size: number;
  readonly fill: string;
}

export interface SceneBlock {
  /** Stable for the same text; safe as an XML id. */
  readonly id: string;
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly SceneShape[];
}

export interface SceneShape {
  readonly kind: 'shape';
  /** Corners as x, y pairs. */
  readonly points: readonly number[];
  /** `arcs[i]`: signed radius of the edge from corner i; 0 for straight. Absent when all are. */
  readonly arcs?: readonly number[];
  readonly fill: string;
  /** The fabric's name. */
  readonly fabric: string;
  readonly source: number;
  /** The cells of the blocks it lies in, outermost first; absent outside nested blocks. */
  readonly within?: readonly number[];
  /** It lies over every shape of its list with a lower number (flipped corners); absent means 0. */
  readonly over?: number;
}

export interface SceneUse {
  readonly kind: 'use';
  /** Index into `blocks`. */
  readonly block: number;
  /** x' = a·x + c·y + e, y' = b·x + d·y + f, as in SVG. */
  readonly matrix: readonly [number, number, number, number, number, number];
  readonly source: number;
}
