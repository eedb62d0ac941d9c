/**
 * What a pattern says, names and numbers resolved, before anything lies in the plane. Lengths are exact and in inches;
 * every value names the place in the text it came from. What could not be resolved is a `Finding`, and the rest stands.
 */
import type { Exact } from '../exact/number.ts';
import type { UnitSystem } from '../exact/length.ts';
import type { Place } from '../text/place.ts';
import type { BlockNode, Corner, QuiltingPart, Seam, Side, Statement, Tree, Turn } from '../syntax/tree.ts';
import type { Finding } from './finding.ts';

export interface Pattern {
  readonly tree: Tree;
  readonly title?: string;
  readonly by?: string;
  readonly about?: string;
  /** For whom it is, in the author's words. */
  readonly level?: string;
  readonly paper?: 'a4' | 'letter';
  /** Of the booklet's own wording. */
  readonly language?: 'en' | 'de';
  readonly rules: Rules;
  /** This file's fabrics in the order of the text, then imported ones (`lib.ink`). No two fabrics of a pattern share a name. */
  readonly fabrics: ReadonlyMap<string, Fabric>;
  /** Every block that a name can reach here: this file's, imported ones (`lib.Star`), then the library's. */
  readonly blocks: ReadonlyMap<string, BlockDefinition>;
  /** Likewise; those without a value are left out. */
  readonly lets: ReadonlyMap<string, Let>;
  readonly imports: readonly Import[];
  /** The `quilt` statement; a file without one is a library of blocks. */
  readonly quilt?: Statement;
  readonly sizes: readonly SizeDefinition[];
  readonly colorways: readonly Colorway[];
  readonly expectations: readonly Expectation[];
  readonly steps: readonly StepsText[];
  /** What is wrong in the declarations (not inside blocks or the quilt: those carry their own). */
  readonly findings: readonly Finding[];
  /** What the model keeps for itself. */
  readonly workings: Workings;
}

/** The pattern's own measures; all lengths in inches. */
export interface Rules {
  readonly units: UnitSystem;
  readonly seam: Exact;
  /** Cut sizes are rounded up to a multiple of this. */
  readonly roundUp: Exact;
  /** Bought lengths are rounded up to a multiple of this. */
  readonly yardage: Exact;
  /** Extra fabric as a fraction: 1/20 for 5 %. */
  readonly spare: Exact;
  /** Folded fabrics that are cut on one another; one unless said. */
  readonly layers?: number;
  readonly methods: Methods;
}

/** How things are made, from `method` and `press`, in a block or for the pattern; undefined where nothing is said. */
export interface Methods {
  readonly halfSquares?: { readonly way: 'two_at_a_time' | 'eight_at_a_time' | 'singles'; readonly trim?: Exact; readonly place: Place };
  readonly geese?: { readonly way: 'four_at_a_time' | 'singles' | 'corners'; readonly trim?: Exact; readonly place: Place };
  readonly strips?: { readonly on: boolean; readonly place: Place };
  readonly press?: { readonly way: 'open' | 'to_dark' | 'nested'; readonly place: Place };
}

export interface Fabric {
  readonly name: string;
  /** `#rrggbb`, lower case. */
  readonly colour: string;
  readonly label: string;
  /** The usable width in inches. */
  readonly width: Exact;
  /** As the author said; else it is computed from the colour. */
  readonly value?: 'light' | 'medium' | 'dark';
  readonly directional: boolean;
  /** Shrinkage as a fraction. */
  readonly shrink: Exact;
  readonly source: FabricSource;
  /** For `assorted`: the prints dealt in turn. */
  readonly assorted?: { readonly prints: readonly Fabric[]; readonly by: 'block' | 'patch' };
  /** The name in its declaration. */
  readonly place: Place;
  /** No cloth of the pattern: it stands for a parameter without a default, or for a name that nothing declares. */
  readonly standsFor?: 'parameter' | 'unknown';
}

