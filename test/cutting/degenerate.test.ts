/** What a pattern may say while it is being typed: plans are made or left out, nothing throws. */
import { describe, expect, test } from 'vitest';
import { ZERO, fraction, neg, type Exact } from '../../server/src/exact/number.ts';
import { planCutting } from '../../server/src/cutting/build.ts';
import type { CuttingPlan } from '../../server/src/cutting/plan.ts';
import type { Fabric, Rules } from '../../server/src/model/pattern.ts';
import { RULES, block, border, box, fabric, n, patch, pattern, place, quilt } from './layouts.ts';

const HUGE = fraction(10n ** 40n);

function planOf(of: Fabric, size: Exact, rules: Rules = RULES, overhang: Exact = n(4)): CuttingPlan {
  const layout = quilt({
    width: size,
    height: size,
    blocks: [[block('Buoy', size, [box(of, size, n(3)), patch(of, [[ZERO, ZERO], [size, ZERO], [ZERO, size]])]), 3]],
    patches: [box(of, size, n(2), { role: 'sash' }), patch(of, [[ZERO, ZERO], [ZERO, ZERO], [ZERO, ZERO]], { role: 'side_triangle' })],
    borders: (['butted', 'mitred'] as const).map((corners, i) => border(i + 1, of, { corners, strips: (['top', 'left'] as const).map((side) => ({ side, width: n(2), length: size })) })),
    spec: {
      backing: { fabric: of, overhang, place: place(1) },
      batting: { overhang, place: place(1) },
      binding: { fabric: of, cutWidth: n(2), double: true, bias: false, place: place(1) },
    },
  });
  return planCutting(layout, pattern([of], rules));
}

describe('nothing throws', () => {
  test.each<[string, Fabric, Exact, Rules]>([
    ['fabric of no width', fabric('a', { width: ZERO }), n(12), RULES],
    ['fabric of negative width', fabric('a', { width: n(-3) }), n(12), RULES],
    ['fabric narrower than a join', fabric('a', { width: n('1/4') }), n(12), RULES],
    ['fabric wider than the world', fabric('a', { width: HUGE }), n(12), RULES],
    ['a quilt of no size', fabric('a'), ZERO, RULES],
    ['a quilt larger than the world', fabric('a'), HUGE, RULES],
    ['no seam', fabric('a'), n(12), { ...RULES, seam: ZERO }],
    ['a negative seam', fabric('a'), n(12), { ...RULES, seam: neg(n(1)) }],
    ['a ruler without marks', fabric('a'), n(12), { ...RULES, roundUp: ZERO, yardage: ZERO }],
    ['negative spare', fabric('a'), n(12), { ...RULES, spare: n(-2) }],
    ['all shrunk away', fabric('a', { shrink: n(1) }), n(12), RULES],
  ])('%s', (_, of, size, rules) => {
    const plan = planOf(of, size, rules);
    expect(plan.fabrics.length).toBeLessThanOrEqual(1);
  });

  test('a negative overhang', () => expect(() => planOf(fabric('a'), n(12), RULES, n(-20))).not.toThrow());

  test('binding of no width, or on a fabric too narrow for bias', () => {
    for (const [cutWidth, width] of [[ZERO, n(40)], [n(2), n('1/2')]] as const) {
      const of = fabric('a', { width });
      const layout = quilt({ spec: { binding: { fabric: of, cutWidth, double: true, bias: true, place: place(1) } } });
      expect(planCutting(layout, pattern([of])).binding).toBeUndefined();
    }
  });

  test('an empty quilt has an empty plan', () => {
    expect(planCutting(quilt({ width: ZERO, height: ZERO }), pattern([]))).toEqual({ pieces: [], fabrics: [], roles: [], borders: [], quilting: [], tooWide: [] });
  });
});
