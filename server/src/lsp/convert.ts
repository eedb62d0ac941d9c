/** From places in our lines to what the protocol carries. */
import type { Location, Range } from 'vscode-languageserver';
import type { Snapshot } from '../snapshot.ts';
import { documentsOf } from '../features/documents.ts';
import { rangeOf, type Place } from '../text/place.ts';

/** The start of a text, for what has no better place. */
export const START: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** Where a place of any file of the pattern is; undefined when it is nowhere that an editor could open. */
export function locationOf(snapshot: Snapshot, place: Place): Location | undefined {
  const document = documentsOf(snapshot).get(place.line.source);
  const range = document && rangeOf(document, place);
  return document && range && canBeOpened(document.source) ? { uri: document.source, range } : undefined;
}

/** The tool's own library has no file that an editor could show. */
function canBeOpened(source: string): boolean {
  return !source.startsWith('library:');
}
