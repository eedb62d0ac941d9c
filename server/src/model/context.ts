/**
 * What every part of the model is worked out in: where names are looked up, which units bare numbers count in, and where
 * findings go. A context belongs to one line, so that columns become places.
 */
import type { UnitSystem } from '../exact/length.ts';
import type { Exact } from '../exact/number.ts';
import type { Name } from '../syntax/tree.ts';
import type { Line } from '../text/document.ts';
import { placeIn, type Columns, type Place } from '../text/place.ts';
import type { Finding, Wanted } from './finding.ts';
import type { KnownNames, Meaning } from './pattern.ts';

export interface Context {
  readonly line: Line;
  readonly units: UnitSystem;
  /** The pattern's seam, in inches. */
  readonly seam: Exact;
  /** Asked only when a name is not found. */
  readonly known: () => KnownNames;
  /** What a name stands for, or undefined for one that nothing declares. */
  readonly meaning: (name: string) => Meaning | undefined;
  /** The tool's own library that has a block of this name. */
  readonly libraryOf: (name: string) => string | undefined;
  readonly report: (finding: Finding) => void;
  /** Called when a parameter without a value would have to be a number or a block: no fabric can stand in for that. */
  readonly lacks?: () => void;
}

/** The same context for another line. */
export function onLine<C extends Context>(context: C, line: Line): C {
  return context.line === line ? context : { ...context, line };
}

/** The place of something in the context's line. */
export function at(context: Context, columns: Columns): Place {
  return placeIn(context.line, columns);
}

/** Reports a value that cannot stand where it stands. `problem` is a sentence without a full stop. */
export function refuse(context: Context, columns: Columns, problem: string, related?: Place): undefined {
  context.report({ rule: 'wrong-argument', place: at(context, columns), problem, ...(related ? { related } : {}) });
  return undefined;
}

/** The meaning of a name; an unknown one is reported, unless it may come from an import that could not be read. */
export function meaningOf(context: Context, name: Name, wanted: Wanted): Meaning | undefined {
  const found = context.meaning(name.text);
  if (found || isFromUnread(context.known(), name.text)) return found;
  const library = wanted === 'fabric' || wanted === 'number' ? undefined : context.libraryOf(name.text);
  context.report({ rule: 'unknown-name', place: at(context, name), name: name.text, wanted, known: suggestions(context.known(), wanted), ...(library === undefined ? {} : { library }) });
  return undefined;
}

/** Whether a fabric only stands in for something unknown, so that nothing can be said against it. */
export function isStandIn(context: Context, meaning: Meaning): boolean {
  if (meaning.kind !== 'fabric' || !meaning.fabric.standsFor) return false;
  if (meaning.fabric.standsFor === 'parameter') context.lacks?.();
  return true;
}

/** What kind of thing a name stands for, for sentences. */
export function describe(meaning: Meaning): string {
  if (meaning.kind === 'number') return meaning.value.isLength ? 'a length' : 'a number';
  return meaning.kind === 'block' ? 'a block' : 'a fabric';
}

function isFromUnread(known: KnownNames, name: string): boolean {
  const prefix = name.includes('.') ? name.slice(0, name.indexOf('.')) : '';
  return known.unread.includes(prefix);
}

function suggestions(known: KnownNames, wanted: Wanted): readonly string[] {
  if (wanted === 'fabric') return known.fabrics;
  if (wanted === 'block') return known.blocks;
  return wanted === 'number' ? known.numbers : [...known.fabrics, ...known.blocks];
}
