/** Builders for the statements. Most are a list: which part of the rule is which field of the node. */
import type { Node } from 'ohm-js';
import type { Columns } from '../text/place.ts';
import { columnsOf, part, word } from './build.ts';
import type { Builder, Builders, Read } from './build.ts';
import type { Arc, Cell, CornerPoint, FabricSource, Length, Name, PatchNode, Proportion, Quantity, StatementKind, Word } from './tree.ts';

/** Some fields of a node, with where they stand: what an option of a line gives. */
type Fields = Columns & Readonly<Record<string, unknown>>;

/**
 * A statement of this kind: its word, then a field for each part of the rule. `''` is a part that is no field, `...` one that
 * gives fields itself (or a list of such parts: the options).
 */
function statement(kind: StatementKind, ...fields: readonly string[]): Builder {
  return (node, read) => {
    const first = part(node, 0) ?? node;
    const built: Record<string, unknown> = { kind, word: columnsOf(first) };
    fields.forEach((field, index) => {
      if (field === '...') spread(built, read(part(node, index + 1)));
      else if (field !== '') built[field] = read(part(node, index + 1));
    });
    return { ...built, ...columnsOf(node) };
  };
}

/** The fields of an option: its own name or a given one for the part at an index. */
function option(fields: Readonly<Record<string, number>>): Builder {
  return (node, read): Fields => ({
    ...Object.fromEntries(Object.entries(fields).map(([field, index]) => [field, read(part(node, index))])),
    ...columnsOf(node),
  });
}

/** Adds the fields of options; a field that is there already stays, and the later one is noted in `twice`. */
function spread(built: Record<string, unknown>, given: readonly Fields[] | Fields | undefined): void {
  for (const { from, to, ...fields } of [given ?? []].flat()) {
    for (const [field, value] of Object.entries(fields)) {
      if (built[field] === undefined) built[field] = value;
      else if (value !== undefined) built['twice'] = [...((built['twice'] as Columns[] | undefined) ?? []), { from, to }];
    }
  }
}

