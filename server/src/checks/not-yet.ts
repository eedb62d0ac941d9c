/** `not-yet`: what the language has and the tool cannot work out so far. It is said, never guessed. */
import { readable } from '../geometry/count.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import { foundationPlace } from './no-foundation.ts';
import { findingsOf, instancesIn, type CheckContext, type Rule } from './rule.ts';
import { QUICK_PATCHES, unsewnBlocks } from './sewing.ts';

export const notYet: Rule = {
  id: 'not-yet',
  severity: 'hint',
  when: 'later',
  title: 'Not worked out yet',
  why: 'The language is larger than the tool so far. A construct that is understood but not worked out yet is named here, and nothing it would change is given as a number.',
  bad: quiltExample('block Drop {\n  foundation\n  ink sand\n  sand ink\n}\nblock Buoy 4" {\n  Drop Drop\n  Drop Drop\n}'),
  good: quiltExample('block Drop {\n  ink sand\n  sand ink\n}\nblock Buoy 4" {\n  foundation\n  Drop Drop\n  Drop Drop\n}'),
  mends: ['Leave it in: a later version gives it its meaning.'],
  find: (context) => [
    ...unsewnBlocks(context).map(unsewn),
    ...insideOnly(context),
    ...findingsOf(context, 'not-yet').map(({ place, what }) => ({ rule: 'not-yet' as const, place, message: `not yet: ${what}` })),
  ],
};

/** Past so many patches how they are sewn is worked out for the outputs only. */
function unsewn({ instance: { definition }, patches }: BlockLayout): Problem {
  const message = `not yet: seams set in or sewn in two goes are not looked for in \`${definition.name}\`, ${readable(patches.length)} patches: that is done for ${readable(QUICK_PATCHES)} patches of all blocks together`;
  return { rule: 'not-yet', place: definition.place, message };
}

/** Blocks that ask for paper and stand only in others that do not. */
function insideOnly({ quilts }: CheckContext): readonly Problem[] {
  const placed = new Set(quilts.flatMap(({ layout }) => layout.blocks.map((block) => block.layout.instance)));
  const outside = [...placed].filter(({ foundation }) => !foundation);
  const inside = [...instancesIn(outside)].filter((instance) => instance.foundation && !placed.has(instance));
  const told = new Map(inside.flatMap((instance) => {
    const place = foundationPlace(instance);
    return place ? [[place, instance.definition.name] as const] : [];
  }));
  return [...told].map(([place, name]) => ({ rule: 'not-yet', place, message: `not yet: \`${name}\` only stands in other blocks, and sheets of paper are drawn for blocks that the quilt places` }));
}
