/** Borders, from the inside out. */
import type { Exact } from '../exact/number.ts';
import type { BorderNode, Length, Statement } from '../syntax/tree.ts';
import { rowsOf } from './cells.ts';
import { at, onLine, refuse } from './context.ts';
import { finishedLength, finishedPair, overhangLength } from './measures.ts';
import type { BlockUse, BorderCorners, BorderSpec, Fabric } from './pattern.ts';
import { ofKind, type StatementOf } from './statements.ts';
import { blockUseOf, fabricFor, useOf, type Builder } from './uses.ts';

/** The borders that can be made; a border without a width or a unit is left out. */
export function bordersOf(builder: Builder, statements: readonly Statement[]): readonly BorderSpec[] {
  return ofKind(statements, 'border').flatMap((statement) => borderOf(onLine(builder, statement.line), statement) ?? []);
}

function borderOf(here: Builder, statement: StatementOf<'border'>): BorderSpec | undefined {
  const { node, place } = statement;
  if (node.form === 'pieced') return piecedBorder(here, statement);
  const fabric = node.fabric && fabricFor(here, node.fabric);
  if (!fabric) return undefined;
  const sewn: Sewn = { place, fabric, corners: cornersOf(here, node), lengthwise: node.lengthwise !== undefined };
  return sewnBorder(here, node, sewn);
}

interface Sewn {
  readonly place: Statement['place'];
  readonly fabric: Fabric;
  readonly corners: BorderCorners;
  readonly lengthwise: boolean;
}

function sewnBorder(here: Builder, node: BorderNode, sewn: Sewn): BorderSpec | undefined {
  switch (node.form) {
    case 'unequal': {
      const top = node.top && widthOfSide(here, node.top);
      const sides = node.sides && widthOfSide(here, node.sides);
      return top && sides && { ...sewn, kind: 'plain', top, sides };
    }
    case 'to': {
      const size = node.size && finishedPair(here, node.size, 'the size a border brings the quilt to');
      return size && { ...sewn, kind: 'to', width: size.width, height: size.height };
    }
    case 'fit': {
      const atLeast = node.width && finishedLength(here, node.width, 'a border');
      return atLeast && { ...sewn, kind: 'fit', atLeast };
    }
    default: {
      const width = node.width && finishedLength(here, node.width, 'a border');
      return width && { ...sewn, kind: 'plain', top: width, sides: width };
    }
  }
}

/** Of a border with two widths one may be none: it lies at two sides only. */
function widthOfSide(here: Builder, length: Length): Exact | undefined {
  return length.cut ? finishedLength(here, length, 'a border') : overhangLength(here, length, 'a border');
}

function cornersOf(here: Builder, { corners, cornerFabric }: BorderNode): BorderCorners {
  if (!corners) return { kind: 'butted' };
  const place = at(here, corners);
  if (corners.word !== 'squares') return { kind: corners.word, place };
  const filling = cornerFabric && useOf(here, cornerFabric);
  return filling ? { kind: 'squares', filling, place } : { kind: 'butted', place };
}

function piecedBorder(here: Builder, { node, place, body }: StatementOf<'border'>): BorderSpec | undefined {
  const named = node.unit && blockUseOf(here, node.unit, 'the unit of a pieced border');
  const units = named ? [named] : unitsIn(here, body?.statements ?? []);
  const corner = node.cornerBlock && useOf(here, node.cornerBlock);
  if (units.length === 0) {
    const isSaid = node.unit !== undefined || node.broken || (body?.statements.length ?? 0) > 0;
    return isSaid ? undefined : refuse(here, node.word, 'a pieced border needs its unit: `border pieced BLOCK`, or `border pieced { A B }`');
  }
  return { kind: 'pieced', units, ...(corner ? { corner } : {}), meet: node.meet !== undefined, place };
}

/** The cells in the braces, which are all blocks: a fabric would have no length along the border. */
function unitsIn(builder: Builder, statements: readonly Statement[]): readonly BlockUse[] {
  return rowsOf(builder, statements).flatMap(({ cells }) =>
    cells.flatMap((cell): BlockUse[] => {
      if (cell.kind === 'block') return [cell];
      if (cell.kind !== 'bad') builder.report({ rule: 'wrong-argument', place: cell.place, problem: 'the units of a pieced border are blocks: a cell like this has no size of its own' });
      return [];
    }),
  );
}
