/**
 * Every quantity a maker may ask a finished pattern for, by its path: `width`, `Capstan.count`, `ink.strips`,
 * `binding.length`. Expectations and the placeholders of step wording read the same table.
 */
import { add, fraction, mul, type Exact } from '../exact/number.ts';
import type { QuiltLayout } from '../geometry/layout.ts';
import type { Rules } from '../model/pattern.ts';
import type { CuttingPlan, Piece } from './plan.ts';

/** `cloth` is a length to buy, printed in yards or metres; the others are printed as quilters write them. */
export interface Quantity {
  readonly kind: 'length' | 'cloth' | 'count';
  readonly value: Exact;
}

/** One size of a quilt, as far as quantities need it. */
export interface Measured {
  readonly layout: QuiltLayout;
  readonly plan: CuttingPlan;
}

/** The quantity at a path (the size's name already taken off), or undefined when there is none. */
export function quantityAt(quilt: Measured, path: readonly string[], rules: Rules): Quantity | undefined {
  const [first, second] = path;
  if (first === undefined || path.length > 2) return undefined;
  return second === undefined ? whole(quilt, first) : (part(quilt, first, second) ?? ofBlock(quilt, first, second, rules) ?? ofFabric(quilt, first, second));
}

/** The pieces of a fabric for a block (or for `setting`, `sashing`, `border 1` …). */
export function piecesFor(quilt: Measured, use: string, fabric: string): readonly Piece[] {
  return quilt.plan.pieces.filter((piece) => piece.fabric.name === fabric && piece.for === use);
}

/** The paths that `quantityAt` knows for a quilt, for suggestions. */
export function quantityNames(quilt: Measured): readonly string[] {
  return [
    ...WHOLE, ...Object.entries(PARTS).flatMap(([name, keys]) => keys.map((each) => `${name}.${each}`)),
    ...quilt.layout.blocks.flatMap(({ layout }) => BLOCK.map((each) => `${layout.instance.name}.${each}`)),
    ...quilt.plan.fabrics.flatMap(({ fabric }) => [fabric.name, ...FABRIC.map((each) => `${fabric.name}.${each}`)]),
  ];
}

const WHOLE = ['width', 'height', 'blocks', 'patches'];
const PARTS = { backing: ['width', 'height', 'panels', 'buy'], batting: ['width', 'height'], binding: ['length', 'strips', 'buy'] };
const BLOCK = ['count', 'patches', 'width', 'height', 'finished', 'unfinished'];
const FABRIC = ['buy', 'length', 'strips', 'pieces'];

function whole(quilt: Measured, name: string): Quantity | undefined {
  const { layout, plan } = quilt;
  if (name === 'width') return length(layout.width);
  if (name === 'height') return length(layout.height);
  if (name === 'blocks') return count(layout.blocks.reduce((total, block) => total + block.count, 0));
  if (name === 'patches') return count(layout.patches.length + layout.blocks.reduce((total, block) => total + block.count * block.layout.patches.length, 0));
  return plan.fabrics.some(({ fabric }) => fabric.name === name) ? ofFabric(quilt, name, 'buy') : undefined;
}

function part({ plan }: Measured, name: string, what: string): Quantity | undefined {
  const { backing, batting, binding } = plan;
  if (name === 'backing' && backing) return pick(what, { width: length(backing.width), height: length(backing.height), panels: count(backing.panels), buy: cloth(backing.buy) });
  if (name === 'batting' && batting) return pick(what, { width: length(batting.width), height: length(batting.height) });
  if (name === 'binding' && binding) return pick(what, { length: length(binding.length), strips: count(binding.strips), buy: cloth(binding.buy) });
  return undefined;
}

function ofBlock({ layout }: Measured, name: string, what: string, rules: Rules): Quantity | undefined {
  const found = layout.blocks.filter((block) => block.layout.instance.name === name || block.layout.instance.definition.name === name);
  const block = found[0]?.layout;
  if (!block) return undefined;
  const raw = (finished: Exact): Quantity => length(add(finished, mul(fraction(2), rules.seam)));
  return pick(what, {
    count: count(found.reduce((total, each) => total + each.count, 0)),
    patches: count(block.patches.length),
    width: length(block.width),
    height: length(block.height),
    finished: length(block.width),
    unfinished: raw(block.width),
  });
}

function ofFabric({ plan }: Measured, name: string, what: string): Quantity | undefined {
  const found = plan.fabrics.find(({ fabric }) => fabric.name === name);
  if (!found) return undefined;
  const pieces = plan.pieces.filter((piece) => piece.fabric.name === name);
  return pick(what, {
    buy: cloth(found.buy),
    length: length(found.length),
    strips: count(found.strips.reduce((total, strip) => total + strip.count, 0)),
    pieces: count(pieces.reduce((total, piece) => total + piece.pieces, 0)),
  });
}

function pick(name: string, table: Readonly<Record<string, Quantity>>): Quantity | undefined {
  return Object.hasOwn(table, name) ? table[name] : undefined;
}

function length(value: Exact): Quantity {
  return { kind: 'length', value };
}

function cloth(value: Exact): Quantity {
  return { kind: 'cloth', value };
}

function count(value: number): Quantity {
  return { kind: 'count', value: fraction(value) };
}
