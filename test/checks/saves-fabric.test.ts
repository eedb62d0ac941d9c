/** The hint that a little less saves cloth: true when it speaks, silent when anything speaks against it. */
import { describe, expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

/** 48 squares: at 9 3/4" they are cut 10 1/4", three to a strip of 40"; at 9 1/2" four. */
const text = (size: string, rest = ''): string => `fabric ink #22345c\nfabric sand #eadfc8\nblock Buoy ${size} {\n  ink\n}\nquilt {\n  straight 6 by 8\n  place { Buoy }\n  ${rest}\n  backing sand\n}\n`;

const hints = (of: string): readonly string[] => snapshotOfText(of).problems.filter(({ rule }) => rule === 'saves-fabric').map(({ message }) => message);

describe('speaks', () => {
  test('what it says comes true when it is done', () => {
    const before = snapshotOfText(text('9 3/4"'));
    const [found] = before.problems.filter(({ rule }) => rule === 'saves-fabric');
    const after = snapshotOfText(text('9 1/2"'));
    const [a, b] = [before, after].map((snapshot) => snapshot.quilts[0]?.settled.plan.fabrics[0]);
    // 16 strips of 10 1/4" are 164", 12 of 10" are 120"; with 5 % spare 4 7/8 yd and 3 1/2 yd.
    expect(found?.message).toBe('4 strips fewer and 1 3/8 yd less to buy if Buoy finishes at 9 1/2"');
    expect([a, b].map((plan) => plan?.strips.reduce((total, { count }) => total + count, 0))).toEqual([16, 12]);
    expect([a, b].map((plan) => toNumber(plan?.buy ?? { } as never) / 36)).toEqual([4.875, 3.5]);
    expect(found?.place.line.text.slice(found.place.from, found.place.to)).toBe('9 3/4"');
  });

  test('a border that needs fewer strips', () => {
    const border = hints(text('9 1/2"', 'border 9 3/4" sand'));
    expect(border).toEqual([]);
  });
});

describe('is silent', () => {
  test.each([
    ['where nothing is saved', text('9 1/2"')],
    ['where there is an error', text('9 3/4"', 'border 2" missing')],
    ['in small things', text('9 3/4"').replace('6 by 8', '2 by 2')],
    ['where the size is worked out', text('(39/4)"')],
    ['where it is allowed', text('9 3/4"').replace('3/4" {', '3/4" {  // allow saves-fabric')],
  ])('%s', (_, of) => expect(hints(of)).toEqual([]));
});
