/** What can be opened from the text: the files of imports, and the pages of the rules that are allowed. */
import type { Snapshot } from '../snapshot.ts';
import type { Line, Position } from '../text/document.ts';
import { holds, placeIn, type Place } from '../text/place.ts';
import { RULE_IDS, type RuleId } from '../text/problem.ts';

export interface Link {
  readonly place: Place;
  readonly to: { readonly kind: 'file'; readonly start: Place } | { readonly kind: 'rule'; readonly rule: RuleId };
}

/** In the order of the text, imports first. */
export function linksIn(snapshot: Snapshot): readonly Link[] {
  const files = snapshot.pattern.imports.flatMap(({ place, tree }): readonly Link[] => {
    const first = tree?.document.lines[0];
    return first ? [{ place: inside(place), to: { kind: 'file', start: { line: first, from: 0, to: 0 } } }] : [];
  });
  const rules = [...snapshot.tree.allowed.keys()].flatMap((line) => allowedIn(line).map(({ place, rule }): Link => ({ place, to: { kind: 'rule', rule } })));
  return [...files, ...rules];
}

/** The start of the file whose path stands at a position. */
export function importAt(snapshot: Snapshot, position: Position): Place | undefined {
  const link = linksIn(snapshot).find(({ place, to }) => to.kind === 'file' && holds(snapshot.document, place, position));
  return link?.to.kind === 'file' ? link.to.start : undefined;
}

/** The rules in `// allow RULE …`, each in its place. */
export function allowedIn(line: Line): readonly { readonly place: Place; readonly rule: RuleId }[] {
  const comment = /(?:^|[\s{}])\/\/\s*allow\s/.exec(line.text);
  if (!comment) return [];
  const start = comment.index + comment[0].length;
  return [...line.text.slice(start).matchAll(/[a-z-]+/g)].flatMap(({ 0: word, index }) => {
    const rule = RULE_IDS.find((each) => each === word);
    return rule ? [{ rule, place: placeIn(line, { from: start + index, to: start + index + word.length }) }] : [];
  });
}

/** A text without its quotes. */
function inside(place: Place): Place {
  return place.to - place.from < 3 ? place : { ...place, from: place.from + 1, to: place.to - 1 };
}
