/** Whole quilts at random, from their text to their cutting plans: every plan can be cut, whatever cloth its fabrics come in. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { faultsOf } from '../../server/src/cutting/verify.ts';
import { quilts, textOf } from '../geometry/random-quilt.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

const SOURCES = ['', ' directional', ' from fat_quarters', ' from strips 2 1/2"', ' from squares 10"', ' from piece 30" by 40" times 4', ' width 42" shrink 3%'];

/** Searches take their steps, however slow the machine. */
const SEARCHING = 120_000;

test('200 quilts', () => {
  fc.assert(
    fc.property(quilts, fc.array(fc.constantFrom(...SOURCES), { minLength: 3, maxLength: 3 }), fc.boolean(), (quilt, sources, isFinished) => {
      let next = 0;
      const fabrics = textOf(quilt).replace(/^fabric .*$/gm, (line) => `${line}${sources[next++ % sources.length] ?? ''}`);
      const text = isFinished ? fabrics.replace(/^quilt \{$/m, 'quilt {\n  binding cut 2 1/4" ink\n  sleeve ink\n  backing ink') : fabrics;
      const snapshot = snapshotOfText(text);
      for (const view of snapshot.quilts) {
        expect(faultsOf(view.plan, snapshot.pattern.rules)).toEqual([]);
        expect(faultsOf(view.settled.plan, snapshot.pattern.rules)).toEqual([]);
      }
    }),
    { numRuns: 200 },
  );
}, SEARCHING);
