/**
 * From a keystroke to problems, in process, from 1,000 to 50,000 lines (7,000 blocks): `npm run bench -- keystroke`. Medians in ms for
 * what is said at once, by what was edited in the middle of the text; the last column is how long a text is read that is new.
 */
import { snapshotOf } from '../../server/src/snapshot.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { hostOf } from '../harness/snapshot.ts';
import { applied, kindsOf } from './parts/edits.ts';
import { median, timed } from './parts/measure.ts';
import { patternOf } from './parts/texts.ts';

const host = hostOf();
const EDITS = 20;

console.log(`lines    ${kindsOf(patternOf(1_000)).map(([kind]) => kind.padEnd(21)).join('')}from new`);
for (const lines of [1_000, 10_000, 50_000]) {
  const text = patternOf(lines);
  const first = timed(() => snapshotOf(documentOf('a.quilt', text), 0, host, undefined, { search: 'later' }).early);
  const times = kindsOf(text).map(([, edits]) => {
    let document = documentOf('a.quilt', text);
    let snapshot = snapshotOf(document, 0, host, undefined, { search: 'later' });
    return median(Array.from({ length: EDITS }, (_, turn) => {
      const edit = edits[turn % 2] ?? edits[0];
      return timed(() => {
        document = applied(document, edit);
        snapshot = snapshotOf(document, turn, host, snapshot, { search: 'later' });
        return snapshot.early;
      });
    }).slice(EDITS / 4));
  });
  console.log(String(lines).padEnd(9) + times.map((time) => time.toFixed(2).padEnd(21)).join('') + first.toFixed(0));
}