export type FabricSource =
  | { readonly kind: 'yardage' }
  | { readonly kind: 'fat_quarters'; readonly width: Exact; readonly height: Exact }
  /** `count`: how many such pieces are at hand; one unless said. */
  | { readonly kind: 'piece'; readonly width: Exact; readonly height: Exact; readonly count?: number }
  | { readonly kind: 'strips' | 'squares'; readonly size: Exact };

export interface Let {
  readonly name: string;
  readonly value: Value;
  readonly place: Place;
}

/** A number or a length; a length is in inches. */
export interface Value {
  readonly number: Exact;
  readonly isLength: boolean;
}

export interface Import {
  readonly path: string;
  readonly as?: string;
  readonly tree?: Tree;
  /** The imported file by itself: its own names, units and findings. */
  readonly pattern?: Pattern;
  readonly place: Place;
}

export interface BlockDefinition {
  /** As it is called here: `Star`, or `lib.Star` when it comes from an import with a name. */
  readonly name: string;
  readonly origin: 'file' | 'import' | 'library';
  readonly statement: Statement<BlockNode>;
  readonly parameters: readonly ParameterDefinition[];
  /** The name in its declaration. */
  readonly place: Place;
  /** Every name in its parameters' defaults and its body, parameters left out. */
  readonly mentions?: ReadonlySet<string>;
  /** How many cells and statements it has. */
  readonly weight?: number;
}

export interface ParameterDefinition {
  readonly name: string;
  readonly place: Place;
  readonly hasDefault: boolean;
  /** By its default and by where the body uses it; undefined when it is only handed on. */
  readonly kind?: ParameterKind;
}

/** `cell`: a fabric or a block. */
export type ParameterKind = 'number' | 'fabric' | 'block' | 'cell';

// ---------------------------------------------------------------------------------------------- names

/** What a name stands for where it is used. */
export type Meaning =
  | { readonly kind: 'fabric'; readonly fabric: Fabric }
  /** `place` of a `let`. */
  | { readonly kind: 'number'; readonly value: Value; readonly place?: Place }
  /** `given`: an argument that brought its own arguments along (`frame(Nine(rust))`). */
  | { readonly kind: 'block'; readonly definition: BlockDefinition; readonly given?: BlockInstance; readonly turns: readonly TurnBy[] }
  /** Declared, but what it is cannot be known; that has been said elsewhere. */
  | { readonly kind: 'broken' };

/** What a parameter stands for in an instance; `broken` when it was given nothing that could be understood. */
export type Argument = Meaning;

/** The names that suggestions are made from. */
export interface KnownNames {
  readonly fabrics: readonly string[];
  readonly blocks: readonly string[];
  readonly numbers: readonly string[];
  /** Imports that could not be read: `lib` for one with a name, an empty text for one without. Their names are not judged. */
  readonly unread: readonly string[];
}

/** Which blocks stand within which. */
export interface Nesting {
  /** Blocks that stand within themselves, by the ring they are in. */
  readonly rings: ReadonlyMap<Statement, number>;
  /** Levels of blocks: 1 for a block without blocks. */
  readonly levels: ReadonlyMap<Statement, number>;
}

/** Why a block cannot stand in another: a ring, as the names it goes through, or too many levels. */
export type Obstacle = { readonly kind: 'ring'; readonly chain: readonly string[] } | { readonly kind: 'deep' };

export interface Workings {
  readonly names: ReadonlyMap<string, Meaning>;
  readonly known: KnownNames;
  /** The tool's own library that has a block of this name. */
  readonly libraryOf: (name: string) => string | undefined;
  readonly nesting: Nesting;
  /** The files that names come from (imports of imports and the library too), by their documents' `source`. */
  readonly files: ReadonlyMap<string, Pattern>;
  readonly library: readonly Pattern[];
  /** Fabrics of other files that have another name here, so that no two fabrics of a pattern share one. */
  readonly renamed: ReadonlyMap<Fabric, Fabric>;
  /** Blocks of other files as they are called here, likewise, by their statements. */
  readonly called: ReadonlyMap<Statement, BlockDefinition>;
  /** The pattern before that. */
  readonly plain?: Pattern;
  readonly memo: Memo;
}

