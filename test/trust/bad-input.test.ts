/**
 * Bad input through the whole pipeline in process: it is answered in under a second of the processor's time, at the place and in
 * few words, and what stands beside it is answered as if it were alone. `TRUST=whole` tries every prefix of every sample.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { svgOf } from '../../server/src/drawing/svg.ts';
import { hoverAt } from '../../server/src/features/hover.ts';
import { snapshotOf, type Snapshot } from '../../server/src/snapshot.ts';
import { format, formatTree } from '../../server/src/syntax/format.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { rangeOf } from '../../server/src/text/place.ts';
import { project } from '../harness/fresh.ts';
import { hostOf, snapshotOfText } from '../harness/snapshot.ts';
import { BAD_INPUTS, BEFORE, BEHIND, LARGE_FILES, type BadInput } from './bad-inputs.ts';

/** Milliseconds of the processor's time, all threads; the wall's clock would count what other programs do. */
const A_SECOND = 1000;
const slowest = { name: '', took: 0 };
afterAll(() => console.log(`${BAD_INPUTS.length} bad texts; the slowest, "${slowest.name}", took ${Math.round(slowest.took)} ms of the processor`));

const clean = neighboursIn(snapshotOfText(`${BEFORE}${BEHIND}`));

describe.each(BAD_INPUTS)('$name', (input) => {
  const text = `${BEFORE}${input.text()}${BEHIND}`;
  const offset = BEFORE.split('\n').length - 1;

  test('is answered in time, and the rest as well', () => {
    const { result: snapshot, took } = timed(() => looked(snapshotOfText(text, input.files)));
    if (took > slowest.took) Object.assign(slowest, { name: input.name, took });
    expect(neighboursIn(snapshot).slice(0, input.behind === 'lost' ? 1 : 2)).toEqual(clean.slice(0, input.behind === 'lost' ? 1 : 2));
    expect(took).toBeLessThan(A_SECOND);
    checkSaid(snapshot, input, offset);
  });

  test('is laid out once and for all', () => {
    const { tree } = snapshotOfText(text, input.files);
    const { result: once, took } = timed(() => formatTree(tree));
    expect(took).toBeLessThan(A_SECOND);
    // Past a limit lines are not read, and not laid out.
    if (input.behind !== 'lost') expect(format(snapshotOfText(once, input.files).tree)).toEqual([]);
  });
});

describe('a file of 10 MiB', () => {
  test.each(LARGE_FILES)('$name: what is read of it takes no longer than ten tenths, and a little', (input) => {
    const text = input.text();
    const tenth = text.slice(0, text.lastIndexOf('\n', text.length / 10) + 1) || text.slice(0, text.length / 10);
    const [, small] = [0, 1].map(() => timed(() => snapshotOfText(tenth).problems).took);
    const { result: snapshot, took } = timed(() => looked(snapshotOfText(text)));
    console.log(`${input.name}: ${Math.round(took)} ms of the processor; a tenth of it ${Math.round(small ?? 0)}`);
    expect(took / Math.max(small ?? 0, 100)).toBeLessThan(13);
    checkSaid(snapshot, input, 0);
  }, 120_000);
});

describe('every prefix, as it is typed', () => {
  const folders = ['samples', 'samples/blocks'].map((folder) => join(project, folder));
  const samples = folders.flatMap((folder) => readdirSync(folder).filter((name) => name.endsWith('.quilt')).map((name) => join(folder, name)));
  const host = hostOf({ 'blocks/harbour-blocks.quilt': readFileSync(join(project, 'samples/blocks/harbour-blocks.quilt'), 'utf8') });

  test.each(samples)('%s', (path) => {
    const text = readFileSync(path, 'utf8');
    const step = process.env.TRUST === 'whole' ? 1 : 23;
    let previous: Snapshot | undefined;
    let longest = 0;
    for (let end = 0; end <= text.length; end += step) {
      const { result, took } = timed(() => looked(snapshotOf(documentOf('pattern.quilt', text.slice(0, end)), end, host, previous)));
      longest = Math.max(longest, took);
      previous = result;
    }
    expect(longest).toBeLessThan(A_SECOND);
    if (step === 1) console.log(`${path.slice(project.length)}: ${text.length} prefixes, the slowest ${Math.round(longest)} ms`);
  }, 600_000);
});

/** Asks for what an editor asks for at once: problems, their places, the picture. */
function looked(snapshot: Snapshot): Snapshot {
  for (const { place, message } of snapshot.problems.slice(0, 5000)) expect(rangeOf(snapshot.document, place), message).toBeDefined();
  if (snapshot.shown) svgOf(snapshot.shown.scene);
  return snapshot;
}

function checkSaid({ problems, document }: Snapshot, { says }: BadInput, offset: number): void {
  for (const { message } of problems.slice(0, 5000)) {
    expect(message).not.toMatch(/undefined|NaN|\[object|Infinity/);
    expect(message.length).toBeLessThan(700);
  }
  const said = problems.slice(0, 20).map(({ rule, place, message }) => `${rule}@${document.numberOf(place.line) - offset}: ${message}`);
  const grave = said.filter((each) => !/^(unused|not-yet|low-contrast)/.test(each));
  if (!says) expect(grave).toEqual([]);
  if (!says) return;
  const [rule, line, words] = says;
  const found = problems.some(({ rule: each, place, message }) => each === rule && document.numberOf(place.line) - offset === line && words.test(message));
  expect(found, said.join('\n')).toBe(true);
}

/** What is answered about the good blocks: the hover of a patch (how often it is cut depends on the quilt), and the picture. */
function neighboursIn(snapshot: Snapshot): readonly object[] {
  const { lines } = snapshot.document;
  return ['Lamp', 'Beacon'].map((name) => {
    const line = lines.findLastIndex(({ text }) => text.startsWith(`block ${name}`));
    const hover = hoverAt(snapshot, { line: line + 1, character: 3 });
    const block = snapshot.blocks.find(({ definition }) => definition.name === name);
    return { heading: hover?.heading, cut: hover?.facts.find(({ label }) => label === 'Cut')?.value, picture: block && svgOf(block.scene) };
  });
}

function timed<T>(work: () => T): { readonly result: T; readonly took: number } {
  const before = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(before);
  return { result, took: (user + system) / 1000 };
}
