/** Hovers over what is said rather than sewn: rules that are allowed, and the computed values in the author's wording. */
import { ruleOf } from '../checks/list.ts';
import type { Snapshot } from '../snapshot.ts';
import { statementAt } from '../syntax/find.ts';
import type { Position } from '../text/document.ts';
import { holds } from '../text/place.ts';
import { fact, type Hover } from './hover-text.ts';
import { allowedIn } from './links.ts';
import { placeholdersOf, valueIn } from './placeholders.ts';

/** Undefined where neither stands. */
export function saidHover(snapshot: Snapshot, position: Position): Hover | undefined {
  return ruleHover(snapshot, position) ?? placeholderHover(snapshot, position);
}

function ruleHover({ document }: Snapshot, position: Position): Hover | undefined {
  const line = document.lines[position.line];
  const found = line && allowedIn(line).find(({ place }) => holds(document, place, position));
  const rule = found && ruleOf(found.rule);
  if (!found || !rule) return undefined;
  return { place: found.place, heading: `${rule.id} (${rule.severity})`, facts: [...fact('', `${rule.title}.`), ...fact('', rule.why)] };
}

/** The value in every size, each by itself even where all are the same. */
function placeholderHover(snapshot: Snapshot, position: Position): Hover | undefined {
  const statement = statementAt(snapshot.tree, position);
  const found = statement && placeholdersOf(snapshot.document, statement).find(({ place }) => holds(snapshot.document, place, position));
  if (!found || found.path === '') return undefined;
  const path = found.path.split('.');
  const facts = snapshot.quilts.flatMap((quilt) => fact(quilt.name ?? 'Now', valueIn(snapshot, quilt, path)));
  return { place: found.place, heading: found.path, facts: facts.length > 0 ? facts : fact('', 'nothing of that name has a value') };
}
