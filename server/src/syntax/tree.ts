/**
 * The tree of a pattern file. A `Statement` is one line read by itself (`node`, cached by the line's text, positions as
 * columns of that line) plus what stands in the braces it opens. Nothing here knows what a name means.
 */
import type { Exact } from '../exact/number.ts';
import type { Unit } from '../exact/length.ts';
import type { Document, Line } from '../text/document.ts';
import type { Columns, Place } from '../text/place.ts';
import type { Problem, RuleId } from '../text/problem.ts';

// ---------------------------------------------------------------------------------------------- the whole

export interface Tree {
  readonly document: Document;
  readonly statements: readonly Statement[];
  /** Every syntax problem, in the order of the text. */
  readonly problems: readonly Problem[];
  /** `// allow RULE …` comments: the rules silenced on a line. */
  readonly allowed: ReadonlyMap<Line, readonly RuleId[]>;
}

export interface Statement<N extends StatementNode = StatementNode> {
  readonly node: N;
  readonly line: Line;
  /** From its first word to its last character, closing brace or text end included. */
  readonly place: Place;
  readonly body?: Body;
  /** The braces it stands in; undefined at the top level. */
  readonly parent?: Statement;
}

export interface Body {
  /** The `{`. */
  readonly open: Place;
  /** The `}`; missing when it is never closed. */
  readonly close?: Place;
  readonly statements: readonly Statement[];
}

// ---------------------------------------------------------------------------------------------- small parts

export interface Name extends Columns {
  readonly kind: 'name';
  /** As written; `lib.Star` for a name brought in by `import … as lib`. */
  readonly text: string;
}

/** A text between quotes. `value` has `\"` and `\\` undone; a `"""` text that spans lines has the lines joined by LF. */
export interface Text extends Columns {
  readonly kind: 'text';
  readonly value: string;
  /** Where it stands when it spans lines (else the columns tell). */
  readonly place?: Place;
}

/** `#rrggbb`, lower case. */
export interface Colour extends Columns {
  readonly kind: 'colour';
  readonly value: string;
}

/** A word of the language that stands as an option (`lengthwise`, `mitred`, `top`). */
export interface Word<W extends string = string> extends Columns {
  readonly kind: 'word';
  readonly word: W;
}

// ---------------------------------------------------------------------------------------------- numbers

/** A number or a length. A length without a unit counts in the pattern's units; the model decides which is meant. */
export type Quantity =
  | (Columns & { readonly kind: 'number'; readonly value: Exact })
  | (Columns & { readonly kind: 'measure'; readonly amount: Quantity; readonly unit: Unit | 'fq' })
  | (Columns & { readonly kind: 'reference'; readonly name: Name })
  | (Columns & { readonly kind: 'operation'; readonly operator: '+' | '-' | '*' | '/'; readonly left: Quantity; readonly right: Quantity })
  | (Columns & { readonly kind: 'minus'; readonly operand: Quantity })
  | (Columns & { readonly kind: 'root'; readonly of: Quantity })
  | (Columns & { readonly kind: 'parentheses'; readonly inner: Quantity });

/** A length of the quilt: finished, unless `cut` stands before it. */
export interface Length extends Columns {
  readonly kind: 'length';
  readonly cut: boolean;
  readonly value: Quantity;
}

/** `A by B`. */
export interface Pair<T> extends Columns {
  readonly kind: 'pair';
  readonly first: T;
  readonly second: T;
}

/** A block's size: `9"` is square, `4" by 2"` is not. */
export type Size = Length | Pair<Length>;

// ---------------------------------------------------------------------------------------------- cells

export type Seam = '/' | '\\' | '|' | '-';

export type Turn = Columns & { readonly kind: 'turn'; readonly by: '90' | '180' | '270' | 'mirror' | 'flip' };

/** A fabric, a block, or a parameter that stands for one; with arguments it can only be a block. */
export interface Reference extends Columns {
  readonly kind: 'reference';
  readonly name: Name;
  readonly arguments?: readonly Argument[];
  readonly turns: readonly Turn[];
}

export type Cell =
  | Reference
  /** Parts in the order written. `/`: upper left, lower right. `\`: lower left, upper right. `|`: left to right. `-`: top to bottom. */
  | (Columns & { readonly kind: 'split'; readonly seam: Seam; readonly seams: readonly Columns[]; readonly parts: readonly Part[] })
  | (Columns & { readonly kind: 'group'; readonly inner: Cell; readonly turns: readonly Turn[] })
  /** `<`: the patch to the left goes on; `^`: the one above. */
  | (Columns & { readonly kind: 'goes_on'; readonly direction: 'left' | 'above' })
  /** A cell that could not be read; it still counts as one cell of its row. */
  | (Columns & { readonly kind: 'bad' });

export interface Part extends Columns {
  readonly cell: Cell;
  readonly weight?: Quantity;
}

