/** Every pattern in the handbook and the README does what the page says, and what the pages show of it is what the tool makes. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { severityOf } from '../../server/src/checks/list.ts';
import { expectFresh, project } from '../harness/fresh.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { examplesOf, picturesOf, requoted } from './pages.ts';

const folder = 'samples/handbook';
const pages = ['README.md', ...readdirSync(join(project, folder)).filter((name) => name.endsWith('.md')).map((name) => `${folder}/${name}`)];
const read = (path: string): string => readFileSync(join(project, path), 'utf8');
const examples = pages.flatMap((path) => examplesOf(read(path)).map((example, index) => ({ path, index: index + 1, ...example })));

/** What an example marked `part` leaves out. */
const DECLARED = 'fabric ink #22345c "Ink"\nfabric rust #a4502e "Rust"\nfabric sand #eadfc8 "Sand"\n';

test('there are examples on the pages that teach', () => {
  const taught = ['README.md', 'first-quilt.md', 'language.md', 'companies.md', 'cutting-and-pressing.md'];
  expect(taught.filter((name) => !examples.some(({ path }) => path.endsWith(name)))).toEqual([]);
});

describe('the examples', () => {
  test.each(examples)('$path, pattern $index $says', ({ text, says }) => {
    const { problems } = snapshotOfText(says === 'part' ? `${DECLARED}${text}` : text);
    const told = new Set(problems.map(({ rule }) => rule).filter((rule) => severityOf(rule) !== 'hint'));
    const wrong = /^wrong (\S+)$/.exec(says)?.[1];
    expect([...told]).toEqual(wrong === undefined ? [] : [wrong]);
  });
});

test('pictures and quotations are fresh', () => {
  for (const path of pages) {
    const page = read(path);
    expectFresh(new Map([[path, requoted(page)], ...[...picturesOf(page)].map(([picture, svg]) => [join(path, '..', picture), svg] as const)]));
  }
});
