/**
 * From a keystroke to problems, in process, at growing sizes: `npm run bench -- keystroke`. Each edit changes one cell of one
 * block in the middle of the file and asks for every problem. Medians in ms after warming up; the last column is the same
 * edit without anything kept from the version before.
 */
import { parse } from '../../server/src/syntax/parse.ts';
import { snapshotOf, type Snapshot } from '../../server/src/snapshot.ts';
import { documentOf, replaceRange, type Document } from '../../server/src/text/document.ts';
import always from '../../server/library/always.quilt';

const host = { library: [parse(documentOf('library', always))], import: () => 'missing' as const };

console.log('lines    blocks   first   keystroke   without what was kept');
for (const blocks of [170, 1_700]) {
  const text = patternOf(blocks);
  const start = documentOf('bench.quilt', text);
  const first = timed(() => problemsOf(start, undefined));
  let document = start;
  let snapshot: Snapshot = problemsOf(start, undefined);
  const times: number[] = [];
  const fresh: number[] = [];
  for (let edit = 0; edit < 15; edit++) {
    document = edited(document, edit);
    times.push(timed(() => (snapshot = problemsOf(document, snapshot))));
    if (edit < 3) fresh.push(timed(() => problemsOf(document, undefined)));
  }
  console.log([document.lines.length, blocks, first, median(times.slice(3)), median(fresh)].map((n) => String(Math.round(n * 10) / 10).padEnd(9)).join(''));
}

function problemsOf(document: Document, previous: Snapshot | undefined): Snapshot {
  const snapshot = snapshotOf(document, 1, host, previous);
  if (snapshot.problems.some((problem) => problem.rule === 'syntax')) throw new Error('the bench has a syntax error');
  return snapshot;
}

/** Toggles a cell of the block in the middle. */
function edited(document: Document, edit: number): Document {
  const line = Math.floor(document.lines.length / 2 / 6) * 6 + 4;
  const text = document.lines[line]?.text ?? '';
  return replaceRange(document, { line, character: 0 }, { line, character: text.length }, edit % 2 === 0 ? '  sand ink/sand ink' : '  sand ink\\sand ink');
}

function patternOf(blocks: number): string {
  const names = Array.from({ length: blocks }, (_, index) => `Block${index}`);
  const bodies = names.map((name, index) => `block ${name} 6" {\n  ink/sand sand-ink ${index % 2 === 0 ? 'ink\\sand' : 'sand'}\n  sand ink/sand ink\n  ink|sand sand ink/sand\n}\n`);
  return `fabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\n${bodies.join('\n')}\nquilt {\n  straight 10 by ${Math.ceil(blocks / 10)}\n  place {\n${rows(names)}\n  }\n}\n`;
}

function rows(names: readonly string[]): string {
  return Array.from({ length: Math.ceil(names.length / 10) }, (_, row) => `    ${names.slice(row * 10, row * 10 + 10).join(' ')}`).join('\n');
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function median(numbers: readonly number[]): number {
  return [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? 0;
}