/** `rust`, `b: rust`, `d = 1/3`, `Nine(rust)`. */
export interface Argument extends Columns {
  readonly name?: Name;
  /** A single bare name is given as a Reference; it may turn out to be a number of `let` or a numeric parameter. */
  readonly value: Reference | Quantity;
}

export interface Parameter extends Columns {
  readonly name: Name;
  readonly default?: Reference | Quantity;
}

// ---------------------------------------------------------------------------------------------- statements

interface Base extends Columns {
  /** The statement's first word (a row has none: its first cell's columns). */
  readonly word: Columns;
  /**
   * Parts that a broken line lacks are undefined although the type of a whole line has them: every field below that may
   * be missing says so. A line that is broken has its problem in the tree.
   */
  readonly broken?: true;
}

export type StatementNode =
  // Top level
  | (Base & { readonly kind: 'pattern'; readonly title?: Text })
  | (Base & { readonly kind: 'import'; readonly path?: Text; readonly as?: Name })
  | (Base & { readonly kind: 'let'; readonly name?: Name; readonly value?: Quantity })
  | FabricNode
  | AssortedNode
  | BlockNode
  | (Base & { readonly kind: 'quilt' })
  | SizeNode
  | (Base & { readonly kind: 'colorway'; readonly name?: Name })
  | ExpectNode
  | StepsNode
  // In pattern { }
  | (Base & { readonly kind: 'by' | 'about' | 'level'; readonly text?: Text })
  | (Base & { readonly kind: 'units'; readonly units?: Word<'inches' | 'centimetres'> })
  | (Base & { readonly kind: 'seam' | 'round_up' | 'yardage'; readonly length?: Length })
  | (Base & { readonly kind: 'spare'; readonly percent?: Quantity })
  | (Base & { readonly kind: 'layers'; readonly count?: Quantity })
  | (Base & { readonly kind: 'paper'; readonly paper?: Word<'a4' | 'letter'> })
  | (Base & { readonly kind: 'language'; readonly language?: Word<'en' | 'de'> })
  // In block { } (method and press also in pattern { })
  | GridNode
  | (Base & { readonly kind: 'row_of_cells'; readonly cells: readonly Cell[] })
  | (Base & { readonly kind: 'corner'; readonly fabric?: Name; readonly length?: Length; readonly corners: readonly Word<Corner>[] })
  | (Base & { readonly kind: 'centre'; readonly filling?: Reference; readonly size?: Size })
  | (Base & { readonly kind: 'strip'; readonly length?: Length; readonly side?: Word<Side>; readonly fabric?: Name })
  | (Base & { readonly kind: 'round'; readonly length?: Length; readonly fabrics: readonly Name[] })
  | (Base & { readonly kind: 'box'; readonly size?: Pair<Quantity> })
  | PatchNode
  | (Base & { readonly kind: 'turned'; readonly times?: Quantity })
  | (Base & { readonly kind: 'mirrored'; readonly times?: Quantity })
  | (Base & { readonly kind: 'place_at'; readonly block?: Reference; readonly at?: CornerPoint; readonly size?: Pair<Quantity> })
  | MethodNode
  | (Base & { readonly kind: 'press'; readonly way?: Word<'open' | 'to_dark' | 'nested'> })
  | (Base & { readonly kind: 'templates' | 'foundation' })
  // In quilt { } and size { }
  | (Base & { readonly kind: 'straight' | 'on_point'; readonly count?: Pair<Quantity> })
  | (Base & { readonly kind: 'place'; readonly symmetry?: Word<'turned' | 'mirrored'>; readonly times?: Quantity })
  | (Base & { readonly kind: 'between' })
  | (Base & { readonly kind: 'rows'; readonly width?: Length })
  | (Base & { readonly kind: 'row'; readonly height?: Length; readonly fabric?: Name; readonly cells: readonly Cell[] })
  | EdgesNode
  | (Base & { readonly kind: 'corners'; readonly filling?: Reference | Word<'none'> })
  | (Base & { readonly kind: 'float'; readonly length?: Length })
  | SashingNode
  | BorderNode
  | (Base & { readonly kind: 'backing'; readonly fabric?: Name; readonly overhang?: Length; readonly width?: Length })
  | (Base & { readonly kind: 'batting'; readonly overhang?: Length })
  | (Base & { readonly kind: 'sleeve'; readonly fabric?: Name })
  | BindingNode
  | (Base & { readonly kind: 'quilting'; readonly parts: readonly QuiltingPart[] })
  // In colorway { }
  | (Base & { readonly kind: 'recolour'; readonly fabric?: Name; readonly colour?: Colour; readonly label?: Text })
  // In steps { }
  | (Base & { readonly kind: 'wording'; readonly text: Text })
  // A line that is no statement of its place; its problem is in the tree
  | (Base & { readonly kind: 'junk' });

export type StatementKind = StatementNode['kind'];
export type NodeOf<K extends StatementKind> = Extract<StatementNode, { readonly kind: K }>;

export type Corner = 'top_left' | 'top_right' | 'bottom_left' | 'bottom_right';
export type Side = 'top' | 'right' | 'bottom' | 'left';

