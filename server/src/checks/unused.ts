/** What `unused-fabric` and `unused-block` share: the mend that drops a declaration. */
import type { Place } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';

export function unused(rule: 'unused-fabric' | 'unused-block', message: string, place: Place, whole: Place): Problem {
  return { rule, place, message, fix: { title: 'Drop the declaration', edits: [{ place: whole, text: '' }] } };
}
