/**
 * Lines of the same shape are matched once. A shape is a statement with every name, number, text, colour and run of blanks
 * replaced by one stand-in; the grammar takes both or neither, and what it made of the shape is moved to the real columns.
 * Matching is nine tenths of the work, and a pattern has few shapes.
 */
import type { Columns } from '../text/place.ts';
import { textValue } from './build-cells.ts';
import { valueOf } from './build-numbers.ts';
import { Memo } from './memo.ts';
import { readCell, readWhole } from './read.ts';
import type { Built, ReadWhole } from './read.ts';
import { isPart } from './walk.ts';
import type { Part } from './walk.ts';
import { LANGUAGE_WORDS } from './words.ts';

interface Shape {
  readonly text: string;
  /** For each column of the shape, and the one behind it, the column it stands for; only the ends of stand-ins matter. */
  readonly columns: readonly number[];
}

/** Reads whole statements by their shapes, of which so many are remembered. */
export function readByShape(memory: number): ReadWhole {
  const templates = new Memo<Make | 'no'>(memory);
  const cells = new Memo<Make | 'no'>(memory);
  const cellOf: CellOf = (shape) => cells.get(shape, () => makerOfCell(shape) ?? 'no');
  return (text, rule) => {
    const shape = shapeOf(text);
    const template = templates.get(`${rule}\0${shape.text}`, () => templateOf(shape.text, rule, cellOf) ?? 'no');
    return template === 'no' ? undefined : (template(shape.columns, text) as Built);
  };
}

/** Cells stand in ever new rows, but there are few kinds of them: a row is read cell by cell. */
function templateOf(shape: string, rule: string, cellOf: CellOf): Make | undefined {
  const row = rule === 'Row' ? rowOf(shape, cellOf) : undefined;
  if (row) return row;
  const node = readWhole(shape, rule);
  return node && makerOf(node);
}

/** `no`: the grammar does not take it as a cell. */
type CellOf = (shape: string) => Make | 'no';

/** The row of the cells that stand apart by blanks outside of parentheses; undefined where one of them cannot be read. */
function rowOf(shape: string, cellOf: CellOf): Make | undefined {
  const cells: { readonly from: number; readonly make: Make }[] = [];
  for (const { from, to } of apart(shape)) {
    const make = cellOf(shape.slice(from, to));
    if (make === 'no') return undefined;
    cells.push({ from, make });
  }
  const [first] = cells;
  return first && ((columns, text) => {
    const own = { from: columns[first.from] ?? 0, to: text.length };
    return { kind: 'row_of_cells', word: own, ...own, cells: cells.map(({ from, make }) => make(columns, text, from)) };
  });
}

function makerOfCell(shape: string): Make | undefined {
  const cell = readCell(shape);
  return cell && makerOf(cell);
}

function* apart(shape: string): Generator<Columns> {
  let depth = 0;
  let from = 0;
  for (let at = 0; at <= shape.length; at += 1) {
    const character = shape[at] ?? ' ';
    if (character === '(') depth += 1;
    else if (character === ')') depth -= 1;
    if ((character !== ' ' || depth > 0) && at < shape.length) continue;
    if (at > from) yield { from, to: at };
    from = at + 1;
  }
}

/** Text, colour, word, turn, number, blanks; an inch mark goes with what it touches; anything else stands for itself. */
const TOKENS = /"""(?:\\[^]|(?!""")[^])*"""|"(?:\\[^]|[^"\\])*"|#[\da-f]{6}(?![\p{L}\p{M}\d_])|\p{L}[\p{L}\p{M}\d_]*|@\d+|(\d+)"?|[)¼-¾⅐-⅞]"|[ \t]+|[^]/giu;

function shapeOf(text: string): Shape {
  let shape = '';
  const columns: number[] = [];
  for (const { 0: token, 1: digits, index } of text.matchAll(TOKENS)) {
    const standIn = digits === undefined ? standInFor(token) : `1${token.slice(digits.length)}`;
    const lost = token.length - standIn.length;
    for (let column = 0; column < standIn.length; column++) columns.push(index + (column === 0 ? 0 : column + lost));
    shape += standIn;
  }
  columns.push(text.length);
  return { text: shape, columns };
}

function standInFor(token: string): string {
  const first = token[0] ?? '';
  if (first === '"') return token.startsWith('"""') && token.length > 5 ? '""""""' : '""';
  if (first === '#' && token.length > 1) return '#000000';
  if (first === ' ' || first === '\t') return ' ';
  return /^\p{L}/u.test(token) && !LANGUAGE_WORDS.has(token) ? 'a' : token;
}

/** Makes one part of a node, or one of its fields, from the columns of a text and the text itself; `start`: where in the shape the part's own columns begin. */
type Make = (columns: readonly number[], text: string, start?: number) => unknown;

/**
 * What makes the nodes of a shape in the columns of a text, saying what stands there. Which fields hold parts is found out
 * once for a shape, not for every line.
 */
function makerOf(template: Part): Make {
  const fields = Object.entries(template).flatMap(([name, field]: [string, unknown]): (readonly [string, Make])[] => {
    const make = fieldMaker(field);
    return make ? [[name, make]] : [];
  });
  const say = SAYS[template.kind ?? ''];
  return (columns, text, start = 0) => {
    const from = columns[start + template.from] ?? text.length;
    const to = columns[start + template.to] ?? text.length;
    const made: Record<string, unknown> = { ...template, from, to };
    for (const [name, make] of fields) made[name] = make(columns, text, start);
    if (say) made[say.field] = say.of(text.slice(from, to));
    return made;
  };
}

/** Undefined for a field that is the same in every line. */
function fieldMaker(field: unknown): Make | undefined {
  if (isPart(field)) return makerOf(field);
  if (!Array.isArray(field) || !field.some(isPart)) return undefined;
  const makers = field.map((each: unknown): Make => (isPart(each) ? makerOf(each) : () => each));
  return (columns, text, start) => makers.map((make) => make(columns, text, start));
}

/** The kinds of parts of which the text tells what they say, and in which field. */
const SAYS: Readonly<Record<string, { readonly field: string; readonly of: (written: string) => unknown }>> = {
  name: { field: 'text', of: (written) => written },
  text: { field: 'value', of: textValue },
  colour: { field: 'value', of: (written) => written.toLowerCase() },
  number: { field: 'value', of: valueOf },
};
