/** Patch blocks: corners in the units of the box, or in inches when the block has no box or its box is given in lengths. */
import { isZero, sign, type Exact } from '../exact/number.ts';
import type { CornerPoint, Pair, Quantity, Statement } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import { at, onLine, refuse } from './context.ts';
import { evaluate, inInches, textOf } from './evaluate.ts';
import { numberOf, type Measures } from './measures.ts';
import { MOST_LEVELS } from './nesting.ts';
import type { BlockUse, FabricUse, PatchItem, PatchesBody, PatchSpec, Value } from './pattern.ts';
import { onlyOne, type StatementOf } from './statements.ts';
import { symmetryOf } from './symmetry.ts';
import { fabricFor, useOf, type Builder } from './uses.ts';

/** The patches that the statements of a block make. A patch with a corner that has no value is left out. */
export function patchesBody(builder: Builder, statements: readonly Statement[]): PatchesBody {
  const box = boxOf(builder, statements);
  const ruled: Ruled = { ...builder, counts: box.counts, skipped: { any: false } };
  const items = itemsOf(ruled, statements, 0);
  return {
    kind: 'patches',
    ...(box.box ? { box: box.box } : {}),
    items,
    ...(box.isBad || ruled.skipped.any ? { incomplete: true } : {}),
  };
}

/** A builder that knows what coordinates count: units of the box, or inches. */
interface Ruled extends Builder {
  readonly counts: 'units' | 'inches';
  /** Set once something has been left out. */
  readonly skipped: { any: boolean };
}

interface Box {
  readonly box?: NonNullable<PatchesBody['box']>;
  readonly counts: Ruled['counts'];
  readonly isBad: boolean;
}

function boxOf(builder: Builder, statements: readonly Statement[]): Box {
  const statement = onlyOne(builder, statements, 'box');
  if (!statement) return { counts: 'inches', isBad: false };
  const { size } = statement.node;
  const here = onLine(builder, statement.line);
  const width = size && evaluate(here, size.first);
  const height = size && evaluate(here, size.second);
  if (!size || !width || !height || !isPositive(here, size.first, width) || !isPositive(here, size.second, height)) return { counts: 'units', isBad: true };
  const counts = width.isLength || height.isLength ? 'inches' : 'units';
  const inBox = (value: Value): Exact => (counts === 'inches' ? inInches(value, builder.units) : value.number);
  return { box: { width: inBox(width), height: inBox(height), place: placeIn(statement.line, statement.node) }, counts, isBad: false };
}

function isPositive(builder: Builder, quantity: Quantity, value: Value): boolean {
  if (sign(value.number) > 0) return true;
  refuse(builder, quantity, `a box is more than 0 across and down, and this is ${textOf(value, builder.units)}`);
  return false;
}

function itemsOf(ruled: Ruled, statements: readonly Statement[], depth: number): readonly PatchItem[] {
  return statements.flatMap((statement): readonly PatchItem[] => {
    const here = onLine(ruled, statement.line);
    const item = itemOf(here, statement, depth);
    if (item === undefined) ruled.skipped.any = true;
    return item ? [item] : [];
  });
}

/** The item of a statement; null for one that is none, undefined for one that has no value. */
function itemOf(ruled: Ruled, statement: Statement, depth: number): PatchItem | null | undefined {
  switch (statement.node.kind) {
    case 'patch':
      return patchOf(ruled, statement as StatementOf<'patch'>);
    case 'place_at':
      return setInOf(ruled, statement as StatementOf<'place_at'>);
    case 'turned':
    case 'mirrored':
      return symmetricItem(ruled, statement as StatementOf<'turned' | 'mirrored'>, depth);
    default:
      return null;
  }
}

function symmetricItem(ruled: Ruled, statement: StatementOf<'turned' | 'mirrored'>, depth: number): PatchItem | undefined {
  if (depth >= MOST_LEVELS) {
    ruled.report({ rule: 'too-large', place: at(ruled, statement.node.word), found: `symmetry within symmetry, ${depth + 1} levels deep,`, limit: `${MOST_LEVELS} levels` });
    return undefined;
  }
  const symmetry = symmetryOf(ruled, statement, 'patches');
  const items = itemsOf(ruled, statement.body?.statements ?? [], depth + 1);
  return symmetry && { kind: 'symmetry', symmetry, items };
}

function patchOf(ruled: Ruled, { node, place }: StatementOf<'patch'>): PatchSpec | undefined {
  const corners = node.corners.map((corner) => pointOf(ruled, corner));
  const fabric = node.fabric && fabricFor(ruled, node.fabric);
  const radii = new Map(node.arcs.map(({ after, radius }) => [after, radiusOf(ruled, radius)]));
  const grain = node.grain && numberOf(ruled, node.grain, 'a grain line in degrees');
  if (!fabric || corners.some((corner) => !corner) || [...radii.values()].some((radius) => !radius)) return undefined;
  return {
    kind: 'patch',
    fabric,
    corners: corners.flatMap((corner) => corner ?? []),
    arcs: corners.map((_, index) => radii.get(index)),
    ...(grain ? { grain } : {}),
    place,
  };
}

function setInOf(ruled: Ruled, { node, line }: StatementOf<'place_at'>): PatchItem | undefined {
  const use = node.block && useOf(ruled, node.block);
  const point = node.at && pointOf(ruled, node.at);
  const size = node.size ? sizeOf(ruled, node.size) : ownSize(ruled, node, use);
  return use && point && size && { kind: 'set_in', use, x: point.x, y: point.y, ...size, place: placeIn(line, node) };
}

/** Without `size` a block has its own, where coordinates are lengths. */
function ownSize(ruled: Ruled, { block, broken }: StatementOf<'place_at'>['node'], use: FabricUse | BlockUse | undefined): Measures | undefined {
  const own = use?.kind === 'block' && ruled.counts === 'inches' ? use.block.size : undefined;
  if (own) return { width: own.width, height: own.height };
  return use && block && !broken ? refuse(ruled, block, 'this needs the room it is set into: `size W by H`') : undefined;
}

function sizeOf(ruled: Ruled, { first, second }: Pair<Quantity>): Measures | undefined {
  const [width, height] = [sideOf(ruled, first), sideOf(ruled, second)];
  return width && height && { width, height };
}

function sideOf(ruled: Ruled, quantity: Quantity): Exact | undefined {
  const side = coordinateOf(ruled, quantity);
  if (!side || sign(side) > 0) return side;
  return refuse(ruled, quantity, `a block set in is more than 0 across and down, and this is ${textOf({ number: side, isLength: ruled.counts === 'inches' }, ruled.units)}`);
}

function pointOf(ruled: Ruled, corner: CornerPoint): PatchSpec['corners'][number] | undefined {
  const [x, y] = [coordinateOf(ruled, corner.x), coordinateOf(ruled, corner.y)];
  return x && y && { x, y, place: at(ruled, corner) };
}

function radiusOf(ruled: Ruled, radius: Quantity): Exact | undefined {
  const value = coordinateOf(ruled, radius);
  return value && isZero(value) ? refuse(ruled, radius, 'the radius of an arc is not 0') : value;
}

function coordinateOf(ruled: Ruled, quantity: Quantity): Exact | undefined {
  const value = evaluate(ruled, quantity);
  if (!value) return undefined;
  if (ruled.counts === 'inches') return inInches(value, ruled.units);
  if (!value.isLength) return value.number;
  return refuse(ruled, quantity, `this block counts in the units of its box, and ${textOf(value, ruled.units)} is a length`);
}
