/** What to cut from which fabric and how much to buy. Exact, in inches; cut sizes are rounded up to the ruler (`Rules.roundUp`). */
import type { Exact } from '../exact/number.ts';
import type { Point } from '../exact/point.ts';
import type { Fabric } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';

export type PieceShape =
  | 'square'
  | 'rectangle'
  | 'half-square triangle'
  | 'quarter-square triangle'
  | 'side setting triangle'
  | 'corner setting triangle'
  | 'strip'
  | 'template';

export interface Measure {
  readonly width: Exact;
  readonly height: Exact;
}

/** One kind of piece: the same fabric, shape, size and use. */
export interface Piece {
  readonly fabric: Fabric;
  /** The assorted role that the fabric is a print of here. */
  readonly role?: string;
  readonly shape: PieceShape;
  /** Of the patch; for triangles the legs, for setting triangles the block they stand beside, for templates the bounding box; binding as it is cut. */
  readonly finished: Measure;
  /** Of the square, rectangle or strip to cut, rounded up to the ruler. */
  readonly cut: Measure;
  /** The same before rounding up. */
  readonly exactCut: Measure;
  readonly cutCount: number;
  readonly piecesPerCut: number;
  /** How many patches are needed. */
  readonly pieces: number;
  /** The block or part it is for: `Capstan`, `setting`, `sashing`, `border 1`, `binding`. */
  readonly for: string;
  /** The blocks, where it is for several: units of them are made together. */
  readonly shared?: readonly string[];
  /** The finished outline of one patch, and the texts that make such patches. */
  readonly outline: readonly Point[];
  /** Of a template: the radii of its edges, as in `Patch`, and the grain line the author fixed, in degrees. */
  readonly arcs?: readonly (Exact | undefined)[];
  readonly grain?: Exact;
  readonly places: readonly Place[];
  /** How it is cut, in the trade's words: `cut once on the diagonal`. */
  readonly method: CutMethod;
  /**
   * How it must lie on the fabric: `across` with `cut.height` from selvage to selvage, `along` with it along the selvage.
   * Absent: either way.
   */
  readonly lie?: 'across' | 'along';
  /** `strip set`: how long a segment is cut from the sewn strips; `piecesPerCut` of them from one. */
  readonly segment?: Exact;
  /** How many segments there are of the sewn strips. */
  readonly segments?: number;
  /** `from strips joined`: the lengths to cut from the joined strip (`finished.height` is the longest, finished). */
  readonly joined?: readonly { readonly length: Exact; readonly count: number }[];
}

/** `… at a time`: a square that is sewn before it is cut. `bias`: one of which a long bias strip is made. */
export type CutMethod =
  | 'plain'
  | 'once on the diagonal'
  | 'twice on the diagonal'
  | 'two at a time'
  | 'four at a time'
  | 'eight at a time'
  | 'strip set'
  | 'from strips joined'
  | 'template'
  | 'bias';

/** A strip across the usable width and what is cut from it. */
export interface Strip {
  readonly width: Exact;
  readonly count: number;
  /** For one strip of the kind, in order from one end. */
  readonly subcuts: readonly Subcut[];
}

export interface Subcut {
  /** An index into `CuttingPlan.pieces`. */
  readonly piece: number;
  /** Pieces from one strip. */
  readonly count: number;
  /** `cut.height` lies along the strip; otherwise `cut.width` does. */
  readonly turned?: true;
  /** Pieces cut one above the other from each segment of the strip; 1 when absent. */
  readonly stacked?: number;
  /** It fills up the last segment of the subcut before, whose pieces are of the same size. */
  readonly continues?: true;
}

/** Pieces of cloth that are cut alike: a length off the bolt, fat quarters, precut strips or squares, a piece at hand. */
export interface Cloth {
  readonly count: number;
  /** Perpendicular to the selvage, and along it. */
  readonly across: Exact;
  readonly down: Exact;
  /** Strips run along the selvage; else across, from the top down. */
  readonly turned?: true;
  /** Of one such piece, in cutting order. */
  readonly strips: readonly Strip[];
}

export interface FabricPlan {
  readonly fabric: Fabric;
  /** All strips of all its cloth. */
  readonly strips: readonly Strip[];
  readonly cloths: readonly Cloth[];
  /** The widths of all strips together: off the bolt, the length they take along the selvage. */
  readonly length: Exact;
  /** No plan of these cuts, in strips and segments laid with the grain, can take less: not rounded. */
  readonly lowerBound: Exact;
  /** Proven: no plan takes less cloth. */
  readonly isLeast: boolean;
  /** Proven: no plan has less to be bought. */
  readonly isLeastBought: boolean;
  /** With spare and shrinkage, rounded up to `Rules.yardage`; of cloth that is counted, the length that its strips would take. */
  readonly buy: Exact;
  /** The same rounded up where cloth is sold by the other measure: to 0.1 m, or to 1/8 yd. */
  readonly buyElsewhere: Exact;
  /** Of fat quarters and precuts: how many, which is what is bought. */
  readonly counted?: CountedCloth;
  readonly cuts: TableCuts;
  /** Nothing better is looked for. */
  readonly isBest: boolean;
}

