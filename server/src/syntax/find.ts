/** Finding one's way in a tree: the statement at a position, the parts down to it, the braces around it. */
import type { Position } from '../text/document.ts';
import { holds, rangeOf } from '../text/place.ts';
import type { Place } from '../text/place.ts';
import type { Statement, Tree } from './tree.ts';
import { partsOf } from './walk.ts';
import type { Part } from './walk.ts';
import { bracesOf } from './words.ts';
import type { Context } from './words.ts';

/** Every statement of a tree, outer before inner, in the order of the text. */
export function* walkStatements(tree: Tree): Generator<Statement> {
  for (const statement of tree.statements) yield* withInner(statement);
}

/** The innermost statement whose place (braces included) holds a position. A position right behind its end is still in it. */
export function statementAt(tree: Tree, position: Position): Statement | undefined {
  let found: Statement | undefined;
  for (let among = tree.statements; ; ) {
    const inner = nearest(tree, among, position);
    if (!inner) return found;
    found = inner;
    among = inner.body?.statements ?? [];
  }
}

/**
 * The statement at a position and the parts of its line that hold it, outer before inner: the last is the smallest (a name,
 * a cell, a number). Undefined where no statement stands; no parts where the position is in the statement but not its line.
 */
export function pathAt(tree: Tree, position: Position): { readonly statement: Statement; readonly parts: readonly Part[] } | undefined {
  const statement = statementAt(tree, position);
  if (!statement) return undefined;
  if (tree.document.lines[position.line] !== statement.line) return { statement, parts: [] };
  const parts: Part[] = [];
  for (let part: Part | undefined = statement.node; part && reaches(part, position.character); part = innermost(part, position.character)) parts.push(part);
  return { statement, parts };
}

/** The braces a position stands in, and the statement that opens them (none at the top level). */
export function contextAt(tree: Tree, position: Position): { readonly context: Context; readonly owner?: Statement } {
  let owner = statementAt(tree, position);
  while (owner && !standsInside(tree, owner, position)) owner = owner.parent;
  return owner ? { context: bracesOf(owner.node) ?? 'unknown', owner } : { context: 'top' };
}

function* withInner(statement: Statement): Generator<Statement> {
  yield statement;
  for (const inner of statement.body?.statements ?? []) yield* withInner(inner);
}

/** The last of some statements that holds a position (of two that touch, the one that begins there). Statements are in order. */
function nearest(tree: Tree, among: readonly Statement[], position: Position): Statement | undefined {
  let low = 0;
  let high = among.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const start = among[middle] && rangeOf(tree.document, among[middle].place)?.start;
    if (start && isAtOrBefore(start, position)) low = middle + 1;
    else high = middle;
  }
  const last = among[low - 1];
  return last && (holds(tree.document, last.place, position) || isOpenEnded(last)) ? last : undefined;
}

/** Braces that are never closed hold whatever follows. */
function isOpenEnded({ body }: Statement): boolean {
  return body !== undefined && !body.close;
}

/** Between the `{` and the `}`. */
function standsInside(tree: Tree, { body }: Statement, position: Position): boolean {
  if (!body) return false;
  const open = endOf(tree, body.open);
  const close = body.close && rangeOf(tree.document, body.close)?.start;
  return open !== undefined && isAtOrBefore(open, position) && (!close || isAtOrBefore(position, close));
}

function endOf(tree: Tree, place: Place): Position | undefined {
  return rangeOf(tree.document, place)?.end;
}

/** The part under a part that holds a column: of two that touch there the one that begins there, a wider one before a narrower one. */
function innermost(part: Part, column: number): Part | undefined {
  const under = partsOf(part).filter((each) => reaches(each, column) && (each.kind !== undefined || partsOf(each).length > 0));
  return under.sort((a, b) => b.from - a.from || b.to - a.to)[0];
}

function reaches({ from, to }: Part, column: number): boolean {
  return from <= column && column <= to;
}

function isAtOrBefore(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character <= b.character);
}
