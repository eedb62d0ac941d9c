/** Parts that only lie elsewhere are read once for all; the reading without that memory is the oracle. */
import { expect, test } from 'vitest';
import { translate, applyToAll, turn } from '../../server/src/exact/transform.ts';
import { assemble } from '../../server/src/piecing/assembly.ts';
import type { Assembled } from '../../server/src/piecing/assembly.ts';
import { ownParts } from '../../server/src/piecing/own-parts.ts';
import { KINDS, random } from '../geometry/partitions.ts';
import { INK, RUST, SAND, number, patchOf } from './layouts.ts';

test.each(Object.keys(KINDS) as (keyof typeof KINDS)[])('a part is read as what it is, whatever was read before: %s', (kind) => {
  const known = new Map<string, string>();
  let read = 0;
  for (let seed = 1; seed <= 40; seed += 1) {
    const { patches } = KINDS[kind](random(seed));
    for (const motion of [turn(0), translate(number(5), number(-3)), turn(6)]) {
      const assembled = assemble(patches.map((outline, i) => patchOf(applyToAll(outline, motion), { fabric: [INK, SAND, RUST][i % 3] ?? INK })));
      if (!assembled) continue;
      for (const part of ownParts(assembled)) {
        read += 1;
        expect([seed, part.reading(known)]).toEqual([seed, assembled.read(shapesOf(assembled, part.patches)).key]);
      }
    }
  }
  expect(read).toBeGreaterThan(100);
  // What is only moved is not read again.
  expect(known.size).toBeLessThanOrEqual((2 / 3) * read);
});

test('they are the same objects as long as the plan is', () => {
  const assembled = assemble(KINDS.guillotine(random(1)).patches.map((outline) => patchOf(outline)));
  if (!assembled) throw new Error('it is sewn');
  expect(ownParts(assembled)).toBe(ownParts(assembled));
});

function shapesOf({ names }: Assembled, patches: readonly number[]): readonly number[] {
  return patches.flatMap((patch) => (names.includes(patch) ? [names.indexOf(patch)] : []));
}
