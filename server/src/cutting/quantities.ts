/**
 * Every quantity a maker may ask a finished pattern for, by its path: `width`, `Capstan.count`, `Capstan.ink`, `ink.strips`,
 * `border_1.width`. One table, which expectations and the placeholders of step wording both read; whatever an output prints is in it.
 */
import { ZERO, add, equals, fraction, max, mul, sum, type Exact } from '../exact/number.ts';
import type { BlockInQuilt, QuiltLayout } from '../geometry/layout.ts';
import { countPlaced, patchesByFabric } from '../geometry/walk.ts';
import type { Rules } from '../model/pattern.ts';
import type { UnitName } from '../piecing/names.ts';
import { sewingOf } from '../piecing/sewing.ts';
import type { QuiltSewing } from '../piecing/sewing.ts';
import type { BorderCut, CountedCloth, CuttingPlan, FabricPlan, Piece } from './plan.ts';

/** `cloth` is a length to buy, printed in yards or metres; the others are printed as quilters write them. */
export interface Quantity {
  readonly kind: 'length' | 'cloth' | 'count';
  readonly value: Exact;
  /** What is counted, where that is cloth that is bought by the piece. */
  readonly of?: CountedCloth['kind'];
}

/** One size of a quilt, as far as quantities need it. */
export interface Measured {
  readonly layout: QuiltLayout;
  readonly plan: CuttingPlan;
}

/** The quantity at a path (the size's name already taken off), or undefined when there is none. */
export function quantityAt(quilt: Measured, path: readonly string[], rules: Rules): Quantity | undefined {
  const name = path.join('.');
  return quantitiesOf(quilt, rules).get(name) ?? sewn(quilt, name, rules);
}

/** Seams and units of the whole top. How it is sewn takes its time, so that it is only worked out for who asks. */
const SEWN: Readonly<Record<string, (sewing: QuiltSewing) => number>> = {
  seams: ({ seams }) => seams.count,
  'seams.set_in': ({ seams }) => seams.setIn,
  'seams.partial': ({ seams }) => seams.partial,
  'seams.open': ({ seams }) => seams.pressing.open,
  'crossings.nested': ({ seams }) => seams.pressing.nested,
  'crossings.not_nested': ({ seams }) => seams.pressing.conflicts,
  'units.half_squares': (sewing) => unitCount(sewing, 'half-square triangle'),
  'units.geese': (sewing) => unitCount(sewing, 'flying goose'),
};

/** How many units of a name are made; those sewn on paper are none. */
function unitCount({ units: { units } }: QuiltSewing, name: UnitName): number {
  return units.filter((unit) => unit.name === name).reduce((total, unit) => total + unit.count, 0);
}

function sewn({ layout }: Measured, name: string, rules: Rules): Quantity | undefined {
  const of = Object.hasOwn(SEWN, name) ? SEWN[name] : undefined;
  return of && counted(of(sewingOf(layout, rules)));
}

/** The paths that `quantityAt` knows for a quilt, for suggestions. */
export function quantityNames(quilt: Measured): readonly string[] {
  return [...tableOf(quilt, { seam: ZERO }).keys(), ...Object.keys(SEWN)];
}

/** The pieces at a path of a use and a fabric: `Capstan.ink`, `setting.sand`, `border_1.ink`; either name may have dots of its own. */
export function piecesFor(quilt: Measured, path: readonly string[]): readonly Piece[] {
  const name = path.join('.');
  return quilt.plan.pieces.filter((piece) => cutPaths(piece).includes(name));
}

/** The paths that `piecesFor` knows, for suggestions. */
export function cutNames({ plan }: Measured): readonly string[] {
  return [...new Set(plan.pieces.flatMap(cutPaths))];
}

type Table = Readonly<Record<string, Quantity | undefined>>;

const tables = new WeakMap<CuttingPlan, ReadonlyMap<string, Quantity>>();

