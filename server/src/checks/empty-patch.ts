/** `empty-patch`: a patch with no area, or one that crosses itself. */
import { WHOLE_GOOSE, gooseExample } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';

export const emptyPatch: Rule = {
  id: 'empty-patch',
  severity: 'error',
  title: 'A patch with no area, or one that crosses itself',
  why: 'A patch needs three corners that are not in one line, and an outline that does not cross itself; nothing else can be cut.',
  bad: gooseExample('  patch ink  0,1 1,0 2,1\n  patch sand 0,0 1,0 0,1\n  patch sand 1,0 2,0 2,1\n  patch ink 0,0 1,0 2,0\n'),
  good: WHOLE_GOOSE,
  mends: ['List the corners in order round the patch.', 'Drop the patch if its neighbours cover it.'],
  find: (context) => findingsOf(context, 'empty-patch').map(({ place, why }) => ({ rule: 'empty-patch', place, message: why })),
};
