/** Steps for blocks on paper: every section is printed, joined or taken into a larger one, in an order that can be sewn. */
import { expect, test } from 'vitest';
import { stepsMarkdown } from '../../server/src/booklet/steps.ts';
import { foundationOf } from '../../server/src/piecing/foundation.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { EVERY_BLOCK, PROPORTIONS, cellOf } from '../library/blocks.ts';
import traditional from '../../server/library/traditional.quilt';

const SQUARE = EVERY_BLOCK.filter(({ name }) => !PROPORTIONS[name]).map(cellOf);

test.each(SQUARE)('%s', (cell) => {
  const fabrics = ['f0', 'f1', 'f2', 'f3'].map((fabric, i) => `fabric ${fabric} #${i}0a0b0 "${fabric}"`).join('\n');
  const { quilts, pattern, problems } = snapshotOfText(`import "traditional.quilt"\n${fabrics}\nblock Buoy 12" {\n  foundation\n  ${cell}\n}\nquilt {\n  straight 3 by 1\n  place { Buoy }\n}\n`, { 'traditional.quilt': traditional });
  const [quilt] = quilts;
  const layout = quilt?.layout.blocks[0]?.layout;
  if (!quilt || !layout) throw new Error(problems.map(({ message }) => message).join('\n'));
  const steps = stepsMarkdown({ pattern, quilts }, quilt);
  const plan = foundationOf(layout);
  if (plan.kind === 'none') {
    expect(steps).not.toContain('templates.pdf');
    return expect(problems.filter(({ rule }) => rule === 'no-foundation')).toHaveLength(1);
  }
  const count = plan.foundation.sections.length;
  expect(steps).toContain(count === 1 ? 'Print the sheet of Buoy in `templates.pdf` at 100 %, 3 copies.' : `Print the ${count} sheets of Buoy in \`templates.pdf\` at 100 %, 3 copies of each.`);
  const ready = new Set<string>();
  const made = new Set<string>(['A']);
  for (const [, one = '', other = '', first = '', unit = ''] of steps.matchAll(/Sew ([A-Z, and]+) to ([A-Z, and]+) along|The first piece of section ([A-Z]+) is ([A-Z, and]+), sewn/g)) {
    const parts = (unit === '' ? [one, other] : [unit]).map(lettersIn);
    for (const part of parts) expect(part.length === 1 || ready.has([...part].sort().join()), `${part.join()} is ready`).toBe(true);
    const joined = [...parts.flat(), ...(unit === '' ? [] : [first])];
    ready.add([...joined].sort().join());
    for (const letter of joined) made.add(letter);
  }
  expect(made.size).toBe(count);
});

/** `A, B and C` */
function lettersIn(said: string): readonly string[] {
  return said.split(/, | and /);
}
