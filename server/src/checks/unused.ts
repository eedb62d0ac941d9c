/** What `unused-fabric` and `unused-block` share: the mend that drops a declaration. */
import type { Document } from '../text/document.ts';
import type { Place } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';
import { dropping } from './dropping.ts';

/** `whole`: the declaration, `place` the name in it. */
export function unused(rule: 'unused-fabric' | 'unused-block', message: string, place: Place, whole: Place, document: Document): Problem {
  return { rule, place, message, fix: { title: 'Drop the declaration', edits: [dropping(document, whole)] } };
}
