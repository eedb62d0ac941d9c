/** How a quilt is set: the setting itself, what is placed in it, edges, sashing. */
import type { Statement } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import { cellSpec, rowsOf } from './cells.ts';
import { onLine, refuse } from './context.ts';
import { lengthsOf } from './grid.ts';
import { finishedLength, oneOf } from './measures.ts';
import type { QuiltRow, QuiltSpec, Setting, SizeDefinition, Symmetry, TileSpec } from './pattern.ts';
import { pairOf } from './sizes.ts';
import { ofKind, onlyOne, type StatementOf } from './statements.ts';
import { fabricFor, useOf, type Builder } from './uses.ts';

/** The statements that say how the quilt is set; there is one of them. */
export const SETTINGS = ['straight', 'on_point', 'grid', 'rows'] as const;

type SettingStatement = StatementOf<(typeof SETTINGS)[number]>;

/** The setting; undefined when none is said, or its measures have no value. */
export function settingOf(builder: Builder, statements: readonly Statement[], size: SizeDefinition | undefined): Setting | undefined {
  const statement = onlyOne(builder, statements, ...SETTINGS);
  const rows = ofKind(statements, 'row');
  const [stray] = rows;
  if (stray && statement && statement.node.kind !== 'rows') refuse(onLine(builder, stray.line), stray.node.word, `\`row\` belongs to a quilt of rows, and this one is \`${statement.node.kind}\``, statement.place);
  return statement && settingFrom(onLine(builder, statement.line), statement, rows, size);
}

/** What is placed, or set between. */
export function tileOf(builder: Builder, statement: StatementOf<'place' | 'between'> | undefined): TileSpec | undefined {
  if (!statement?.body) return undefined;
  const { node, line, place, body } = statement;
  const rows = rowsOf(builder, body.statements);
  if (rows.length === 0) return undefined;
  const symmetry = node.kind === 'place' ? tileSymmetry(onLine(builder, line), statement as StatementOf<'place'>) : undefined;
  return { rows, ...(symmetry ? { symmetry } : {}), place };
}

/** `sashing`: a fabric needs a width, a block brings its own. */
export function sashingOf(builder: Builder, statements: readonly Statement[]): QuiltSpec['sashing'] {
  const statement = onlyOne(builder, statements, 'sashing');
  if (!statement) return undefined;
  const { node, line, place } = statement;
  const here = onLine(builder, line);
  const width = node.width && finishedLength(here, node.width, 'the sashing');
  const filling = node.filling && useOf(here, node.filling);
  const cornerstones = node.cornerstones && useOf(here, node.cornerstones);
  if (!filling || !node.filling || (node.width && !width)) return undefined;
  if (filling.kind === 'fabric' && !width) return node.broken ? undefined : refuse(here, node.filling, 'sashing of a fabric needs a width: `sashing 1" FABRIC`');
  return { ...(width ? { width } : {}), filling, ...(cornerstones ? { cornerstones } : {}), outer: node.outer !== undefined, place };
}

function settingFrom(here: Builder, statement: SettingStatement, rows: readonly StatementOf<'row'>[], size: SizeDefinition | undefined): Setting | undefined {
  const { node, place } = statement;
  switch (node.kind) {
    case 'straight':
    case 'on_point': {
      const count = node.count && pairOf(here, node.count);
      const wanted = size ?? count;
      return wanted && { kind: node.kind, across: wanted.across, down: wanted.down, place };
    }
    case 'grid': {
      const columns = lengthsOf(here, node, 'columns');
      const lines = lengthsOf(here, node, 'rows');
      return columns && lines && { kind: 'grid', columns, rows: lines, place };
    }
    case 'rows': {
      const width = node.width && finishedLength(here, node.width, 'the width of the rows');
      return width && { kind: 'rows', width, rows: rows.flatMap((row) => quiltRow(here, row) ?? []), place };
    }
  }
}

function quiltRow(builder: Builder, { node, line, place }: StatementOf<'row'>): QuiltRow | undefined {
  const here = onLine(builder, line);
  if (node.cells.length > 0) return { kind: 'cells', cells: node.cells.map((cell) => cellSpec(here, cell)), place };
  const height = node.height && finishedLength(here, node.height, 'a row');
  return height && node.fabric && { kind: 'plain', height, fabric: fabricFor(here, node.fabric), place };
}

/** The tile of `place turned 4` is a quarter of what repeats, and a quarter is the only part there is. */
function tileSymmetry(here: Builder, { node, line }: StatementOf<'place'>): Symmetry | undefined {
  if (!node.symmetry || !node.times) return undefined;
  const times = oneOf(here, node.times, `\`place ${node.symmetry.word}\``, [4]);
  return times && { kind: node.symmetry.word, times, place: placeIn(line, { from: node.symmetry.from, to: node.times.to }) };
}
