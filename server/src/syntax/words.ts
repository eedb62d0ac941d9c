/** The words of the language: which statement may stand in which braces, its grammar rule, its options. The one table. */
import type { StatementKind, StatementNode } from './tree.ts';

/** The braces a line may stand in. `unknown` are braces after something that takes none: what stands in them is not judged. */
export type Context =
  | 'top' | 'pattern' | 'block' | 'turned' | 'mirrored' | 'quilt' | 'size' | 'place' | 'between' | 'pieced' | 'colorway' | 'steps' | 'unknown';

/** How a statement begins and what it is read with. */
export interface StatementWord {
  readonly word: string;
  /** The start rule in grammar/quilt.ohm. */
  readonly rule: string;
}

const PATTERN = entries({
  by: 'By', about: 'About', units: 'Units', seam: 'Seam', round_up: 'RoundUp', yardage: 'Yardage', spare: 'Spare', layers: 'Layers', paper: 'Paper',
  level: 'Level', language: 'Language',
  method: 'Method', press: 'Press',
});

const SYMMETRY = entries({ patch: 'Patch', turned: 'Turned', mirrored: 'Mirrored', place: 'PlaceAt' });

const BLOCK = [
  ...entries({
    grid: 'Grid', corner: 'Corner', centre: 'Centre', center: 'Centre', strip: 'Strip', round: 'Round', box: 'Box',
    method: 'Method', press: 'Press', templates: 'Templates', foundation: 'Foundation',
  }),
  ...SYMMETRY,
];

const QUILT = entries({
  straight: 'Straight', on_point: 'OnPoint', place: 'Place', between: 'Between', rows: 'Rows', row: 'QuiltRow', grid: 'Grid',
  edges: 'Edges', corners: 'Corners', float: 'Float', sashing: 'Sashing', border: 'Border', backing: 'Backing', batting: 'Batting',
  binding: 'Binding', quilting: 'Quilting', sleeve: 'Sleeve',
});

const TOP = entries({
  pattern: 'Pattern', import: 'Import', let: 'Let', fabric: 'Fabric', assorted: 'Assorted', block: 'Block', quilt: 'Patchwork',
  size: 'NamedSize', colorway: 'Colorway', expect: 'Expect', steps: 'Steps',
});

/** The statement words of each kind of braces. */
export const STATEMENT_WORDS: Readonly<Record<Context, readonly StatementWord[]>> = {
  top: TOP,
  pattern: PATTERN,
  block: BLOCK,
  turned: SYMMETRY,
  mirrored: SYMMETRY,
  quilt: QUILT,
  size: [...QUILT, ...entries({ let: 'Let' })],
  place: [],
  between: [],
  pieced: [],
  colorway: [],
  steps: [],
  unknown: [],
};

/** What a line that begins with no statement word is read as, in braces that take such lines. */
export const PLAIN_LINES: Readonly<Partial<Record<Context, 'Row' | 'Recolour' | 'Wording'>>> = {
  block: 'Row', turned: 'Row', mirrored: 'Row', place: 'Row', between: 'Row', pieced: 'Row', colorway: 'Recolour', steps: 'Wording',
};

/** The braces a statement opens; `must` where the statement is nothing without them. */
export const BRACES: Readonly<Partial<Record<StatementKind, { readonly context: Context; readonly must: boolean }>>> = {
  pattern: { context: 'pattern', must: false },
  block: { context: 'block', must: true },
  quilt: { context: 'quilt', must: true },
  size: { context: 'size', must: false },
  colorway: { context: 'colorway', must: true },
  steps: { context: 'steps', must: true },
  turned: { context: 'turned', must: true },
  mirrored: { context: 'mirrored', must: true },
  place: { context: 'place', must: true },
  between: { context: 'between', must: true },
  border: { context: 'pieced', must: false },
};

/** The braces a statement opens, or undefined where it takes none: a border only opens some as `pieced` without a block. */
export function bracesOf(node: StatementNode): Context | undefined {
  if (node.kind === 'border' && (node.form !== 'pieced' || node.unit)) return undefined;
  return BRACES[node.kind]?.context;
}

