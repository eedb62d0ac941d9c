/** The canonical layout as edits of the lines that are not in it yet. */
import type { Snapshot } from '../snapshot.ts';
import { format } from '../syntax/format.ts';
import { rangeOf, type Range } from '../text/place.ts';

export interface Edit {
  readonly range: Range;
  readonly text: string;
}

/** From the top; none for a text that is laid out already. With `within`, only those of its lines. */
export function formattingOf({ document, tree }: Snapshot, within?: Range): readonly Edit[] {
  return format(tree).flatMap(({ place, text }) => {
    const range = rangeOf(document, place);
    return range && isWithin(range, within) ? [{ range, text }] : [];
  });
}

/** An edit belongs to the line it begins in. */
function isWithin({ start }: Range, within: Range | undefined): boolean {
  return !within || (start.line >= within.start.line && start.line <= within.end.line);
}
