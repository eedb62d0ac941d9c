/** The sewing steps of every sample, size and unit system: sentences in good style, numbers that are the pattern's, drawings that are there. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { patternJson } from '../../server/src/booklet/pattern-json.ts';
import { stepsDrawings } from '../../server/src/booklet/steps-drawings.ts';
import { stepsMarkdown } from '../../server/src/booklet/steps.ts';
import type { Snapshot } from '../../server/src/snapshot.ts';
import { project } from '../harness/fresh.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

const read = (name: string): string => readFileSync(join(project, 'samples', `${name}.quilt`), 'utf8');
const files = { 'blocks/harbour-blocks.quilt': read('blocks/harbour-blocks') };
const METRIC = 'pattern "Metric" {\n  units centimetres\n}\nfabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\nblock Buoy 20 {\n  ink/sand sand\n  sand ink\n}\nquilt {\n  straight 3 by 4\n  place { Buoy }\n  border 8 ink\n  binding cut 6 ink\n}\n';
const texts: readonly (readonly [string, string])[] = [...['harbour-mail', 'lamp-room', 'beacon-star', 'mail-boat-sampler'].map((name) => [name, read(name)] as const), ['metric', METRIC]];

interface Numbers {
  readonly sizes: readonly { readonly width: { readonly text: string }; readonly height: { readonly text: string }; readonly blocks: readonly { readonly name: string; readonly count: number }[] }[];
}

describe.each(texts)('%s', (_, text) => {
  const snapshot = snapshotOfText(text, files);
  const numbers = JSON.parse(patternJson(snapshot)) as Numbers;

  test.each(snapshot.quilts.map((quilt, index) => [quilt.name ?? 'the quilt', index] as const))('%s: its sentences are in good style', (__, index) => {
    const steps = stepsOf(snapshot, index);
    const lines = steps.split('\n');
    expect(lines.length).toBeGreaterThan(40);
    expect(lines.filter((line) => /\S {2,}\S/.test(line))).toEqual([]);
    expect(lines.filter((line) => /\b1 (strips|squares|rows|blocks|triangles|units|seams|panels|pieces)\b/.test(line))).toEqual([]);
    expect(lines.filter((line) => /[{}]|undefined|NaN|\[object/.test(line))).toEqual([]);
    expect(lines.filter((line) => /^\d+\. /.test(line) && !/[.!?`]$/.test(line))).toEqual([]);
    expect(stepsOf(snapshotOfText(text, files), index)).toBe(steps);
  });

  test.each(snapshot.quilts.map((quilt, index) => [quilt.name ?? 'the quilt', index] as const))('%s: its numbers are those of pattern.json', (__, index) => {
    const steps = stepsOf(snapshot, index);
    const size = numbers.sizes[index];
    expect(steps).toContain(`${size?.width.text ?? '?'} by ${size?.height.text ?? '?'}`);
    const made = [...steps.matchAll(/^## .*: make (\d+)$/gm)].reduce((total, match) => total + Number(match[1]), 0);
    expect(made).toBe(size?.blocks.reduce((total, block) => total + block.count, 0));
    for (const { name } of size?.blocks ?? []) expect(steps).toContain(name);
  });

  test.each(snapshot.quilts.map((quilt, index) => [quilt.name ?? 'the quilt', index] as const))('%s: each drawing it names is drawn, and no other', (__, index) => {
    const quilt = snapshot.quilts[index];
    if (!quilt) throw new Error('no such size');
    const named = [...new Set([...stepsOf(snapshot, index).matchAll(/`(steps\/[^`]+\.svg)`/g)].map((match) => match[1]))].sort();
    expect(stepsDrawings(quilt, snapshot.pattern.rules).map(({ path }) => path).sort()).toEqual(named);
  });
});

test('the author\'s wording replaces or joins the steps, with values in its braces', () => {
  const worded = (wording: string): string => stepsOf(snapshotOfText(`${METRIC}${wording}\n`), 0);
  expect(worded('steps before Buoy { "Sort the {Buoy.count} blocks by light." }')).toMatch(/Sort the 12 blocks by light\.[^]*## Join the quilt/);
  expect(worded('steps after Buoy { "Each is {Buoy.unfinished} across." }')).toContain('Each is 21.5 cm across.');
  const replaced = worded('steps { "Sew {Buoy.count} blocks, then the quilt." }');
  expect(replaced).toContain('Sew 12 blocks, then the quilt.');
  expect(replaced).not.toContain('Unit 1');
});

describe('what a beginner would miss', () => {
  const FABRICS = 'fabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\n';
  const of = (text: string, head = ''): string => stepsOf(snapshotOfText(`${head}${FABRICS}${text}`), 0);
  const mill = (unit: string): string => `block Mill 9${unit} {\n  patch ink 0,0 6,0 6,3 0,3\n  patch sand 6,0 9,0 9,6 6,6\n  patch ink 3,6 9,6 9,9 3,9\n  patch sand 0,3 3,3 3,9 0,9\n  patch ink 3,3 6,3 6,6 3,6\n}\nquilt {\n  straight 2 by 2\n  place { Mill }\n}\n`;

  test('how long the first go of a partial seam is, from the raw edge', () => {
    // Half of 3" or 3 cm, and the allowance there; down to an eighth or half a centimetre.
    expect(of(mill('"'))).toContain('Sew the first 1 3/4" of the seam and stop there.');
    expect(of(mill(' cm'), 'pattern "Metric" {\n  units centimetres\n  seam 0.75 cm\n}\n')).toContain('Sew the first 2 cm of the seam and stop there.');
  });

  test('a seam stops short of a corner where a piece is set in', () => {
    const star = stepsOf(snapshotOfText(read('beacon-star'), files), 0);
    // Pairs and quarters of both blocks, and the seam across that they share: all eight seams of a star end at its inner corners.
    expect(star.match(/Mark a dot 1\/4" from both raw edges at the end where a piece is set in later\./g)?.length).toBe(5);
    expect(of(mill('"'))).not.toContain('set in');
  });

  test('long seams are pinned, short ones need no word', () => {
    const plain = (across: number): string => of(`block Buoy 9" {\n  ink\\sand\n}\nquilt {\n  straight ${across} by 3\n  place { Buoy }\n}\n`);
    expect(plain(7)).toContain('The longest seam is 63". Pin it');
    expect(plain(6)).not.toContain('The longest seam');
  });

  test('a unit that is cut over is trimmed to its size', () => {
    const half = (method: string): string => of('block Buoy 3" {\n  ink/sand\n}\nquilt {\n  straight 4 by 4\n  place { Buoy }\n}\n', `pattern "Any" {\n  ${method}\n}\n`);
    expect(half('method half_squares eight_at_a_time trim')).toContain('Trim each to 3 1/2" by 3 1/2".');
    expect(half('method half_squares eight_at_a_time')).toContain('Trim the ears');
  });

  test('bias edges on the outside of a unit, and points on the edge of the quilt', () => {
    const peak = 'block Peak 6" {\n  (ink\\sand)/(sand\\ink)\n}\nquilt {\n  straight 2 by 2\n  place { Peak }\n';
    expect(of(`${peak}}\n`)).toContain('are on the bias and stretch.');
    const goose = 'block Goose 4" by 2" {\n  goose(ink, sand)\n}\nquilt {\n  straight 2 by 2\n  place { Goose }\n  binding cut 2 1/4" ink\n';
    expect(of(`${goose}}\n`)).toContain('Points lie at the edge of the quilt, 1/4" inside it.');
    expect(of(`${goose}  border 2" sand\n}\n`)).not.toContain('Points lie at the edge of the quilt');
  });
});

test('blades, irons and needles come with their cautions', () => {
  const steps = stepsOf(snapshotOfText(METRIC), 0);
  for (const caution of ['Close the blade', 'The iron stays hot', 'the makers of your machine, iron and cutter']) expect(steps).toContain(caution);
});

function stepsOf(snapshot: Snapshot, index: number): string {
  const quilt = snapshot.quilts[index];
  if (!quilt) throw new Error('no such size');
  return stepsMarkdown(snapshot, quilt);
}
