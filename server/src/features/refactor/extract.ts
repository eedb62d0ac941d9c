/** A cell of a grid becomes a block of its own, and is used by name. */
import { asFraction, div, sub } from '../../exact/number.ts';
import { boundingBox } from '../../exact/polygon.ts';
import type { Snapshot } from '../../snapshot.ts';
import type { Cell, Statement } from '../../syntax/tree.ts';
import { visitParts } from '../../syntax/walk.ts';
import type { Range } from '../../text/place.ts';
import { blocksOf } from '../blocks.ts';
import { blockAround, targetOf, occurrencesIn } from '../names.ts';
import { under } from '../under.ts';
import { before, eolOf, freeName, textIn, type Refactoring } from './edit.ts';

/** Undefined where the selection is not in one cell of a block, or the cell is a mere name. */
export function extractBlock(snapshot: Snapshot, { start, end }: Range): Refactoring | undefined {
  const found = start.line === end.line ? under(snapshot.tree, start) : undefined;
  const statement = found?.statement;
  const block = statement && blockAround(statement);
  if (!block || statement.node.kind !== 'row_of_cells' || statement.parent !== block) return undefined;
  const cell = statement.node.cells.find(({ from, to }) => from <= start.character && end.character <= to);
  if (!cell || (cell.kind !== 'split' && cell.kind !== 'group') || goesOn(block)) return undefined;
  const grid = gridFor(snapshot, block, statement, cell);
  if (grid === undefined) return undefined;
  const taken = new Set(occurrencesIn(snapshot).map(({ target }) => target.name));
  const name = freeName('Unit', (each) => taken.has(each) || snapshot.pattern.workings.names.has(each));
  const parameters = parametersIn(snapshot, statement, cell);
  const given = parameters.length > 0 ? `(${parameters.join(', ')})` : '';
  const eol = eolOf(snapshot.document);
  const text = [`block ${name}${given} {`, ...grid, `  ${bare(textIn(statement, cell), cell)}`, '}', '', ''].join(eol);
  const place = { line: statement.line, from: cell.from, to: cell.to };
  return { title: 'Extract a block', kind: 'extract', edits: [{ place: before(snapshot, block), text }, { place, text: name + given }] };
}

/** The shape of the cell, where it is not square. */
function gridFor(snapshot: Snapshot, block: Statement, { line }: Statement, cell: Cell): readonly string[] | undefined {
  const layout = blocksOf(snapshot).find(({ definition }) => definition.statement === block)?.layout;
  const own = layout?.patches.filter(({ place, within }) => {
    const outer = within?.[0] ?? place;
    return outer.line === line && outer.from >= cell.from && outer.to <= cell.to;
  });
  if (!own || own.length === 0) return undefined;
  const { left, top, right, bottom } = boundingBox(own.flatMap(({ outline }) => outline));
  const shape = asFraction(div(sub(right, left), sub(bottom, top)));
  if (!shape) return undefined;
  return shape.n === shape.d ? [] : [`  grid ${shape.n} by ${shape.d}`];
}

function goesOn({ body }: Statement): boolean {
  return (body?.statements ?? []).some(({ node }) => node.kind === 'row_of_cells' && node.cells.some(({ kind }) => kind === 'goes_on' || kind === 'bad'));
}

/** The parameters of the block that the cell names, in their order there. */
function parametersIn(snapshot: Snapshot, statement: Statement, cell: Cell): readonly string[] {
  const named = new Set<string>();
  visitParts(cell, (part) => {
    if (part.kind !== 'name') return;
    const name = textIn(statement, part);
    if (targetOf(snapshot, statement, name)?.kind === 'parameter') named.add(name);
  });
  return (blockAround(statement)?.node.parameters ?? []).map(({ name }) => name.text).filter((name) => named.has(name));
}

/** Without the parentheses round the whole, unless they are turned. */
function bare(text: string, cell: Cell): string {
  return cell.kind === 'group' && cell.turns.length === 0 ? text.slice(1, -1).trim().replace(/\s+/g, ' ') : text;
}