export const statementBuilders: Builders = {
  Pattern: statement('pattern', 'title'),
  Import: statement('import', 'path', 'as'),
  As: (node, read) => read(part(node, 1)),
  Let: statement('let', 'name', '', 'value'),
  Fabric: statement('fabric', 'name', 'colour', 'label', '...'),
  FabricOption_width: option({ width: 1 }),
  FabricOption_value: option({ value: 1 }),
  FabricOption_directional: option({ directional: 0 }),
  FabricOption_shrink: option({ shrink: 1 }),
  FabricOption_from: option({ source: 1 }),
  FabricSource_yardage: (node, read): FabricSource => ({ source: read(part(node, 0)), ...columnsOf(node) }),
  FabricSource_fat_quarters: (node, read): FabricSource => ({ source: read(part(node, 0)), size: read(part(node, 1)), ...columnsOf(node) }),
  FabricSource_cut: (node, read): FabricSource => ({ source: read(part(node, 0)), length: read(part(node, 1)), ...columnsOf(node) }),
  FabricSource_piece: (node, read): FabricSource => ({ source: read(part(node, 0)), size: read(part(node, 1)), count: read(part(node, 2)), ...columnsOf(node) }),
  Pieces: (node, read) => read(part(node, 1)),
  FatQuarterSize: (node, read) => read(part(node, 1)),
  Assorted: (node, read) => ({ ...(statement('assorted', 'name', '...')(node, read) as object), ...printsOf(part(node, 2), read) }),
  Prints_named: (node, read): Fields => ({ prints: read<Name[]>(part(node, 1)), by: read(part(node, 2)), ...columnsOf(node) }),
  Prints_counted: option({ count: 0, colour: 1, label: 2 }),
  DealtBy: (node, read) => read(part(node, 1)),
  Block: (node, read) => ({ parameters: [], ...(statement('block', '...', 'size')(node, read) as object) }),
  head_read: head(0, 1),
  head_apart: head(0, 2),
  head_broken: head(0, 1),
  head_plain: head(0, -1),
  Patchwork: statement('quilt'),
  NamedSize: statement('size', 'name', '...'),
  Extent_counted: option({ count: 0, bed: 1 }),
  Extent_bed: option({ bed: 0 }),
  ForBed: (node, read) => read(part(node, 1)),
  Colorway: statement('colorway', 'name'),
  Expect: (node, read) => {
    const { cut, path = [], comparison = 'exactly', ...rest } = statement('expect', 'cut', 'path', 'comparison', 'value', 'by')(node, read) as Record<string, unknown>;
    return { ...rest, cut: cut !== undefined, path, comparison };
  },
  ByQuantity: (node, read) => read(part(node, 1)),
  path: (node, read): Name[] => [read<Name>(part(node, 0)), ...read<Name[]>(part(node, 2))],
  Comparison_at_most: () => 'at_most',
  Comparison_at_least: () => 'at_least',
  Comparison_exactly: () => 'exactly',
  Steps: statement('steps', '...'),
  StepsPlace: option({ where: 0, of: 1 }),

  By: statement('by', 'text'),
  About: statement('about', 'text'),
  Units: statement('units', 'units'),
  Seam: statement('seam', 'length'),
  RoundUp: statement('round_up', 'length'),
  Yardage: statement('yardage', 'length'),
  Spare: statement('spare', 'percent'),
  Layers: statement('layers', 'count'),
  Paper: statement('paper', 'paper'),
  Level: statement('level', 'text'),
  Language: statement('language', 'language'),

  Grid: statement('grid', 'columns', '', 'rows'),
  Proportions: (node, read): Proportion[] => read<Proportion[]>(part(node, 0)),
  proportion: (node, read) => read(part(node, 0)),
  Corner: (node, read) => {
    const { corner, others, ...rest } = statement('corner', 'fabric', 'length', 'corner', 'others')(node, read) as Record<string, unknown>;
    return { ...rest, corners: [corner, ...((others as unknown[] | undefined) ?? [])].filter((each) => each !== undefined) };
  },
  Centre: statement('centre', 'filling', 'size'),
  Strip: statement('strip', 'length', 'side', 'fabric'),
  Round: (node, read) => {
    const { fabric, others, ...rest } = statement('round', 'length', 'fabric', 'others')(node, read) as Record<string, unknown>;
    return { ...rest, fabrics: [fabric, ...((others as unknown[] | undefined) ?? [])].filter((each) => each !== undefined) };
  },
  Box: statement('box', 'size'),
  Patch: (node, read) => patch(statement('patch', 'fabric')(node, read) as PatchNode, read<PatchPart[]>(part(node, 2))),
  PatchPart_corner: (node, read): PatchPart => ({ corner: read<CornerPoint | undefined>(part(node, 0)), ...columnsOf(node) }),
  PatchPart_arc: (node, read): PatchPart => ({ radius: read<Quantity | undefined>(part(node, 1)), ...columnsOf(node) }),
  PatchPart_grain: (node, read): PatchPart => ({ grain: read<Quantity | undefined>(part(node, 1)), ...columnsOf(node) }),
  Turned: statement('turned', 'times'),
  Mirrored: statement('mirrored', 'times'),
  PlaceAt: statement('place_at', 'block', 'at', '...'),
  At: (node, read) => read(part(node, 1)),
  PlaceAtOption: option({ size: 1 }),
  Method_half_squares: statement('method', 'unit', 'way', '...'),
  Method_geese: statement('method', 'unit', 'way', '...'),
  Method_strips: statement('method', 'unit', 'way'),
  Method_unknown: statement('method'),
  Trim: option({ trim: 0, trimBy: 1 }),
  Press: statement('press', 'way'),
  Templates: statement('templates'),
  Foundation: statement('foundation'),

  Straight: statement('straight', 'count'),
  OnPoint: statement('on_point', 'count'),
  Place: statement('place', '...'),
  PlaceSymmetry: option({ symmetry: 0, times: 1 }),
  Between: statement('between'),
  Rows: statement('rows', 'width'),
  QuiltRow_spacer: (node, read) => ({ ...(statement('row', 'height', 'fabric')(node, read) as object), cells: [] }),
  QuiltRow_cells: statement('row', 'cells'),
  Edges: statement('edges', 'filling', '...'),
  EdgesOption_corners: option({ corners: 1 }),
  EdgesOption_float: option({ float: 1 }),
  Corners: statement('corners', 'filling'),
  Float: statement('float', 'length'),
  Sashing: statement('sashing', 'width', 'filling', '...'),
  SashingOption_cornerstones: option({ cornerstones: 1 }),
  SashingOption_outer: option({ outer: 0 }),
  Border_pieced: border('pieced', '', 'unit', '...'),
  Border_to: border('to', '', 'size', 'fabric', '...'),
  Border_fit: border('fit', '', 'width', 'fabric', '...'),
  Border_unequal: border('unequal', '', 'top', '', 'sides', 'fabric', '...'),
  Border_plain: border('plain', 'width', 'fabric', '...'),
  Unit: (node, read) => read(part(node, node.numChildren - 1)),
  PiecedOption_corner: option({ cornerBlock: 1 }),
  PiecedOption_meet: option({ meet: 0 }),
  BorderOption_corners: (node, read) => ({ ...read<Fields | undefined>(part(node, 1)), ...columnsOf(node) }),
  BorderOption_lengthwise: option({ lengthwise: 0 }),
  BorderCorners_squares: option({ corners: 0, cornerFabric: 1 }),
  BorderCorners_sewn: option({ corners: 0 }),
  Backing: statement('backing', 'fabric', '...'),
  BackingOption_overhang: option({ overhang: 1 }),
  BackingOption_width: option({ width: 1 }),
  Sleeve: statement('sleeve', 'fabric'),
  Batting: statement('batting', '...'),
  BattingOption: option({ overhang: 1 }),
  Binding: statement('binding', 'width', 'fabric', '...'),
  BindingOption: (node, read): Fields => {
    const written = read<Word>(part(node, 0));
    return { [/single|double/.test(written.word) ? 'layers' : 'grain']: written, ...columnsOf(node) };
  },
  Quilting: (node, read) => {
    const { one, others, ...rest } = statement('quilting', 'one', 'others')(node, read) as Record<string, unknown>;
    return { ...rest, parts: [one, ...((others as unknown[] | undefined) ?? [])].filter((each) => each !== undefined) };
  },
  QuiltingPart_echo: (node, read) => {
    const length = read<Length | undefined>(part(node, 1));
    return length && { kind: 'echo', length, ...columnsOf(node) };
  },

  Recolour: (node, read) => ({ ...plainLine('recolour', node), fabric: read(part(node, 0)), colour: read(part(node, 1)), label: read(part(node, 2)) }),
  Wording: (node, read) => {
    const text = read(part(node, 0));
    return { ...plainLine(text === undefined ? 'junk' : 'wording', node), ...(text === undefined ? {} : { text }) };
  },
  Row: (node, read) => ({ ...plainLine('row_of_cells', node), cells: read<Cell[]>(part(node, 0)) }),
  Cells: (node, read): Cell[] => read<Cell[]>(part(node, 0)),

  Options: (node, read) => read(part(node, 0)),
  Need_skipped: (node, read) => read(part(node, 1)),
  missing: () => undefined,
  junk: () => undefined,
  strayProportion: () => undefined,

  ...Object.fromEntries([
    'bindingWord', 'cornerWord', 'dealing', 'geese', 'geeseWay', 'halfSquares', 'halfSquaresWay', 'lightness', 'onOff', 'paperSize',
    'pressing', 'quilted', 'side', 'symmetry', 'tongue', 'before', 'after', 'directional', 'fatQuarters', 'yardage', 'piece', 'squares', 'strips',
    'rest', 'trim', 'outer', 'meet', 'lengthwise', 'cut', 'none',
  ].map((rule) => [rule, word()])),
  sewn: word({ mitered: 'mitred' }),
  unitSystem: word({ centimeters: 'centimetres' }),
};

