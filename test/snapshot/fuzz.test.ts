/**
 * The whole pipeline under random text: nothing throws, nothing hangs, every problem stands in the text, an edited snapshot
 * says what a fresh one says, and what the rest of the file says is still answered.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cuttingMarkdown } from '../../server/src/booklet/cutting-list.ts';
import { patternJson } from '../../server/src/booklet/pattern-json.ts';
import { svgOf } from '../../server/src/drawing/svg.ts';
import { snapshotOf, type Snapshot } from '../../server/src/snapshot.ts';
import { documentOf, replaceRange, type Document } from '../../server/src/text/document.ts';
import { rangeOf } from '../../server/src/text/place.ts';
import { project } from '../harness/fresh.ts';
import { hostOf } from '../harness/snapshot.ts';

const SAMPLES = ['harbour-mail', 'lamp-room', 'beacon-star', 'mail-boat-sampler', 'blocks/harbour-blocks'].map((name) =>
  readFileSync(join(project, 'samples', `${name}.quilt`), 'utf8'),
);
const host = hostOf({ 'blocks/harbour-blocks.quilt': SAMPLES.at(-1) ?? '' });

/** Bits of the language and of what people mistype, thrown in anywhere. */
const SCRAP = fc.oneof(
  fc.constantFrom('{', '}', '"', '"""', '(', ')', '\n', '\r\n', '//', ' ', '|', '-', '/', '\\', '@90', '<', '^', ',', '1/2', '1e400', '0"', '-3"', '9999999', '½', '😀', '\ud83d', '\0', '\u202e'),
  fc.constantFrom('block ', 'quilt {\n', 'patch ', 'turned 4 {', 'border pieced ', 'sqrt(5)', 'size x 3 by 3', 'let a = a', 'on_point ', 'rows 7"', 'corner ink 9" top_left', 'ink', 'sand', 'Capstan', 'edges ', ' ft', ' Inch', ' yds', '4 fq', ' x 3', 'size y for queen_bed', 'sashing Capstan', ' rest'),
  fc.string({ maxLength: 6, unit: 'binary' }),
);
const EDIT = fc.record({ at: fc.double({ min: 0, max: 1, noNaN: true }), cut: fc.nat(12), text: SCRAP });

describe('random edits to a sample', () => {
  test.each(SAMPLES.map((text, index) => [index, text] as const))('sample %i', (_, sample) => {
    fc.assert(
      fc.property(fc.array(EDIT, { minLength: 1, maxLength: 4 }), (edits) => {
        let document = documentOf('pattern.quilt', sample);
        let snapshot = snapshotOf(document, 0, host);
        for (const [version, edit] of edits.entries()) {
          document = edited(document, edit);
          snapshot = snapshotOf(document, version + 1, host, snapshot);
          askEverything(snapshot);
        }
        expect(told(snapshot)).toEqual(told(snapshotOf(documentOf('pattern.quilt', document.text), 99, host)));
      }),
      { numRuns: Number(process.env.FUZZ_RUNS ?? 40) },
    );
  });
});

test('random text', () => {
  fc.assert(
    fc.property(fc.array(SCRAP, { maxLength: 40 }), (scraps) => askEverything(snapshotOf(documentOf('pattern.quilt', scraps.join('')), 0, host))),
    { numRuns: Number(process.env.FUZZ_RUNS ?? 40) * 8 },
  );
});

test('every prefix of a sample, as it is typed', () => {
  const text = SAMPLES[0] ?? '';
  let snapshot: Snapshot | undefined;
  for (let end = 0; end <= text.length; end += 7) {
    snapshot = snapshotOf(documentOf('pattern.quilt', text.slice(0, end)), end, host, snapshot);
    askEverything(snapshot);
  }
});

test('a half-typed line costs that line only', () => {
  const lines = (SAMPLES[0] ?? '').split('\n');
  const row = lines.findIndex((line) => line.includes('light|frame'));
  const broken = lines.with(row, '  light|frame  light   frame|');
  const { problems, blocks, document } = snapshotOf(documentOf('pattern.quilt', broken.join('\n')), 1, host);
  const errors = problems.filter((problem) => problem.rule === 'syntax');
  expect(errors.map((problem) => document.numberOf(problem.place.line))).toEqual([row]);
  const mooring = blocks.find((block) => block.definition.name === 'Mooring');
  expect(mooring?.layout.patches.length).toBe(9);
  expect(mooring?.layout.findings).toEqual([]);
});

function edited(document: Document, { at, cut, text }: { readonly at: number; readonly cut: number; readonly text: string }): Document {
  const line = Math.floor(at * (document.lines.length - 1));
  const length = document.lines[line]?.text.length ?? 0;
  const character = Math.floor(((at * 7919) % 1) * (length + 1));
  return replaceRange(document, { line, character }, { line, character: character + cut }, text);
}

/** All that an editor or a build may ask of a snapshot. */
function askEverything(snapshot: Snapshot): void {
  for (const { place, message } of [...snapshot.early, ...snapshot.problems]) {
    expect(rangeOf(snapshot.document, place), message).toBeDefined();
    expect(message).not.toMatch(/undefined|\[object|NaN/);
  }
  for (const block of snapshot.blocks) svgOf(block.scene);
  for (const quilt of snapshot.quilts.slice(0, 2)) {
    svgOf(quilt.scene);
    cuttingMarkdown(snapshot, quilt);
  }
  if (!snapshot.hasErrors && snapshot.quilts.length > 0) patternJson(snapshot);
}

function told({ document, problems }: Snapshot): readonly string[] {
  return problems.map(({ rule, place, message }) => `${JSON.stringify(rangeOf(document, place))} ${rule} ${message}`);
}
