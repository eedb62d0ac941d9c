/** Work in steps comes to the same as work at once, and can be left between any two of them. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { allSteps, mapSteps } from '../../server/src/text/steps.ts';
import type { Steps } from '../../server/src/text/steps.ts';

test('a step for each item, in order, and what they come to', () => {
  fc.assert(fc.property(fc.array(fc.integer()), (items) => {
    const seen: number[] = [];
    const steps = mapSteps(items, (item) => (seen.push(item), item * 2));
    items.forEach((_, done) => {
      expect(seen).toEqual(items.slice(0, done));
      expect(steps.next()).toEqual({ done: false, value: undefined });
    });
    expect(steps.next()).toEqual({ done: true, value: items.map((item) => item * 2) });
  }));
});

test('all steps at once, those within steps too', () => {
  function* within(): Steps<string> {
    const words = yield* mapSteps(['lamp', 'room'], (word) => word.toUpperCase());
    return words.join(' ');
  }
  expect(allSteps(within())).toBe('LAMP ROOM');
});
