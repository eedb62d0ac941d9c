/** The short form of `npm run soak`: the same typing flat out, and what must hold of it. */
import { expect, test } from 'vitest';
import { soak } from './soak.ts';

test('hundreds of keys leave memory flat, every answer of the newest text, and called off work undone', async () => {
  const { growth, handleGrowth, faults, stale, wrong, called, calledOff, answers, median } = await soak({ keystrokes: 700, marks: 9 });
  console.log(`${answers} answers, a key's problems after ${median.toFixed(1)} ms; heap ${growth.toFixed(3)} and handles ${handleGrowth.toFixed(3)} times the least after warming up`);
  expect(faults).toEqual([]);
  expect({ stale, wrong, calledOff }).toEqual({ stale: 0, wrong: 0, calledOff: called });
  expect(called).toBeGreaterThan(10);
  expect(growth).toBeLessThan(1.1);
  expect(handleGrowth).toBe(1);
}, 240_000);
