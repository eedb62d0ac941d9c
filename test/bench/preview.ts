/**
 * From a keystroke to a picture, as the server makes it: `npm run bench -- preview`. Each edit changes one fabric's colour, so that
 * every block is another; medians in ms. The crib quilt of a sample first, then the same with 20,000 patches.
 */
import { readFileSync } from 'node:fs';
import { pictureOf } from '../../server/src/features/picture.ts';
import { viewOf } from '../../server/src/features/views/make.ts';
import { VIEWS } from '../../server/src/features/views/view.ts';
import { svgOf } from '../../server/src/drawing/svg.ts';
import { snapshotOf, type Snapshot } from '../../server/src/snapshot.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { documentOf, replaceRange } from '../../server/src/text/document.ts';
import always from '../../server/library/always.quilt';

const host = { library: [parse(documentOf('library', always))], import: () => 'missing' as const };
const sample = readFileSync('samples/harbour-mail.quilt', 'utf8');

console.log('view       crib    20,000 patches   its SVG, KB');
const large = sample.replace('crib  3 by 4', 'crib  24 by 25').replace(/^expect.*$/gm, '');
for (const { name } of VIEWS) {
  const [small, big] = [measured(sample, name), measured(large, name)];
  console.log(`${name.padEnd(11)}${small.time.toFixed(1).padEnd(8)}${big.time.toFixed(1).padEnd(17)}${Math.round(big.size / 1024)}`);
}

/** The time from the edit to the SVG, the count of errors included. */
function measured(text: string, view: string): { readonly time: number; readonly size: number } {
  let document = documentOf('bench.quilt', text);
  let snapshot: Snapshot = snapshotOf(document, 0, host);
  const line = document.lines.findIndex((each) => each.text.startsWith('fabric ink'));
  const times: number[] = [];
  let size = 0;
  for (let edit = 0; edit < 9; edit++) {
    document = replaceRange(document, { line, character: 18 }, { line, character: 19 }, edit % 2 === 0 ? 'e' : 'c');
    const begin = performance.now();
    snapshot = snapshotOf(document, edit + 1, host, snapshot, { search: 'later' });
    const { errors } = pictureOf(snapshot, { size: 'crib' });
    const { scene } = viewOf(snapshot, { view, size: 'crib' });
    if (errors > 0 || !scene) throw new Error(`${view} is not drawn`);
    size = svgOf(scene, { seams: 'hairline' }).length;
    times.push(performance.now() - begin);
  }
  return { time: times.sort((a, b) => a - b)[4] ?? 0, size };
}
