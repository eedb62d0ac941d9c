/** Cuts at the table, counted by hand: folded once two layers, stacked twice as many a fabric (common practice, no source). */
import { describe, expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import { planCutting } from '../../server/src/cutting/build.ts';
import { pieceLabel } from '../../server/src/cutting/labels.ts';
import type { FabricPlan } from '../../server/src/cutting/plan.ts';
import { cutsFor, piecesPerCut } from '../../server/src/cutting/table.ts';
import type { Fabric, FabricSource } from '../../server/src/model/pattern.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { RULES, block, box, fabric, n, patch, pattern, quilt } from './layouts.ts';

function planOf(of: Fabric, size: string, count: number, layers = 1): FabricPlan | undefined {
  const side = n(toNumber(n(size)) - 0.5);
  return planCutting(quilt({ blocks: [[block('B', n(10), [box(of, side, side)]), count]] }), pattern([of], { ...RULES, layers })).fabrics[0];
}

const from = (source: FabricSource): Fabric => fabric('a', { source });

describe('layers under the cutter', () => {
  test('three layers folded once are six pieces a cut', () => {
    expect([piecesPerCut(1, 0), piecesPerCut(1, 1), piecesPerCut(3, 1), piecesPerCut(2, 2)]).toEqual([1, 2, 6, 8]);
    expect([cutsFor(20, 3, 1), cutsFor(6, 3, 1), cutsFor(0, 1, 0)]).toEqual([4, 1, 0]);
    expect(() => piecesPerCut(0, 1)).toThrow(RangeError);
  });

  test('squares from strips: one cut to straighten, one a strip, and one for two squares through the fold', () => {
    // 32 squares of 4 1/2" from 40": eight to a strip, four strips; four cuts through each.
    expect(planOf(fabric('a'), '4 1/2', 32)?.cuts).toEqual({ strips: 5, pieces: 16 });
    // Three strips on one another, then the fourth.
    expect(planOf(fabric('a'), '4 1/2', 32, 3)?.cuts).toEqual({ strips: 5, pieces: 8 });
  });

  test('the end of a full strip is the selvage: no cut', () => {
    // 10 squares of 4" fill 40": nine cuts free them in single layers, five through the fold less the last.
    expect(planOf(fabric('a'), '4', 10)?.cuts).toEqual({ strips: 2, pieces: 5 });
  });

  test('diagonals are cut through the same layers', () => {
    const of = fabric('a');
    const corner = patch(of, [[n(0), n(0)], [n(3), n(0)], [n(0), n(3)]]);
    const plan = planCutting(quilt({ blocks: [[block('B', n(3), [corner]), 12]] }), pattern([of], { ...RULES, layers: 3 })).fabrics[0];
    // Six squares of 3 7/8" in one strip: three cuts through the fold, and one diagonal through six layers.
    expect(plan?.cuts).toEqual({ strips: 2, pieces: 4 });
  });

  test('precut strips are not cut off anything, precut squares have straight edges', () => {
    // Seven cuts free seven pairs, the last one parts the pair at the fold.
    expect(planOf(from({ kind: 'strips', size: n('2 1/2') }), '2 1/2', 16)?.cuts).toEqual({ strips: 0, pieces: 8 });
    expect(planOf(from({ kind: 'squares', size: n(5) }), '2 1/2', 4)?.cuts).toEqual({ strips: 1, pieces: 2 });
  });
});

describe('the pattern says it', () => {
  const text = (layers: string): string => `pattern "Layers" {${layers}}\nfabric ink #22345c\nblock Buoy 4" {\n  ink\n}\nquilt {\n  straight 4 by 8\n  place { Buoy }\n}\n`;

  test('`layers 3`', () => {
    expect([text(''), text(' layers 3 ')].map((each) => snapshotOfText(each).quilts[0]?.plan.fabrics[0]?.cuts.pieces)).toEqual([16, 8]);
  });

  test('what is no number of layers is told', () => {
    expect(['0', '1/2', '99'].map((layers) => snapshotOfText(text(` layers ${layers} `)).problems.length)).toEqual([1, 1, 1]);
  });
});

test('labels run from A to Z, then AA', () => {
  expect([0, 25, 26, 51, 52, 701, 702].map(pieceLabel)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA']);
});
