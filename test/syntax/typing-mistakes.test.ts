import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { walkStatements } from '../../server/src/syntax/find.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import type { Tree } from '../../server/src/syntax/tree.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { checkCases } from './cases.ts';
import { marked } from './marked.ts';

const base = readFileSync(new URL('../cases/syntax/base.quilt', import.meta.url), 'utf8').split('\n');
const whole = nodes(parse(documentOf('base', base.join('\n'))));

/** The base file with lines replaced (`12> text`) or taken out (`12-`), and which of its lines stand where (−1: none). */
function edited(edits: readonly string[]): { readonly text: string; readonly from: readonly number[] } {
  const lines = base.map((text, from) => ({ text, from }));
  for (const edit of edits) {
    const [, number = '0', sign = '', text = ''] = /^(\d+)([>-])(?: (.*))?$/.exec(edit) ?? [];
    const at = lines.findIndex(({ from }) => from === Number(number) - 1);
    if (sign === '-') lines.splice(at, 1);
    else lines[at] = { text, from: -1 };
  }
  return { text: lines.map(({ text }) => text).join('\n'), from: lines.map(({ from }) => from) };
}

/** The nodes of each line, by its number; the places of texts that span lines aside. */
function nodes(tree: Tree): Map<number, string> {
  const found = new Map<number, string>();
  for (const { node, line } of walkStatements(tree)) {
    const number = tree.document.numberOf(line);
    found.set(number, (found.get(number) ?? '') + JSON.stringify(node, (name, value: unknown) => (name === 'place' ? undefined : value)));
  }
  return found;
}

/** Lines of the base file that are untouched and without a problem, but were read as something else. */
function lost(tree: Tree, from: readonly number[]): string[] {
  const now = nodes(tree);
  const wrong = new Set(tree.problems.map(({ place }) => tree.document.numberOf(place.line)));
  return from.flatMap((number, line) => (number >= 0 && !wrong.has(line) && now.get(line) !== whole.get(number) ? [base[number] ?? ''] : []));
}

describe('typing mistakes', () => {
  checkCases('typing-mistakes.txt', (given) => {
    const { text, from } = edited(given.split('\n'));
    const tree = parse(documentOf('edited', text));
    expect(lost(tree, from)).toEqual([]);
    return marked(tree.document, tree.problems);
  });

  test('the file they are made in is sound', () => {
    expect(parse(documentOf('base', base.join('\n'))).problems).toEqual([]);
  });
});