export interface CountedCloth extends Measure {
  readonly kind: 'fat quarter' | 'strip' | 'square' | 'piece';
  readonly count: number;
  /** No plan can do with fewer. */
  readonly least: number;
  /** How many there are, where that is said. */
  readonly atHand?: number;
}

/** Cuts with a rotary cutter through folded and stacked cloth. */
export interface TableCuts {
  /** Strips off the cloth, the straightening cuts among them. */
  readonly strips: number;
  /** Everything after that: segments, trims, diagonals. */
  readonly pieces: number;
}

/** The prints of an assorted role together. */
export interface RolePlan {
  readonly fabric: Fabric;
  /** Every print, and the pieces of the role that are cut from it. */
  readonly prints: readonly { readonly fabric: Fabric; readonly pieces: number }[];
  readonly pieces: number;
  /** All that is bought of its prints, which may be for more than the role. */
  readonly buy: Exact;
  /** The same where all its prints are the same kind of cloth that is counted. */
  readonly counted?: CountedCloth;
}

export interface CuttingPlan {
  readonly pieces: readonly Piece[];
  /** The fabrics that anything is cut from, in the order of their declarations; backing is apart. */
  readonly fabrics: readonly FabricPlan[];
  /** Assorted roles, in the order of their declarations; their prints are among the fabrics. */
  readonly roles: readonly RolePlan[];
  readonly borders: readonly BorderCut[];
  readonly backing?: BackingPlan;
  readonly batting?: BattingPlan;
  readonly binding?: BindingPlan;
  readonly sleeve?: SleevePlan;
  /** What `quilting` asks for, as far as it can be measured. */
  readonly quilting: readonly QuiltingPlan[];
  readonly drop?: DropPlan;
  /** Pieces that fit their cloth neither way: they are in `pieces` and in no strip. */
  readonly tooWide: readonly TooWide[];
}

export interface TooWide {
  readonly fabric: Fabric;
  /** An index into `pieces`; absent for `backing` and `binding`. */
  readonly piece?: number;
  /** What it is for: `Capstan`, `border 1`, `backing`. */
  readonly for: string;
  /** The least width the fabric would need. */
  readonly needs: Exact;
  /** Of fat quarters, precuts and pieces at hand: the size that is cut, and that of the cloth. */
  readonly cloth?: { readonly kind: CountedCloth['kind']; readonly needs: Measure; readonly has: Measure };
  readonly places: readonly Place[];
}

/** A border of strips; a pieced border is in the blocks it is made of. */
export interface BorderCut {
  /** Counted from 1, from the inside out, pieced borders included. */
  readonly number: number;
  /** Finished; of the top and bottom where the sides differ. */
  readonly width: Exact;
  readonly fabric: Fabric;
  readonly corners: 'butted' | 'mitred' | 'squares' | 'pieced';
  readonly lengthwise: boolean;
  /** Cut sizes. */
  readonly strips: readonly { readonly length: Exact; readonly width: Exact; readonly count: number }[];
}

export interface BackingPlan extends Measure {
  readonly fabric?: Fabric;
  readonly panels: number;
  readonly seams: 'vertical' | 'horizontal' | 'none';
  /** Of one panel, along the selvage. */
  readonly panelLength: Exact;
  /** Of the cloth it is cut from, usable. */
  readonly clothWidth: Exact;
  readonly buy: Exact;
}

export interface BattingPlan extends Measure {
  /** The smallest packaged size that covers it: `crib`, `twin` … or `by the yard`. */
  readonly package: string;
}

/** Over a mattress; below zero where the quilt is smaller. */
export interface DropPlan {
  /** As the pattern names it: `queen_bed`. */
  readonly bed: string;
  readonly mattress: Measure;
  /** At each of the two sides. */
  readonly sides: Exact;
  readonly foot: Exact;
}

/** Stitched lines over the whole top. */
export interface QuiltingPlan {
  readonly kind: 'in_the_ditch' | 'echo' | 'allover';
  /** Of an echo, from the seams. */
  readonly distance?: Exact;
  /** All lines together; of `allover` an estimate. */
  readonly length: Exact;
  readonly place: Place;
}

/** A tube at the back by which the quilt hangs. */
export interface SleevePlan {
  readonly fabric: Fabric;
  /** `width` is folded in half, `height` runs along the quilt's top. */
  readonly cut: Measure;
  /** Strips that it is joined from. */
  readonly strips: number;
}

export interface BindingPlan {
  readonly fabric: Fabric;
  /** Cut. */
  readonly width: Exact;
  readonly double: boolean;
  /** Perimeter plus the joining allowance. */
  readonly length: Exact;
  /** Strips across the width of fabric; for bias binding, the squares it is made from. */
  readonly strips: number;
  /** Bias: the side of the square. */
  readonly square?: Exact;
  /** For the binding alone; its strips are also among the fabric's own. */
  readonly buy: Exact;
}
