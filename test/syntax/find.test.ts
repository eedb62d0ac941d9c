import { describe, expect, test } from 'vitest';
import { contextAt, pathAt, statementAt, walkStatements } from '../../server/src/syntax/find.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import type { Tree } from '../../server/src/syntax/tree.ts';
import { documentOf } from '../../server/src/text/document.ts';
import type { Position } from '../../server/src/text/document.ts';

/** A text with `‸` where the cursor stands. */
function at(marked: string): { readonly tree: Tree; readonly position: Position } {
  const before = marked.slice(0, marked.indexOf('‸')).split('\n');
  return { tree: parse(documentOf('test', marked.replace('‸', ''))), position: { line: before.length - 1, character: before.at(-1)?.length ?? 0 } };
}

function path(marked: string): string[] {
  const { tree, position } = at(marked);
  const found = pathAt(tree, position);
  return found?.parts.flatMap(({ kind, from, to }) => (kind === undefined ? [] : [`${kind} ${found.statement.line.text.slice(from, to)}`])) ?? [];
}

function context(marked: string): string {
  const { tree, position } = at(marked);
  const { context: braces, owner } = contextAt(tree, position);
  return `${braces}${owner ? ` of ${owner.line.text.trim()}` : ''}`;
}

describe('what stands at a position', () => {
  test.each([
    ['block A 3" {\n  a ink/sa‸nd b\n}', ['row_of_cells a ink/sand b', 'split ink/sand', 'reference sand', 'name sand']],
    ['block A 3" {\n  a Nine(b: ru‸st)@90\n}', ['row_of_cells a Nine(b: rust)@90', 'reference Nine(b: rust)@90', 'reference rust', 'name rust']],
    ['quilt {\n  border cut 6 1‸/2" ink\n}', ['border border cut 6 1/2" ink', 'length cut 6 1/2"', 'measure 6 1/2"', 'number 6 1/2']],
    ['quilt {\n  border 6" ink‸\n}', ['border border 6" ink', 'name ink']],
    ['fab‸ric ink #112233', ['fabric fabric ink #112233']],
    ['block A {\n  patch a 0,0 1,0 arc (r‸)\n}', ['patch patch a 0,0 1,0 arc (r)', 'arc arc (r)', 'parentheses (r)', 'reference r', 'name r']],
    ['‸', []],
    ['let a = 1\n‸\nlet b = 2', []],
  ])('%s', (marked, expected) => expect(path(marked).filter((part, index, all) => part !== all[index - 1])).toEqual(expected));

  test('the innermost statement, from brace to brace', () => {
    const found = (marked: string): string | undefined => {
      const { tree, position } = at(marked);
      return statementAt(tree, position)?.node.kind;
    };
    expect(found('quilt {\n‸\n}')).toBe('quilt');
    expect(found('quilt { place { A‸ } }')).toBe('row_of_cells');
    expect(found('quilt { place { A } ‸}')).toBe('quilt');
    expect(found('quilt {\n  edges a\n}\n‸let a = 1')).toBe('let');
    expect(found('quilt {\n  edges a\n‸')).toBe('quilt');
  });
});

describe('the braces around a position', () => {
  test.each([
    ['‸', 'top'],
    ['quilt ‸{', 'top'],
    ['quilt {‸', 'quilt of quilt {'],
    ['quilt {\n  ‸\n}', 'quilt of quilt {'],
    ['quilt {\n  place { A ‸ }\n}', 'place of place { A  }'],
    ['quilt {\n  place { A }‸\n}', 'quilt of quilt {'],
    ['block A 3" {\n  turned 4 {\n    ‸a b\n  }\n}', 'turned of turned 4 {'],
    ['quilt {\n  border pieced { ‸ }\n}', 'pieced of border pieced {  }'],
    ['quilt { }\n‸', 'top'],
    ['backing a { ‸ }', 'unknown of backing a {  }'],
  ])('%s', (marked, expected) => expect(context(marked)).toBe(expected));
});

test('all statements, outer before inner', () => {
  const tree = parse(documentOf('test', 'quilt {\n  place { A }\n  edges b\n}\nlet a = 1'));
  expect([...walkStatements(tree)].map(({ node }) => node.kind)).toEqual(['quilt', 'place', 'row_of_cells', 'edges', 'let']);
});
