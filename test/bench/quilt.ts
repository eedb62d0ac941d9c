/**
 * A quilt of ever more placed patches, of the same twelve blocks: `npm run bench -- quilt`. Work follows distinct blocks, and what is
 * left grows with the places by a small, linear term. Medians in ms, each time from a text not seen before; the last columns are what
 * the blocks alone take, and what each further placed patch takes in all.
 */
import { dealOf } from '../../server/src/geometry/deal.ts';
import { svgOf } from '../../server/src/drawing/svg.ts';
import type { Snapshot } from '../../server/src/snapshot.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

const SIZES = [1_000, 3_000, 10_000, 30_000, 100_000];
const RUNS = 5;
const BLOCKS = 12;
/** Patches of each block. */
const EACH = 25;

const STAGES: Readonly<Record<string, (snapshot: Snapshot) => unknown>> = {
  'blocks': (snapshot) => snapshot.blocks.length,
  'plane': (snapshot) => snapshot.shown?.layout.placements.length,
  'deal': (snapshot) => snapshot.shown && dealOf(snapshot.shown.layout),
  'pieces': (snapshot) => snapshot.shown?.plan.pieces.length,
  'checks': (snapshot) => snapshot.problems.length,
  'picture': (snapshot) => (snapshot.shown ? svgOf(snapshot.shown.scene).length : 0),
};

for (let i = 0; i < 40; i += 1) timesOf(patternOf(1_000, i));

report('set straight', patternOf);
report('with assorted prints, dealt to blocks', (patches, seed) => assortedOf(patches, seed, 'block'));
report('with assorted prints, dealt to patches', (patches, seed) => assortedOf(patches, seed, 'patch'));

function report(name: string, make: (patches: number, seed: number) => string): void {
  console.log(`\n${name.padEnd(40)}${Object.keys(STAGES).map((stage) => stage.padStart(9)).join('')}      all   µs a patch`);
  let least: { readonly patches: number; readonly all: number } | undefined;
  for (const patches of SIZES) {
    const runs = Array.from({ length: RUNS }, (_, run) => timesOf(make(patches, run)));
    const medians = Object.keys(STAGES).map((_, stage) => median(runs.map((times) => times[stage] ?? 0)));
    const all = medians.reduce((sum, time) => sum + time, 0);
    least ??= { patches, all };
    const growth = patches === least.patches ? '' : ((1000 * (all - least.all)) / (patches - least.patches)).toFixed(2);
    console.log(`${patches} placed patches`.padEnd(40) + medians.map((time) => time.toFixed(1).padStart(9)).join('') + all.toFixed(0).padStart(9) + growth.padStart(13));
  }
}

function timesOf(text: string): number[] {
  const snapshot = snapshotOfText(text);
  const times = Object.values(STAGES).map((stage) => {
    const start = performance.now();
    stage(snapshot);
    return performance.now() - start;
  });
  if (snapshot.hasErrors) throw new Error(snapshot.problems[0]?.message ?? 'an error');
  return times;
}

function median(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[times.length >> 1] ?? 0;
}

function patternOf(patches: number, seed: number): string {
  return quiltOf(patches, seed, 'fabric rust #a4502e');
}

function assortedOf(patches: number, seed: number, by: 'block' | 'patch'): string {
  return quiltOf(patches, seed, 'fabric a #a4502e\nfabric b #c8641e\nfabric c #7f4f24\nfabric d #b5651d\nassorted rust = a b c d by ' + by);
}

/** Blocks of five by five cells, no two alike, in a setting about as wide as high that has exactly so many patches. */
function quiltOf(patches: number, seed: number, rust: string): string {
  const places = patches / EACH;
  let side = Math.floor(Math.sqrt(places));
  while (places % side !== 0) side -= 1;
  const names = Array.from({ length: BLOCKS }, (_, i) => `B${i}`);
  const blocks = names.map((name, i) => `block ${name} 10" {\n${Array.from({ length: 5 }, (_, row) => `  ${Array.from({ length: 5 }, (__, column) => ['ink', 'sand', 'rust'][(i + row * 3 + column * (i + 1) + seed) % 3]).join(' ')}`).join('\n')}\n}`);
  const rows = Array.from({ length: 3 }, (_, row) => `    ${names.slice(4 * row, 4 * row + 4).join(' ')}`);
  return `fabric ink #22345c\nfabric sand #eadfc8\n${rust}\n${blocks.join('\n')}\nquilt {\n  straight ${side} by ${places / side}\n  place {\n${rows.join('\n')}\n  }\n}\n`;
}
