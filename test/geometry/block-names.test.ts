/** One name for a block in everything that is written of a quilt. */
import { expect, test } from 'vitest';
import { cuttingMarkdown } from '../../server/src/booklet/cutting-list.ts';
import { patternJson } from '../../server/src/booklet/pattern-json.ts';
import { outputsOf } from '../../server/src/disk/outputs.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

function namesIn(place: string, blocks = 'block Nine(a = ink, b = sand) 6" {\n  a b\n  b a\n}'): { blocks: string[]; uses: string[]; files: string[]; markdown: string; problems: string[] } {
  const snapshot = snapshotOfText(`fabric ink #22345c\nfabric sand #eadfc8\nfabric rust #a4502e\n${blocks}\nquilt {\n  straight 2 by 2\n  place {\n    ${place}\n  }\n  sashing 1" rust\n}\n`);
  const [quilt] = snapshot.quilts;
  if (!quilt) throw new Error('no quilt');
  const json = JSON.parse(patternJson(snapshot)) as { sizes: { blocks: { name: string }[]; pieces: { for: string }[] }[] };
  return {
    blocks: json.sizes[0]?.blocks.map(({ name }) => name) ?? [],
    uses: [...new Set(json.sizes[0]?.pieces.map((piece) => piece.for))],
    files: outputsOf(snapshot, { only: ['blocks'] }).map(({ path }) => path),
    markdown: cuttingMarkdown(snapshot, quilt),
    problems: snapshot.problems.map(({ message }) => message),
  };
}

test('a block with one set of arguments goes by its plain name', () => {
  const { blocks, uses, files, markdown } = namesIn('Nine(rust)');
  expect(blocks).toEqual(['Nine']);
  expect(uses).toEqual(['Nine', 'sashing']);
  expect(files).toEqual(['blocks/Nine.svg']);
  expect(markdown).toContain('4 Nine blocks');
  expect(markdown).not.toContain('Nine(');
});

test('a block with several goes with them, the defaults left out', () => {
  const { blocks, uses, files } = namesIn('Nine(rust) Nine');
  expect(blocks).toEqual(['Nine(rust)', 'Nine']);
  expect([...uses].sort()).toEqual(['Nine', 'Nine(rust)', 'sashing']);
  expect(files).toEqual(['blocks/Nine-rust.svg', 'blocks/Nine.svg']);
});

test('a block called like a part of the quilt does not share what is cut for it', () => {
  const { blocks, uses } = namesIn('setting rust', 'block setting 6" {\n  ink sand\n}');
  expect(blocks).toEqual(['setting (block)']);
  expect(uses).toEqual(['setting (block)', 'setting', 'sashing']);
});

test('expectations find it by its plain name', () => {
  expect(namesIn('Nine(rust)', 'block Nine(a = ink, b = sand) 6" {\n  a b\n  b a\n}\nexpect Nine.count 4\nexpect cut Nine.rust 3 1/2" by 3 1/2"').problems).toEqual([]);
});
