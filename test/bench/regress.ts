/**
 * Whether anything has become slower: `npm run bench -- regress`. Each figure is a ratio to a peer, or to a general task, in the same run, so that
 * the machine does not matter; the least processor time of a few goes. Fails when a ratio is more than three times the one in
 * `recorded.json`; UPDATE_RECORDED=1 records what was seen, after a change that is meant.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { clipperDifference } from '../geometry/tiling-oracle.ts';
import { fraction } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';
import { checkTiling } from '../../server/src/geometry/tiling.ts';
import { format } from '../../server/src/syntax/format.ts';
import { svgOf } from '../../server/src/drawing/svg.ts';
import { snapshotOf } from '../../server/src/snapshot.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { hostOf } from '../harness/snapshot.ts';
import { applied, kindsOf } from './parts/edits.ts';
import { project, since } from './parts/measure.ts';
import { jsonPeer, yamlPeer, type Peer } from './parts/peers.ts';
import { patternOf } from './parts/texts.ts';

const TOLERANCE = 3;
const ROUNDS = 12;

interface Figure {
  readonly name: string;
  readonly ours: () => unknown;
  readonly beside: () => unknown;
  readonly rounds: number;
}

const host = hostOf();
const later = { search: 'later' } as const;
const texts = { small: patternOf(1_000), large: patternOf(10_000) };
const peers = { small: await jsonPeer(1_000), large: await jsonPeer(10_000), yaml: await yamlPeer(1_000) };
const quilt = snapshotOf(documentOf('a.quilt', setting()), 0, host, undefined, later);
const small = snapshotOf(documentOf('a.quilt', texts.small), 0, host, undefined, later);
const tiles = grid(30);

const FIGURES: readonly Figure[] = [
  ...keystrokes('small', '1,000 lines, beside JSON', peers.small),
  ...keystrokes('large', '10,000 lines, beside JSON', peers.large),
  { name: 'a new text of 1,000 lines, beside a keystroke in YAML', rounds: 6, ours: () => snapshotOf(documentOf('a.quilt', texts.small), 0, host, undefined, later).early, beside: peers.yaml.keystroke },
  { name: 'every problem of 60 blocks, beside a keystroke in YAML', rounds: 3, ours: () => snapshotOf(documentOf('a.quilt', patternOf(420)), 0, host, undefined, later).problems, beside: peers.yaml.keystroke },
  { name: 'layout of 1,000 lines, beside a keystroke in YAML', rounds: ROUNDS, ours: () => format(small.tree), beside: peers.yaml.keystroke },
  { name: 'does it tile, 900 patches, beside Clipper', rounds: ROUNDS, ours: () => checkTiling(tiles.target, tiles.patches), beside: () => clipperDifference(tiles.target, tiles.patches) },
  { name: 'the picture of 20,000 patches, beside a keystroke in JSON', rounds: ROUNDS, ours: () => quilt.shown && svgOf(quilt.shown.scene), beside: peers.large.keystroke },
];

const path = join(project, 'test/bench/recorded.json');
const recorded = JSON.parse(readFileSync(path, 'utf8')) as Record<string, number>;
const seen: Record<string, number> = {};
const slower: string[] = [];
console.log(`${''.padEnd(62)}ours ms  beside  ratio  recorded`);
for (const figure of FIGURES) {
  const [ours, beside] = await best(figure);
  const ratio = ours / beside;
  const before = recorded[figure.name];
  seen[figure.name] = Number(ratio.toPrecision(2));
  const isSlower = before !== undefined && ratio > before * TOLERANCE;
  if (isSlower) slower.push(`${figure.name}: ${ratio.toFixed(2)}, recorded ${before}`);
  console.log(`${figure.name.padEnd(62)}${ours.toFixed(2).padStart(7)}${beside.toFixed(2).padStart(8)}${ratio.toFixed(2).padStart(7)}${(before?.toString() ?? 'new').padStart(10)}${isSlower ? '  SLOWER' : ''}`);
}
if (process.env.UPDATE_RECORDED === '1') writeFileSync(path, `${JSON.stringify(seen, null, 2)}\n`);
else if (slower.length > 0) {
  console.error(`\nMore than ${TOLERANCE} times slower than recorded in test/bench/recorded.json:\n  ${slower.join('\n  ')}\nIf that is meant: UPDATE_RECORDED=1 npm run bench -- regress`);
  process.exit(1);
}

/** Turn by turn, the least of each: milliseconds of processor time, which other programs hardly change. */
async function best({ ours, beside, rounds }: Figure): Promise<readonly [number, number]> {
  const least: [number, number] = [Infinity, Infinity];
  for (let round = 0; round < rounds; round += 1) {
    for (const [index, work] of [ours, beside].entries()) {
      const start = process.cpuUsage();
      await work();
      least[index] = Math.min(least[index] ?? Infinity, since(start));
    }
  }
  return least;
}

/** What is said at once after each kind of edit. */
function keystrokes(size: 'small' | 'large', where: string, { keystroke }: Peer): readonly Figure[] {
  return kindsOf(texts[size]).map(([kind, edits]) => {
    let document = documentOf('a.quilt', texts[size]);
    let snapshot = snapshotOf(document, 0, host, undefined, later);
    let turn = 0;
    const ours = (): unknown => {
      document = applied(document, edits[turn % 2] ?? edits[0]);
      snapshot = snapshotOf(document, (turn += 1), host, snapshot, later);
      return snapshot.early;
    };
    return { name: `${kind}, ${where}`, ours, beside: keystroke, rounds: ROUNDS };
  });
}

/** 1,250 blocks of 16 patches, 12 distinct ones. */
function setting(): string {
  return patternOf(86).replace(/straight \d+ by \d+/, 'straight 50 by 25');
}

function grid(side: number): { readonly target: Point[]; readonly patches: Point[][] } {
  const at = (x: number, y: number): Point => ({ x: fraction(x), y: fraction(y) });
  const box = (x: number, y: number, size: number): Point[] => [at(x, y), at(x + size, y), at(x + size, y + size), at(x, y + size)];
  return { target: box(0, 0, side), patches: Array.from({ length: side * side }, (_, index) => box(index % side, Math.floor(index / side), 1)) };
}
