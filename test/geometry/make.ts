/**
 * Model instances by hand, for tests of the geometry alone. Cells are read from a small notation, which is the language's own:
 * `a/b`, `(a|b)-(c|d)`, `(a/b)@90`, `Star@mirror`, `<`, `^`, `a*2|b`. Names with a capital are blocks, given beside.
 */
import type { Exact } from '../../server/src/exact/number.ts';
import { fraction } from '../../server/src/exact/number.ts';
import { parseNumber } from '../../server/src/exact/parse.ts';
import type {
  BlockBody, BlockInstance, BlockUse, BorderSpec, CellRow, CellSpec, Fabric, FabricUse, FlippedCorner, GridBody, GridLine, PatchItem, PatchesBody, QuiltSpec, Rules,
  SashingSpec, Setting, Symmetry, TileSpec, TurnBy,
} from '../../server/src/model/pattern.ts';
import type { BlockNode, BorderNode, Statement } from '../../server/src/syntax/tree.ts';
import type { Place } from '../../server/src/text/place.ts';

export type Blocks = Readonly<Record<string, BlockInstance>>;

/** A whole number, a fraction (`5/2`) or an Exact. */
export type Number_ = number | string | Exact;

export function num(value: Number_): Exact {
  if (typeof value === 'number') return Number.isInteger(value) ? fraction(value) : fraction(value * 1024, 1024);
  if (typeof value !== 'string') return value;
  const parsed = parseNumber(value);
  if (!parsed) throw new Error(`No number: ${value}`);
  return parsed;
}

/** A place of its own, recognisable by its text. */
export function place(text = ''): Place {
  return { line: { text, eol: '\n', source: 'test' }, from: 0, to: text.length };
}

const fabrics = new Map<string, Fabric>();

export function fabric(name: string): Fabric {
  const known = fabrics.get(name);
  if (known) return known;
  const made: Fabric = {
    name, colour: '#888888', label: name, width: fraction(40), directional: false, shrink: fraction(0), source: { kind: 'yardage' }, place: place(name),
  };
  fabrics.set(name, made);
  return made;
}

export function fabricUse(name: string): FabricUse {
  return { kind: 'fabric', fabric: fabric(name), place: place(name) };
}

export function blockUse(block: BlockInstance, ...turns: TurnBy[]): BlockUse {
  return { kind: 'block', block, turns, place: place(block.name) };
}

// ---------------------------------------------------------------------------------------------- cells

export function cell(text: string, blocks: Blocks = {}): CellSpec {
  const reader = { text, at: 0, blocks };
  const read = readSplit(reader);
  if (reader.at < text.length) throw new Error(`Left over in ${text}: ${text.slice(reader.at)}`);
  return read;
}

/** One string a row, cells apart by blanks outside parentheses. */
export function rows(lines: readonly string[], blocks: Blocks = {}): CellRow[] {
  return lines.map((line) => ({ cells: (line.match(/(?:\([^ ]*\)|[^ ])+/g) ?? []).map((text) => cell(text, blocks)), place: place(line) }));
}

interface Reader {
  readonly text: string;
  at: number;
  readonly blocks: Blocks;
}

function readSplit(reader: Reader): CellSpec {
  const start = reader.at;
  const parts = [readWeighted(reader)];
  const seam = reader.text[reader.at];
  if (seam !== '/' && seam !== '\\' && seam !== '|' && seam !== '-') return parts[0]?.cell ?? { kind: 'bad', place: place() };
  while (reader.text[reader.at] === seam) {
    reader.at += 1;
    parts.push(readWeighted(reader));
  }
  return { kind: 'split', seam, parts, seams: [], place: place(reader.text.slice(start, reader.at)) };
}

function readWeighted(reader: Reader): { cell: CellSpec; weight: Exact } {
  const read = readTurned(reader);
  const weight = /^\*(\d+)/.exec(reader.text.slice(reader.at));
  if (!weight?.[1]) return { cell: read, weight: fraction(1) };
  reader.at += weight[0].length;
  return { cell: read, weight: fraction(Number(weight[1])) };
}