export interface FabricNode extends Base {
  readonly kind: 'fabric';
  readonly name?: Name;
  readonly colour?: Colour;
  readonly label?: Text;
  readonly width?: Length;
  readonly value?: Word<'light' | 'medium' | 'dark'>;
  readonly directional?: Word<'directional'>;
  readonly shrink?: Quantity;
  readonly source?: FabricSource;
}

export interface FabricSource extends Columns {
  readonly source: Word<'yardage' | 'fat_quarters' | 'strips' | 'squares' | 'piece'>;
  readonly length?: Length;
  /** `from fat_quarters width 18" by 22"`, `from piece 12" by 30"`. */
  readonly size?: Pair<Length>;
  /** `from piece 12" by 30" times 3`. */
  readonly count?: Quantity;
}

export interface AssortedNode extends Base {
  readonly kind: 'assorted';
  readonly name?: Name;
  /** `= a b c`; empty for the counted form. */
  readonly prints: readonly Name[];
  readonly by?: Word<'block' | 'patch'>;
  readonly count?: Quantity;
  readonly colour?: Colour;
  readonly label?: Text;
}

export interface BlockNode extends Base {
  readonly kind: 'block';
  readonly name?: Name;
  readonly parameters: readonly Parameter[];
  readonly size?: Size;
}

export interface GridNode extends Base {
  readonly kind: 'grid';
  readonly columns: readonly Proportion[];
  readonly rows: readonly Proportion[];
}

/** A proportion or a length of a grid line; `rest` takes up what is left. */
export type Proportion = Quantity | Word<'rest'>;

/** `x,y`. */
export interface CornerPoint extends Columns {
  readonly kind: 'corner_point';
  readonly x: Quantity;
  readonly y: Quantity;
}

export interface PatchNode extends Base {
  readonly kind: 'patch';
  readonly fabric?: Name;
  readonly corners: readonly CornerPoint[];
  /** Arcs by the index of the corner they follow (the last bends the closing edge). */
  readonly arcs: readonly Arc[];
  /** Degrees; 0 is upright. */
  readonly grain?: Quantity;
}

/** `arc R`, from the word to the radius. */
export interface Arc extends Columns {
  readonly kind: 'arc';
  readonly after: number;
  readonly radius: Quantity;
  readonly columns: Columns;
}

export interface MethodNode extends Base {
  readonly kind: 'method';
  readonly unit?: Word<'half_squares' | 'geese' | 'strips'>;
  readonly way?: Word;
  readonly trim?: Word<'trim'>;
  readonly trimBy?: Length;
}

export interface EdgesNode extends Base {
  readonly kind: 'edges';
  readonly filling?: Reference;
  /** Options may stand in the line or as statements of their own (`corners`, `float`). */
  readonly corners?: Reference | Word<'none'>;
  readonly float?: Length;
}

export interface SashingNode extends Base {
  readonly kind: 'sashing';
  readonly width?: Length;
  readonly filling?: Reference;
  readonly cornerstones?: Reference;
  readonly outer?: Word<'outer'>;
}

export interface BorderNode extends Base {
  readonly kind: 'border';
  readonly form: 'plain' | 'unequal' | 'pieced' | 'to' | 'fit';
  readonly width?: Length;
  readonly top?: Length;
  readonly sides?: Length;
  /** `border to W by H`. */
  readonly size?: Pair<Length>;
  readonly fabric?: Name;
  readonly corners?: Word<'butted' | 'mitred' | 'squares'>;
  readonly cornerFabric?: Reference;
  readonly lengthwise?: Word<'lengthwise'>;
  /** `border pieced BLOCK`; the braces form has its units in the statement's body. */
  readonly unit?: Reference;
  readonly cornerBlock?: Reference;
  readonly meet?: Word<'meet'>;
}

export interface BindingNode extends Base {
  readonly kind: 'binding';
  readonly width?: Length;
  readonly fabric?: Name;
  readonly layers?: Word<'single' | 'double'>;
  readonly grain?: Word<'straight' | 'bias'>;
}

export type QuiltingPart = Text | Word<'in_the_ditch' | 'allover'> | (Columns & { readonly kind: 'echo'; readonly length: Length });

export interface SizeNode extends Base {
  readonly kind: 'size';
  readonly name?: Name;
  readonly count?: Pair<Quantity>;
  /** `for queen_bed`. */
  readonly bed?: Name;
}

export interface ExpectNode extends Base {
  readonly kind: 'expect';
  readonly cut: boolean;
  /** `throw.Capstan.count` as its parts. */
  readonly path: readonly Name[];
  readonly comparison: 'exactly' | 'at_most' | 'at_least';
  readonly value?: Quantity;
  /** The second measure of `A by B`. */
  readonly by?: Quantity;
}

export interface StepsNode extends Base {
  readonly kind: 'steps';
  readonly where?: Word<'before' | 'after'>;
  readonly of?: Name;
}
