/** A hanging sleeve (8 1/2" cut, 2" shorter than the quilt: common practice, no source) and a wide backing. */
import { describe, expect, test } from 'vitest';
import { cuttingMarkdown } from '../../server/src/booklet/cutting-list.ts';
import { faultsOf } from '../../server/src/cutting/verify.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { inches } from './layouts.ts';

const text = (across: number, rest: string, more = ''): string => `${more}fabric ink #22345c\nfabric sand #eadfc8\nblock Buoy 10" {\n  ink\n}\nquilt {\n  straight ${across} by 5\n  place { Buoy }\n  ${rest}\n}\n`;

function sleeveOf(of: string): { readonly size: string; readonly strips: number; readonly cut: string; readonly faults: readonly string[] } {
  const { quilts: [quilt], pattern } = snapshotOfText(of);
  const sleeve = quilt?.settled.plan.sleeve;
  const piece = quilt?.plan.pieces.find((each) => each.for === 'sleeve');
  if (!quilt || !sleeve || !piece) throw new Error('no sleeve');
  return { size: `${inches(sleeve.cut.width)} x ${inches(sleeve.cut.height)}`, strips: sleeve.strips, cut: `${piece.cutCount} of ${inches(piece.cut.height)}`, faults: faultsOf(quilt.settled.plan, pattern.rules) };
}

describe('sleeve', () => {
  test('from one strip where the quilt is narrow, else joined', () => {
    expect(sleeveOf(text(4, 'sleeve sand'))).toEqual({ size: '8 1/2 x 38', strips: 1, cut: '1 of 38', faults: [] });
    expect(sleeveOf(text(6, 'sleeve sand'))).toEqual({ size: '8 1/2 x 58', strips: 2, cut: '2 of 40', faults: [] });
  });

  test('in one length along the selvage from a fabric that must not be turned', () => {
    expect(sleeveOf(text(6, 'sleeve sand').replace('#eadfc8', '#eadfc8 directional'))).toEqual({ size: '8 1/2 x 58', strips: 1, cut: '1 of 58', faults: [] });
  });

  test('on request alone, and its fabric is in use', () => {
    expect(snapshotOfText(text(4, '')).quilts[0]?.plan.sleeve).toBeUndefined();
    expect([text(4, 'sleeve sand'), text(4, '')].map((each) => snapshotOfText(each).problems.some(({ rule }) => rule === 'unused-fabric'))).toEqual([false, true]);
  });

  test('is told in the cut list and can be expected', () => {
    const snapshot = snapshotOfText(`${text(6, 'sleeve sand')}expect sleeve.length 58"\n`);
    const [quilt] = snapshot.quilts;
    expect(snapshot.hasErrors).toBe(false);
    expect(quilt && cuttingMarkdown(snapshot, quilt)).toContain('- 8 1/2" by 58", from 2 strips of sand, joined end to end.');
  });

  test('none on a quilt that is no wider than it is shorter', () => {
    expect(snapshotOfText(text(4, 'sleeve sand').replace('Buoy 10"', 'Buoy 1/2"').replace('straight 4', 'straight 2')).quilts[0]?.plan.sleeve).toBeUndefined();
  });
});

describe('wide backing', () => {
  const backing = (rest: string): string => {
    const plan = snapshotOfText(text(8, rest)).quilts[0]?.plan.backing;
    return plan ? `${plan.panels} of ${inches(plan.panelLength)}, ${plan.seams}` : 'none';
  };

  test('one panel of 108", laid the way that takes less', () => {
    // 80" by 50": 88" by 58" with the overhang. From 40" three upright panels (174" in all) take less than two level ones (176").
    expect(backing('backing sand')).toBe('3 of 58, vertical');
    expect(backing('backing sand width 108"')).toBe('1 of 58, none');
  });

  test('a fabric of that width is one too', () => {
    const plan = snapshotOfText(text(8, 'backing wide', 'fabric wide #ffffff width 108"\n')).quilts[0]?.plan.backing;
    expect(plan?.panels).toBe(1);
  });
});
