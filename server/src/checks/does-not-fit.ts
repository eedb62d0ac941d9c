/** `does-not-fit`: a block that stands in a cell or a place of another proportion or size. */
import { equals, mul } from '../exact/number.ts';
import { example } from './example.ts';
import { findingsOf, type FindingOf, type Rule } from './rule.ts';
import type { Pattern } from '../model/pattern.ts';
import type { Fix, Problem } from '../text/problem.ts';
import { blockSizeText } from './wording.ts';

export const doesNotFit: Rule = {
  id: 'does-not-fit',
  severity: 'error',
  title: 'A block that does not fit its place',
  why: 'A block in a cell is scaled evenly, never stretched: a square would no longer be a square, and a cut size that looks right would be wrong in one direction.',
  bad: example('block Bell {\n  ink sand\n  sand ink\n}\nblock Buoy 6" {\n  grid 2 1 by 1 1\n  Bell sand\n  ink  sand\n}\nquilt {\n  straight 2 by 2\n  place { Buoy }\n}\n'),
  good: example('block Bell {\n  ink sand\n  sand ink\n}\nblock Buoy 6" {\n  grid 2 1 by 2 1\n  Bell sand\n  ink  sand\n}\nquilt {\n  straight 2 by 2\n  place { Buoy }\n}\n'),
  mends: ['Change the grid so that the cell has the block\'s proportion.', 'Turn it, if it is the other way round: `Name@90`.'],
  find: (context) => findingsOf(context, 'does-not-fit').map((finding) => problemOf(finding, context.pattern)),
};

function problemOf(finding: FindingOf<'does-not-fit'>, pattern: Pattern): Problem {
  const say = (size: FindingOf<'does-not-fit'>['found']): string => blockSizeText(size, finding, pattern);
  const fix = turning(finding);
  return {
    rule: 'does-not-fit',
    place: finding.place,
    message: `\`${finding.name}\` is ${say(finding.found)} and does not fit a place of ${say(finding.room)}`,
    ...(finding.related ? { related: [{ place: finding.related, message: `\`${finding.name}\` is declared here` }] } : {}),
    ...(fix ? { fix } : {}),
  };
}

/** A quarter turn, where the block then fits and a whole block with its turns stands at the place. */
function turning({ place, found, room, isLength }: FindingOf<'does-not-fit'>): Fix | undefined {
  const fits = isLength ? equals(found.width, room.height) && equals(found.height, room.width) : equals(mul(found.width, room.width), mul(found.height, room.height));
  if (!fits || place.endLine || !/^\p{L}[\p{L}\p{M}\d_.]*(?:\(.*\))?(?:@\w+)*$/u.test(place.line.text.slice(place.from, place.to))) return undefined;
  return { title: 'Turn it: @90', edits: [{ place: { line: place.line, from: place.to, to: place.to }, text: '@90' }] };
}
