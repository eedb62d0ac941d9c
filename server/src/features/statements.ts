/** What each statement is for, in a line, and how one is begun: for completion, and hovers that have no figures to show. */
import type { Context } from '../syntax/words.ts';

export interface StatementHelp {
  readonly says: string;
  /** In the syntax of the protocol's snippets; the word itself when there is none. */
  readonly snippet?: string;
}

const BRACES = '{\n  $0\n}';

const TOP: Readonly<Record<string, StatementHelp>> = {
  pattern: { says: 'title, units, seam: what holds for the whole pattern', snippet: `pattern "\${1:Title}" ${BRACES}` },
  import: { says: 'brings in fabrics, blocks and numbers of another file', snippet: 'import "${1:blocks.quilt}" as ${2:lib}' },
  let: { says: 'a named number or length', snippet: 'let ${1:unit} = ${2:2"}' },
  fabric: { says: 'a fabric: its name here, its colour, its label', snippet: 'fabric ${1:name} #${2:888888} "${3:Label}"' },
  assorted: { says: 'one role, several prints, dealt in turn', snippet: 'assorted ${1:name} = ${2:prints} by ${3|block,patch|}' },
  block: { says: 'a block: a grid of cells, patches, or built from its centre', snippet: `block \${1:Name} \${2:6"} ${BRACES}` },
  quilt: { says: 'how the blocks are set, borders, backing, binding', snippet: 'quilt {\n  straight ${1:4} by ${2:5}\n  place { $0 }\n}' },
  size: { says: 'a named size with its own count of blocks', snippet: 'size ${1:name} ${2:4} by ${3:5}' },
  colorway: { says: 'other colours for the same fabrics', snippet: `colorway \${1:name} ${BRACES}` },
  expect: { says: 'what must come out, checked as you type', snippet: 'expect $0' },
  steps: { says: "the author's own wording of the steps", snippet: 'steps {\n  "$0"\n}' },
};

const PATTERN: Readonly<Record<string, StatementHelp>> = {
  by: { says: 'who made the pattern', snippet: 'by "$0"' },
  about: { says: 'a few words about the pattern', snippet: 'about "$0"' },
  units: { says: 'what a length without a unit counts in', snippet: 'units ${1|inches,centimetres|}' },
  seam: { says: 'the seam allowance', snippet: 'seam ${1:1/4"}' },
  round_up: { says: 'cut sizes are rounded up to this', snippet: 'round_up ${1:1/8"}' },
  yardage: { says: 'bought lengths are rounded up to this', snippet: 'yardage ${1:1/8 yd}' },
  spare: { says: 'extra fabric, for mistakes', snippet: 'spare ${1:5}%' },
  layers: { says: 'folded fabrics that are cut on one another', snippet: 'layers ${1:3}' },
  paper: { says: 'the paper that the booklet and the templates are printed on', snippet: 'paper ${1|a4,letter|}' },
  level: { says: 'for whom the pattern is, printed on the cover', snippet: 'level "${1:Beginner}"' },
  language: { says: "the language of the booklet's own words", snippet: 'language ${1|en,de|}' },
  method: { says: 'how half squares, geese and strips are made', snippet: 'method ${1|half_squares,geese,strips|} $0' },
  press: { says: 'which way seams are pressed', snippet: 'press ${1|nested,open,to_dark|}' },
};

const SYMMETRY: Readonly<Record<string, StatementHelp>> = {
  turned: { says: 'repeats its content about the centre of the block', snippet: `turned \${1|2,4|} ${BRACES}` },
  mirrored: { says: 'adds the mirror image of its content', snippet: `mirrored ${BRACES}` },
};

const BLOCK: Readonly<Record<string, StatementHelp>> = {
  ...SYMMETRY,
  grid: { says: 'how wide the columns and how high the rows are', snippet: 'grid ${1:1 1} by ${2:1 1}' },
  corner: { says: 'squares laid on corners, sewn corner to corner and flipped', snippet: 'corner ${1:cloth} ${2:1"} ${3:top_left}' },
  centre: { says: 'the middle of a block that is built outwards', snippet: 'centre ${1:cloth} ${2:2"}' },
  strip: { says: 'a strip sewn to one side', snippet: 'strip ${1:1"} ${2|top,right,bottom,left|} $0' },
  round: { says: 'four strips: top, right, bottom, left', snippet: 'round ${1:1"} $0' },
  box: { says: 'the units that corners of patches count in', snippet: 'box ${1:2} by ${2:2}' },
  patch: { says: 'a patch by its corners', snippet: 'patch ${1:cloth} ${2:0,0}  ${3:1,0}  ${4:0,1}' },
  place: { says: 'sets another block in', snippet: 'place ${1:Block} at ${2:0,0} size ${3:1} by ${4:1}' },
  method: { says: 'how half squares, geese and strips of this block are made', snippet: 'method ${1|half_squares,geese,strips|} $0' },
  press: { says: 'which way seams are pressed', snippet: 'press ${1|nested,open,to_dark|}' },
  templates: { says: 'printed shapes instead of ruler cuts' },
  foundation: { says: 'sewn on printed paper' },
};

const QUILT: Readonly<Record<string, StatementHelp>> = {
  straight: { says: 'blocks side by side: across by down', snippet: 'straight ${1:4} by ${2:5}' },
  on_point: { says: 'blocks set on their corners: across by down', snippet: 'on_point ${1:4} by ${2:5}' },
  place: { says: 'the blocks; what stands here is repeated to fill the setting', snippet: 'place { $0 }' },
  between: { says: 'on point: what fills the places between', snippet: 'between { $0 }' },
  rows: { says: 'a quilt of rows of this width', snippet: 'rows ${1:60"}' },
  row: { says: 'one row of a quilt of rows', snippet: 'row $0' },
  grid: { says: 'a setting of unequal rows and columns', snippet: 'grid ${1:6" 6"} by ${2:6" 6"}' },
  edges: { says: 'on point: the triangles along the sides', snippet: 'edges ${1:cloth}' },
  corners: { says: 'on point: the triangles in the corners', snippet: 'corners ${1:cloth}' },
  float: { says: 'on point: how far the blocks float off the edge', snippet: 'float ${1:1"}' },
  sashing: { says: 'strips between the blocks', snippet: 'sashing ${1:1"} ${2:cloth}' },
  border: { says: 'a border, from the inside out', snippet: 'border ${1:2"} ${2:cloth}' },
  backing: { says: 'the fabric of the back', snippet: 'backing ${1:cloth}' },
  batting: { says: 'how far the batting stands out', snippet: 'batting overhang ${1:4"}' },
  sleeve: { says: 'a hanging sleeve of a fabric', snippet: 'sleeve ${1:cloth}' },
  binding: { says: 'the strip round the edge', snippet: 'binding cut ${1:2 1/4"} ${2:cloth}' },
  quilting: { says: 'how it is quilted', snippet: 'quilting "$0"' },
};

const HELP: Readonly<Partial<Record<Context, Readonly<Record<string, StatementHelp>>>>> = {
  top: TOP, pattern: PATTERN, block: BLOCK, turned: BLOCK, mirrored: BLOCK, quilt: QUILT, size: { ...QUILT, let: TOP.let ?? { says: '' } },
};

/** Undefined for a word that begins no statement there. */
export function helpOf(context: Context, word: string): StatementHelp | undefined {
  const known = HELP[context];
  const usual = word === 'center' ? 'centre' : word;
  return known && Object.hasOwn(known, usual) ? known[usual] : undefined;
}
