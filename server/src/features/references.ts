/** Where a name is declared, and everywhere it is used. */
import type { Snapshot } from '../snapshot.ts';
import type { Position } from '../text/document.ts';
import type { Place } from '../text/place.ts';
import { importAt } from './links.ts';
import { isSameTarget, occurrenceAt, occurrencesIn, type Occurrence, type Target } from './names.ts';

/** An occurrence and the file it stands in. */
export interface Found {
  readonly snapshot: Snapshot;
  readonly occurrence: Occurrence;
}

/** The declared name that the name at a position stands for; over the path of an import, the start of its file. */
export function definitionAt(snapshot: Snapshot, position: Position): Place | undefined {
  return occurrenceAt(snapshot, position)?.target.place ?? importAt(snapshot, position);
}

/** Every place of a file where a name stands for this. */
export function occurrencesOf(snapshot: Snapshot, target: Target): readonly Occurrence[] {
  return occurrencesIn(snapshot).filter((each) => isSameTarget(each.target, target));
}

/** In all files given, one after another. */
export function foundIn(files: readonly Snapshot[], target: Target): readonly Found[] {
  return files.flatMap((snapshot) => occurrencesOf(snapshot, target).map((occurrence) => ({ snapshot, occurrence })));
}

/** The same name elsewhere in the file, as the editor marks it. */
export function highlightsAt(snapshot: Snapshot, position: Position): readonly Occurrence[] {
  const here = occurrenceAt(snapshot, position);
  return here ? occurrencesOf(snapshot, here.target) : [];
}

/** Whether what a name stands for may have uses in other files. */
export function isShared({ kind }: Target): boolean {
  return kind === 'fabric' || kind === 'block' || kind === 'number' || kind === 'parameter';
}
