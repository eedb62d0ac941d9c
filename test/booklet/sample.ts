/** A small quilt made by hand in two sizes, with everything a cutting list can show. */
import { planCutting } from '../../server/src/cutting/build.ts';
import type { BookletQuilt, BookletSource } from '../../server/src/booklet/source.ts';
import type { Pattern, Rules } from '../../server/src/model/pattern.ts';
import { ZERO } from '../../server/src/exact/number.ts';
import { RULES, block, border, box, fabric, n, patch, pattern, place, quilt } from '../cutting/layouts.ts';

const ink = fabric('ink', { colour: '#22345c', label: 'Night "ferry" print' });
const sand = fabric('sand', { colour: '#eadfc8', label: 'Dry_sand | solid', value: 'light' });
const fq = fabric('scraps', { colour: '#a4502e', source: { kind: 'fat_quarters', width: n(20), height: n('17 1/2') } });

const buoy = block('Buoy', n(6), [
  patch(ink, [[ZERO, ZERO], [n(3), ZERO], [ZERO, n(3)]]),
  patch(sand, [[n(3), ZERO], [n(3), n(3)], [ZERO, n(3)]]),
  box(sand, n(3), n(3)),
  box(ink, n(3), n(6)),
  patch(fq, [[ZERO, ZERO], [n(1), ZERO], [n(2), n(2)], [n(1), n(2)]]),
]);

function one(name: string | null, count: number, width: string, of: Pattern): BookletQuilt {
  const layout = quilt({
    width: n(width),
    height: n('72'),
    blocks: [[buoy, count]],
    borders: [
      border(1, ink, { width: n(4), strips: (['top', 'right', 'bottom', 'left'] as const).map((side) => ({ side, width: n(4), length: n(side === 'top' || side === 'bottom' ? '30' : '64') })) }),
    ],
    spec: {
      backing: { fabric: sand, overhang: n(4), place: place(3) },
      batting: { overhang: n(4), place: place(4) },
      binding: { cutWidth: n('2 1/4'), fabric: ink, double: true, bias: false, place: place(5) },
    },
  });
  return { name, layout, plan: planCutting(layout, of) };
}

export function sample(rules: Rules = RULES, title = 'Buoys'): BookletSource {
  const of: Pattern = { ...pattern([ink, sand, fq], rules), title };
  return { pattern: of, quilts: [one('crib', 1, '38', of), one('throw', 20, '58', of)] };
}

export function sampleWithoutSizes(): BookletSource {
  const of: Pattern = { ...pattern([ink, sand, fq]), title: 'Buoys' };
  return { pattern: of, quilts: [one(null, 20, '58', of)] };
}

