/** Applies a fix to a document, as an editor would. */
import { replaceRange, type Document } from '../../server/src/text/document.ts';
import { rangeOf } from '../../server/src/text/place.ts';
import type { TextEdit } from '../../server/src/text/problem.ts';

/** The document with edits that do not overlap, whose places all stand in the document as it is. */
export function applyEdits(document: Document, edits: readonly TextEdit[]): Document {
  const placed = edits.map(({ place, text }) => {
    const range = rangeOf(document, place);
    if (!range) throw new Error('an edit stands in no line of the document');
    return { range, text };
  });
  placed.sort((a, b) => b.range.start.line - a.range.start.line || b.range.start.character - a.range.start.character);
  return placed.reduce((edited, { range, text }) => replaceRange(edited, range.start, range.end, text), document);
}
