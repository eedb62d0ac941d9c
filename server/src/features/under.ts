/** What stands at a position: the statement, and its parts from the innermost outwards. */
import { pathAt } from '../syntax/find.ts';
import type { Statement, Tree } from '../syntax/tree.ts';
import type { Part } from '../syntax/walk.ts';
import type { Position } from '../text/document.ts';
import { placeIn, type Place } from '../text/place.ts';

export interface Under {
  readonly statement: Statement;
  /** The parts that the position is in or right behind, innermost first; the statement's own node is not among them. */
  readonly parts: readonly Part[];
  readonly placeOf: (part: Part) => Place;
}

/** Undefined where no statement has a line. */
export function under(tree: Tree, position: Position): Under | undefined {
  const found = pathAt(tree, position);
  if (!found || found.parts.length === 0) return undefined;
  const { statement } = found;
  return { statement, parts: found.parts.slice(1).toReversed(), placeOf: (part) => placeIn(statement.line, part) };
}