interface PatchPart extends Columns {
  readonly corner?: CornerPoint;
  readonly radius?: Quantity;
  readonly grain?: Quantity;
}

/** Corners and arcs in order; an arc knows the corner it follows. A second arc behind a corner, and a second grain, are in `twice`. */
function patch(built: PatchNode, parts: readonly PatchPart[]): PatchNode & { readonly twice: readonly Columns[] } {
  const corners: CornerPoint[] = [];
  const arcs: Arc[] = [];
  const twice: Columns[] = [];
  let grain: Quantity | undefined;
  for (const { corner, radius, grain: angle, from, to } of parts) {
    if (corner) corners.push(corner);
    if ((radius && arcs.at(-1)?.after === corners.length - 1) || (angle && grain)) twice.push({ from, to });
    else if (radius) arcs.push({ kind: 'arc', after: corners.length - 1, radius, columns: { from, to }, from, to });
    grain ??= angle;
  }
  return { ...built, corners, arcs, grain, twice };
}

function border(form: string, ...fields: readonly string[]): Builder {
  return (node, read) => ({ ...(statement('border', ...fields)(node, read) as object), form });
}

function head(name: number, parameters: number): Builder {
  return (node, read): Fields => ({ name: read(part(node, name)), parameters: read(part(node, parameters)) ?? [], ...columnsOf(node) });
}

function printsOf(prints: Node | undefined, read: Read): object {
  return { prints: read<{ prints?: Name[] } | undefined>(prints)?.prints ?? [] };
}

/** A line without a word of its own: its first part stands for it. */
function plainLine(kind: StatementKind, node: Node): object {
  const columns = columnsOf(node);
  return { kind, word: columns, ...columns };
}
