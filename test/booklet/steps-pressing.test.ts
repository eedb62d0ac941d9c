/** The pressing table accounts for every seam, its sides are those of the plan, and every crossing that cannot nest is named. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { stepsDrawings } from '../../server/src/booklet/steps-drawings.ts';
import { stepsPlan } from '../../server/src/booklet/steps-plan.ts';
import { pressLines, pressTable, type PressWords } from '../../server/src/booklet/steps-pressing.ts';
import { printerFor } from '../../server/src/booklet/words.ts';
import type { Assembly } from '../../server/src/piecing/plan.ts';
import { centreOf } from '../../server/src/piecing/setting.ts';
import type { QuiltView, Snapshot } from '../../server/src/snapshot.ts';
import { project } from '../harness/fresh.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { EVERY_BLOCK, cellOf, sizeOf } from '../library/blocks.ts';

const read = (name: string): string => readFileSync(join(project, 'samples', `${name}.quilt`), 'utf8');
const files = { 'blocks/harbour-blocks.quilt': read('blocks/harbour-blocks') };

function wordsOf({ pattern: { rules } }: Snapshot, quilt: QuiltView): PressWords {
  return { quilt, sewing: quilt.sewing, plan: stepsPlan(quilt.sewing), rules, print: printerFor(rules.units) };
}

/** Seams of joins: those of flipped corners and the second goes of partial seams aside. */
function joinsIn(node: Assembly): number {
  if (node.kind === 'patch') return 0;
  if (node.kind !== 'join') return joinsIn(node.part);
  return node.seams.length + node.parts.reduce((sum, part) => sum + joinsIn(part), 0);
}

function checkTable(snapshot: Snapshot, quilt: QuiltView): void {
  const words = wordsOf(snapshot, quilt);
  const { head, rows } = pressTable(words);
  const { blocks, setting, pressing } = quilt.sewing;
  const centre = centreOf(setting);
  const inBlocks = blocks.reduce((sum, { assembled, count }) => sum + (assembled ? count * joinsIn(assembled.plan.assembly) : 0), 0);
  expect(rows.reduce((sum, row) => sum + Number(row.at(-1)), 0)).toBe(inBlocks + (centre ? joinsIn(centre) : 0));
  expect(rows.filter((row) => row.length !== head.length || row.some((cell) => cell === '' || /undefined|NaN/.test(cell)))).toEqual([]);
  const named = pressLines(words).slice(-pressing.named.length || Infinity).reduce((sum, line) => sum + Number(/^(\d+) crossings? (in|where)/.exec(line)?.[1] ?? 0), 0);
  expect(named).toBe(pressing.conflicts);
  if (pressing.conflicts > 0) expect(pressLines(words).join(' ')).toContain(pressing.proven ? 'that is proven' : 'No better way was found');
}

describe('samples', () => {
  test.each(['harbour-mail', 'lamp-room', 'beacon-star', 'mail-boat-sampler'])('%s', (name) => {
    const snapshot = snapshotOfText(read(name), files);
    for (const quilt of snapshot.quilts) checkTable(snapshot, quilt);
  });
});

const COLOURS = ['#22345c', '#eadfc8', '#a4502e', '#3a7d5d', '#c9b28f', '#7a3b69'];
const FABRICS = COLOURS.map((colour, index) => `fabric f${index} ${colour} "Cloth ${index}"`).join('\n');

describe('every block of the libraries, beside itself and beside a nine-patch', () => {
  test.each(EVERY_BLOCK.map((definition) => [definition.name, cellOf(definition)] as const))('%s', (name, cell) => {
    const size = sizeOf(name, '12').replace(/ \(\(?12\)?\/2\)/, ' 6');
    for (const place of ['Whole', 'Whole Alt\n    Alt Whole']) {
      const snapshot = snapshotOfText(`import "traditional"\n${FABRICS}\nblock Whole ${size} {\n  ${cell}\n}\nblock Alt ${size} {\n  f0 f1 f0\n  f1 f0 f1\n  f0 f1 f0\n}\nquilt {\n  straight 3 by 4\n  place {\n    ${place}\n  }\n}\n`);
      for (const quilt of snapshot.quilts) checkTable(snapshot, quilt);
    }
  });
});

test('why: what the author says, bulk, the darker fabric, away from pieced parts, crossings', () => {
  const reasons = (text: string): ReadonlySet<string> => {
    const snapshot = snapshotOfText(`${FABRICS}\n${text}`);
    const [quilt] = snapshot.quilts;
    if (!quilt) throw new Error('no quilt');
    return new Set(pressTable(wordsOf(snapshot, quilt)).rows.map((row) => row[3] ?? ''));
  };
  const nine = (press: string): string => `block Nine 6" {\n${press}  f0 f1 f0\n  f1 f0 f1\n  f0 f1 f0\n}\nquilt {\n  straight 2 by 2\n  place { Nine }\n  sashing 1" f1\n}\n`;
  expect(reasons(nine('  press open\n'))).toEqual(new Set(['the pattern says so', 'away from the pieced part']));
  expect(reasons(nine(''))).toEqual(new Set(['the darker fabric', 'away from the pieced part']));
  expect(reasons('block Pin 6" {\n  turned 4 {\n    f0\\f1\n  }\n}\nquilt {\n  straight 1 by 1\n  place { Pin }\n}\n')).toContain('many seams meet there');
});

test('an inner block that says how to press is pressed so, the block around it is not', () => {
  const text = (inner: string): string => `${FABRICS}\nblock Four {\n  ${inner}\n  f0 f1\n  f1 f0\n}\nblock Whole 8" {\n  Four f2\n  f2 Four\n}\nquilt {\n  straight 2 by 1\n  place { Whole }\n}\n`;
  const open = snapshotOfText(text('press open')).quilts[0]?.sewing.pressing.open;
  // Three seams in each of the two small blocks of both large ones.
  expect([open, snapshotOfText(text('')).quilts[0]?.sewing.pressing.open]).toEqual([12, 0]);
});

test('a drawing for each block with units, an arrow for each of its seams', () => {
  const snapshot = snapshotOfText(read('harbour-mail'), files);
  const [quilt] = snapshot.quilts;
  if (!quilt) throw new Error('no quilt');
  const drawings = stepsDrawings(quilt, snapshot.pattern.rules).filter(({ path }) => path.startsWith('steps/press-'));
  const seams = quilt.sewing.blocks.map(({ assembled }) => assembled?.plan.seams.length ?? 0);
  const arrows = drawings.map(({ scene }) => scene.items.filter((item) => item.kind === 'shape' && item.source === -1).length);
  expect(arrows).toEqual(seams);
});
