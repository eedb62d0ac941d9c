/**
 * Reading the text: all of it, and again after one character: `npm run bench -- syntax`.
 * Medians in ms after warming up, on lines that are all different.
 */
import { format } from '../../server/src/syntax/format.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { documentOf, replaceRange } from '../../server/src/text/document.ts';

console.log('lines    full parse   edit in a block   edit in one long block   format');
for (const lines of [1_000, 10_000, 50_000]) {
  const text = patternOf(lines);
  const full = median(5, () => parse(documentOf('bench', text)));
  const layout = median(3, () => format(parse(documentOf('bench', text))));
  console.log([lines, full, edits(text, lines), edits(longBlockOf(lines), lines), layout - full].map((each, column) => (column === 0 ? `${each}` : each.toFixed(3)).padStart(column === 0 ? 6 : 16)).join(''));
}

/** The median time of taking in one more character in the middle. */
function edits(text: string, lines: number): number {
  let document = documentOf('bench', text);
  let tree = parse(document);
  const position = { line: Math.floor(lines / 20) * 10 + 4, character: 3 };
  return median(41, () => {
    document = replaceRange(document, position, position, 'x');
    tree = parse(document, tree);
  });
}

/** Fabrics and blocks in turn, ten lines each time, no line twice. */
function patternOf(lines: number): string {
  const groups = Array.from({ length: Math.ceil(lines / 10) }, (_, i) => [
    `fabric f${i} #${((i * 7919) % 0xffffff).toString(16).padStart(6, '0')} "Label ${i}"`, '', `block B${i}(a = f${i}, b = f${i + 1}) ${(i % 9) + 3} 1/2" {`,
    `  grid 2 1 ${(i % 7) + 1} by ${(i % 5) + 1} 1 2`, `  a${i}/b   a-b${i}   b\\a`, `  a|b${i}   a   B${i - 1}(rust, b: f${i})@90`, `  (a|b)-(b|a)   f${i}   ^`, '}', '', `// comment ${i}`,
  ]);
  return groups.flat().slice(0, lines).join('\n');
}

function longBlockOf(lines: number): string {
  return ['block A 9" {', ...Array.from({ length: lines - 2 }, (_, i) => `  a${i}/b   a-b${i}   b\\a`), '}'].join('\n');
}

function median(times: number, run: () => unknown): number {
  const measured = Array.from({ length: times }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return measured.sort((a, b) => a - b)[times >> 1] ?? 0;
}