/** What has been worked out so far; it only grows, and what it says never changes. */
export interface Memo {
  /** By their keys, each after the blocks in it. */
  readonly instances: Map<string, Remembered>;
  /** The blocks with all their defaults. */
  readonly defaults: Map<BlockDefinition, Remembered>;
  /** The keys asked for in this version. */
  readonly asked: Set<string>;
  /** Cells and statements in all of them: what the work is measured by. */
  readonly spent: { cells: number };
  /** The pattern in a size with its own `let`s, or in a colourway; those of this version, and those of the one before. */
  readonly variants: Map<string, Pattern>;
  readonly variantsBefore: ReadonlyMap<string, Pattern>;
}

/** A block instance and what it was made from, beside its definition and arguments. */
export interface Remembered {
  readonly instance: BlockInstance;
  readonly arguments: ReadonlyMap<string, Argument>;
  /** Every name that was looked up in its file. */
  readonly lookups: ReadonlySet<string>;
  /** A name was not found, so that what could be suggested matters. */
  readonly hasUnknown: boolean;
  /** It holds a parameter without a value that a number or a block would have to stand for. */
  readonly incomplete: boolean;
  /** Found on a way that another order of work need not take; never taken over. */
  readonly passing: boolean;
  /** Versions since it was last asked for. */
  readonly age: number;
}

// ---------------------------------------------------------------------------------------------- blocks

/** A block with its arguments. Two uses with the same arguments are the same object. */
export interface BlockInstance {
  /** Distinct by definition and arguments; stable for the same text. */
  readonly key: string;
  /** As a maker reads it: `Capstan`, `Nine(rust)`. Arguments equal to the defaults are left out. */
  readonly name: string;
  readonly definition: BlockDefinition;
  /** Inches; undefined for a block that only stands inside others. */
  readonly size?: { readonly width: Exact; readonly height: Exact; readonly place: Place };
  readonly body: BlockBody;
  readonly corners: readonly FlippedCorner[];
  readonly methods: Methods;
  readonly templates: boolean;
  readonly foundation: boolean;
  /** What is wrong inside, with these arguments. Nested blocks carry their own. */
  readonly findings: readonly Finding[];
  /** The distinct blocks that stand directly inside. */
  readonly nested?: readonly BlockInstance[];
  /** What each parameter stands for, in the order of the declaration. */
  readonly arguments?: ReadonlyMap<string, Argument>;
}

export type BlockBody = GridBody | PatchesBody | CentreBody | { readonly kind: 'empty' };

export interface GridBody {
  readonly kind: 'grid';
  /** As `grid` gives them; without `grid`, undefined: all cells equal. */
  readonly columns?: readonly GridLine[];
  readonly rows?: readonly GridLine[];
  readonly gridPlace?: Place;
  readonly content: readonly CellRow[];
  /** The rows stand in `turned` or `mirrored`: they are the left half or the upper left quarter of the block. */
  readonly symmetry?: Symmetry;
  readonly incomplete?: Incomplete;
}

/** Part of the body could not be read or resolved, which is said elsewhere: what is missing for that reason is not reported. */
export type Incomplete = true;

export interface Symmetry {
  readonly kind: 'turned' | 'mirrored';
  /** 2, 3, 4, 6, 8, 12; for `mirrored` 2 or 4. */
  readonly times: number;
  readonly place: Place;
}

/** A column or row of a grid: a plain number is a proportion, a length is in inches, `rest` takes what is left. */
export type GridLine = { readonly kind: 'proportion' | 'length'; readonly value: Exact; readonly place: Place } | { readonly kind: 'rest'; readonly place: Place };

export interface CellRow {
  readonly cells: readonly CellSpec[];
  readonly place: Place;
}

