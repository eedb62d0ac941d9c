/** The canonical layout as edits of the lines that are not in it yet. */
import type { Snapshot } from '../snapshot.ts';
import { format } from '../syntax/format.ts';
import { parse } from '../syntax/parse.ts';
import type { Tree } from '../syntax/tree.ts';
import { Document } from '../text/document.ts';
import { rangeOf, type Range } from '../text/place.ts';

export interface Edit {
  readonly range: Range;
  readonly text: string;
}

/** From the top; none for a text that is laid out already. With `within`, only those of its lines. */
export function formattingOf({ document, tree }: Pick<Snapshot, 'document' | 'tree'>, within?: Range): readonly Edit[] {
  return format(within ? around(tree, within) : tree).flatMap(({ place, text }) => {
    const range = rangeOf(document, place);
    return range && isWithin(range, within) ? [{ range, text }] : [];
  });
}

/** An edit belongs to the line it begins in. */
function isWithin({ start }: Range, within: Range | undefined): boolean {
  return !within || (start.line >= within.start.line && start.line <= within.end.line);
}

/** The part of a text whose layout says how these lines are laid out: whole statements, and what stands without an empty line beside them. */
function around(tree: Tree, { start, end }: Range): Tree {
  const { document } = tree;
  const { lines } = document;
  const inside = innerLines(tree);
  const isBlank = (line: number): boolean => lines[line]?.text.trim() === '';
  let from = Math.min(start.line, lines.length - 1);
  while (from > 0 && (inside(from) || isBlank(from) || !isBlank(from - 1))) from -= 1;
  let to = Math.min(end.line, lines.length - 1);
  while (to < lines.length - 1 && (inside(to + 1) || isBlank(to) || !isBlank(to + 1))) to += 1;
  return parse(new Document(document.source, lines.slice(from, to + 1)), tree);
}

/** Whether a line goes on with a statement that begins above it. */
function innerLines({ document, statements }: Tree): (line: number) => boolean {
  const spans = statements.flatMap(({ place }) => (place.endLine ? [{ from: document.numberOf(place.line), to: document.numberOf(place.endLine) }] : []));
  return (line) => spans.some(({ from, to }) => from < line && line <= to);
}
