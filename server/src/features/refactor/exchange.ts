/** Two fabrics change places: what was cut from one is cut from the other, and both keep their names and colours. */
import type { Snapshot } from '../../snapshot.ts';
import type { Position } from '../../text/document.ts';
import { blockAround, occurrenceAt, occurrencesIn } from '../names.ts';
import type { Refactoring } from './edit.ts';

/** With more fabrics than these the list would hide everything else. */
const MOST = 8;

/** One for each other fabric of the file. */
export function exchanges(snapshot: Snapshot, position: Position): readonly Refactoring[] {
  const here = occurrenceAt(snapshot, position);
  if (here?.target.kind !== 'fabric' || here.target.place.line.source !== snapshot.document.source) return [];
  const own = [...snapshot.pattern.fabrics.values()].filter(({ name, place }) => place.line.source === snapshot.document.source && name !== here.target.name);
  return own.length > MOST ? [] : own.flatMap(({ name }) => exchange(snapshot, here.target.name, name) ?? []);
}

/** Colourways give colours to names, and stay. Undefined where a parameter has one of the names, or neither is used. */
function exchange(snapshot: Snapshot, a: string, b: string): Refactoring | undefined {
  const uses = occurrencesIn(snapshot).filter(({ target, as, statement }) => as === 'use' && target.kind === 'fabric' && (target.name === a || target.name === b) && statement.node.kind !== 'recolour');
  const own = uses.filter(({ target }) => target.place.line.source === snapshot.document.source);
  const hidden = own.some(({ statement }) => blockAround(statement)?.node.parameters.some(({ name }) => name.text === a || name.text === b));
  if (own.length === 0 || hidden) return undefined;
  return { title: `Exchange ${a} and ${b}`, kind: 'rewrite', edits: own.map(({ place, target }) => ({ place, text: target.name === a ? b : a })) };
}
