/**
 * The parts of one block that can be units, and what each looks like, worked out once, when first asked for: a block stays as it is
 * while others are edited.
 */
import { minus, pointKey } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { key } from '../exact/number.ts';
import type { Polygon } from '../exact/polygon.ts';
import type { Assembled } from './assembly.ts';
import { printOf } from './canonical.ts';
import type { Coloured } from './canonical.ts';
import { unitName } from './names.ts';
import type { UnitName } from './names.ts';
import { outlineAround, sidesOf, visibleShapes } from './outline.ts';
import type { Measure } from './outline.ts';
import { patchesIn } from './plan.ts';
import type { Assembly } from './plan.ts';

/** A part of more than one patch. */
export interface OwnPart {
  /** The part; within it what it was before corners were flipped onto it and seams finished. */
  readonly nodes: readonly Assembly[];
  readonly node: Assembly;
  readonly patches: readonly number[];
  readonly print: string;
  readonly isBlock: boolean;
  readonly outline: Polygon;
  readonly sides: Measure | undefined;
  readonly name: UnitName | undefined;
  /** Read closely. Parts that only lie elsewhere need not be read again: `known` has their readings. */
  readonly reading: (known: Map<string, string>) => string;
}

/** Every part of more than one patch, parts before wholes. */
export function ownParts(assembled: Assembled): readonly OwnPart[] {
  const found = known.get(assembled) ?? partsIn(assembled);
  known.set(assembled, found);
  return found;
}

const known = new WeakMap<Assembled, readonly OwnPart[]>();

interface Found {
  readonly nodes: readonly Assembly[];
  readonly shapes: readonly number[];
}

function partsIn(assembled: Assembled): readonly OwnPart[] {
  const shapeOf = new Map(assembled.names.map((name, shape) => [name, shape]));
  const found: Found[] = [];
  const visit = (node: Assembly, above: readonly Assembly[]): void => {
    if (node.kind === 'finish' || node.kind === 'flip') return visit(node.part, [...above, node]);
    if (node.kind === 'join') node.parts.forEach((part) => visit(part, []));
    if (node.kind === 'patch' && above.length === 0) return;
    found.push({ nodes: [...above, node], shapes: patchesIn(node).flatMap((patch) => shapeOf.get(patch) ?? []) });
  };
  visit(assembled.plan.assembly, []);
  return found.map((part, i) => new LazyPart(assembled, part, i === found.length - 1));
}

/** There are many of them: one object each, and nothing in it before it is asked for. */
class LazyPart implements OwnPart {
  readonly nodes: readonly Assembly[];
  readonly node: Assembly;
  readonly patches: readonly number[];
  readonly print: string;
  readonly isBlock: boolean;
  readonly #assembled: Assembled;
  readonly #shapes: readonly number[];
  #outline: Polygon | undefined;
  #sides: Measure | 'none' | undefined;
  #name: UnitName | 'none' | undefined;
  #reading: string | undefined;

  constructor(assembled: Assembled, { nodes, shapes }: Found, isBlock: boolean) {
    this.nodes = nodes;
    this.node = nodes[0] ?? assembled.plan.assembly;
    this.patches = patchesIn(this.node);
    this.print = printOf(assembled.kinds, shapes);
    this.isBlock = isBlock;
    this.#assembled = assembled;
    this.#shapes = shapes;
  }

  get outline(): Polygon {
    return (this.#outline ??= outlineAround(this.#assembled.map, this.#shapes));
  }

  get sides(): Measure | undefined {
    this.#sides ??= sidesOf(this.outline) ?? 'none';
    return this.#sides === 'none' ? undefined : this.#sides;
  }

  get name(): UnitName | undefined {
    this.#name ??= this.#named() ?? 'none';
    return this.#name === 'none' ? undefined : this.#name;
  }

  #named(): UnitName | undefined {
    if (this.#shapes.length > MOST_NAMED) return undefined;
    return unitName(this.outline, this.#coloured().flatMap(visibleShapes));
  }

  reading(readings: Map<string, string>): string {
    if (this.#reading !== undefined) return this.#reading;
    const laid = laidOut(this.#coloured());
    this.#reading = readings.get(laid) ?? this.#assembled.read(this.#shapes).key;
    readings.set(laid, this.#reading);
    return this.#reading;
  }

  #coloured(): readonly Coloured[] {
    return this.#shapes.map((shape) => this.#assembled.shapes[shape] ?? NOTHING);
  }
}

/** Equal for shapes, in this order, that are the same but for where they lie all together. */
function laidOut(shapes: readonly Coloured[]): string {
  const origin = shapes[0]?.outline[0];
  const offsets = new Map<Point, string>();
  const offset = (p: Point): string => {
    const text = offsets.get(p) ?? pointKey(minus(p, origin ?? p));
    offsets.set(p, text);
    return text;
  };
  const laid = ({ fabric, outline, arcs = [], over }: Coloured): string => {
    const bends = arcs.map((radius) => (radius ? key(radius) : ''));
    return `${fabric} ${outline.map(offset).join(',')} ${bends.join(',')} (${over.map(laid).join(' ')})`;
  };
  return shapes.map(laid).join('|');
}

/** Units of more patches have no name of their own. */
const MOST_NAMED = 36;

const NOTHING: Coloured = { outline: [], fabric: '', over: [] };