function quantitiesOf(quilt: Measured, rules: Rules): ReadonlyMap<string, Quantity> {
  const known = tables.get(quilt.plan) ?? tableOf(quilt, rules);
  tables.set(quilt.plan, known);
  return known;
}

/** Of two that share a path, the first counts: the quilt, its parts, its blocks, its fabrics. */
function tableOf(quilt: Measured, rules: Pick<Rules, 'seam'>): ReadonlyMap<string, Quantity> {
  const { layout, plan } = quilt;
  const table = new Map<string, Quantity>();
  const put = (entries: Table, of?: string): void => {
    for (const [name, quantity] of Object.entries(entries)) {
      const path = of === undefined ? name : `${of}.${name}`;
      if (quantity && !table.has(path)) table.set(path, quantity);
    }
  };
  put(wholeOf(quilt));
  for (const [name, entries] of Object.entries(partsOf(plan))) put(entries, name);
  for (const border of plan.borders) put(borderOf(border), `border_${border.number}`);
  layout.borders.forEach(({ width }, i) => put({ width: length(width) }, `border_${i + 1}`));
  for (const [name, blocks] of byName(layout.blocks)) put(blockOf(blocks, rules), name);
  for (const fabric of plan.fabrics) put(fabricOf(fabric, plan), fabric.fabric.name);
  for (const { fabric, prints, pieces, ...role } of plan.roles) put({ buy: bought(role), pieces: counted(pieces), prints: counted(prints.length) }, fabric.name);
  for (const fabric of plan.fabrics) put({ [fabric.fabric.name]: bought(fabric) });
  for (const role of plan.roles) put({ [role.fabric.name]: bought(role) });
  put({ backing: plan.backing && cloth(plan.backing.buy), binding: plan.binding && cloth(plan.binding.buy) });
  for (const [path, count] of piecesByPart(quilt)) put({ [path]: counted(count) });
  return table;
}

function wholeOf({ layout, plan }: Measured): Table {
  return {
    width: length(layout.width),
    height: length(layout.height),
    blocks: counted(layout.blocks.reduce((total, block) => total + block.count, 0)),
    patches: counted(countPlaced(layout)),
    borders: counted(layout.borders.length),
    pieces: counted(plan.pieces.reduce((total, piece) => total + piece.pieces, 0)),
  };
}

function partsOf({ backing, batting, binding, sleeve, drop, quilting }: CuttingPlan): Readonly<Record<string, Table>> {
  return {
    ...(backing ? { backing: { width: length(backing.width), height: length(backing.height), panels: counted(backing.panels), seams: counted(backing.panels - 1), panel: length(backing.panelLength), buy: cloth(backing.buy) } } : {}),
    ...(batting ? { batting: { width: length(batting.width), height: length(batting.height) } } : {}),
    ...(binding
      ? { binding: { width: length(binding.width), length: length(binding.length), strips: counted(binding.strips), buy: cloth(binding.buy), square: binding.square && length(binding.square) } }
      : {}),
    ...(sleeve ? { sleeve: { width: length(sleeve.cut.width), length: length(sleeve.cut.height), strips: counted(sleeve.strips) } } : {}),
    ...(drop ? { drop: { sides: length(drop.sides), foot: length(drop.foot) }, mattress: { width: length(drop.mattress.width), height: length(drop.mattress.height) } } : {}),
    ...(quilting.length > 0 ? { quilting: quiltingOf(quilting) } : {}),
  };
}

/** Each way by its name, those of one name together. */
function quiltingOf(quilting: CuttingPlan['quilting']): Table {
  const of = (kind: string): Quantity | undefined => {
    const lines = quilting.filter((line) => line.kind === kind);
    return lines.length > 0 ? length(sum(lines.map((line) => line.length))) : undefined;
  };
  return { in_the_ditch: of('in_the_ditch'), echo: of('echo'), allover: of('allover'), length: length(sum(quilting.map((line) => line.length))) };
}

