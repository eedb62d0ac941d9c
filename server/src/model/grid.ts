/** Grid blocks, and the lines of grids. */
import { sign } from '../exact/number.ts';
import type { GridNode, Proportion, Statement } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import { rowsOf } from './cells.ts';
import { at, onLine, refuse, type Context } from './context.ts';
import { evaluate, inInches, textOf } from './evaluate.ts';
import type { GridBody, GridLine } from './pattern.ts';
import { ofKind, onlyOne, type StatementOf } from './statements.ts';
import { symmetryOf } from './symmetry.ts';
import type { Builder } from './uses.ts';

/** The grid that the statements of a block make. */
export function gridBody(builder: Builder, statements: readonly Statement[]): GridBody {
  const symmetric = symmetricPart(builder, statements);
  const inner = symmetric?.body?.statements ?? [];
  const grid = onlyOne(builder, [...statements, ...inner], 'grid');
  const here = grid && onLine(builder, grid.line);
  const columns = here && linesOf(here, grid.node.columns, 'a column');
  const rows = here && linesOf(here, grid.node.rows, 'a row');
  const symmetry = symmetric && symmetryOf(builder, symmetric, 'grid');
  return {
    kind: 'grid',
    ...(columns ? { columns } : {}),
    ...(rows ? { rows } : {}),
    ...(grid ? { gridPlace: placeIn(grid.line, grid.node) } : {}),
    content: rowsOf(builder, symmetric ? inner : statements),
    ...(symmetry ? { symmetry } : {}),
    ...(symmetric && !symmetry ? { incomplete: true } : {}),
  };
}

/** The lines of a grid; undefined when one of them has no value, or there are none. */
export function linesOf(context: Context, proportions: readonly Proportion[], what: string): readonly GridLine[] | undefined {
  const lines = proportions.map((each) => lineOf(context, each, what));
  return lines.length > 0 && lines.every((line) => line !== undefined) ? lines : undefined;
}

/** The lines of a setting: a plain number is a length in the pattern's units. */
export function lengthsOf(context: Context, node: GridNode, side: 'columns' | 'rows'): readonly GridLine[] | undefined {
  const lines = linesOf(context, node[side], side === 'columns' ? 'a column' : 'a row');
  return lines?.map((line) => (line.kind === 'proportion' ? { ...line, kind: 'length', value: inInches({ number: line.value, isLength: false }, context.units) } : line));
}

function lineOf(context: Context, proportion: Proportion, what: string): GridLine | undefined {
  const place = at(context, proportion);
  if (proportion.kind === 'word') return { kind: 'rest', place };
  const value = evaluate(context, proportion);
  if (!value) return undefined;
  if (sign(value.number) <= 0) return refuse(context, proportion, `${what} is more than 0, and this is ${textOf(value, context.units)}`);
  return { kind: value.isLength ? 'length' : 'proportion', value: value.number, place };
}

/** The one `turned` or `mirrored` of a grid. Rows beside it, or a second one in or beside it, have no place in a grid. */
function symmetricPart(builder: Builder, statements: readonly Statement[]): StatementOf<'turned' | 'mirrored'> | undefined {
  const [first, second] = ofKind(statements, 'turned', 'mirrored');
  if (!first) return undefined;
  const inner = ofKind(first.body?.statements ?? [], 'turned', 'mirrored')[0] ?? second;
  if (inner) {
    const place = placeIn(inner.line, inner.node.word);
    builder.report({ rule: 'wrong-argument', place, problem: 'a grid has one `turned` or `mirrored`: `mirrored 4` mirrors both ways' });
  }
  const [row] = ofKind(statements, 'row_of_cells');
  if (row) refuse(onLine(builder, row.line), row.node, `rows stand inside the braces of \`${first.node.kind}\`, which make the whole block`, first.place);
  return first;
}
