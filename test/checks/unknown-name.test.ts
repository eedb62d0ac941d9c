/** Names that nothing declares: what is offered beside the nearest declared one. */
import { expect, test } from 'vitest';
import { applyEdits } from '../harness/apply.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

const FABRICS = 'fabric ink #22345c\nfabric sand #eadfc8\n';

function unknown(text: string): ReturnType<typeof snapshotOfText>['problems'] {
  return snapshotOfText(FABRICS + text).problems.filter(({ rule }) => rule === 'unknown-name');
}

test('a block of the library that is not imported: the fix imports it', () => {
  const text = `${FABRICS}block Buoy 8" {\n  pinwheel(ink, sand) sand\n  sand pinwheel(sand, ink)\n}\n`;
  const { document, problems } = snapshotOfText(text);
  expect(problems.map(({ message }) => message)).toEqual(Array.from({ length: 2 }, () => 'no block is called `pinwheel` here; the library `traditional` has one: write `import "traditional"`'));
  expect(snapshotOfText(applyEdits(document, problems[0]?.fix?.edits ?? []).text).problems.filter(({ rule }) => rule !== 'bulky-point')).toEqual([]);
});

test('a fabric is not looked for in the library', () => {
  expect(unknown('block Buoy 8" {\n  box 1 by 1\n  patch pinwheel 0,0 1,0 1,1 0,1\n}\n').map(({ message }) => message)).toEqual(['no fabric is called `pinwheel`']);
});

test.each([['templtes', 'templates'], ['foundaton', 'foundation']])('%s alone in a line of a grid: %s was meant', (typed, meant) => {
  const [problem] = unknown(`block Buoy 4" {\n  ${typed}\n  ink sand\n  sand ink\n}\n`);
  expect(problem?.message).toBe(`no fabric or block is called \`${typed}\`; did you mean \`${meant}\`?`);
  expect(problem?.fix?.title).toBe(`Write \`${meant}\``);
});

test('beside other cells a statement is not meant', () => {
  expect(unknown('block Buoy 4" {\n  ink templtes\n}\n').map(({ message }) => message)).toEqual(['no fabric or block is called `templtes`']);
});
