/** The page of statements is the grammar's cases, and every word that begins a statement has its entry. */
import { expect, test } from 'vitest';
import { STATEMENT_WORDS } from '../../server/src/syntax/words.ts';
import { expectFresh } from '../harness/fresh.ts';
import { statementsPage } from './statements.ts';

test('the page is fresh', () => {
  expectFresh(new Map([['samples/handbook/statements.md', statementsPage()]]));
});

test('every word that begins a statement is a heading with an example', () => {
  const entries = statementsPage().split('\n### ').slice(1);
  for (const { word } of Object.values(STATEMENT_WORDS).flat()) {
    const entry = entries.find((each) => each.split('\n')[0]?.includes(`\`${word}\``));
    expect(entry, word).toContain('```\n');
  }
});
