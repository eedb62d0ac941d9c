/**
 * The quilt in the plane. Exact, in inches; x to the right, y down; outlines run clockwise on the screen (positive area).
 * A block is laid out once however often it is set: the quilt holds placements of distinct blocks, and the patches that
 * belong to no block (setting triangles, plain squares, sashes, borders).
 */
import type { Exact } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import type { Transform } from '../exact/transform.ts';
import type { Place } from '../text/place.ts';
import type { BlockInstance, Fabric, QuiltSpec } from '../model/pattern.ts';
import type { Finding } from '../model/finding.ts';

export interface Patch {
  readonly fabric: Fabric;
  readonly outline: readonly Point[];
  /** `arcs[i]` bends the edge from corner i to i + 1; absent when all edges are straight. */
  readonly arcs?: readonly (Exact | undefined)[];
  readonly role: PatchRole;
  /** The cell, `patch` or statement that makes it. */
  readonly place: Place;
  /** The cells of the blocks it lies in, outermost first, when it came in through nested blocks. */
  readonly within?: readonly Place[];
  /**
   * Degrees clockwise from upright, in [0, 180), when the author fixed the grain; for a patch of a directional fabric in a block
   * always: 0, turned with the block it stands in and by its cell.
   */
  readonly grain?: Exact;
}

export type PatchRole =
  | 'patch'
  | 'plain'
  | 'side_triangle'
  | 'corner_triangle'
  | 'sash'
  | 'cornerstone'
  | 'border'
  | 'border_corner'
  | 'flipped_corner';

export interface BlockLayout {
  /** Distinct by instance and size. */
  readonly key: string;
  readonly instance: BlockInstance;
  /** Inches when the instance has a size or stands in one; else the units of its grid or box. */
  readonly width: Exact;
  readonly height: Exact;
  /** Every patch, nested blocks flattened. With flipped corners: the base patches whole, then the corners over them. */
  readonly patches: readonly Patch[];
  /** What is wrong in the plane: gaps, overlaps, sums, rows, nested blocks that do not fit. */
  readonly findings: readonly Finding[];
}

export interface Placement {
  readonly block: BlockLayout;
  /** From the block's own coordinates to the quilt's. */
  readonly transform: Transform;
  readonly place: Place;
  /** Counted from 0 in the setting; `between` places have their own count. */
  readonly row: number;
  readonly column: number;
  readonly part: 'place' | 'between' | 'edge' | 'sashing' | 'cornerstone' | 'border' | 'row';
  /**
   * For a block that the quilt's edge cuts: what is left of it, convex, in the quilt's coordinates. The whole block is made and cut
   * along this outline with the seam outside it.
   */
  readonly clip?: readonly Point[];
}

export interface QuiltLayout {
  readonly spec: QuiltSpec;
  /** The finished top without the binding. */
  readonly width: Exact;
  readonly height: Exact;
  readonly placements: readonly Placement[];
  readonly patches: readonly Patch[];
  readonly borders: readonly BorderLayout[];
  /** The top inside the borders. */
  readonly centre: { readonly width: Exact; readonly height: Exact };
  /** Distinct blocks, in the order of the text. */
  readonly blocks: readonly BlockInQuilt[];
  readonly findings: readonly Finding[];
}

export interface BlockInQuilt {
  readonly layout: BlockLayout;
  /** As the quilt's outputs call it (`block-names.ts`). */
  readonly name: string;
  readonly count: number;
}

/** One border; its strips finished, as sewn (a mitred strip is as long as the outer edge). */
export interface BorderLayout {
  readonly width: Exact;
  readonly fabric?: Fabric;
  readonly corners: 'butted' | 'mitred' | 'squares' | 'pieced';
  readonly lengthwise: boolean;
  readonly strips: readonly { readonly side: 'top' | 'right' | 'bottom' | 'left'; readonly length: Exact; readonly width: Exact }[];
  readonly place: Place;
}