/** `width` is finished; `cut` and `longest` are those of its strips. */
function borderOf({ width, strips }: BorderCut): Table {
  const [first, ...others] = strips;
  return {
    width: length(width),
    strips: counted(strips.reduce((total, strip) => total + strip.count, 0)),
    ...(first ? { cut: length(first.width), longest: length(max(first.length, ...others.map((strip) => strip.length))) } : {}),
  };
}

/** Blocks under the names of their outputs and, together, under those of their definitions. */
function byName(blocks: readonly BlockInQuilt[]): ReadonlyMap<string, readonly BlockInQuilt[]> {
  const groups = new Map<string, BlockInQuilt[]>();
  for (const block of blocks) {
    for (const name of new Set([block.name, block.layout.instance.definition.name])) groups.set(name, [...(groups.get(name) ?? []), block]);
  }
  return groups;
}

/** Of one block, and how often it is set. Where blocks of a name differ in something, that is left out. */
function blockOf(blocks: readonly BlockInQuilt[], rules: Pick<Rules, 'seam'>): Table {
  const seams = mul(fraction(2), rules.seam);
  const tables = blocks.map(({ layout: { width, height, patches }, layout }): Table => ({
    width: length(width),
    height: length(height),
    finished: length(width),
    unfinished: length(add(width, seams)),
    patches: counted(patches.length),
    ...Object.fromEntries([...patchesByFabric(layout)].map(([fabric, count]) => [fabric, counted(count)])),
  }));
  const [first = {}, ...others] = tables;
  const same = Object.entries(first).filter(([name, quantity]) => others.every((other) => quantity && other[name] && equals(quantity.value, other[name].value)));
  return { count: counted(blocks.reduce((total, block) => total + block.count, 0)), ...Object.fromEntries(same) };
}

function fabricOf(found: FabricPlan, plan: CuttingPlan): Table {
  const { fabric, length: cut, lowerBound, strips, cuts } = found;
  const pieces = plan.pieces.filter((piece) => piece.fabric.name === fabric.name);
  return {
    buy: bought(found),
    length: length(cut),
    lower_bound: length(lowerBound),
    width: length(fabric.width),
    strips: counted(strips.reduce((total, strip) => total + strip.count, 0)),
    cuts: counted(cuts.strips + cuts.pieces),
    'cuts.strips': counted(cuts.strips),
    'cuts.pieces': counted(cuts.pieces),
    pieces: counted(pieces.reduce((total, piece) => total + piece.pieces, 0)),
  };
}

/** `setting.sand`: the pieces of a fabric for a part of the quilt that is no block. */
function piecesByPart({ layout, plan }: Measured): ReadonlyMap<string, number> {
  const blocks = new Set(layout.blocks.map(({ name }) => name));
  const counts = new Map<string, number>();
  for (const piece of plan.pieces) {
    if (piece.shared || blocks.has(piece.for)) continue;
    for (const path of cutPaths(piece)) counts.set(path, (counts.get(path) ?? 0) + piece.pieces);
  }
  return counts;
}

/** Use and fabric as a path can write them: `border_1.ink`; blocks without their arguments. */
function cutPaths({ for: use, shared = [use], fabric }: Piece): readonly string[] {
  return shared.map((each) => `${useName(each)}.${fabric.name}`);
}

function useName(use: string): string {
  return use.replace(/^border (\d+)$/, 'border_$1').replace(/ ?\(.*\)$/, '');
}

function length(value: Exact): Quantity {
  return { kind: 'length', value };
}

/** A length, or so many fat quarters or precuts. */
function bought({ buy, counted: sold }: Pick<FabricPlan, 'buy' | 'counted'>): Quantity {
  return sold ? { ...counted(sold.count), of: sold.kind } : cloth(buy);
}

function cloth(value: Exact): Quantity {
  return { kind: 'cloth', value };
}

function counted(value: number): Quantity {
  return { kind: 'count', value: fraction(value) };
}
