/** Layout while one types: when a line is ended, it and its neighbours above that share its columns are laid out. */
import type { Snapshot } from '../snapshot.ts';
import type { Position } from '../text/document.ts';
import { formattingOf, type Edit } from './formatting.ts';

/** The edits after a character was typed; the line of the cursor is left alone, but for a brace that closes. */
export function formattingAfter(snapshot: Pick<Snapshot, 'document' | 'tree'>, position: Position, typed: string): readonly Edit[] {
  const end = typed === '}' ? position.line : position.line - 1;
  let start = end;
  while (start > 0 && isNeighbour(snapshot.document.lines[start - 1]?.text ?? '')) start -= 1;
  const within = { start: { line: start, character: 0 }, end: { line: end, character: 0 } };
  return end < 0 ? [] : formattingOf(snapshot, within).filter(({ range }) => range.end.line <= end);
}

function isNeighbour(text: string): boolean {
  return text.trim() !== '' && !/\{\s*(?:\/\/.*)?$/.test(text);
}