export type CellSpec =
  | FabricUse
  | BlockUse
  | { readonly kind: 'split'; readonly seam: Seam; readonly parts: readonly { readonly cell: CellSpec; readonly weight: Exact }[]; readonly seams: readonly Place[]; readonly place: Place }
  /** Parentheses that are turned as one. Parentheses without a turn are not kept. */
  | { readonly kind: 'turned'; readonly inner: CellSpec; readonly turns: readonly TurnBy[]; readonly place: Place }
  | { readonly kind: 'goes_on'; readonly direction: 'left' | 'above'; readonly place: Place }
  /** Could not be resolved; a finding or a syntax problem says why. Nothing is drawn there and no gap is reported. */
  | { readonly kind: 'bad'; readonly place: Place };

export type TurnBy = Turn['by'];

export interface FabricUse {
  readonly kind: 'fabric';
  readonly fabric: Fabric;
  /** `ink@90`: the print is turned, the patch is not. */
  readonly turns?: readonly TurnBy[];
  readonly place: Place;
}

export interface BlockUse {
  readonly kind: 'block';
  readonly block: BlockInstance;
  /** In the order written; the turn comes first, then the fit. */
  readonly turns: readonly TurnBy[];
  readonly place: Place;
}

export interface PatchesBody {
  readonly kind: 'patches';
  /** The units of the coordinates: box width and height. Undefined: inches of the block's size. */
  readonly box?: { readonly width: Exact; readonly height: Exact; readonly place: Place };
  readonly items: readonly PatchItem[];
  readonly incomplete?: Incomplete;
}

export type PatchItem =
  | PatchSpec
  | { readonly kind: 'symmetry'; readonly symmetry: Symmetry; readonly items: readonly PatchItem[] }
  | { readonly kind: 'set_in'; readonly use: FabricUse | BlockUse; readonly x: Exact; readonly y: Exact; readonly width: Exact; readonly height: Exact; readonly place: Place };

export interface PatchSpec {
  readonly kind: 'patch';
  readonly fabric: Fabric;
  readonly corners: readonly { readonly x: Exact; readonly y: Exact; readonly place: Place }[];
  /** `arcs[i]` bends the edge from corner i to the next: the radius, positive when it bulges out of the patch. */
  readonly arcs: readonly (Exact | undefined)[];
  /** Degrees, 0 upright. */
  readonly grain?: Exact;
  readonly place: Place;
}

export interface CentreBody {
  readonly kind: 'centre';
  readonly centre?: { readonly use: FabricUse | BlockUse; readonly width: Exact; readonly height: Exact; readonly place: Place };
  /** In sewing order; a `round` is four strips (top, right, bottom, left) with one place each. */
  readonly strips: readonly { readonly width: Exact; readonly side: Side; readonly fabric: Fabric; readonly place: Place }[];
  readonly incomplete?: Incomplete;
}

/** A square laid on a corner of the block, sewn corner to corner and flipped. `size` is its finished side in inches. */
export interface FlippedCorner {
  readonly fabric: Fabric;
  readonly size: Exact;
  readonly corner: Corner;
  readonly place: Place;
}

// ---------------------------------------------------------------------------------------------- the quilt

export interface SizeDefinition {
  readonly name: string;
  readonly across: number;
  readonly down: number;
  readonly bed?: string;
  /** The count is not written: it is the least that covers the bed, which only the plane can tell. */
  readonly covers?: true;
  readonly statement: Statement;
  readonly place: Place;
}

export interface Colorway {
  readonly name: string;
  readonly colours: ReadonlyMap<string, { readonly colour: string; readonly label?: string; readonly place: Place }>;
  readonly place: Place;
}

export interface StepsText {
  readonly where: 'instead' | 'before' | 'after';
  /** The block named by `before` / `after`. */
  readonly of?: string;
  readonly texts: readonly { readonly text: string; readonly place: Place }[];
  readonly place: Place;
}

export interface Expectation {
  readonly cut: boolean;
  readonly path: readonly { readonly text: string; readonly place: Place }[];
  readonly comparison: 'exactly' | 'at_most' | 'at_least';
  readonly value: Value | { readonly fatQuarters: Exact };
  readonly by?: Value;
  readonly place: Place;
}

