/** `point-at-edge`: points of a block on the edge of a quilt without a border, where the seam of the binding runs along them. */
import { placementsWithEdgePoints } from '../piecing/edge-points.ts';
import type { Place } from '../text/place.ts';
import { quiltExample } from './example.ts';
import type { CheckContext, Rule } from './rule.ts';
import { quickShown } from './sewing.ts';
import { lengthText } from './wording.ts';

const buoy = 'block Buoy 4" {\n  box 2 by 2\n  patch ink  1,0 2,2 0,2\n  patch sand 0,0 1,0 0,2\n  patch sand 1,0 2,0 2,2\n}';

export const pointAtEdge: Rule = {
  id: 'point-at-edge',
  severity: 'hint',
  when: 'later',
  title: 'Points at the edge of the quilt',
  why: 'A point of a block lies a seam allowance inside its raw edge. Where the block is on the outside of the quilt only the seam of the binding is left there: sewn a thread deeper, as thick layers invite, it cuts the point off. A border or a strip of background gives the points air.',
  bad: quiltExample(buoy).replace(/}\n$/, '  binding cut 2 1/4" ink\n}\n'),
  good: quiltExample(buoy).replace(/}\n$/, '  border 2" sand\n  binding cut 2 1/4" ink\n}\n'),
  mends: ['Put a border around the quilt: `border 2" FABRIC`.', 'On point, let the blocks float: `float 1"`.', 'Keep it, and sew the binding on with the seam of the pattern: `// allow point-at-edge`.'],
  find: pointsAtEdge,
};

function pointsAtEdge(context: CheckContext): ReturnType<Rule['find']> {
  const shown = quickShown(context);
  if (!shown?.layout.spec.binding) return [];
  const places = new Map<Place, string>(placementsWithEdgePoints(shown.layout).map(({ place, block }) => [place, block.instance.name]));
  const seam = lengthText(context.pattern.rules.seam, context.pattern);
  return [...places].map(([place, name]) => ({ rule: 'point-at-edge', place, message: `points of \`${name}\` lie ${seam} inside the edge of the quilt: a binding that is sewn deeper cuts them off` }));
}
