/** Selecting more and more: a name, its cell, the row, the braces, the statement, the file. */
import type { Snapshot } from '../snapshot.ts';
import { pathAt } from '../syntax/find.ts';
import type { Statement } from '../syntax/tree.ts';
import type { Position } from '../text/document.ts';
import { placeIn, rangeOf, type Range } from '../text/place.ts';

/** From the smallest to the whole text, each holding the one before and the position. */
export function selectionsAt({ document, tree }: Snapshot, position: Position): readonly Range[] {
  const path = pathAt(tree, position);
  const inLine = path ? path.parts.toReversed().map((part) => rangeOf(document, placeIn(path.statement.line, part))) : [];
  const around = path ? outwards(path.statement).flatMap(({ place, body }) => [body && insideBraces(document, body), rangeOf(document, place)]) : [];
  const last = document.lines.length - 1;
  const whole: Range = { start: { line: 0, character: 0 }, end: { line: last, character: document.lines[last]?.text.length ?? 0 } };
  const chain: Range[] = [];
  for (const range of [...inLine, ...around, whole]) {
    if (!range || !holds(range, { start: position, end: position })) continue;
    const inner = chain.at(-1);
    if (!inner || (holds(range, inner) && !holds(inner, range))) chain.push(range);
  }
  return chain;
}

function outwards(statement: Statement): readonly Statement[] {
  return statement.parent ? [statement, ...outwards(statement.parent)] : [statement];
}

function insideBraces(document: Snapshot['document'], { open, close }: NonNullable<Statement['body']>): Range | undefined {
  const start = rangeOf(document, open)?.end;
  const end = close && rangeOf(document, close)?.start;
  return start && end && { start, end };
}

function holds(outer: Range, inner: Range): boolean {
  return isAtOrBefore(outer.start, inner.start) && isAtOrBefore(inner.end, outer.end);
}

function isAtOrBefore(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character <= b.character);
}