/** The quilt in one size and colourway. Statements of the size have replaced those of the quilt, keyword by keyword. */
export interface QuiltSpec {
  readonly statement: Statement;
  /** Undefined when the pattern names no sizes, or for what the editor shows first. */
  readonly size?: SizeDefinition;
  readonly setting?: Setting;
  readonly tile?: TileSpec;
  readonly between?: TileSpec;
  readonly edges?: { readonly filling: FabricUse | BlockUse; readonly place: Place };
  readonly cornerFilling?: { readonly filling: FabricUse | BlockUse | 'none'; readonly place: Place };
  readonly float?: { readonly width: Exact; readonly place: Place };
  readonly sashing?: SashingSpec;
  /** From the inside out. */
  readonly borders: readonly BorderSpec[];
  readonly backing?: { readonly fabric?: Fabric; readonly overhang: Exact; readonly width?: Exact; readonly place: Place };
  readonly batting?: { readonly overhang: Exact; readonly place: Place };
  /** For hanging it on a wall. */
  readonly sleeve?: { readonly fabric: Fabric; readonly place: Place };
  readonly binding?: BindingSpec;
  readonly quilting: readonly QuiltingPart[];
  /** The same, resolved. */
  readonly quiltingLines?: readonly QuiltingLine[];
  readonly findings: readonly Finding[];
}

export type QuiltingLine =
  | { readonly kind: 'words'; readonly text: string; readonly place: Place }
  | { readonly kind: 'in_the_ditch' | 'allover'; readonly place: Place }
  | { readonly kind: 'echo'; readonly distance: Exact; readonly place: Place };

export type Setting =
  | { readonly kind: 'straight' | 'on_point'; readonly across: number; readonly down: number; readonly place: Place }
  | { readonly kind: 'grid'; readonly columns: readonly GridLine[]; readonly rows: readonly GridLine[]; readonly place: Place }
  | { readonly kind: 'rows'; readonly width: Exact; readonly rows: readonly QuiltRow[]; readonly place: Place };

export type QuiltRow =
  | { readonly kind: 'cells'; readonly cells: readonly CellSpec[]; readonly place: Place }
  | { readonly kind: 'plain'; readonly height: Exact; readonly fabric: Fabric; readonly place: Place };

export interface TileSpec {
  readonly rows: readonly CellRow[];
  readonly symmetry?: Symmetry;
  readonly place: Place;
}

export interface SashingSpec {
  /** Undefined when a block is the sashing: its width is the width. */
  readonly width?: Exact;
  readonly filling: FabricUse | BlockUse;
  readonly cornerstones?: FabricUse | BlockUse;
  readonly outer: boolean;
  readonly place: Place;
}

export type BorderSpec = { readonly place: Place } & (
  | { readonly kind: 'plain'; readonly top: Exact; readonly sides: Exact; readonly fabric: Fabric; readonly corners: BorderCorners; readonly lengthwise: boolean }
  | { readonly kind: 'pieced'; readonly units: readonly BlockUse[]; readonly corner?: BlockUse | FabricUse; readonly meet: boolean }
  | { readonly kind: 'to'; readonly width: Exact; readonly height: Exact; readonly fabric: Fabric; readonly corners: BorderCorners; readonly lengthwise: boolean }
  | { readonly kind: 'fit'; readonly atLeast: Exact; readonly fabric: Fabric; readonly corners: BorderCorners; readonly lengthwise: boolean }
);

export type BorderCorners =
  | { readonly kind: 'butted' | 'mitred'; readonly place?: Place }
  | { readonly kind: 'squares'; readonly filling: FabricUse | BlockUse; readonly place: Place };

export interface BindingSpec {
  /** The CUT width of the strip in inches (a finished width has had its layers and turns added). */
  readonly cutWidth: Exact;
  readonly fabric: Fabric;
  readonly double: boolean;
  readonly bias: boolean;
  readonly place: Place;
}
