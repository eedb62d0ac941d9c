/** The handbook's page for each rule is the one `scant explain` prints, and no page is left over. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { explanationOf } from '../../server/src/checks/explain.ts';
import { RULES } from '../../server/src/checks/list.ts';
import { expectFresh, project } from '../harness/fresh.ts';

const folder = 'samples/handbook/rules';

test('the pages are fresh', () => {
  const contents = RULES.map((rule) => `| [\`${rule.id}\`](${rule.id}.md) | ${rule.severity} | ${rule.title} |`);
  const index = ['# Rules', '', 'What must be true of a pattern. Each page says why it matters, shows an example and the usual mends; `scant explain RULE` prints the same.', '', '| rule | severity | |', '| --- | --- | --- |', ...contents, ''].join('\n');
  expectFresh(new Map([[`${folder}/README.md`, index], ...RULES.map((rule) => [`${folder}/${rule.id}.md`, explanationOf(rule)] as const)]));
});

test('there is a page for no other rule', () => {
  const pages = readdirSync(join(project, folder)).filter((name) => name !== 'README.md');
  expect(pages.sort()).toEqual(RULES.map((rule) => `${rule.id}.md`).sort());
});
