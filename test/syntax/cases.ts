/** Case files: `== title`, what is given, `--`, what is expected. `UPDATE_EXPECTED=1` writes what comes out. */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const folder = new URL('../cases/syntax/', import.meta.url);

/** One test for each case of a file: what `answer` makes of the given text must be what stands there. */
export function checkCases(file: string, answer: (given: string) => string): void {
  const path = new URL(file, folder);
  const [head = '', ...parts] = readFileSync(path, 'utf8').split(/^== /m);
  const cases = parts.map((part) => {
    const [, title = '', given = '', expected = ''] = /^(.*)\n([^]*?)\n--\n?([^]*)$/.exec(part) ?? [];
    return { title, given, expected: expected.trimEnd() };
  });
  if (process.env['UPDATE_EXPECTED'] !== undefined) {
    writeFileSync(path, head + cases.map(({ title, given }) => `== ${title}\n${given}\n--\n${answer(given)}\n`).join('\n'));
  }
  for (const { title, given, expected } of cases) test(title, () => expect(answer(given)).toBe(process.env['UPDATE_EXPECTED'] === undefined ? expected : answer(given)));
}
