/** The words and units that may follow in a line, by what stands before them. */
import { BEDS } from '../model/sizes.ts';
import { OPTION_WORDS } from '../syntax/words.ts';
import type { Completion, Spot } from './completion-item.ts';

export interface Options {
  readonly items: readonly Completion[];
  /** Nothing else can stand here. */
  readonly only: boolean;
}

/** By grammar rule and the word before; each of these words asks for one of its own. */
const AFTER: Readonly<Record<string, readonly string[]>> = {
  'Fabric value': ['light', 'medium', 'dark'],
  'Fabric from': ['yardage', 'fat_quarters', 'strips', 'squares', 'piece'],
  'Assorted by': ['block', 'patch'],
  'Units units': ['inches', 'centimetres'],
  'Paper paper': ['a4', 'letter'],
  'Language language': ['en', 'de'],
  'Press press': ['open', 'to_dark', 'nested'],
  'Method method': ['half_squares', 'geese', 'strips'],
  'Method half_squares': ['two_at_a_time', 'eight_at_a_time', 'singles'],
  'Method geese': ['four_at_a_time', 'singles', 'corners'],
  'Method strips': ['on', 'off'],
  'Border corners': ['butted', 'mitred', 'squares'],
  'Expect at': ['most', 'least'],
  'NamedSize for': [...BEDS.keys()],
};

/** Words that only stand behind another, or are another spelling: not offered by themselves. */
const NOT_ALONE: Readonly<Record<string, readonly string[]>> = {
  Fabric: ['light', 'medium', 'dark', 'yardage', 'fat_quarters', 'strips', 'squares', 'piece', 'by', 'times'],
  Assorted: ['block', 'patch'],
  Units: ['centimeters'],
  Method: ['two_at_a_time', 'eight_at_a_time', 'singles', 'four_at_a_time', 'corners', 'on', 'off', 'half_squares', 'geese', 'strips'],
  Border: ['butted', 'mitred', 'mitered', 'squares'],
  Expect: ['most', 'least'],
};

/** These may stand more than once. */
const REPEATED = ['by', 'arc'];

const SAYS: Readonly<Record<string, string>> = {
  width: 'usable width of the cloth', value: 'light, medium or dark', directional: 'the print has an up', shrink: 'shrinks by this much', from: 'what it is cut from',
  corners: 'how the corners are made', lengthwise: 'cut along the selvage', pieced: 'of repeated units', to: 'brings the top to this size', fit: 'as wide as makes the next border fit',
  top: 'top and bottom', sides: 'left and right', meet: 'mirrored at the middle of each side', corner: 'the block in the corners', overhang: 'how far it stands out on each side',
  outer: 'around the outside, too', cornerstones: 'squares where strips cross', single: 'one layer', double: 'two layers', bias: 'cut on the bias', straight: 'cut on the straight grain',
  turned: 'the tile is a quarter, turned', mirrored: 'the tile is a quarter, mirrored', as: 'under a name of its own', for: 'for a bed of this name', by: 'across by down',
  trim: 'cut over and trimmed to size', rest: 'takes up what is left', arc: 'bends the edge', grain: 'degrees from upright',
};

/** Statements in which a bare number is followed by a unit. */
const OF_LENGTHS = new Set(['Let', 'Fabric', 'Block', 'Seam', 'RoundUp', 'Yardage', 'Grid', 'Corner', 'Centre', 'Strip', 'Round', 'Method', 'Rows', 'QuiltRow', 'Float', 'Sashing', 'Border', 'Backing', 'Batting', 'Binding', 'Quilting', 'Expect', 'Edges']);

export function optionsFor({ rule, lead, first }: Spot): Options {
  if (rule === undefined) return { items: [], only: false };
  const words = lead.replace(/"[^"]*"/g, ' ').match(/[\p{L}_]+/gu) ?? [];
  const asked = AFTER[`${rule} ${words.at(-1) ?? ''}`];
  if (asked && /\s$/.test(lead)) return { items: asked.map((text) => option(text, words.at(-1) ?? '')), only: true };
  const hidden = NOT_ALONE[rule] ?? [];
  const known = rule === 'Border' && /\bpieced\b/.test(lead) ? ['corner', 'meet'] : (OPTION_WORDS[rule] ?? []);
  const free = known.filter((word) => !hidden.includes(word) && (REPEATED.includes(word) || !words.slice(1).includes(word)));
  return { items: free.map((text) => option(text, first ?? '')), only: false };
}

/** Behind a number. */
export function unitsFor({ rule, lead }: Spot): readonly Completion[] {
  if (rule === undefined || !OF_LENGTHS.has(rule) || !/[\d½¼¾⅓⅔⅛⅜⅝⅞)]\s?$/.test(lead)) return [];
  return Object.entries(UNITS).map(([text, detail]) => ({ text, kind: 'unit', detail }));
}

const UNITS: Readonly<Record<string, string>> = { in: 'inches', cm: 'centimetres', mm: 'millimetres', m: 'metres', yd: 'yards' };

function option(text: string, of: string): Completion {
  return { text, kind: 'option', detail: SAYS[text] ?? of };
}