/** The words that may follow in a line, by start rule: option names, their values, joining words. Units and `cut` aside. */
export const OPTION_WORDS: Readonly<Record<string, readonly string[]>> = {
  Import: ['as'],
  Fabric: [
    'width', 'value', 'light', 'medium', 'dark', 'directional', 'shrink', 'from', 'yardage', 'fat_quarters', 'strips', 'squares',
    'piece', 'by', 'times',
  ],
  Assorted: ['by', 'block', 'patch'],
  Block: ['by'],
  NamedSize: ['by', 'for'],
  Expect: ['at', 'most', 'least', 'exactly', 'by'],
  Steps: ['before', 'after'],
  Units: ['inches', 'centimetres', 'centimeters'],
  Paper: ['a4', 'letter'],
  Language: ['en', 'de'],
  Grid: ['by', 'rest'],
  Corner: ['top_left', 'top_right', 'bottom_left', 'bottom_right'],
  Centre: ['by'],
  Strip: ['top', 'right', 'bottom', 'left'],
  Box: ['by'],
  Patch: ['arc', 'grain'],
  PlaceAt: ['at', 'size', 'by'],
  Method: [
    'half_squares', 'two_at_a_time', 'eight_at_a_time', 'singles', 'geese', 'four_at_a_time', 'corners', 'strips', 'on', 'off', 'trim',
  ],
  Press: ['open', 'to_dark', 'nested'],
  Straight: ['by'],
  OnPoint: ['by'],
  Place: ['turned', 'mirrored'],
  Edges: ['corners', 'none', 'float'],
  Corners: ['none'],
  Sashing: ['cornerstones', 'outer'],
  Border: [
    'pieced', 'to', 'by', 'fit', 'top', 'sides', 'corners', 'squares', 'butted', 'mitred', 'mitered', 'lengthwise', 'corner', 'meet',
  ],
  Backing: ['overhang', 'width'],
  Batting: ['overhang'],
  Binding: ['single', 'double', 'straight', 'bias'],
  Quilting: ['in_the_ditch', 'allover', 'echo'],
};

/** Units of length; `fq` counts fat quarters. */
export const UNIT_WORDS = ['in', 'yd', 'mm', 'cm', 'm', 'fq'] as const;

/** How a cell may be turned, after `@`. */
export const TURN_WORDS = ['90', '180', '270', 'mirror', 'flip'] as const;

/** Words that stand before or in a value wherever one may stand. */
export const VALUE_WORDS = ['cut', 'sqrt'] as const;

/** `corners` and `float` begin a statement as well, but they are options first: they may be names. */
const MAY_BE_NAMES: readonly string[] = ['corners', 'float'];

const BY_WORD = new Map(
  (Object.keys(STATEMENT_WORDS) as Context[]).map((context) => [context, new Map(STATEMENT_WORDS[context].map((each) => [each.word, each.rule]))]),
);

/** Every word that begins a statement somewhere. */
export const ALL_STATEMENT_WORDS: ReadonlySet<string> = new Set(Object.values(STATEMENT_WORDS).flatMap((words) => words.map(({ word }) => word)));

const RESERVED: ReadonlySet<string> = new Set([...ALL_STATEMENT_WORDS, ...UNIT_WORDS, ...VALUE_WORDS, 'at'].filter((word) => !MAY_BE_NAMES.includes(word)));

/** Every word of the language, wherever it may stand. */
export const LANGUAGE_WORDS: ReadonlySet<string> = new Set([...ALL_STATEMENT_WORDS, ...Object.values(OPTION_WORDS).flat(), ...UNIT_WORDS, ...TURN_WORDS, ...VALUE_WORDS]);

/** The start rule of a statement word in these braces, or undefined where it begins no statement. */
export function ruleOf(context: Context, word: string): string | undefined {
  return BY_WORD.get(context)?.get(word);
}

/** Whether a word can never be a name: it begins a statement, is a unit, or is `at`, `cut` or `sqrt`. */
export function isReserved(word: string): boolean {
  return RESERVED.has(word);
}

/** Whether a word begins a statement at the top level and (`let` in `size { }` aside) nowhere else. */
export function isTopLevelWord(word: string): boolean {
  return BY_WORD.get('top')?.has(word) ?? false;
}

/** The braces a word may begin a statement in, in the order of the table. */
export function contextsOf(word: string): Context[] {
  return (Object.keys(STATEMENT_WORDS) as Context[]).filter((context) => ruleOf(context, word) !== undefined);
}

/** `quilt { }`; `the top level`. */
export function contextName(context: Context): string {
  if (context === 'top') return 'the top level';
  return context === 'pieced' ? 'border pieced { }' : `${context} { }`;
}

function entries(rules: Readonly<Record<string, string>>): StatementWord[] {
  return Object.entries(rules).map(([word, rule]) => ({ word, rule }));
}