function readTurned(reader: Reader): CellSpec {
  const grouped = reader.text[reader.at] === '(';
  const inner = readSimple(reader);
  const turns: TurnBy[] = [];
  for (let match = nextTurn(reader); match; match = nextTurn(reader)) turns.push(match);
  if (turns.length === 0) return inner;
  if (inner.kind === 'block' && !grouped) return { ...inner, turns };
  return { kind: 'turned', inner, turns, place: place(reader.text) };
}

function nextTurn(reader: Reader): TurnBy | undefined {
  const match = /^@(90|180|270|mirror|flip)/.exec(reader.text.slice(reader.at));
  if (!match) return undefined;
  reader.at += match[0].length;
  return match[1] as TurnBy;
}

function readSimple(reader: Reader): CellSpec {
  const rest = reader.text.slice(reader.at);
  if (rest.startsWith('(')) {
    reader.at += 1;
    const inner = readSplit(reader);
    if (reader.text[reader.at] !== ')') throw new Error(`No ) in ${reader.text}`);
    reader.at += 1;
    return inner;
  }
  const name = /^([<^?]|\w+)/.exec(rest)?.[0];
  if (!name) throw new Error(`No cell in ${rest}`);
  reader.at += name.length;
  if (name === '<') return { kind: 'goes_on', direction: 'left', place: place(name) };
  if (name === '^') return { kind: 'goes_on', direction: 'above', place: place(name) };
  if (name === '?') return { kind: 'bad', place: place(name) };
  const block = reader.blocks[name];
  return block ? blockUse(block) : fabricUse(name);
}

// ---------------------------------------------------------------------------------------------- blocks

export interface BlockOptions {
  readonly name?: string;
  readonly size?: Number_ | readonly [Number_, Number_];
  readonly corners?: readonly FlippedCorner[];
}

let made = 0;

export function block(body: BlockBody, { name = 'Block', size, corners = [] }: BlockOptions = {}): BlockInstance {
  made += 1;
  const where = place(name);
  const node: BlockNode = { kind: 'block', from: 0, to: 0, word: { from: 0, to: 0 }, parameters: [] };
  const statement: Statement<BlockNode> = { node, line: where.line, place: where };
  const sides = size === undefined ? undefined : Array.isArray(size) ? (size as readonly [Number_, Number_]) : ([size, size] as readonly [Number_, Number_]);
  return {
    key: `${name} ${made}`,
    name,
    definition: { name, origin: 'file', statement, parameters: [], place: where },
    ...(sides ? { size: { width: num(sides[0]), height: num(sides[1]), place: place(`size of ${name}`) } } : {}),
    body,
    corners,
    methods: {},
    templates: false,
    foundation: false,
    findings: [],
  };
}

/** `2 1 2`, `3" 1 1/2" rest`: a proportion, a length or `rest`, apart by blanks. */
export function lines(text: string): GridLine[] {
  return text.split(' ').map((word): GridLine => {
    if (word === 'rest') return { kind: 'rest', place: place(word) };
    return { kind: word.endsWith('"') ? 'length' : 'proportion', value: num(word.replace('"', '')), place: place(word) };
  });
}

export interface GridOptions extends BlockOptions {
  readonly blocks?: Blocks;
  readonly columns?: string;
  readonly rows?: string;
  readonly symmetry?: { readonly kind: Symmetry['kind']; readonly times: number };
}

export function grid(content: readonly string[], options: GridOptions = {}): BlockInstance {
  const body: GridBody = {
    kind: 'grid',
    content: rows(content, options.blocks),
    ...(options.columns ? { columns: lines(options.columns), gridPlace: place('grid') } : {}),
    ...(options.rows ? { rows: lines(options.rows) } : {}),
    ...(options.symmetry ? { symmetry: symmetry(options.symmetry.kind, options.symmetry.times) } : {}),
  };
  return block(body, options);
}

export function symmetry(kind: Symmetry['kind'], times: number): Symmetry {
  return { kind, times, place: place(kind) };
}

/** `patch sky 0,0 1,0 0,1`, with fractions as coordinates. */
export function patch(text: string, arcs: readonly (Exact | undefined)[] = []): PatchItem {
  const [, name = '', ...corners] = text.split(' ');
  return {
    kind: 'patch',
    fabric: fabric(name),
    corners: corners.map((corner) => {
      const [x = '', y = ''] = corner.split(',');
      return { x: num(x), y: num(y), place: place(corner) };
    }),
    arcs: corners.map((_, i) => arcs[i]),
    place: place(text),
  };
}

