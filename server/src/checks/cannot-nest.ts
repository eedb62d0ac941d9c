/** `cannot-nest`: seams that meet and whose allowances lie to the same side, in a block or between different blocks. */
import { samePoint, type Point } from '../exact/point.ts';
import { outerPlace } from '../geometry/cell.ts';
import type { Conflict } from '../piecing/pressing.ts';
import { sewingOf, type QuiltSewing } from '../piecing/sewing.ts';
import type { Place } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';
import { example } from './example.ts';
import type { CheckContext, Rule } from './rule.ts';
import { placeTouching, quickShown } from './sewing.ts';
import { blockPointText, count } from './wording.ts';

const buoy = (second: string): string => example(`block Buoy 4" {\n  press to_dark\n  ink sand\n  ${second}\n}\nquilt {\n  straight 1 by 1\n  place { Buoy }\n}\n`);

export const cannotNest: Rule = {
  id: 'cannot-nest',
  severity: 'hint',
  when: 'later',
  title: 'Seams that cannot nest',
  why: 'Where four patches meet, the allowances of two seams should lie to opposite sides: they lock, and the corners meet by themselves. The pressing plan leaves as few crossings without that as can be. Those that are left lie thick and slip, and want a pin before and behind. A block that is set beside itself in the same way is told in the steps only.',
  bad: buoy('ink sand'),
  good: buoy('sand ink'),
  mends: [
    'Leave out `press to_dark`, or turn one of the two.',
    'Press one of them open: `press open` in its block.',
    'Keep it, and pin there: `// allow cannot-nest`.',
  ],
  find: conflictsIn,
};

function conflictsIn(context: CheckContext): readonly Problem[] {
  const shown = quickShown(context);
  if (!shown) return [];
  const sewing = sewingOf(shown.layout, context.pattern.rules);
  const { named, proven } = sewing.pressing;
  const least = proven ? ', and no way of pressing as the pattern says leaves fewer' : '';
  const told = new Map<Place, Problem>();
  for (const conflict of named.filter(({ layout, between: [a, b] }) => layout !== undefined || a !== b)) {
    const place = placeOf(conflict, sewing);
    const where = blockPointText(conflict.at, { isLength: conflict.layout?.instance.size !== undefined || !conflict.layout }, context.pattern);
    if (!place || told.has(place)) continue;
    told.set(place, { rule: 'cannot-nest', place, message: `two seams that meet ${where} are pressed to the same side, at ${count(conflict.count, 'crossing')} of the quilt${least}` });
  }
  return [...told.values()];
}

/** A patch of the block with its corner there, or a block that touches the point. */
function placeOf({ at, layout }: Conflict, { setting }: QuiltSewing): Place | undefined {
  if (layout) {
    const patch = layout.patches.find(({ outline }) => outline.some((corner: Point) => samePoint(corner, at)));
    return patch && outerPlace(patch);
  }
  return placeTouching(setting, at);
}