export function patches(items: readonly PatchItem[], options: BlockOptions & { readonly box?: readonly [Number_, Number_] } = {}): BlockInstance {
  const body: PatchesBody = {
    kind: 'patches',
    items,
    ...(options.box ? { box: { width: num(options.box[0]), height: num(options.box[1]), place: place('box') } } : {}),
  };
  return block(body, options);
}

// ---------------------------------------------------------------------------------------------- quilts

export const RULES: Rules = {
  units: 'inches', seam: fraction(1, 4), roundUp: fraction(1, 8), yardage: fraction(9, 2), spare: fraction(1, 20), methods: {},
};

const BORDER: BorderNode = { kind: 'border', form: 'plain', from: 0, to: 6, word: { from: 0, to: 6 } };

export interface QuiltOptions {
  readonly blocks?: Blocks;
  readonly place?: readonly string[];
  readonly symmetry?: { readonly kind: Symmetry['kind']; readonly times: number };
  readonly between?: readonly string[];
  readonly edges?: FabricUse | BlockUse;
  readonly corners?: FabricUse | BlockUse | 'none';
  readonly float?: Number_;
  readonly sashing?: Partial<SashingSpec>;
  readonly borders?: readonly BorderSpec[];
}

export function quilt(setting: Setting, options: QuiltOptions = {}): QuiltSpec {
  const tile = (content: readonly string[], by?: QuiltOptions['symmetry']): TileSpec => ({
    rows: rows(content, options.blocks),
    place: place('place'),
    ...(by ? { symmetry: symmetry(by.kind, by.times) } : {}),
  });
  const where = place('quilt');
  return {
    statement: {
      node: { kind: 'quilt', from: 0, to: 5, word: { from: 0, to: 5 } }, line: where.line, place: where,
      body: { open: where, statements: (options.borders ?? []).map((each) => ({ node: BORDER, line: each.place.line, place: each.place })) },
    },
    setting,
    ...(options.place ? { tile: tile(options.place, options.symmetry) } : {}),
    ...(options.between ? { between: tile(options.between) } : {}),
    ...(options.edges ? { edges: { filling: options.edges, place: place('edges') } } : {}),
    ...(options.corners ? { cornerFilling: { filling: options.corners, place: place('corners') } } : {}),
    ...(options.float ? { float: { width: num(options.float), place: place('float') } } : {}),
    ...(options.sashing ? { sashing: { filling: fabricUse('sash'), outer: false, place: place('sashing'), ...options.sashing } } : {}),
    borders: options.borders ?? [],
    quilting: [],
    findings: [],
  };
}

export function straight(across: number, down: number): Setting {
  return { kind: 'straight', across, down, place: place('straight') };
}

export function onPoint(across: number, down: number): Setting {
  return { kind: 'on_point', across, down, place: place('on_point') };
}

export function border(top: Number_, sides: Number_ = top, corners: 'butted' | 'mitred' | FabricUse | BlockUse = 'butted'): BorderSpec {
  const kind = typeof corners === 'string' ? { kind: corners } : { kind: 'squares' as const, filling: corners, place: place('squares') };
  return { kind: 'plain', top: num(top), sides: num(sides), fabric: fabric('border'), corners: kind, lengthwise: false, place: place('border') };
}

export function pieced(units: readonly BlockUse[], options: { readonly corner?: FabricUse | BlockUse; readonly meet?: boolean } = {}): BorderSpec {
  return { kind: 'pieced', units, meet: options.meet ?? false, ...(options.corner ? { corner: options.corner } : {}), place: place('border pieced') };
}

export function fitBorder(atLeast: Number_): BorderSpec {
  return { kind: 'fit', atLeast: num(atLeast), fabric: fabric('spacer'), corners: { kind: 'butted' }, lengthwise: false, place: place('border fit') };
}

export function borderTo(width: Number_, height: Number_): BorderSpec {
  return { kind: 'to', width: num(width), height: num(height), fabric: fabric('spacer'), corners: { kind: 'butted' }, lengthwise: false, place: place('border to') };
}
